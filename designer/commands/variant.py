"""`drill-designer variant`: a drill mirrored, for the other wing, for a left-hander, from the other end, jobs exchanged."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING, Final

from designer.commands.arguments import Commands, add_command, add_output
from designer.commands.files import opened, refuse_overwriting, write
from designer.commands.saying import complain
from designer.commands.status import FINE, WrongUsage

if TYPE_CHECKING:
    from designer.drill.drill import Drill
    from designer.play.versions import Turned

NAMES: Final = ("mirror", "switch-wing", "left-handed", "swap-ends", "swap-jobs")


def add(commands: Commands) -> None:
    """Add this command to the parser."""
    parser = add_command(
        commands,
        "variant",
        "turn a drill for other hands, the other wing, the other end or other jobs",
        "drill-designer variant mirror samples/wide-start.drill.json -o left.drill.json",
    )
    parser.add_argument("name", metavar="NAME", choices=NAMES, help=f"one of {', '.join(NAMES)}")
    parser.add_argument("file", metavar="FILE", help="a drill, or a card that carries one")
    parser.add_argument("--letter", metavar="LETTER", help="whose hand changes, or the first of two jobs")
    parser.add_argument("--with", dest="other", metavar="LETTER", help="the job that --letter changes with")
    parser.add_argument("--keep", choices=("strokes", "paths"), help="what stays when one player changes hand")
    add_output(parser, "the drill file to write")
    parser.set_defaults(run=run)


def run(asked: argparse.Namespace) -> int:
    """Write the version; return the exit status. A warning of a version turned silly goes to standard error."""
    from designer.storage.writing import drill_bytes

    refuse_overwriting(asked.output, force=asked.force, read=(asked.file,))
    turned = _turned(asked, opened(asked.file).drill)
    for warning in turned.warnings:
        complain(f"{asked.file}: {warning}")
    write(asked.output, drill_bytes(turned.drill), force=asked.force, read=(asked.file,))
    return FINE


def _turned(asked: argparse.Namespace, drill: Drill) -> Turned:
    """Return the version that is asked for; raise ``WrongUsage`` where a letter or a choice is missing."""
    from designer.play import versions

    whole = {"mirror": versions.mirror, "switch-wing": versions.switch_wing, "swap-ends": versions.swap_ends}
    if asked.name in whole:
        return whole[asked.name](drill)
    if asked.letter is None or (asked.name == "swap-jobs" and asked.other is None):
        needed = "--letter A" if asked.name == "left-handed" else "--letter A --with B"
        raise WrongUsage(f"{asked.name} needs {needed}: say whose job it is.")
    try:
        if asked.name == "swap-jobs":
            return versions.swap_jobs(drill, asked.letter, asked.other)
        return versions.change_hand(drill, asked.letter, asked.keep)
    except versions.NoSingleAnswer as reason:
        raise WrongUsage(f"{asked.file}: {reason}; say --keep strokes or --keep paths.") from reason
    except KeyError as reason:
        raise WrongUsage(f"{asked.file}: {reason.args[0]}.") from reason
