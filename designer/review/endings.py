"""Errors and cautions: a finish that nobody can reach, a part of the rally that cannot end, a swap that never comes."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import Any, Final

from designer.drill.conditions import Event
from designer.drill.drill import Drill
from designer.drill.edits import put
from designer.drill.places import is_letter
from designer.drill.rules import Finish, Part, Points
from designer.drill.setting import At, progression_at, setting_at
from designer.play.rally import parts
from designer.review.check import Check, check, record_name
from designer.wording.telling import Telling

_IN_A_RALLY: Final = frozenset({"played", "landed", "missed", "caught", "struck", "reached", "called"})
"""What can happen while a rally goes on."""


def ending_checks(told: Telling) -> Iterator[Check]:
    """Yield what keeps a rally, a game or a turn from ending."""
    yield from _parts(told)
    yield from _later_balls(told)
    finish = told.setting.finish
    if finish is not None:
        yield from _reach(told, finish)
        yield from _bounds(told, finish)
        yield from _too_soon(told, finish)
        yield from _too_long(told, finish)
        yield from _swaps(told, finish)


def _parts(told: Telling) -> Iterator[Check]:
    order = parts(told.setting)
    for place, part in enumerate(order):
        follows = order[place + 1] if place + 1 < len(order) else None
        if part.until and all(cannot(told, event) for event in part.until):
            text = f"{record_name(told, part)} cannot end: what it waits for cannot happen in it"
            yield check("error", "part-endless", text, part.id, at=told.at, mend=_without_until(told, part, follows))
        elif follows is not None and not part.until and (part.kind == "open" or _waits_for_nothing(part)):
            text = f"nothing ends {record_name(told, part)}, so {record_name(told, follows)} is never reached"
            yield check("error", "part-endless", text, part.id, follows.id, at=told.at)


def _waits_for_nothing(part: Part) -> bool:
    return part.kind == "cooperative" and not part.shots


def _without_until(told: Telling, part: Part, follows: Part | None) -> Any:
    """Return the edit that lets a part last for its shots, where it names some or is the last anyway."""
    if not part.shots and follows is not None:
        return None
    return partial(_with_values, at=told.at, id=part.id, values={"until": ()})


def _with_values(drill: Drill, *, at: At, id: str, values: dict[str, Any]) -> Drill:
    record = setting_at(drill, at).find(id)
    return drill if record is None else put(drill, at, record.changed(**values))


def cannot(told: Telling, event: Event) -> bool:
    """Whether an event surely cannot happen in a rally: it belongs to a score, or to somebody who is not in play."""
    if event.what not in _IN_A_RALLY or any(cannot(told, inner) for inner in event.and_):
        return True
    letters = [who for who in event.by if is_letter(who)]
    if event.by and len(letters) == len(event.by) and not set(letters) & set(told.playing):
        return True
    shots = [told.setting.shots[id] for id in event.of if id in told.setting.shots]
    hits = event.what in ("played", "landed") and len(shots) == len(event.of) > 0
    if hits and letters and len(letters) == len(event.by) and not {shot.by for shot in shots} & set(letters):
        return True
    named = {(place.area, place.side) for place in event.where if not place.outside}
    return any((place.area, place.side) in named for place in event.where if place.outside)


def _later_balls(told: Telling) -> Iterator[Check]:
    for start in told.setting.starts.values():
        once = start.once
        if once is not None and (cannot(told, once) or start.shot in once.of):
            text = f"{record_name(told, start)} of a later ball never comes: what it waits for cannot happen before it"
            yield check("error", "start-never", text, start.id, at=told.at)


def _reach(told: Telling, finish: Finish) -> Iterator[Check]:
    """Yield an error where nothing is paid, or too little in so many starts, for anybody to get there."""
    paid = [points for points in told.setting.points.values() if points.gives.then == "points"]
    if not isinstance(finish.to, int) or finish.kind not in ("race", "goal") or not paid:
        return
    if all((points.gives.value if points.gives.value is not None else 1) <= 0 for points in paid):
        text = f"no line of the scoring pays more than nothing, so nobody reaches {finish.to}"
        if finish.floor is None:
            yield check("error", "finish-unreachable", text, finish.id, *_ids(paid), at=told.at)
        return
    if not set(_scorers(told, paid)) & set(told.playing) and all(_named(points) for points in paid):
        text = f"only people who do not play are paid, so nobody reaches {finish.to}"
        yield check("error", "finish-unreachable", text, finish.id, *_ids(paid), at=told.at)
        return
    most = _most_a_rally(paid)
    if finish.starts is not None and most is not None and most * finish.starts < finish.to:
        text = f"{finish.starts} starts bring {most * finish.starts} at most, so nobody reaches {finish.to}"
        mend = partial(_with_values, at=told.at, id=finish.id, values={"to": most * finish.starts})
        yield check("error", "finish-unreachable", text, finish.id, at=told.at, mend=mend)


def _ids(records: list[Points]) -> list[str]:
    return sorted(record.id for record in records)


def _named(points: Points) -> bool:
    return all(event.by and all(map(is_letter, event.by)) for event in points.on) and points.gives.to != "other"


def _scorers(told: Telling, paid: list[Points]) -> Iterator[str]:
    del told
    for points in paid:
        for event in points.on:
            yield from event.by


def _most_a_rally(paid: list[Points]) -> int | None:
    """Return the most that one rally can pay, None where a rally may pay any number of times."""
    if any(event.what != "won" for points in paid for event in points.on) or any(p.grows_by for p in paid):
        return None
    values = [1 if points.gives.value is None else points.gives.value for points in paid]
    added = [value for points, value in zip(paid, values, strict=True) if points.beside == "added"]
    rest = [value for points, value in zip(paid, values, strict=True) if points.beside != "added"]
    return max(rest, default=0) + sum(value for value in added if value > 0)


def _bounds(told: Telling, finish: Finish) -> Iterator[Check]:
    to = finish.to
    if not isinstance(to, int):
        return
    if finish.cap is not None and finish.cap < to:
        text = f"the score is held at {finish.cap} and the game goes to {to}: it never gets there"
        mend = partial(_with_values, at=told.at, id=finish.id, values={"cap": None})
        yield check("error", "finish-cap", text, finish.id, at=told.at, mend=mend)
    if finish.floor is not None and finish.floor >= to:
        text = f"the game is lost at {finish.floor} and won at {to}: it is lost before it is won"
        mend = partial(_with_values, at=told.at, id=finish.id, values={"floor": -to})
        yield check("error", "reversed", text, finish.id, at=told.at, mend=mend)
    for start in told.setting.starts.values():
        ahead = sorted(str(who) for who, score in start.score.items() if score >= to)
        if ahead and finish.kind in ("race", "goal"):
            text = f"{' and '.join(ahead)} starts with {to} or more, and {to} wins: it is over before it begins"
            yield check("error", "finish-at-start", text, start.id, finish.id, at=told.at)


def _too_soon(told: Telling, finish: Finish) -> Iterator[Check]:
    """Yield a caution where the number of rounds and a table of partners do not fit one another."""
    for swap in told.setting.swaps.values():
        if swap.table and finish.rounds > 1 and len(swap.table) != finish.rounds:
            text = f"{finish.rounds} rounds are played, and the table has {len(swap.table)}"
            mend = partial(_with_values, at=told.at, id=finish.id, values={"rounds": len(swap.table)})
            yield check("caution", "table-rounds", text, swap.id, finish.id, at=told.at, mend=mend)


def _too_long(told: Telling, finish: Finish) -> Iterator[Check]:
    minutes = progression_at(told.drill, told.at).minutes or told.drill.minutes
    if finish.minutes is not None and minutes is not None and finish.minutes * finish.rounds > minutes:
        total = finish.minutes * finish.rounds
        text = f"it is played for {total} min, and {minutes} min are set down for it"
        yield check("suggestion", "too-long", text, finish.id, at=told.at)


def _swaps(told: Telling, finish: Finish) -> Iterator[Check]:
    """Yield a caution for each swap that waits for more than there is before the end."""
    to = finish.to if isinstance(finish.to, int) else None
    ends: dict[str, int | None] = {
        "starts": finish.starts,
        "minutes": None if finish.minutes is None else finish.minutes * finish.rounds,
        "score": None if finish.kind != "race" or to is None else to,
    }
    for swap in told.setting.swaps.values():
        late = [event for event in swap.on if (end := ends.get(event.what)) is not None and (event.count or 1) > end]
        if late and len(late) == len(swap.on):
            event = late[0]
            what = {"starts": "starts", "minutes": "minutes", "score": "points"}[event.what]
            text = (
                f"{record_name(told, swap)} comes after {event.count} {what}, and it is over after {ends[event.what]}"
            )
            at_end = tuple(_at_the_end(each) for each in swap.on)
            mend = partial(_with_values, at=told.at, id=swap.id, values={"on": at_end})
            yield check("caution", "swap-never", text, swap.id, finish.id, at=told.at, mend=mend)


def _at_the_end(event: Event) -> Event:
    """Return "at the end" for an event that comes too late."""
    return Event(what="finished", called_by=event.called_by)
