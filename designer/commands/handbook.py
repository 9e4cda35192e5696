"""`drill-designer handbook`: a handbook as a PDF."""

from __future__ import annotations

import argparse
import sys

from designer.commands.arguments import Commands, add_command, add_output
from designer.commands.files import STANDARD_OUTPUT, refuse_overwriting, write
from designer.commands.saying import complain, harmless
from designer.commands.status import ERROR_FOUND, FINE
from designer.storage.parsing import Unreadable


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
    """Write the handbook and the record of its edition; a drill that is left out makes the status 1."""
    from designer.cards.handbook import make_handbook
    from designer.cards.handbook_pages import Leaf
    from designer.storage.brand import brand_beside, logo_svg
    from designer.storage.handbook import edition_before, find_drill, open_handbook, write_edition

    refuse_overwriting(asked.output, force=asked.force, read=[asked.file])
    book = open_handbook(asked.file)
    found = tuple(find_drill(asked.file, entry) for entry in book.entries())
    brand, logo = None, None
    try:
        brand = brand_beside(asked.file)
        logo = logo_svg(asked.file)
    except Unreadable as reason:
        complain(f"{reason} The handbook is made without it.")
    leaves = [Leaf(one.entry, one.opened.drill if one.opened else None, one.reason, one.digest) for one in found]
    before = edition_before(asked.file, book.edition)
    made = make_handbook(book, leaves, before=before, brand=brand, logo=logo, progress=_progress(len(leaves)))
    if sys.stderr.isatty():
        sys.stderr.write("\r\033[K")
    write(asked.output, made.pdf, force=asked.force, read=[asked.file])
    if asked.output != STANDARD_OUTPUT:
        write_edition(asked.file, book, found)
    for notice in made.notices:
        complain(f"{asked.file}: {notice}")
    for number, fault in made.left_out.items():
        complain(f"{number} is left out: {fault}")
    return ERROR_FOUND if made.left_out else FINE


class _progress:  # noqa: N801  called like a function
    """Tells on a terminal which drill is being set; says nothing elsewhere."""

    def __init__(self, whole: int) -> None:
        self.whole = whole

    def __call__(self, number: int, title: str) -> None:
        if sys.stderr.isatty():
            sys.stderr.write(f"\r\033[K{number} of {self.whole}  {harmless(title)[:60]}")
            sys.stderr.flush()
