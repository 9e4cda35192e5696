"""`drill-designer odds`: who wins a race, a game or a tie-break, and how many points it takes."""

from __future__ import annotations

import argparse
import json
from typing import Final

from designer.commands.arguments import Commands, add_command
from designer.commands.saying import say
from designer.commands.status import FINE, WrongUsage
from designer.numbers.problems import Impossible
from designer.numbers.scoring import Odds, game, race, tie_break

FORMAT: Final = 1
_DIGITS: Final = 9


def add(commands: Commands) -> None:
    """Add this command to the parser."""
    parser = add_command(
        commands,
        "odds",
        "compute the odds of a race, a game or a tie-break, and the points it takes",
        "drill-designer odds --to 11 --by 2 --point 0.55",
        "drill-designer odds --game --no-ad --point 0.6",
        "drill-designer odds --tiebreak 7 --point 0.65 --other-serve 0.6 --json",
    )
    kind = parser.add_mutually_exclusive_group(required=True)
    kind.add_argument("--to", type=int, metavar="N", help="a race to N points")
    kind.add_argument("--game", action="store_true", help="a game: four points, two clear")
    kind.add_argument("--tiebreak", type=int, metavar="N", help="a tie-break to N, two clear, serving in turn")
    parser.add_argument("--by", type=int, metavar="M", help="with --to: ahead by M points; default: 1")
    parser.add_argument("--cap", type=int, metavar="N", help="with --to: at N points the lead no longer matters")
    parser.add_argument("--no-ad", action="store_true", help="with --game: at three all the next point decides")
    parser.add_argument(
        "--point",
        type=float,
        required=True,
        metavar="P",
        help="chance of a point; with --other-serve, on the own serve",
    )
    parser.add_argument(
        "--other-serve",
        type=float,
        metavar="P",
        help="with --tiebreak: the opponent's chance on their own serve; default: 1 - P, no advantage",
    )
    parser.add_argument("--json", action="store_true", help="print the odds as JSON")
    parser.set_defaults(run=run)


def run(asked: argparse.Namespace) -> int:
    """Print the odds; return the exit status."""
    _refuse_strangers(asked)
    try:
        found = _odds(asked)
    except Impossible as impossible:
        raise WrongUsage(str(impossible)) from impossible
    win, points = round(float(found.win), _DIGITS), round(float(found.points), _DIGITS)
    if asked.json:
        say(json.dumps({"format": FORMAT, "win": win, "expected_points": points}, indent=2))
    else:
        say(f"wins {win:.1%} of the time\n{points:.1f} points to expect")
    return FINE


def _refuse_strangers(asked: argparse.Namespace) -> None:
    """Raise ``WrongUsage`` for options that mean nothing with the kind of score that is asked for."""
    for option, value, home in (
        ("--by", asked.by, asked.to),
        ("--cap", asked.cap, asked.to),
        ("--no-ad", asked.no_ad or None, asked.game or None),
        ("--other-serve", asked.other_serve, asked.tiebreak),
    ):
        if value is not None and home is None:
            needs = {"--by": "--to", "--cap": "--to", "--no-ad": "--game", "--other-serve": "--tiebreak"}[option]
            raise WrongUsage(f"{option} goes with {needs} alone.")


def _odds(asked: argparse.Namespace) -> Odds:
    if asked.game:
        return game(asked.point, advantage=not asked.no_ad)
    if asked.tiebreak is not None:
        # Nothing said of the opponent's serve: the chance is the same whoever serves.
        other = 1 - asked.point if asked.other_serve is None else asked.other_serve
        return tie_break(asked.tiebreak, asked.point, other)
    return race(asked.to, asked.point, margin=1 if asked.by is None else asked.by, cap=asked.cap)
