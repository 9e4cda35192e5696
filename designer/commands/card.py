"""`drill-designer card`: a card as a PDF, or one for each of several drills."""

from __future__ import annotations

import argparse
import os
from collections.abc import Sequence
from pathlib import Path

from designer.cards.papers import LARGE_PRINT, PAPERS
from designer.commands.arguments import Commands, add_at, add_command, add_output
from designer.commands.files import STANDARD_OUTPUT, opened, refuse_overwriting, setting_named, write
from designer.commands.saying import complain
from designer.commands.status import FINE, UNREADABLE, WrongUsage
from designer.storage.parsing import Unreadable
from designer.storage.writing import Unwritable

_ENDINGS = (".drill.json", ".json", ".pdf")


def add(commands: Commands) -> None:
    """Add this command to the parser."""
    parser = add_command(
        commands,
        "card",
        "make the card of a drill as a PDF",
        "drill-designer card samples/wide-start.drill.json -o card.pdf --for coach --paper a4",
        "drill-designer card samples/*.drill.json -o cards/",
    )
    parser.add_argument("files", nargs="+", metavar="FILE", help="a drill, or a card that carries one")
    add_output(parser, "the PDF to write, or the folder for the cards of several drills")
    parser.add_argument("--paper", choices=tuple(PAPERS), help="default: a5; with --large-print a4")
    parser.add_argument("--across", action="store_true", help="the sheet on its side, the court along it")
    parser.add_argument("--large-print", action="store_true", help="no letter under 16 pt, set in one column")
    parser.add_argument("--binder", action="store_true", help="a margin for the rings, on the other side on backs")
    parser.add_argument("--sealed-edge", action="store_true", help="5 mm more margin, for lamination")
    parser.add_argument(
        "--for", dest="reader", choices=("player", "coach", "stand-in"), default="player", help="default: player"
    )
    parser.add_argument("--player", metavar="LETTER", help="the job that a player's card speaks to, such as A")
    add_at(parser)
    parser.add_argument("--units", choices=("rackets", "metres", "feet"), default="rackets", help="default: rackets")
    parser.add_argument("--grey", action="store_true", help="black on white, for a photocopier")
    carries = parser.add_mutually_exclusive_group()
    carries.add_argument(
        "--with-source",
        action="store_true",
        default=None,
        dest="source",
        help="attach the drill to a player's card too",
    )
    carries.add_argument(
        "--no-source",
        action="store_false",
        default=None,
        dest="source",
        help="leave it out of the coach's and stand-in's",
    )
    parser.set_defaults(run=run)


def run(asked: argparse.Namespace) -> int:
    """Write the cards; return the exit status. One drill that cannot be read does not keep back the others."""
    if asked.player is not None and asked.reader != "player":
        raise WrongUsage("--player goes with --for player only.")
    if asked.large_print and _paper(asked) not in LARGE_PRINT:
        raise WrongUsage(f"--large-print needs --paper {' or '.join(LARGE_PRINT)}.")
    outputs = _outputs(asked.files, asked.output)
    for output in outputs:
        refuse_overwriting(output, force=asked.force, read=asked.files)
    status = FINE
    for file, output in zip(asked.files, outputs, strict=True):
        try:
            write(output, _card(file, asked), force=asked.force, read=asked.files)
        except (Unreadable, Unwritable) as reason:
            complain(str(reason))
            status = UNREADABLE
    return status


def _paper(asked: argparse.Namespace) -> str:
    return str(asked.paper or ("a4" if asked.large_print else "a5"))


def _outputs(files: Sequence[str], output: str) -> list[str]:
    """Return what each card is to be called; make the folder where there are several. Raises ``WrongUsage``."""
    is_folder = output != STANDARD_OUTPUT and (Path(output).is_dir() or output.endswith((os.sep, "/")))
    if len(files) == 1 and not is_folder:
        return [output]
    if output == STANDARD_OUTPUT or (os.path.lexists(output) and not Path(output).is_dir()):
        raise WrongUsage(f"{output}: is no folder; several cards need one.")
    names = [str(Path(output) / f"{_stem(file)}.pdf") for file in files]
    if twice := next((name for name in names if names.count(name) > 1), None):
        raise WrongUsage(f"{twice}: would be the card of two of the drills; make them one at a time.")
    try:
        Path(output).mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise Unwritable(f"{output}: the folder cannot be made ({(error.strerror or 'refused').lower()}).") from error
    return names


def _stem(file: str) -> str:
    name = Path(file).name
    return next((name[: -len(ending)] for ending in _ENDINGS if name.lower().endswith(ending)), name)


def _card(file: str, asked: argparse.Namespace) -> bytes:
    """Return the PDF of one drill's card, telling what could not be printed as it was written."""
    from designer.cards.card import make_card
    from designer.storage.brand import brand_beside, logo_svg

    found = opened(file)
    at = setting_named(found.drill, asked.at, file)
    if asked.player is not None and found.drill.job(asked.player) is None:
        letters = ", ".join(job.letter for job in found.drill.jobs) or "none"
        raise WrongUsage(f"{file}: there is no player {asked.player!r}; the drill has {letters}.")
    brand, logo = None, None
    try:
        brand = brand_beside(file)
        logo = logo_svg(file)
    except Unreadable as reason:
        complain(f"{reason} The card is made without it.")
    with_source = asked.reader != "player" if asked.source is None else asked.source
    card = make_card(
        found.drill,
        at,
        paper=_paper(asked),
        reader=asked.reader,
        player=asked.player,
        units=asked.units,
        brand=brand,
        logo=logo,
        source=found.source if with_source else None,
        grey=asked.grey,
        across=asked.across,
        large_print=asked.large_print,
        binder=asked.binder,
        sealed=asked.sealed_edge,
    )
    for notice in card.notices:
        complain(f"{file}: {notice}")
    return card.pdf
