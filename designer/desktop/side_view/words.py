"""What is computed of one ball, in a few words."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from designer.drill.base import Point
    from designer.numbers.fairness import Fairness
    from designer.numbers.finishes import FinishOdds
    from designer.numbers.load import Load
    from designer.numbers.recovery import Recovery
    from designer.numbers.shots import ShotNumbers, TargetChance
    from designer.numbers.timing import Meeting

FOOT = 0.3048


def few_words(shot: ShotNumbers, units: str = "metres") -> str:
    """Return "1.1 s; clears the net by 0.9 m; lands 1.2 m in; A has 0.3 s to spare"; a problem has the last word."""
    said = "; ".join(_said(shot, units))
    return ". ".join(each for each in (said, shot.problem.rstrip(".")) if each)


def _said(shot: ShotNumbers, units: str) -> Iterator[str]:
    hit = shot.strike
    if hit is None:
        if not shot.problem:
            yield "no landing place is drawn"
        return
    yield f"{hit.time:.1f} s"
    if hit.clearance is not None:
        over = _length(abs(hit.clearance), units)
        yield f"clears the net by {over}" if hit.clearance >= 0 else f"hits the net {over} below its top"
    if shot.inside is not None:
        yield f"lands {_length(abs(shot.inside), units)} {'in' if shot.inside >= 0 else 'out'}"
    for meeting in _by_hitter(shot.meetings):
        yield from _meeting(meeting)


def _by_hitter(meetings: tuple[Meeting, ...]) -> tuple[Meeting, ...]:
    """Return one meeting for each hitter, that with the least time, though several balls may follow from one place."""
    least: dict[str, Meeting] = {}
    for meeting in meetings:
        known = least.get(meeting.hitter)
        if known is None or (meeting.spare is not None and (known.spare is None or meeting.spare < known.spare)):
            least[meeting.hitter] = meeting
    return tuple(least.values())


def _meeting(meeting: Meeting) -> Iterator[str]:
    if meeting.spare is None:
        return
    if meeting.spare < 0:
        yield f"{meeting.hitter} comes {-meeting.spare:.1f} s too late"
    else:
        yield f"{meeting.hitter} has {meeting.spare:.1f} s to spare"


def _length(metres: float, units: str) -> str:
    return f"{metres / FOOT:.1f} ft" if units == "feet" else f"{metres:.1f} m"


def more_words(shot: ShotNumbers, players: str) -> str:
    """Return how the ball is hit and how often it comes off, with what the speed rests on; ``players`` as "club level"."""
    hit = shot.strike
    if hit is None:
        return f"At {players}"
    changed = ", slower than usual" if hit.slowed else ", harder than usual" if hit.harder else ""
    basis = f" ({shot.habit.speed.basis})" if shot.habit is not None and not changed else changed
    words = [f"{hit.speed:.0f} m/s{basis}", f"{hit.topspin:.0f} rpm", f"up again to {hit.bounce_height:.1f} m"]
    if shot.chance_in is not None:
        words.append(f"in {round(shot.chance_in * 10)} of 10")
    words += [_target(target) for target in shot.targets[:1]]
    return f"At {players}: " + ", ".join(words)


_FOR: Final = {
    "in a row": "for a run in a row",
    "together": "for a shared count",
    "restricted": "for a demand that costs the rally",
    "normal aim": "for the normal aim",
    "bonus": "for a bonus",
    "feed": "of a feed",
}


def _target(found: TargetChance) -> str:
    """Return how often a target is hit, what it is for, and what one wishes for that."""
    from designer.numbers.accuracy import PURPOSES

    often = f"in the target {round(found.chance * 10)} of 10"
    if found.purpose is None:
        return f"{often} (what for is not said)"
    least, most = PURPOSES[found.purpose]
    wish = f"{round(least * 10)} to {round(most * 10)} wished {_FOR[found.purpose]}"
    return f"{often} ({wish})"


def waiting_words(place: Recovery, letter: str, units: str = "metres") -> str:
    """Return where somebody waits for the next ball, and where both widest balls would leave as much time."""
    words = f"{letter} waits {_aside(place.behind, units)}, {_length(1.0, units)} behind the baseline"
    if place.equal_time is not None:
        words += f" (for equal time {_aside(place.equal_time, units)})"
    return words


def _aside(place: Point, units: str) -> str:
    x, y = place
    if abs(x) < 0.05:
        return "in the middle"
    side = "right" if (x > 0) == (y < 0) else "left"
    return f"{_length(abs(x), units)} {side} of the middle"


def fairness_words(found: Fairness) -> str:
    """Return who is favoured and by how much, what evens it, how long it takes, and what that rests on."""
    first, second = (" and ".join(letters) for letters in (found.sides.first, found.sides.second))
    words = [
        f"{first} {'wins' if len(found.sides.first) == 1 else 'win'} {found.win:.0%} against {second} (19 chances in 20: {found.least:.0%} to {found.most:.0%})",
        finish_words(found.finish),
    ]
    if found.in_turn:
        words.append("both start rallies in turn, so neither end is favoured")
    elif found.evens_out:
        words.append("people change jobs on the way, so that evens out")
    elif found.favoured is not None and found.even_start is not None and max(found.even_start) > 0:
        words.append(f"even with a start score of {found.even_start[0]} to {found.even_start[1]}")
    words.append(f"from {found.rallies.count} simulated starts")
    return "; ".join(words) + "."


def load_words(found: Load) -> str:
    """Return how hard everybody works, and how long the balls last."""
    last = "" if found.empty_after is None else f" ({found.in_play} last {found.empty_after:.0f} min)"
    words = [
        f"{found.rally:.0f} s of play and {found.between:.0f} s between",
        f"{found.balls:.0f} new balls a minute{last}",
    ]
    for person in found.people:
        kinds = (
            (person.hits, "hits"),
            (person.serves, "serves"),
            (person.overheads - person.serves, "smashes"),
            (person.feeds, "feeds"),
        )
        does = [f"{count:.0f} {what}" for count, what in kinds if count >= 0.5]
        if person.metres >= 0.5:
            does.append(f"{person.metres:.0f} m")
        if does:
            words.append(f"{person.letter}: {' and '.join(filter(None, (', '.join(does[:-1]), does[-1])))} a minute")
    return "; ".join(words) + "."


def finish_words(found: FinishOdds) -> str:
    """Return how long a finish takes."""
    reached = "" if found.reached is None else f"the goal is reached {found.reached:.0%} of the time, "
    return f"{reached}about {found.expected:.0f} {found.unit}, {found.minutes:.0f} min"
