"""What the commands' parsers share."""

from __future__ import annotations

import argparse
import re
from typing import Final, Protocol

_BELOW_NOTHING: Final = re.compile(r"^-(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?$|^-(inf|nan)$")
"""Numbers below nothing in every way of writing them; argparse itself takes "-1e3" for an option."""


class Commands(Protocol):
    """What ``add_subparsers`` returns."""

    def add_parser(  # noqa: D102
        self,
        name: str,
        *,
        help: str,
        description: str,
        epilog: str,
        formatter_class: type[argparse.HelpFormatter],
        allow_abbrev: bool,
    ) -> argparse.ArgumentParser: ...


def add_command(commands: Commands, name: str, does: str, *examples: str) -> argparse.ArgumentParser:
    """Add the command ``name``, which ``does`` something, with its examples; return its parser."""
    title = "example" if len(examples) == 1 else "examples"
    parser = commands.add_parser(
        name,
        help=does,
        description=f"{does[:1].upper()}{does[1:]}.",
        epilog="\n  ".join((f"{title}:", *examples)),
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    parser._negative_number_matcher = _BELOW_NOTHING  # noqa: SLF001 - there is no other way to say it
    return parser


def add_at(parser: argparse.ArgumentParser) -> None:
    """Add ``--at``, which names a setting."""
    parser.add_argument(
        "--at",
        metavar="PROGRESSION[/VARIATION]",
        help="the setting, by ids or numbers: 2, 2/harder, 2/easier2; default: the drill's main progression",
    )


def add_output(parser: argparse.ArgumentParser, what: str) -> None:
    """Add ``-o`` and ``--force``; ``what`` says what is written."""
    parser.add_argument("-o", "--output", required=True, metavar="OUT", help=f"{what}; - is standard output")
    parser.add_argument("--force", action="store_true", help="overwrite a file that is there already")
