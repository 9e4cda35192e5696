"""`drill-designer picture`: the court alone, as SVG or PNG."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING, Final

from designer.commands.arguments import Commands, add_at, add_command, add_output
from designer.commands.files import STANDARD_OUTPUT, opened, refuse_overwriting, setting_named, write
from designer.commands.status import FINE, WrongUsage
from designer.drill.setting import At
from designer.storage.writing import Unwritable

if TYPE_CHECKING:
    from designer.drawing.picture import Picture
    from designer.drawing.themes import Theme
    from designer.drill.drill import Drill

UNIT: Final = 0.108
"""Metres of court to one mark unit, as on a card on A5: 1 pt at 1:307."""

_WIDTHS: Final = range(50, 10_001)


def add(commands: Commands) -> None:
    """Add this command to the parser."""
    parser = add_command(
        commands,
        "picture",
        "draw the court of a drill as .svg or .png",
        "drill-designer picture samples/wide-start.drill.json -o wide-start.svg --at 2",
        "drill-designer picture samples/wide-start.drill.json -o row.png --all --transparent --width 3000",
    )
    parser.add_argument("file", metavar="FILE", help="a drill, or a card that carries one")
    add_output(parser, "the picture to write, named .svg or .png (.png needs Qt)")
    add_at(parser)
    parser.add_argument("--all", action="store_true", help="all progressions in a row, each under its name")
    parser.add_argument("--transparent", action="store_true", help="no ground: for a coloured page")
    parser.add_argument("--width", type=_width, default=1200, metavar="PX", help="pixels across; default: 1200")
    parser.add_argument("--grey", action="store_true", help="as on a photocopy")
    parser.set_defaults(run=run)


def run(asked: argparse.Namespace) -> int:
    """Write the picture; return the exit status."""
    from designer.drawing.themes import theme

    ending = ".svg" if asked.output == STANDARD_OUTPUT else Path(asked.output).suffix.lower()
    if ending not in (".svg", ".png"):
        raise WrongUsage(f"{asked.output}: expected a name that ends in .svg or .png.")
    if asked.all and asked.at is not None:
        raise WrongUsage("--all draws every progression; leave out --at.")
    refuse_overwriting(asked.output, force=asked.force, read=(asked.file,))
    drill = opened(asked.file).drill
    colours = theme("photocopy" if asked.grey else "paper", surface=drill.court.surface)
    drawn = _drawn(drill, asked, colours)
    if ending == ".svg":
        from designer.drawing.svg import svg

        data = svg(
            drawn,
            colours,
            asked.width,
            title=drill.title,
            description=drill.objective,
            transparent=asked.transparent,
        ).encode()
    else:
        data = _png(drawn, colours, asked)
    write(asked.output, data, force=asked.force, read=(asked.file,))
    return FINE


def _drawn(drill: Drill, asked: argparse.Namespace, colours: Theme) -> Picture:
    """Return the court of the setting that is asked for, or of all progressions in a row, with the legend."""
    from designer.drawing.picture import picture
    from designer.drawing.sheet import in_a_row, with_legend

    if not asked.all:
        at = setting_named(drill, asked.at, asked.file)
        return with_legend(picture(drill, at, unit=UNIT, theme=colours, patient=True), colours)
    courts = []
    for number, progression in enumerate(drill.progressions, 1):
        made = picture(drill, At(progression.id), unit=UNIT, theme=colours, patient=True)
        courts.append((f"{number} {progression.name}".strip(), made))
    return with_legend(in_a_row(courts), colours)


def _png(drawn: Picture, colours: Theme, asked: argparse.Namespace) -> bytes:
    from designer.screen import why_no_qt

    try:
        from designer.drawing.qt import png
    except ImportError as error:
        if reason := why_no_qt(error, "a .png picture"):
            raise Unwritable(f"{asked.output}: {reason}") from error
        raise
    return png(drawn, colours, asked.width, transparent=asked.transparent)


def _width(text: str) -> int:
    try:
        width = int(text)
    except ValueError:
        width = 0
    if width not in _WIDTHS:
        raise argparse.ArgumentTypeError(f"{text!r} is not a whole number from {_WIDTHS[0]} to {_WIDTHS[-1]}")
    return width
