"""`drill-designer odds`: who wins a race, a game, a tie-break or a set, and how many points it takes."""

from __future__ import annotations

import argparse
import json
from typing import Final

from designer.commands.arguments import Commands, add_command
from designer.commands.saying import say
from designer.commands.status import FINE, WrongUsage
from designer.numbers.chain import Number
from designer.numbers.problems import Impossible
from designer.numbers.scoring import Odds, game, race, tie_break
from designer.numbers.sets import SetOdds, best_of_three, reaches_deuce, tie_break_set

FORMAT: Final = 1
_DIGITS: Final = 9


def add(commands: Commands) -> None:
    """Add this command to the parser."""
    parser = add_command(
        commands,
        "odds",
        "compute the odds of a race, a game, a tie-break or a set, and the points it takes",
        "drill-designer odds --to 11 --by 2 --point 0.55",
        "drill-designer odds --game --no-ad --point 0.6",
        "drill-designer odds --tiebreak 7 --point 0.65 --other-serve 0.6 --json",
        "drill-designer odds --set --point 0.65 --other-serve 0.6",
    )
    kind = parser.add_mutually_exclusive_group(required=True)
    kind.add_argument("--to", type=int, metavar="N", help="a race to N points")
    kind.add_argument("--game", action="store_true", help="a game: four points, two clear")
    kind.add_argument("--tiebreak", type=int, metavar="N", help="a tie-break to N, two clear, serving in turn")
    kind.add_argument("--set", action="store_true", help="a set to six games, two clear, a tie-break at six all")
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
        help="with --tiebreak or --set: the opponent's chance on their own serve; default: 1 - P, no advantage",
    )
    parser.add_argument("--json", action="store_true", help="print the odds as JSON")
    parser.set_defaults(run=run)


def run(asked: argparse.Namespace) -> int:
    """Print the odds; return the exit status."""
    _refuse_strangers(asked)
    try:
        found, more = _odds(asked)
    except Impossible as impossible:
        raise WrongUsage(str(impossible)) from impossible
    numbers = {"win": found.win, "expected_points": found.points} | more
    if asked.json:
        rounded = {name: round(float(value), _DIGITS) for name, value in numbers.items()}
        say(json.dumps({"format": FORMAT, **rounded}, indent=2))
    else:
        say("\n".join(_WORDS[name].format(float(value)) for name, value in numbers.items()))
    return FINE


_WORDS: Final = {
    "win": "wins {:.1%} of the time",
    "expected_points": "{:.1f} points to expect",
    "reaches_deuce": "comes to deuce {:.1%} of the time",
    "expected_games": "{:.1f} games to expect",
    "best_of_three": "wins two sets of three {:.1%} of the time",
}


def _refuse_strangers(asked: argparse.Namespace) -> None:
    """Raise ``WrongUsage`` for options that mean nothing with the kind of score that is asked for."""
    for option, value, home in (
        ("--by", asked.by, asked.to),
        ("--cap", asked.cap, asked.to),
        ("--no-ad", asked.no_ad or None, asked.game or None),
        ("--other-serve", asked.other_serve, asked.tiebreak or asked.set or None),
    ):
        if value is not None and home is None:
            needs = {"--by": "--to", "--cap": "--to", "--no-ad": "--game", "--other-serve": "--tiebreak or --set"}
            raise WrongUsage(f"{option} goes with {needs[option]} alone.")


def _odds(asked: argparse.Namespace) -> tuple[Odds | SetOdds, dict[str, Number]]:
    """Return the odds that are asked for, and by name what else is worth knowing of such a score."""
    # Nothing said of the opponent's serve: the chance is the same whoever serves.
    other = 1 - asked.point if asked.other_serve is None else asked.other_serve
    if asked.game:
        deuce = {} if asked.no_ad else {"reaches_deuce": reaches_deuce(asked.point)}
        return game(asked.point, advantage=not asked.no_ad), deuce
    if asked.set:
        found = tie_break_set(asked.point, other)
        return found, {"expected_games": found.games, "best_of_three": best_of_three(found.win)}
    if asked.tiebreak is not None:
        return tie_break(asked.tiebreak, asked.point, other), {}
    return race(asked.to, asked.point, margin=1 if asked.by is None else asked.by, cap=asked.cap), {}
