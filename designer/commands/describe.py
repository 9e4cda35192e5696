"""`drill-designer describe`: all that a card says, as plain text."""

from __future__ import annotations

import argparse

from designer.commands.arguments import Commands, add_at, add_command
from designer.commands.files import opened, setting_named
from designer.commands.saying import say
from designer.commands.status import FINE


def add(commands: Commands) -> None:
    """Add this command to the parser."""
    parser = add_command(
        commands,
        "describe",
        "say in plain text all that a card says",
        "drill-designer describe samples/wide-start.drill.json --at 2/harder --units feet",
    )
    parser.add_argument("file", metavar="FILE", help="a drill, or a card that carries one")
    add_at(parser)
    parser.add_argument("--units", choices=("rackets", "metres", "feet"), default="rackets", help="default: rackets")
    parser.set_defaults(run=run)


def run(asked: argparse.Namespace) -> int:
    """Print the description; return the exit status."""
    from designer.wording.describe import describe

    drill = opened(asked.file).drill
    say(describe(drill, setting_named(drill, asked.at, asked.file), asked.units).rstrip("\n"))
    return FINE
