"""What `drill-designer numbers --json` prints, as plain data."""

from __future__ import annotations

from typing import Any, Final

from designer.numbers.accuracy import PURPOSES, tries_to_be_sure
from designer.numbers.fairness import Fairness
from designer.numbers.finishes import FinishOdds
from designer.numbers.load import Load
from designer.numbers.recovery import Recovery
from designer.numbers.report import Report
from designer.numbers.shots import ShotNumbers, TargetChance, size_wished
from designer.numbers.situation import Situation
from designer.numbers.timing import Meeting

FORMAT: Final = 1


def _rounded(value: Any) -> Any:
    """Return ``value`` with every number in it rounded to a tenth of a millimetre, or as much of a second."""
    if isinstance(value, float):
        return round(value, 4) + 0.0
    if isinstance(value, dict):
        return {key: _rounded(inner) for key, inner in value.items()}
    return [_rounded(inner) for inner in value] if isinstance(value, list | tuple) else value


def report_data(found: Report, file: str, name: str) -> dict[str, Any]:
    """Return all numbers of a setting; metres, seconds, degrees and turns a minute, chances from 0 to 1."""
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
        "shots": [_shot_data(here, shot, found.recoveries.get(shot.shot)) for shot in found.numbers.shots],
        "finish": None if found.finish is None else _finish_data(found.finish),
        "finish_problem": found.finish_problem or None,
        "fairness": None if found.fairness is None else _fairness_data(found.fairness),
        "load": None if found.load is None else _load_data(found.load),
    }
    rounded: dict[str, Any] = _rounded(data)
    return rounded


def _shot_data(here: Situation, shot: ShotNumbers, recovery: Recovery | None) -> dict[str, Any]:
    return {
        "shot": shot.shot,
        "digit": shot.digit,
        "by": shot.by,
        "stroke": shot.stroke,
        **_strike_data(shot),
        "targets": [_target_data(here, shot.shot, target) for target in shot.targets],
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
    hit, habit = shot.strike, shot.habit
    if hit is None or habit is None:
        return {}
    landing, window = hit.flight.landing, hit.window
    return {
        "speed_mps": hit.speed,
        "usual_speed_mps": hit.usual,
        "speed_basis": {"basis": habit.speed.basis, "source": habit.speed.source},
        "angle_deg": hit.angle,
        "height_m": hit.height,
        "topspin_rpm": hit.topspin,
        "topspin_basis": {"basis": habit.topspin.basis, "source": habit.topspin.source},
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


def _target_data(here: Situation, shot: str, found: TargetChance) -> dict[str, Any]:
    wished = None if found.purpose is None else list(PURPOSES[found.purpose])
    return {
        "areas": list(found.target.areas),
        "by": found.target.by,
        "purpose": found.purpose,
        "square_metres": found.target.area,
        "chance": found.chance,
        "tries_a_hit": 1 / found.chance if found.chance > 1e-6 else None,
        "tries_for_one_9_in_10": tries_to_be_sure(1, found.chance) if found.chance > 1e-4 else None,
        "wished": wished,
        "times_as_large_for_wished": size_wished(here, shot, found),
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
