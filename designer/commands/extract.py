"""`drill-designer extract`: the drill that a card carries."""

from __future__ import annotations

import argparse

from designer.commands.arguments import Commands, add_command, add_output
from designer.commands.files import refuse_overwriting, write
from designer.commands.saying import complain
from designer.commands.status import FINE
from designer.storage.parsing import Unreadable


def add(commands: Commands) -> None:
    """Add this command to the parser."""
    parser = add_command(
        commands,
        "extract",
        "take the drill out of a card that carries it",
        "drill-designer extract card.pdf -o wide-start.drill.json",
    )
    parser.add_argument("card", metavar="CARD.pdf", help="a card made with its source")
    add_output(parser, "the drill file to write")
    parser.set_defaults(run=run)


def run(asked: argparse.Namespace) -> int:
    """Write the drill file just as it was attached; return the exit status."""
    from designer.storage.attachment import extract
    from designer.storage.reading import LARGEST_CARD, file_bytes, read_drill

    refuse_overwriting(asked.output, force=asked.force, read=(asked.card,))
    data = extract(file_bytes(asked.card, LARGEST_CARD), asked.card)
    found = read_drill(data, f"{asked.card}: the drill in it")
    if found.read_only:
        raise Unreadable(f"{asked.card}: the drill in it: {found.notices[0]}")
    for notice in found.notices:
        complain(f"{asked.card}: the drill in it: {notice}")
    write(asked.output, data, force=asked.force, read=(asked.card,))
    return FINE
