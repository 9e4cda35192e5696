"""`drill-designer handbook`: a handbook as a PDF."""

from __future__ import annotations

import argparse
import sys
import time
from pathlib import Path
from typing import TYPE_CHECKING, Final

from designer.commands.arguments import Commands, add_command, add_output
from designer.commands.files import STANDARD_OUTPUT, refuse_overwriting, write
from designer.commands.saying import complain, harmless
from designer.commands.status import ERROR_FOUND, FINE, WrongUsage
from designer.storage.parsing import Unreadable

if TYPE_CHECKING:
    from designer.cards.book.leaf import Leaf
    from designer.cards.handbook import Book
    from designer.drill.handbook import Entry, Handbook
    from designer.storage.brand import Branded


def add(commands: Commands) -> None:
    """Add this command to the parser."""
    parser = add_command(
        commands,
        "handbook",
        "make a handbook of many drills as a PDF",
        "drill-designer handbook samples/alder-quay.handbook.json -o handbook.pdf",
    )
    parser.add_argument("file", metavar="FILE", help="a handbook; its drills lie in its folder or below")
    add_output(parser, "the PDF to write")
    parser.set_defaults(run=run)


def run(asked: argparse.Namespace) -> int:
    """Write the handbook and the record of its edition.

    A drill that is left out and a house rule that is not kept make the status 1.
    """
    from designer.cards.handbook import make_handbook
    from designer.cards.text import Unprintable
    from designer.storage.handbook import edition_before, edition_path, open_handbook, write_printed

    refuse_overwriting(asked.output, force=asked.force, read=[asked.file])
    book = open_handbook(asked.file)
    read = _sources(asked.file, book)
    if (
        asked.output != STANDARD_OUTPUT
        and Path(asked.output).absolute() == edition_path(asked.file, book.edition).absolute()
    ):
        raise WrongUsage(f"{asked.output}: is where the record of the edition is written; name another file.")
    refuse_overwriting(asked.output, force=asked.force, read=read)
    own = _branded(asked.file, book)
    before = edition_before(asked.file, book.edition)
    telling = _Telling()
    leaves: list[Leaf] = []
    for entry in book.entries():
        telling.reading(len(leaves), len(book.entries()), entry.file)
        leaves.append(_leaf(asked.file, book, entry))
    try:
        made = make_handbook(
            book,
            leaves,
            before=before,
            brand=own.brand,
            logo=own.logo,
            typeface=own.typeface,
            progress=telling.setting,
        )
    except Unprintable as reason:
        raise Unreadable(f"{asked.file}: {reason}") from reason
    finally:
        telling.end()
    if asked.output == STANDARD_OUTPUT:
        write(asked.output, made.pdf, force=asked.force, read=read)
    else:
        refuse_overwriting(asked.output, force=asked.force, read=read)
        _tell_other_drills(asked.file, book, made)
        write_printed(asked.file, book, made.remembered, asked.output, made.pdf)
    _complain(asked.file, made)
    return ERROR_FOUND if made.left_out or made.broken else FINE


def _branded(file: str, book: Handbook) -> Branded:
    from designer.storage.brand import Branded, branded

    try:
        own = branded(file, book.brand)
    except Unreadable as reason:
        complain(f"{reason} The handbook is made without it.")
        return Branded()
    for fault in own.faults:
        complain(fault)
    return own


def _sources(file: str, book: Handbook) -> list[str]:
    """Return the files that belong to a handbook: what is printed must not take the place of one of them."""
    from designer.storage.brand import brand_files
    from designer.storage.handbook import edition_path

    drills = [str(Path(file).parent / entry.file) for entry in book.entries()]
    return [file, *drills, str(edition_path(file, book.edition)), *map(str, brand_files(file, book.brand))]


def _leaf(file: str, book: Handbook, entry: Entry) -> Leaf:
    from designer.cards.book.leaf import leaf, without
    from designer.storage.handbook import find_drill

    found = find_drill(file, entry)
    if found.opened is None:
        return without(entry, found.reason)
    return leaf(book, entry, found.opened.drill, found.opened.source, found.digest, found.reader())


def _tell_other_drills(file: str, book: Handbook, made: Book) -> None:
    """Tell where the same edition was printed before with other drills."""
    from designer.storage.handbook import edition_recorded

    drills = made.remembered
    try:
        old = edition_recorded(file, book.edition)
    except Unreadable:
        old = {}
    other = [number for number, one in drills.items() if number in old and old[number].digest != one.digest]
    if other or (old and set(old) != set(drills)):
        complain(
            f"{file}: edition {book.edition} was printed before with other drills; "
            f"its record is written anew. Give the handbook edition {book.edition + 1} where players hold the old one."
        )


def _complain(file: str, made: Book) -> None:
    for notice in made.notices:
        complain(f"{file}: {notice}")
    for number, fault in made.left_out.items():
        complain(f"{number} is left out: {fault}")
    for words in made.broken_in_words():
        complain(f"{file}: {words}")


_EVERY: Final = 10.0
"""Seconds from one plain line of progress to the next where standard error is no terminal."""


class _Telling:
    """Tells what is being read and set: a bar on a terminal, elsewhere a plain line now and then."""

    def __init__(self) -> None:
        self._bar = sys.stderr.isatty()
        self._last = time.monotonic()

    def reading(self, done: int, whole: int, file: str) -> None:
        """Tell that ``done`` of ``whole`` drills are read and which is being read now."""
        self._tell(done, whole, f"reading {file}", "read")

    def setting(self, done: int, whole: int, words: str) -> None:
        """Tell that ``done`` of ``whole`` drills are set and what is being set now."""
        self._tell(done, whole, words, "set")

    def _tell(self, done: int, whole: int, words: str, deed: str) -> None:
        if self._bar:
            full = round(20 * done / whole) if whole else 20
            line = f"{'#' * full}{'.' * (20 - full)} {done} of {whole}  {harmless(words)}"
            sys.stderr.write(f"\r\033[K{line[:78]}")
            sys.stderr.flush()
        elif time.monotonic() - self._last > _EVERY:
            self._last = time.monotonic()
            sys.stderr.write(f"{done} of {whole} drills are {deed}; now {harmless(words)}\n")
            sys.stderr.flush()

    def end(self) -> None:
        """Clear the bar."""
        if self._bar:
            sys.stderr.write("\r\033[K")
            sys.stderr.flush()
