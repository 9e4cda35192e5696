"""A picture as SVG: one centimetre on court is one unit, so that no letter is smaller than a viewer can take."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final
from xml.sax.saxutils import escape, quoteattr

from designer.drawing.picture import Picture
from designer.drawing.primitives import Dots, Ellipse, Path, Point, Primitive, Strokes, Style, Words
from designer.drawing.themes import Theme
from designer.drawing.words import text_width

UNITS: Final = 100
"""Units of the SVG in a metre."""

_ANCHOR: Final = {"left": "", "middle": ' text-anchor="middle"', "right": ' text-anchor="end"'}


def svg(
    picture: Picture,
    theme: Theme,
    width_px: float,
    *,
    title: str = "",
    description: str = "",
    transparent: bool = False,
) -> str:
    """Return ``picture`` as a whole SVG file's text, shown ``width_px`` pixels wide, on the theme's ground or on none.

    ``title`` and ``description`` are what a screen reader says.
    """
    left, low, right, high = picture.extent
    width, height = (right - left) * UNITS, (high - low) * UNITS
    shown = f'width="{_number(width_px)}" height="{_number(width_px * height / width)}"'
    box = " ".join(map(_number, (left * UNITS, -high * UNITS, width, height)))
    lines = [
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" {shown} viewBox="{box}" role="img" fill="none" '
            'stroke-miterlimit="10" font-family="Noto Sans, sans-serif" font-kerning="none">'
        )
    ]
    if title:
        lines.append(f"<title>{_text(title)}</title>")
    if description:
        lines.append(f"<desc>{_text(description)}</desc>")
    x, y, *_ = box.split()
    if not transparent:
        lines.append(
            f'<rect x="{x}" y="{y}" width="{_number(width)}" height="{_number(height)}" fill="{theme.ground.hex}"/>'
        )
    for mark in picture.marks:
        shapes = [text for shape in mark.primitives for text in _shape(shape, theme)]
        if shapes:
            lines += [f"<g class={quoteattr(mark.kind.replace(' ', '-'))}>", *shapes, "</g>"]
    return "\n".join([*lines, "</svg>", ""])


def _number(value: float) -> str:
    """Return ``value`` to a hundredth, without noughts that say nothing."""
    return f"{round(value, 2) + 0.0:.2f}".rstrip("0").rstrip(".")


def _text(text: str) -> str:
    """Return ``text`` escaped and without what XML 1.0 does not allow."""
    return escape("".join(filter(_is_allowed, text)))


def _is_allowed(character: str) -> bool:
    code = ord(character)
    return character in "\n\t" or 0x20 <= code <= 0xD7FF or 0xE000 <= code <= 0xFFFD or code >= 0x10000


def _pair(point: Point) -> str:
    return f"{_number(point[0] * UNITS)} {_number(-point[1] * UNITS)}"


def _shape(shape: Primitive, theme: Theme) -> Iterator[str]:
    if isinstance(shape, Words):
        yield from _words(shape, theme)
        return
    look = _look(shape.style, theme)
    if not look:
        return
    if isinstance(shape, Path):
        yield f'<path d="{_route(shape)}"{look}/>'
    elif isinstance(shape, Strokes):
        yield f'<path d="{"".join(f"M{_pair(start)}L{_pair(end)}" for start, end in shape.lines)}"{look}/>'
    elif isinstance(shape, Dots):
        yield f'<path d="{"".join(_ring(centre, shape.radius) for centre in shape.centres)}"{look}/>'
    else:
        yield _ellipse(shape, look)


def _look(style: Style, theme: Theme) -> str:
    """Return the attributes of colour and stroke, nothing where nothing would be seen."""
    look = ""
    if style.fill and (fill := theme.colour(style.fill)):
        look += f' fill="{fill.hex}"' + (f' fill-opacity="{_number(fill.opacity)}"' if fill.opacity < 1 else "")
    if style.stroke and style.width > 0 and (stroke := theme.colour(style.stroke)):
        look += f' stroke="{stroke.hex}" stroke-width="{_number(style.width * UNITS)}"'
        look += f' stroke-opacity="{_number(stroke.opacity)}"' if stroke.opacity < 1 else ""
        look += ' stroke-linecap="round" stroke-linejoin="round"' if style.cap == "round" else ""
        if style.dash:
            look += f' stroke-dasharray="{" ".join(_number(length * UNITS) for length in style.dash)}"'
    return look


def _route(shape: Path) -> str:
    if not shape.points:
        return ""
    start, *rest = map(_pair, shape.points)
    route = f"M{start}" + ("C" if shape.curved else "L") * bool(rest) + " ".join(rest)
    return route + "Z" * shape.closed


def _ring(centre: Point, radius: float) -> str:
    across = _number(radius * UNITS)
    turn = f"a{across} {across} 0 1 0"
    return f"M{_pair((centre[0] - radius, centre[1]))}{turn} {_number(2 * radius * UNITS)} 0{turn} {_number(-2 * radius * UNITS)} 0Z"


def _ellipse(shape: Ellipse, look: str) -> str:
    x, y = _pair(shape.centre).split()
    across, along = (_number(radius * UNITS) for radius in shape.radii)
    if across == along and shape.style.dash:
        # A circle begins at the right and goes round as a clock does, everywhere else the other way: dashes would part.
        turn = f"a{across} {across} 0 1 0"
        begin = _number((shape.centre[0] + shape.radii[0]) * UNITS)
        across_twice = _number(2 * shape.radii[0] * UNITS)
        return f'<path d="M{begin} {y}{turn} -{across_twice} 0{turn} {across_twice} 0Z"{look}/>'
    if across == along:
        return f'<circle cx="{x}" cy="{y}" r="{across}"{look}/>'
    turn = f' transform="rotate({_number(-shape.turn)} {x} {y})"' if shape.turn else ""
    return f'<ellipse cx="{x}" cy="{y}" rx="{across}" ry="{along}"{turn}{look}/>'


def _words(words: Words, theme: Theme) -> Iterator[str]:
    if colour := theme.colour(words.colour):
        x, y = _pair(words.at).split()
        weight = ' font-weight="bold"' if words.bold else ""
        size, text = _number(words.size * UNITS), _text(words.text)
        # Where a reader's machine has another face, words still end where they end on paper.
        wide = _number(text_width(words.text, words.size, words.bold) * UNITS)
        kept = f' textLength="{wide}" lengthAdjust="spacingAndGlyphs"' if len(words.text) > 1 else ""
        yield f'<text x="{x}" y="{y}" font-size="{size}"{weight}{kept}{_ANCHOR[words.align]} fill="{colour.hex}">{text}</text>'
