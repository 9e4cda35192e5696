"""A caution that was accepted holds only while all that it rested on is as it was: records, version, variation, age, court."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator
from typing import Any

from designer.drill.base import Record
from designer.drill.drill import Accepted, Drill
from designer.drill.setting import At, Setting, addresses, setting_at


def basis_of(drill: Drill, at: At | None, about: tuple[str, ...]) -> str:
    """Return a fingerprint of what a caution about these ids rests on at a setting, None for the drill as a whole.

    It covers the records and all that they name in turn, the version, the variation, the ages and the court; for the
    drill as a whole also how many play. Two settings of which all that is the same have the same fingerprint.
    """
    rests: dict[str, Any] = {
        "turned": drill.turned,
        "age": drill.age,
        "court": drill.court.model_dump(mode="json"),
        "about": sorted(about),
    }
    if at is None:
        rests |= {"players": drill.players, "minutes": drill.minutes, "balls": drill.balls}
    else:
        setting = setting_at(drill, at)
        rests |= {
            "variation": at.variation,
            "in_play": setting.in_play,
            "ball": setting.ball,
            "records": {id: record.model_dump(mode="json") for id, record in _rested_on(drill, setting, about)},
        }
    text = json.dumps(rests, sort_keys=True, default=list)
    return hashlib.sha256(text.encode()).hexdigest()[:16]


def _rested_on(drill: Drill, setting: Setting, about: tuple[str, ...]) -> Iterator[tuple[str, Record]]:
    """Yield (id, record) for the records called so and, in turn, for those that they name; people with their places.

    Where the people concerned are hangs on their runs, which nothing names.
    """
    for id in about:
        record = setting.find(id)
        who = getattr(record, "by", None) or getattr(record, "job", None)
        yield from ((f"run {run.id}", run) for run in setting.runs.values() if who is not None and run.by == who)
    waiting, seen = list(about), set[str]()
    while waiting:
        id = waiting.pop()
        if id in seen:
            continue
        seen.add(id)
        found = [setting.find(id), drill.job(id), setting.spot_of(id)]
        for name, record in zip((id, f"job {id}", f"place {id}"), found, strict=True):
            if record is not None:
                yield name, record
                waiting.extend(_words_in(record.model_dump(mode="json")))


def _words_in(data: Any) -> Iterator[str]:
    """Yield every text in plain data: those that are ids or letters are found again among the records."""
    if isinstance(data, str):
        yield data
    elif isinstance(data, dict):
        for key, value in data.items():
            yield str(key)
            yield from _words_in(value)
    elif isinstance(data, list | tuple):
        for value in data:
            yield from _words_in(value)


def holds(drill: Drill, accepted: Accepted, at: At | None) -> bool:
    """Whether an acceptance still holds at a setting. One written by hand, without a basis, holds until it is taken out."""
    return not accepted.basis or accepted.basis == basis_of(drill, at, accepted.about)


def holds_anywhere(drill: Drill, accepted: Accepted) -> bool:
    """Whether an acceptance still holds for the drill as a whole or at any of its settings."""
    return any(holds(drill, accepted, at) for at in (None, *addresses(drill)))
