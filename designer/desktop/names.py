"""How the window calls a record where no sentence of the card does it: in a menu, a title, an undo step."""

from __future__ import annotations

from typing import Any

from designer.drill.kinds import kind_of
from designer.drill.movement import FEEDS, Run, Shot
from designer.drill.people import Spot
from designer.drill.setting import Setting

_KINDS = {
    "parts": "part",
    "rules": "rule",
    "points": "points",
    "starts": "start",
    "finish": "finish",
    "swaps": "swap",
}
_PURPOSES = {"recover": "back", "approach": "in", "retreat": "back", "reach": "to the ball"}


def name_of(setting: Setting, record: Any) -> str:
    """Return a few words for ``record``: "ball 2", "A’s run back", "reply zone", "cone 3"."""
    if isinstance(record, Shot):
        word = "feed" if record.stroke in FEEDS else "ball"
        return f"{word} {depth(setting, record)}, {record.by}"
    if isinstance(record, Run):
        return f"{record.by}’s run {_PURPOSES.get(record.purpose or '', '')}".strip()
    if isinstance(record, Spot):
        return f"{record.job}’s place"
    kind = getattr(record, "kind", None)
    named = getattr(record, "name", "") or getattr(record, "text", "")
    if isinstance(named, str) and named:
        return named if len(named) <= 28 else f"{named[:27]}…"
    if kind_of(record) == "items":
        return _numbered(str(kind), [r for r in setting.items.values() if getattr(r, "kind", "") == kind], record)
    if kind_of(record) == "parts":
        return _numbered(f"{record.kind} part", [p for p in setting.parts.values() if p.kind == record.kind], record)
    return _numbered(_KINDS[kind_of(record)], list(_siblings(setting, record)), record)


def _siblings(setting: Setting, record: Any) -> list[Any]:
    kind = kind_of(record)
    return [record] if kind == "finish" else list(getattr(setting, kind).values())


def _numbered(word: str, among: list[Any], record: Any) -> str:
    ids = [each.id for each in among]
    return word if len(ids) < 2 or record.id not in ids else f"{word} {ids.index(record.id) + 1}"


def depth(setting: Setting, shot: Shot) -> int:
    """Return how many shots lead up to this one, itself counted: its digit, but for later balls of one start."""
    count, seen = 1, {shot.id}
    while shot.after is not None and shot.after in setting.shots and shot.after not in seen:
        seen.add(shot.after)
        shot = setting.shots[shot.after]
        count += 1
    return count
