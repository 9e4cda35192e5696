"""`drill-designer numbers`: what is computed from a drawing, shot by shot, and of its finish and its load."""

from __future__ import annotations

import argparse
import json
from collections.abc import Iterator
from typing import TYPE_CHECKING

from designer.commands.arguments import Commands, add_at, add_command
from designer.commands.files import opened, setting_named
from designer.commands.saying import say
from designer.commands.status import FINE, WrongUsage
from designer.numbers.accuracy import PURPOSES
from designer.numbers.levels import LEVELS, USUAL, level
from designer.numbers.problems import Impossible
from designer.numbers.shots import size_wished

if TYPE_CHECKING:
    from designer.numbers.load import Load
    from designer.numbers.recovery import Recovery
    from designer.numbers.report import Report
    from designer.numbers.shots import ShotNumbers, TargetChance
    from designer.numbers.situation import Situation


_LARGER = 1.05
"""A target that is to be so many times as large is spoken of."""


def add(commands: Commands) -> None:
    """Add this command to the parser."""
    parser = add_command(
        commands,
        "numbers",
        "compute what a drawing asks of its players: each ball, each run, the finish, the load",
        "drill-designer numbers samples/wide-start.drill.json --level club",
        "drill-designer numbers samples/wide-start.drill.json --at 2 --level tournament --json",
        "drill-designer numbers samples/shared-target.drill.json --at 1 --hits 4/10 --of reply",
    )
    parser.add_argument("file", metavar="FILE", help="a drill, or a card that carries one")
    add_at(parser)
    parser.add_argument("--level", choices=LEVELS, default=USUAL, help=f"who plays; default: {USUAL}")
    parser.add_argument(
        "--drag", type=float, metavar="CD", help="drag coefficient, 0.50 to 0.65; default: the ball's, 0.55"
    )
    parser.add_argument("--altitude", type=float, metavar="M", help="metres above the sea; default: 0")
    parser.add_argument("--temperature", type=float, metavar="C", help="degrees Celsius; default: 20")
    parser.add_argument(
        "--open-point",
        type=float,
        default=0.5,
        metavar="P",
        help="the first side's chance once the point is open; default: 0.5",
    )
    parser.add_argument(
        "--hits", metavar="N/TRIES", help="your own group: how often they hit the target of a shot, such as 4/10"
    )
    parser.add_argument(
        "--of", metavar="SHOT", help="with --hits: the shot that was counted; default: the first with a target"
    )
    parser.add_argument("--json", action="store_true", help="print the numbers as JSON")
    parser.set_defaults(run=run)


def run(asked: argparse.Namespace) -> int:
    """Print the numbers; return the exit status."""
    from designer.commands.numbers_data import report_data
    from designer.numbers.balls import AIR_DENSITY, air_density
    from designer.numbers.report import report
    from designer.numbers.scoring import chance
    from designer.numbers.shots import fitted
    from designer.numbers.situation import situation

    drill = opened(asked.file).drill
    at = setting_named(drill, asked.at, asked.file)
    density = AIR_DENSITY
    try:
        chance(asked.open_point, "The chance of an open point")
        if asked.altitude is not None or asked.temperature is not None:
            density = air_density(asked.altitude or 0.0, 20.0 if asked.temperature is None else asked.temperature)
        players = level(asked.level)
        here = situation(drill, at, players, drag=asked.drag, density=density)
        if asked.hits is not None:
            players = fitted(here, asked.of, *_counted(asked.hits))
            here = situation(drill, at, players, drag=asked.drag, density=density)
        found = report(here, open_point=asked.open_point)
    except (Impossible, ValueError) as impossible:
        raise WrongUsage(f"{asked.file}: {impossible}") from impossible
    name = at.progression if at.variation is None else f"{at.progression}/{at.variation}"
    say(json.dumps(report_data(found, asked.file, name), indent=2) if asked.json else "\n".join(_lines(found, name)))
    return FINE


def _counted(words: str) -> tuple[int, int]:
    hits, _, tries = words.replace(" of ", "/").partition("/")
    try:
        return int(hits), int(tries)
    except ValueError as error:
        raise WrongUsage(f"--hits {words}: expected how many of how many, such as 4/10.") from error


def _lines(found: Report, name: str) -> Iterator[str]:
    here = found.here
    group = f", spread fitted to {here.level.fitted}" if here.level.fitted else ""
    yield f"{here.drill.title or here.drill.id}, {name}"
    yield f"{here.level.title}{group}; {here.around.ball.title.lower()} on {here.around.surface.title.lower()}."
    yield from found.numbers.notices
    for shot in found.numbers.shots:
        yield ""
        yield from _shot_lines(here, shot, found.recoveries.get(shot.shot))
    yield ""
    yield from _finish_lines(found)
    if found.load is not None:
        yield ""
        yield from _load_lines(found.load)


def _shot_lines(here: Situation, shot: ShotNumbers, recovery: Recovery | None) -> Iterator[str]:
    yield f"{shot.digit} {shot.by}: {shot.stroke} ({shot.shot})"
    hit = shot.strike
    if hit is not None:
        change = " (slower than usual)" if hit.slowed else " (harder than its pace says)" if hit.harder else ""
        basis = "" if shot.habit is None or hit.slowed or hit.harder else f" ({shot.habit.speed.basis})"
        yield f"  {hit.speed:.1f} m/s{change}{basis} at {hit.angle:.1f} degrees, {hit.topspin:.0f} rpm; {hit.time:.2f} s to the bounce"
        if hit.clearance is not None:
            over = (
                f"clears the net by {hit.clearance:.2f} m"
                if hit.clearance >= 0
                else f"hits the net {-hit.clearance:.2f} m below its top"
            )
            yield f"  {over}{'' if shot.inside is None else _inside(shot.inside)}"
        landing = hit.flight.landing
        yield f"  comes down at {landing.speed:.1f} m/s and {landing.descent:.0f} degrees, up again to {hit.bounce_height:.2f} m"
        if hit.window is not None:
            window = hit.window
            above = "falls short" if window.too_high == "the net" else window.too_high
            yield f"  window {window.low:.1f} to {window.high:.1f} degrees: below it {window.too_low}, above it {above}"
        if shot.chance_in is not None:
            yield f"  in {shot.chance_in:.0%} of the time"
    elif not shot.problem:
        yield "  no landing place is drawn"
    for target in shot.targets:
        yield from _target_lines(here, shot.shot, target)
    for meeting in shot.meetings:
        if meeting.spare is not None:
            yield (
                f"  {meeting.hitter} ({meeting.shot}): there are {meeting.there_is:.2f} s, it takes {meeting.needed:.2f} s"
                f" and {meeting.run:.1f} m: {meeting.verdict}, {meeting.spare:+.2f} s"
            )
        if meeting.problem:
            yield f"  {meeting.problem}"
    for run in shot.runs:
        spare = "" if run.spare is None else f", {run.spare:+.2f} s"
        yield f"  run {run.run} ({run.by}): {run.metres:.1f} m in {run.needed:.2f} s{spare}"
    if recovery is not None:
        x, y = recovery.behind
        yield f"  recover to {abs(x):.2f} m {_side(x, y)} of the middle, 1 m behind the baseline"
    if shot.problem:
        yield f"  {shot.problem}"


def _target_lines(here: Situation, shot: str, target: TargetChance) -> Iterator[str]:
    tries = f", {1 / target.chance:.1f} tries a hit" if target.chance > 0.005 else ""
    yield f"  hits {' and '.join(target.target.areas)} {target.chance:.0%} of the time ({target.purpose or 'purpose not said'}{tries})"
    times = size_wished(here, shot, target)
    if target.purpose is not None and times is not None and times >= _LARGER:
        wished = PURPOSES[target.purpose][0]
        yield f"  to be hit {wished:.0%} of the time it would be {times:.1f} times as wide and deep"


def _side(x: float, y: float) -> str:
    """Return the side of the middle that ``x`` is on for the player at that end."""
    return "right" if (x > 0) == (y < 0) else "left"


def _inside(metres: float) -> str:
    return f"; lands {metres:.2f} m inside" if metres >= 0 else f"; lands {-metres:.2f} m out"


def _finish_lines(found: Report) -> Iterator[str]:
    if found.finish_problem:
        yield f"Finish: {found.finish_problem}"
        return
    if found.finish is None:
        yield "Finish: none is said, or nothing is drawn."
        return
    finish = found.finish
    reached = "" if finish.reached is None else f"; the goal is reached {finish.reached:.0%} of the time"
    yield f"Finish: about {finish.expected:.0f} {finish.unit}, {finish.minutes:.1f} min{reached}."
    even = found.fairness
    if even is None:
        return
    first, second = (" and ".join(letters) for letters in (even.sides.first, even.sides.second))
    yield f"{first} against {second}: {even.win:.0%} to {first} (19 chances in 20: {even.least:.0%} to {even.most:.0%})."
    if even.favoured is not None and even.even_start is not None and even.even_start != (0, 0):
        yield f"Even with a start score of {even.even_start[0]} to {even.even_start[1]}."
    if even.in_turn:
        yield "Both start rallies in turn, so neither end is favoured."
    elif even.evens_out:
        yield "People change jobs on the way, so what favours a job favours nobody in the end."
    yield (
        f"From {even.rallies.count} simulated starts of the drawn part, an open point won {even.open_point:.0%} by {first},"
        f" extra points in {even.bonus:.0%} of the points won: both are assumed."
    )


def _load_lines(found: Load) -> Iterator[str]:
    yield (
        f"Load: {found.rally:.0f} s of play, {found.between:.0f} s between; {found.balls:.1f} new balls a minute"
        + ("." if found.empty_after is None else f"; {found.in_play} balls are gone after {found.empty_after:.1f} min.")
    )
    for person in found.people:
        more = [
            f"{number:.1f} {what}"
            for number, what in (
                (person.serves, "serves"),
                (person.overheads - person.serves, "smashes"),
                (person.feeds, "feeds"),
            )
            if number > 0.05
        ]
        yield f"  {person.letter}: {person.hits:.1f} hits, {person.metres:.0f} m a minute{', ' if more else ''}{', '.join(more)}"
