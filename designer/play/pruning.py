"""Taking shots out of a setting together with all that is said about them alone."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from typing import Any

from designer.drill.conditions import Event
from designer.drill.rules import Points, Swap
from designer.drill.setting import Setting


def without_shots(setting: Setting, ids: Collection[str]) -> Setting | None:
    """Return ``setting`` without the shots ``ids``, those that come after them, and what speaks of nothing else.

    None where a part of the rally could then no longer end.
    """
    gone = _with_followers(setting, ids)
    dropped = {
        *gone,
        *(run.id for run in setting.runs.values() if run.during in gone),
        *(start.id for start in setting.starts.values() if start.shot in gone),
    }
    changed: list[Any] = []
    for part in setting.parts.values():
        until = _events(part.until, dropped)
        if part.until and not until:
            return None
        changed.append(part.changed(shots=tuple(id for id in part.shots if id not in gone), until=until))
    for rule in setting.rules.values():
        of = tuple(id for id in rule.of if id not in dropped)
        events = tuple(condition for condition in rule.when if isinstance(condition, Event))
        when = rule.when if len(events) != len(rule.when) else _events(events, dropped)
        if (rule.of and not of) or (rule.when and not when):
            dropped.add(rule.id)
        else:
            changed.append(rule.changed(of=of, when=when))
    waiting: list[Points | Swap] = [*setting.points.values(), *setting.swaps.values()]
    for record in waiting:
        on = _events(record.on, dropped)
        if on:
            changed.append(record.changed(on=on))
        else:
            dropped.add(record.id)
    kept = [record for record in changed if record != setting.find(record.id)]
    return setting.having(*kept).without(*dropped)


def _with_followers(setting: Setting, ids: Collection[str]) -> set[str]:
    gone = set(ids)
    while True:
        more = {shot.id for shot in setting.shots.values() if shot.after in gone} - gone
        if not more:
            return gone
        gone |= more


def _events(events: Iterable[Event], gone: Collection[str]) -> tuple[Event, ...]:
    """Return the events that can still happen, each without the names in ``gone``."""
    left = ((event, _event(event, gone)) for event in events)
    return tuple(new for _, new in left if new is not None)


def _event(event: Event, gone: Collection[str]) -> Event | None:
    of = tuple(id for id in event.of if id not in gone)
    inner = _events(event.and_, gone)
    if (event.of and not of) or len(inner) != len(event.and_):
        return None
    return event.changed(of=of, and_=inner) if (of, inner) != (event.of, event.and_) else event
