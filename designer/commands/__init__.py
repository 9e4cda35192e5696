"""The command line: the same job without a screen. Each command is a module with `add` and `run`."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Sequence
from typing import NoReturn

from designer import __version__
from designer.commands import card, check, describe, extract, flight, handbook, numbers, odds, picture, schema, variant
from designer.commands.arguments import Commands, add_command
from designer.commands.saying import complain
from designer.commands.status import STOPPED, UNREADABLE, WRONG_USAGE, WrongUsage
from designer.storage.parsing import Unreadable
from designer.storage.writing import Unwritable

_ABOUT = """\
Draw a tennis drill to scale, say how it is played, and print its card.

Without a command the window opens, with the drills that are named:
  drill-designer
  drill-designer open samples/wide-start.drill.json
  drill-designer samples/wide-start.drill.json
"""
_EXIT = """\
Exit status: 0 nothing wrong, 1 a check found an error, 2 a file cannot be read or written, 64 wrong usage, 130 stopped.
`drill-designer COMMAND --help` shows each command with an example.
"""


def main(arguments: Sequence[str]) -> int:
    """Run the command that ``arguments`` (what stands behind the program's name) ask for; return the exit status."""
    try:
        chosen = _parser().parse_args(arguments)
        status: int = chosen.run(chosen)
        sys.stdout.flush()
    except SystemExit as asked:  # help, the version, or wrong usage that the parser has told already
        return asked.code if isinstance(asked.code, int) else WRONG_USAGE
    except WrongUsage as reason:
        complain(str(reason))
        return WRONG_USAGE
    except (Unreadable, Unwritable) as reason:
        complain(str(reason))
        return UNREADABLE
    except KeyboardInterrupt:
        complain("stopped; what was not finished is not written.")
        return STOPPED
    except BrokenPipeError:
        # Whoever read our output has heard enough; what is left must not be complained about at the end either.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    return status


class _Parser(argparse.ArgumentParser):
    """Tells wrong usage in one sentence, with this program's exit status."""

    def error(self, message: str) -> NoReturn:
        complain(f"{message}; see `{self.prog} --help`.")
        raise SystemExit(WRONG_USAGE)


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(
        prog="drill-designer",
        description=_ABOUT,
        epilog=_EXIT,
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    parser.add_argument("--version", action="version", version=f"drill-designer {__version__}")
    commands = parser.add_subparsers(title="commands", metavar="COMMAND", required=True)
    _add_open(commands)
    for command in (card, picture, describe, check, extract, flight, handbook, numbers, odds, schema, variant):
        command.add(commands)
    return parser


def _add_open(commands: Commands) -> None:
    """Add the help of the one command that the window answers."""
    opening = add_command(
        commands, "open", "open drills in the window", "drill-designer open samples/wide-start.drill.json"
    )
    opening.add_argument(
        "files", nargs="*", metavar="FILE", help="a drill, or a card that carries one; none: a blank court"
    )
    opening.set_defaults(run=_no_window)


def _no_window(_: argparse.Namespace) -> int:
    raise WrongUsage("the command line opens no window; start the program itself with `open`.")
