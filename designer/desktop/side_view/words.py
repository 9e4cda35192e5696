"""What is computed of one ball, in a few words."""

from __future__ import annotations

from collections.abc import Iterator

from designer.numbers.shots import ShotNumbers
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


def more_words(shot: ShotNumbers, level: str) -> str:
    """Return how the ball is hit and how often it comes off, with what the speed rests on."""
    hit = shot.strike
    if hit is None:
        return f"at {level} level"
    changed = ", slower than usual" if hit.slowed else ", harder than usual" if hit.harder else ""
    basis = f" ({shot.habit.speed.basis})" if shot.habit is not None and not changed else changed
    words = [f"{hit.speed:.0f} m/s{basis}", f"{hit.topspin:.0f} rpm", f"up again to {hit.bounce_height:.1f} m"]
    if shot.chance_in is not None:
        words.append(f"in {round(shot.chance_in * 10)} of 10")
    words += [f"in the target {round(target.chance * 10)} of 10 ({target.purpose})" for target in shot.targets[:1]]
    return f"At {level} level: " + ", ".join(words)
