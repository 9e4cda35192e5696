"""`drill-designer schema`: the JSON Schema of a drill, a handbook, a brand or a record of who plays today."""

from __future__ import annotations

import argparse
from typing import Final

from designer.commands.arguments import Commands, add_command
from designer.commands.saying import say
from designer.commands.status import FINE

_KINDS: Final = ("drill", "handbook", "brand", "today")
"""Those of ``designer.storage.schema.KINDS``, written again because reading them takes longer than the rest of the help."""


def add(commands: Commands) -> None:
    """Add this command to the parser."""
    parser = add_command(
        commands,
        "schema",
        "print the JSON Schema of a kind of file",
        "drill-designer schema > drill.schema.json",
        "drill-designer schema handbook > handbook.schema.json",
    )
    parser.add_argument(
        "kind",
        metavar="KIND",
        nargs="?",
        default="drill",
        choices=_KINDS,
        help=f"{', '.join(_KINDS[:-1])} or {_KINDS[-1]}; default: drill",
    )
    parser.set_defaults(run=run)


def run(asked: argparse.Namespace) -> int:
    """Print the schema; return the exit status."""
    from designer.storage.schema import schema
    from designer.storage.writing import json_bytes

    say(json_bytes(schema(asked.kind)).decode(), end="")
    return FINE
