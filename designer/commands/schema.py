"""`drill-designer schema`: the JSON Schema of a drill file."""

from __future__ import annotations

import argparse

from designer.commands.arguments import Commands, add_command
from designer.commands.saying import say
from designer.commands.status import FINE


def add(commands: Commands) -> None:
    """Add this command to the parser."""
    parser = add_command(
        commands,
        "schema",
        "print the JSON Schema of a drill file",
        "drill-designer schema > drill.schema.json",
    )
    parser.set_defaults(run=run)


def run(_: argparse.Namespace) -> int:
    """Print the schema; return the exit status."""
    from designer.storage.schema import schema
    from designer.storage.writing import json_bytes

    say(json_bytes(schema()).decode(), end="")
    return FINE
