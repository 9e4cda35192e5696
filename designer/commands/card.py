"""`drill-designer card`: a card as a PDF, or one for each of several drills."""

from __future__ import annotations

import argparse
import os
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Final

from designer.cards.imposing import SHEETS, grid
from designer.cards.papers import LARGE_PRINT, PAPERS, POSTERS
from designer.commands.arguments import Commands, add_at, add_command, add_output
from designer.commands.files import STANDARD_OUTPUT, opened, refuse_overwriting, setting_named, write
from designer.commands.saying import complain
from designer.commands.status import FINE, UNREADABLE, WrongUsage
from designer.drill.setting import setting_at
from designer.storage.parsing import Unreadable
from designer.storage.writing import Unwritable

if TYPE_CHECKING:
    from designer.drill.drill import Drill
    from designer.drill.setting import At
    from designer.drill.today import Today
    from designer.storage.brand import Branded

_ENDINGS = (".drill.json", ".json", ".pdf")


def add(commands: Commands) -> None:
    """Add this command to the parser."""
    parser = add_command(
        commands,
        "card",
        "make the card of a drill as a PDF",
        "drill-designer card samples/wide-start.drill.json -o card.pdf --for coach --paper a4",
        "drill-designer card samples/wide-start.drill.json -o cards.pdf --each-player --paper a6 --on a4",
        "drill-designer card samples/*.drill.json -o cards/",
    )
    parser.add_argument("files", nargs="+", metavar="FILE", help="a drill, or a card that carries one")
    add_output(parser, "the PDF to write, or the folder for the cards of several drills")
    parser.add_argument("--paper", choices=(*PAPERS, *POSTERS), help="default: a5; with --large-print a4")
    parser.add_argument("--across", action="store_true", help="the sheet on its side, the court along it")
    parser.add_argument("--large-print", action="store_true", help="no letter under 16 pt, set in one column")
    parser.add_argument("--binder", action="store_true", help="a margin for the rings, on the other side on backs")
    parser.add_argument("--sealed-edge", action="store_true", help="5 mm more margin, for lamination")
    parser.add_argument(
        "--for", dest="reader", choices=("player", "coach", "stand-in"), default="player", help="default: player"
    )
    whose = parser.add_mutually_exclusive_group()
    whose.add_argument("--player", metavar="LETTER", help="the job that a player's card speaks to, such as A")
    whose.add_argument("--each-player", action="store_true", help="a card for each player of the drill, in one PDF")
    parser.add_argument(
        "--on",
        choices=tuple(SHEETS),
        metavar="SHEET",
        help="several small cards to a sheet of a4 or letter, with cut marks",
    )
    parser.add_argument(
        "--copies", type=_copies, metavar="N", help="of each card on the sheets of --on; default: as fill the first"
    )
    parser.add_argument(
        "--address",
        help="an address of yours, printed as a code that a telephone reads; default: that of the brand; '' for none",
    )
    parser.add_argument(
        "--today",
        metavar="TODAY",
        help="a file of who plays today; the names are printed on the card and stand nowhere else",
    )
    add_at(parser)
    parser.add_argument("--units", choices=("rackets", "metres", "feet"), default="rackets", help="default: rackets")
    parser.add_argument("--grey", action="store_true", help="black on white, for a photocopier")
    _add_source(parser)
    parser.set_defaults(run=run)


def _add_source(parser: argparse.ArgumentParser) -> None:
    """Add whether a card carries its drill."""
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


def run(asked: argparse.Namespace) -> int:
    """Write the cards; return the exit status. One drill that cannot be read does not keep back the others."""
    _refuse_contradictions(asked)
    if asked.large_print and _paper(asked) not in LARGE_PRINT:
        raise WrongUsage(f"--large-print needs --paper {' or '.join(LARGE_PRINT)}.")
    if asked.today is not None and len(asked.files) > 1:
        raise WrongUsage("--today goes with one drill.")
    outputs = _outputs(asked.files, asked.output)
    for output in outputs:
        refuse_overwriting(output, force=asked.force, read=_read(asked))
    status = FINE
    for file, output in zip(asked.files, outputs, strict=True):
        try:
            write(output, _card(file, asked), force=asked.force, read=_read(asked))
        except (Unreadable, Unwritable) as reason:
            complain(str(reason))
            status = UNREADABLE
    return status


def _read(asked: argparse.Namespace) -> list[str]:
    return [*asked.files, *([asked.today] if asked.today else [])]


def _refuse_contradictions(asked: argparse.Namespace) -> None:
    if (asked.player is not None or asked.each_player) and asked.reader != "player":
        raise WrongUsage(f"{'--each-player' if asked.each_player else '--player'} goes with --for player only.")
    if asked.copies is not None and asked.on is None:
        raise WrongUsage("--copies goes with --on only.")
    if _paper(asked) in POSTERS:
        more = [name for name in ("across", "binder", "sealed_edge", "on", "address", "today") if getattr(asked, name)]
        if more or asked.each_player:
            wrong = f"--{(more or ['each-player'])[0].replace('_', '-')}"
            raise WrongUsage(f"{wrong} goes with a card, not with a poster.")
    if asked.on is not None:
        paper = PAPERS[_paper(asked)]
        try:
            grid((paper.width, paper.height), asked.on)
        except KeyError as reason:
            raise WrongUsage(f"--on {asked.on} --paper {_paper(asked)}: {reason.args[0]}.") from reason


def _copies(text: str) -> int:
    if not text.isdigit() or not 1 <= int(text) <= _MOST_COPIES:
        raise argparse.ArgumentTypeError(f"{text!r} is not a whole number from 1 to {_MOST_COPIES}")
    return int(text)


_MOST_COPIES: Final = 500


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
    from designer.cards.attachment import finished
    from designer.cards.imposing import imposed, joined
    from designer.storage.brand import Branded, branded

    found = opened(file)
    own = Branded()
    try:
        own = branded(file)
    except Unreadable as reason:
        complain(f"{reason} The card is made without it.")
    for fault in own.faults:
        complain(fault)
    with_source = asked.reader != "player" if asked.source is None else asked.source
    source = found.source if with_source else None
    today = _today(asked.today, file, found.drill)
    at = (today.setting(found.drill) if today and asked.at is None else None) or setting_named(
        found.drill, asked.at, file
    )
    letters = _letters(found.drill, at, file, asked)
    cards = [_made(file, asked, found.drill, at, letter, own, source, today) for letter in letters]
    if asked.on is None and len(cards) == 1:
        return cards[0]
    whole = joined(cards) if asked.on is None else imposed(cards, asked.on, copies=asked.copies)
    name = f"{found.drill.code or found.drill.id}.drill.json"
    return finished(whole, dated=found.drill.dated, source=source, file_name=name)


def _today(name: str | None, file: str, drill: Drill) -> Today | None:
    """Return who plays today, telling where the drill is drawn for the other hand. Raises ``Unreadable``."""
    from designer.storage.today import open_today

    if name is None:
        return None
    today = open_today(name)
    if today.drill != drill.id:
        raise Unreadable(f"{name}: drill: is for {today.drill!r}, expected {drill.id!r}, the drill in {file}.")
    stranger = next((letter for letter in sorted(today.people) if drill.job(letter) is None), None)
    if stranger is not None:
        letters = ", ".join(job.letter for job in drill.jobs) or "none"
        raise Unreadable(f"{name}: people: has {stranger!r}, expected a letter of the drill: {letters}.")
    for letter in today.other_hands(drill):
        hand = today.people[letter].hand
        drawn = "right" if hand == "left" else "left"
        complain(
            f"{file}: {letter} plays {hand}-handed today and is drawn {drawn}-handed; "
            f"drill-designer variant left-handed --letter {letter} {file} -o OTHER makes that version."
        )
    return today


def _letters(drill: Drill, at: At, file: str, asked: argparse.Namespace) -> tuple[str | None, ...]:
    """Return the jobs that the cards are for, (None,) where nobody is named. Raises ``WrongUsage`` for one there is not."""
    if asked.player is not None and drill.job(asked.player) is None:
        letters = ", ".join(job.letter for job in drill.jobs) or "none"
        raise WrongUsage(f"{file}: there is no player {asked.player!r}; the drill has {letters}.")
    if not asked.each_player:
        return (asked.player,)
    standing = {spot.job for spot in setting_at(drill, at).spots.values()}
    found = tuple(job.letter for job in drill.jobs if job.by == "player" and job.letter in standing)
    if not found:
        raise WrongUsage(f"{file}: --each-player: nobody stands on the court of this setting.")
    return found


def _made(  # what one file gives to each of its cards
    file: str,
    asked: argparse.Namespace,
    drill: Drill,
    at: At,
    letter: str | None,
    own: Branded,
    source: bytes | None,
    today: Today | None,
) -> bytes:
    from designer.cards.card import make_card
    from designer.cards.text import Unprintable

    try:
        card = make_card(
            drill,
            at,
            paper=_paper(asked),
            reader=asked.reader,
            player=letter,
            units=asked.units,
            brand=own.brand,
            logo=own.logo,
            typeface=own.typeface,
            source=source if not asked.each_player and asked.on is None else None,
            grey=asked.grey,
            across=asked.across,
            large_print=asked.large_print,
            binder=asked.binder,
            sealed=asked.sealed_edge,
            address=asked.address,
            today=today,
        )
    except Unprintable as reason:
        raise Unreadable(f"{file}: {reason}") from reason
    for notice in card.notices:
        complain(f"{file}: {notice}")
    return card.pdf
