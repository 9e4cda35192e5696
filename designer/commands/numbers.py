"""`drill-designer numbers`: what is computed from a drawing, shot by shot, and of its finish and its load."""

from __future__ import annotations

import argparse
import json
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any, Final

from designer.commands.arguments import Commands, add_at, add_command
from designer.commands.files import opened, setting_named
from designer.commands.saying import say
from designer.commands.status import FINE, WrongUsage
from designer.numbers.levels import LEVELS, USUAL, level
from designer.numbers.problems import Impossible

if TYPE_CHECKING:
    from designer.numbers.fairness import Fairness
    from designer.numbers.finishes import FinishOdds
    from designer.numbers.load import Load
    from designer.numbers.recovery import Recovery
    from designer.numbers.report import Report
    from designer.numbers.shots import ShotNumbers, TargetChance
    from designer.numbers.timing import Meeting

FORMAT: Final = 1


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
    say(json.dumps(_data(found, asked.file, name), indent=2) if asked.json else "\n".join(_lines(found, name)))
    return FINE


def _counted(words: str) -> tuple[int, int]:
    hits, _, tries = words.replace(" of ", "/").partition("/")
    try:
        return int(hits), int(tries)
    except ValueError as error:
        raise WrongUsage(f"--hits {words}: expected how many of how many, such as 4/10.") from error


def _rounded(value: Any) -> Any:
    """Return ``value`` with every number in it rounded to a tenth of a millimetre, or as much of a second."""
    if isinstance(value, float):
        return round(value, 4) + 0.0
    if isinstance(value, dict):
        return {key: _rounded(inner) for key, inner in value.items()}
    return [_rounded(inner) for inner in value] if isinstance(value, list | tuple) else value


def _data(found: Report, file: str, name: str) -> dict[str, Any]:
    here = found.here
    data = {
        "format": FORMAT,
        "file": file,
        "at": name,
        "level": here.level.name,
        "spread_fitted_to": here.level.fitted or None,
        "ball": here.around.ball.name,
        "surface": here.around.surface.name,
        "drag": here.around.ball.drag,
        "air_density": here.around.density,
        "notices": list(found.numbers.notices),
        "shots": [_shot_data(shot, found.recoveries.get(shot.shot)) for shot in found.numbers.shots],
        "finish": None if found.finish is None else _finish_data(found.finish),
        "finish_problem": found.finish_problem or None,
        "fairness": None if found.fairness is None else _fairness_data(found.fairness),
        "load": None if found.load is None else _load_data(found.load),
    }
    rounded: dict[str, Any] = _rounded(data)
    return rounded


def _shot_data(shot: ShotNumbers, recovery: Recovery | None) -> dict[str, Any]:
    return {
        "shot": shot.shot,
        "digit": shot.digit,
        "by": shot.by,
        "stroke": shot.stroke,
        **_strike_data(shot),
        "targets": [_target_data(target) for target in shot.targets],
        "next": [_meeting_data(meeting) for meeting in shot.meetings],
        "runs": [
            {
                "run": run.run,
                "by": run.by,
                "purpose": run.purpose,
                "metres": run.metres,
                "needed_s": run.needed,
                "there_is_s": run.there_is,
                "spare_s": run.spare,
            }
            for run in shot.runs
        ],
        "recover_to": None if recovery is None else _recovery_data(recovery),
        "problem": shot.problem or None,
    }


def _strike_data(shot: ShotNumbers) -> dict[str, Any]:
    hit = shot.strike
    if hit is None:
        return {}
    landing, window = hit.flight.landing, hit.window
    return {
        "speed_mps": hit.speed,
        "usual_speed_mps": hit.usual,
        "angle_deg": hit.angle,
        "height_m": hit.height,
        "topspin_rpm": hit.topspin,
        "sidespin_rpm": hit.sidespin,
        "time_s": hit.time,
        "net_clearance_m": hit.clearance,
        "landing": [landing.x, landing.y],
        "inside_m": shot.inside,
        "landing_speed_mps": landing.speed,
        "landing_angle_deg": landing.descent,
        "bounce_height_m": hit.bounce_height,
        "bounce_spin_rpm": hit.bounce_spin,
        "window": window
        and {
            "low_deg": window.low,
            "high_deg": window.high,
            "degrees": window.degrees,
            "too_low": window.too_low,
            "too_high": window.too_high,
        },
        "chance_in": shot.chance_in,
    }


def _target_data(found: TargetChance) -> dict[str, Any]:
    return {
        "areas": list(found.target.areas),
        "by": found.target.by,
        "purpose": found.purpose,
        "square_metres": found.target.area,
        "chance": found.chance,
        "tries_a_hit": 1 / found.chance if found.chance > 1e-6 else None,
    }


def _meeting_data(meeting: Meeting) -> dict[str, Any]:
    return {
        "shot": meeting.shot,
        "hitter": meeting.hitter,
        "there_is_s": meeting.there_is,
        "needed_s": meeting.needed,
        "spare_s": meeting.spare,
        "verdict": meeting.verdict,
        "run_m": meeting.run,
        "ball_height_m": meeting.height,
        "bounces": meeting.bounces,
        "problem": meeting.problem or None,
    }


def _recovery_data(found: Recovery) -> dict[str, Any]:
    return {
        "at_baseline": list(found.at_baseline),
        "one_metre_behind": list(found.behind),
        "equal_time": None if found.equal_time is None else list(found.equal_time),
        "extremes": [
            {"stroke": extreme.stroke, "limit": extreme.limit, "landing": list(extreme.landing)}
            for extreme in (found.left, found.right)
        ],
    }


def _finish_data(found: FinishOdds) -> dict[str, Any]:
    odds = found.odds
    return {
        "win": None if odds is None else float(odds.win),
        "level": None if odds is None else float(odds.level),
        "goal_reached": found.reached,
        "expected": found.expected if found.expected < 1e9 else None,
        "unit": found.unit,
        "minutes": found.minutes if found.minutes < 1e9 else None,
    }


def _fairness_data(found: Fairness) -> dict[str, Any]:
    games = found.games
    return {
        "first": list(found.sides.first),
        "second": list(found.sides.second),
        "win": found.win,
        "least": found.least,
        "most": found.most,
        "favoured": found.favoured,
        "evens_out_by_swapping": found.evens_out,
        "even_start": None if found.even_start is None else list(found.even_start),
        "open_point": found.open_point,
        "bonus": found.bonus,
        "seed": found.seed,
        "rallies": {
            "count": found.rallies.count,
            "first": found.rallies.first,
            "second": found.rallies.second,
            "nothing": found.rallies.nothing,
            "opened": found.rallies.opened,
        },
        "games": None if games is None else {"count": games.count, "first": games.first, "level": games.level},
    }


def _load_data(found: Load) -> dict[str, Any]:
    return {
        "rally_s": found.rally,
        "between_s": found.between,
        "rest_to_work": found.work_to_rest,
        "hits_a_start": found.hits,
        "balls_a_minute": found.balls,
        "balls_there_are": found.in_play,
        "empty_after_minutes": found.empty_after,
        "people": [
            {
                "letter": person.letter,
                "hits_a_minute": person.hits,
                "serves_a_minute": person.serves,
                "overheads_a_minute": person.overheads,
                "feeds_a_minute": person.feeds,
                "metres_a_minute": person.metres,
            }
            for person in found.people
        ],
    }


def _lines(found: Report, name: str) -> Iterator[str]:
    here = found.here
    group = f", spread fitted to {here.level.fitted}" if here.level.fitted else ""
    yield f"{here.drill.title or here.drill.id}, {name}"
    yield f"{here.level.title}{group}; {here.around.ball.title.lower()} on {here.around.surface.title.lower()}."
    yield from found.numbers.notices
    for shot in found.numbers.shots:
        yield ""
        yield from _shot_lines(shot, found.recoveries.get(shot.shot))
    yield ""
    yield from _finish_lines(found)
    if found.load is not None:
        yield ""
        yield from _load_lines(found.load)


def _shot_lines(shot: ShotNumbers, recovery: Recovery | None) -> Iterator[str]:
    yield f"{shot.digit} {shot.by}: {shot.stroke} ({shot.shot})"
    hit = shot.strike
    if hit is not None:
        change = " (slower than usual)" if hit.slowed else " (harder than its pace says)" if hit.harder else ""
        yield f"  {hit.speed:.1f} m/s{change} at {hit.angle:.1f} degrees, {hit.topspin:.0f} rpm; {hit.time:.2f} s to the bounce"
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
        tries = f", {1 / target.chance:.1f} tries a hit" if target.chance > 0.005 else ""
        yield f"  hits {' and '.join(target.target.areas)} {target.chance:.0%} of the time ({target.purpose}{tries})"
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
