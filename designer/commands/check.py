"""`drill-designer check`: what is wrong in drills, and what is worth a look."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING, Any

from designer.commands.arguments import Commands, add_command
from designer.commands.files import opened
from designer.commands.saying import complain, say
from designer.commands.status import ERROR_FOUND, FINE, UNREADABLE
from designer.drill.drill import Drill
from designer.drill.setting import At
from designer.storage.parsing import Unreadable

if TYPE_CHECKING:
    from designer.review.check import Check


def add(commands: Commands) -> None:
    """Add this command to the parser."""
    parser = add_command(
        commands,
        "check",
        "look for what is wrong in drills, or worth a look",
        "drill-designer check samples/*.drill.json",
        "drill-designer check wide-start.drill.json --json",
    )
    parser.add_argument("files", nargs="+", metavar="FILE", help="a drill, or a card that carries one")
    parser.add_argument("--json", action="store_true", help="for other programs")
    parser.set_defaults(run=run)


def run(asked: argparse.Namespace) -> int:
    """Print what the review finds in each file; return the exit status."""
    reports = [_report(file) for file in asked.files]
    if asked.json:
        from designer.storage.writing import json_bytes

        say(json_bytes({"format": 1, "files": reports}).decode(), end="")
    else:
        for report in reports:
            _print(report)
    if any(report["unreadable"] for report in reports):
        return UNREADABLE
    weights = {found["weight"] for report in reports for found in report["checks"]}
    return ERROR_FOUND if "error" in weights else FINE


def _report(file: str) -> dict[str, Any]:
    """Return what is to be said of one file, as JSON data."""
    from designer.numbers.levels import USUAL
    from designer.review.checks import reviewed

    report: dict[str, Any] = {"file": file, "unreadable": None, "notices": [], "checks": [], "accepted": []}
    try:
        found = opened(file)
    except Unreadable as reason:
        report["unreadable"] = str(reason)
        complain(str(reason))
        return report
    report["notices"] = list(found.notices)
    raised, accepted = reviewed(found.drill, players=USUAL)
    report["checks"] = [_as_data(found.drill, each) for each in raised]
    report["accepted"] = [_as_data(found.drill, each) | {"reason": acceptance.reason} for each, acceptance in accepted]
    return report


def _as_data(drill: Drill, found: Check) -> dict[str, Any]:
    return {
        "weight": found.weight,
        "key": found.key,
        "text": found.sentence.text,
        "progression": found.at.progression if found.at else None,
        "variation": found.at.variation if found.at else None,
        "where": _where(drill, found.at),
        "about": list(found.about),
        "can_be_mended": found.mend is not None,
        "answers": [answer.words for answer in found.answers],
    }


def _where(drill: Drill, at: At | None) -> str | None:
    """Return the setting as ``--at`` would name it."""
    if at is None:
        return None
    number = [progression.id for progression in drill.progressions].index(at.progression) + 1
    return f"{number}/{at.variation}" if at.variation else str(number)


def _print(report: dict[str, Any]) -> None:
    from designer.review.checks import NO_OTHER

    file = report["file"]
    if report["unreadable"]:
        return
    for found in report["checks"]:
        where = f" at {found['where']}" if found["where"] else ""
        say(f"{file}: {found['weight']}{where}: {found['text']}")
    for found in report["accepted"]:
        where = f" at {found['where']}" if found["where"] else ""
        say(f"{file}: accepted{where}: {found['text']} Reason: {found['reason']}")
    say(f"{file}: {NO_OTHER}")
