"""Shapes on the court as they are laid out: edge by edge from the nearest painted lines."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from designer.court.readings import reading
from designer.court.regions import End, as_player, from_player, region_box, region_words
from designer.court.standards import Ground
from designer.drill.base import ON_THE_LINE, Point
from designer.drill.places import middle
from designer.wording.places import end_seen, offset_words, owned, standing_words
from designer.wording.units import RACKET, Units, distance

TICK: Final = 1.0
"""A line along the court shorter than this, in metres, is a tick: only where it begins matters."""


@dataclass(frozen=True, slots=True)
class Span:
    """A rectangle as the player at its end sees it, in metres: right of the middle and away from the net."""

    end: End
    left: float
    right: float
    front: float
    back: float

    @property
    def width(self) -> float:
        """How wide it is."""
        return self.right - self.left

    @property
    def depth(self) -> float:
        """How deep it is."""
        return self.back - self.front


def span(corners: tuple[Point, ...]) -> Span:
    """Return the rectangle round ``corners`` as seen by the player at its end."""
    end = end_seen(middle(corners)) or "near"
    seen = [as_player(corner, end) for corner in corners]
    across, along = [x for x, _ in seen], [y for _, y in seen]
    return Span(end, min(across), max(across), min(along), max(along))


_ASIDE: Final = 0.0101
"""A step that leaves a line, in metres."""

_NOT_BY_LINES: Final = ("past the service line", "between the service lines", "middle four rackets")
_BY_LINES: Final = {
    "right back court": "right half from the service line to the baseline",
    "left back court": "left half from the service line to the baseline",
}


def same_region(ground: Ground, box: Span) -> str | None:
    """Return the words of the region that fills the same rectangle by painted lines, None where there is none."""
    for words in region_words(ground):
        region = region_box(ground, words)
        if region is not None and words not in _NOT_BY_LINES:
            pairs = zip(region, (box.left, box.right, box.front, box.back), strict=True)
            if all(abs(a - b) <= ON_THE_LINE for a, b in pairs):
                return words
    return None


def rectangle_words(ground: Ground, box: Span, units: Units, owner: str | None, *, exact: bool) -> str:
    """Return where a rectangle lies: "from B's left singles line to the centre line, 2 strides … to the baseline"."""
    region = same_region(ground, box)
    if region is not None:
        inner = min(abs(box.left), abs(box.right))
        unpainted = inner <= ON_THE_LINE and box.back > (ground.service_line or 0.0) + ON_THE_LINE
        lines = "painted lines and the centre line extended" if unpainted else "painted lines only"
        return f"{owner or 'the'} {_BY_LINES.get(region, region)}; {lines}"
    across = _across(ground, box, units, owner, exact=exact)
    return f"{across}; {_along(ground, box, units, exact=exact)}"


def _edge(
    ground: Ground, box: Span, x: float, y: float, axis: str, units: Units, owner: str | None = None, *, exact: bool
) -> tuple[str, bool]:
    """Return where an edge is, and whether that is on a painted line or its run-on."""
    found = reading(ground, from_player(x, y, box.end))
    offset = found.across if axis == "across" else found.along
    if offset is None:
        # On a crossing, or half-way between two: beside it along the edge the edge alone is read.
        aside = (x, y + _ASIDE) if axis == "across" else (x + _ASIDE, y)
        found = reading(ground, from_player(*aside, box.end))
        offset = found.across if axis == "across" else found.along
    if offset is None:
        return "", False
    if offset.direction == "on":
        return owned(offset.line, owner), True
    return offset_words(offset, axis, units, owner, exact=exact), False


def _across(ground: Ground, box: Span, units: Units, owner: str | None, *, exact: bool) -> str:
    if abs(box.left + box.right) <= ON_THE_LINE and box.right < ground.singles - ON_THE_LINE:
        half = distance(box.right, "across", units, exact=exact)
        return f"{half} either side of the middle"
    if abs(box.left + box.right) <= ON_THE_LINE and abs(box.right - ground.singles) <= ON_THE_LINE:
        return "from singles line to singles line"
    if abs(box.left + box.right) <= ON_THE_LINE and abs(box.right - ground.outer) <= ON_THE_LINE:
        return "from doubles line to doubles line"
    y = _off_lines(ground, box.front, box.back)
    inner, outer = sorted((box.left, box.right), key=abs)
    first, on_line = _edge(ground, box, outer, y, "across", units, owner, exact=exact)
    second, on_second = _edge(ground, box, inner, y, "across", units, exact=exact)
    if on_line and not on_second:
        same_side = inner * outer >= 0 and abs(inner) > ON_THE_LINE
        if same_side:
            width = distance(box.width, "across", units, exact=exact)
            return f"from {first} {width} {'inwards' if width.endswith(' in') else 'in'}"
    if on_second and not on_line and "centre" in first:
        side = "right" if outer > 0 else "left"
        return f"from {owned(second, owner)} {distance(box.width, 'across', units, exact=exact)} to the {side}"
    if on_second and second in ("the centre line", "the centre mark"):
        second = "the centre line" if ground.service_line and y < ground.service_line else "the centre line extended"
    return f"from {first} to {second}"


def _along(ground: Ground, box: Span, units: Units, *, exact: bool) -> str:
    x = _off_middle(box.left, box.right)
    first, on_line = _edge(ground, box, x, box.front, "along", units, exact=exact)
    second, on_second = _edge(ground, box, x, box.back, "along", units, exact=exact)
    if on_line and not on_second:
        return f"from {first} {distance(box.depth, 'along', units, exact=exact)} back"
    return f"from {first} to {second}"


def _off_lines(ground: Ground, front: float, back: float) -> float:
    """Return a distance from the net inside the shape at which no line crosses, so that only the sides are read."""
    del ground
    return front + (back - front) * 0.4321


def _off_middle(left: float, right: float) -> float:
    return left + (right - left) * 0.4321


def is_level_or_upright(corners: tuple[Point, ...]) -> bool:
    """Whether a line runs straight across the court, or along it at one end, so that its two ends say all."""
    across, along = [x for x, _ in corners], [y for _, y in corners]
    upright = max(across) - min(across) <= ON_THE_LINE and min(along) >= -ON_THE_LINE
    upright = upright or (max(across) - min(across) <= ON_THE_LINE and max(along) <= ON_THE_LINE)
    return upright or max(along) - min(along) <= ON_THE_LINE


def ellipse_words(
    ground: Ground, box: Span, corners: tuple[Point, ...], units: Units, owner: str | None, *, exact: bool
) -> str:
    """Return an ellipse: its middle and how wide and deep it is."""
    centre = standing_words(ground, middle(corners), units, owner=owner, exact=exact)
    wide = distance(box.width, "across", units, exact=exact)
    return f"round, centred {centre}; {wide} wide, {distance(box.depth, 'along', units, exact=exact)} deep"


def segment_words(ground: Ground, corners: tuple[Point, ...], units: Units, owner: str | None, *, exact: bool) -> str:
    """Return where a line across or along the court lies: "1 stride behind A's baseline, singles line to singles line"."""
    box = span(corners)
    if box.depth <= ON_THE_LINE and box.width > ON_THE_LINE:
        where, on_line = _edge(
            ground, box, _off_middle(box.left, box.right), box.front, "along", units, owner, exact=exact
        )
        # On the net's own line the sides alone say whose they are.
        sides = None if owner is None or owner in where else owner
        across = _across(ground, box, units, sides, exact=exact).removeprefix("from ")
        return f"{'on ' if on_line else ''}{where}, {across}"
    if box.depth < TICK and abs(box.front - ground.baseline) <= ON_THE_LINE:
        return _tick(ground, box, units, owner, exact=exact)
    where, on_line = _edge(ground, box, box.left, _off_middle(box.front, box.back), "across", units, owner, exact=exact)
    return f"{'on ' if on_line else ''}{where}, {_along(ground, box, units, exact=exact)}"


def _tick(ground: Ground, box: Span, units: Units, owner: str | None, *, exact: bool) -> str:
    """Return where a short line that begins at the baseline lies: "½ stride long, behind A's baseline, 1 racket right …"."""
    where, on_line = _edge(ground, box, box.left, box.front, "across", units, exact=exact)
    # Half a racket is the least that is counted.
    long = distance(box.depth, "along", units, exact=exact or box.depth < RACKET / 4)
    return f"{long} long, behind {owned('the baseline', owner)}, {'on ' if on_line else ''}{where}"


def edge_words(
    ground: Ground,
    corners: tuple[Point, ...],
    units: Units,
    *,
    before: tuple[Point, ...] = (),
) -> str:
    """Return where a line or an edge now lies, as it stands after its name: "on the baseline", "3 rackets right of …".

    ``before`` is where it lay: a line along the court that stays on its side is counted from the middle as before.
    """
    box = span(corners)
    if box.depth <= ON_THE_LINE:
        words, on_line = _edge(ground, box, _off_middle(box.left, box.right), box.front, "along", units, exact=False)
        return f"on {words}" if on_line else words
    if box.width > ON_THE_LINE:
        return "has another shape"
    old = span(before) if before else box
    if old.width <= ON_THE_LINE and old.left * box.left > 0 and abs(old.left) < ground.singles / 2:
        marked = box.front >= ground.baseline - ON_THE_LINE and ground.standard.centre_mark is not None
        side = "right" if box.left > 0 else "left"
        return f"{distance(box.left, 'across', units)} {side} of the {'centre mark' if marked else 'middle'}"
    y = box.front if box.front >= ground.baseline - ON_THE_LINE else _off_lines(ground, box.front, box.back)
    words, on_line = _edge(ground, box, box.left, y, "across", units, exact=False)
    return f"on {words}" if on_line else words
