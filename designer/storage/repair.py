"""The one thing that is mended while reading: an id that stands for two records of one setting, or for two settings."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import Any

from designer.drill.drill import Changes, Drill, Progression, Variation
from designer.drill.setting import KINDS, variations

_DEGREES = ("easier", "harder", "others")
_LONGEST = 40


def repaired(drill: Drill) -> tuple[Drill, tuple[str, ...]]:
    """Return ``drill`` with every id once in each of its settings, and a sentence for each new id.

    The first record keeps its id, so what refers to it still does; the same drill is always mended in the same way.
    """
    repair = _Repair(drill)
    mended = tuple(repair.progression(number, rung) for number, rung in enumerate(drill.progressions, 1))
    if not repair.notices:
        return drill, ()
    return drill.changed(progressions=mended), tuple(repair.notices)


class _Repair:
    def __init__(self, drill: Drill) -> None:
        self.notices: list[str] = []
        self.settings: set[str] = set()
        self.taken = {record.id for changes in _all_changes(drill) for _, record in _records(changes)}
        self.taken |= {rung.id for rung in drill.progressions} | {
            v.id for p in drill.progressions for _, v in variations(p)
        }
        self.names: dict[tuple[str, str, int], str] = {}
        """The new id of the nth record of a kind and id, the same in all settings."""

    def progression(self, number: int, rung: Progression) -> Progression:
        where = f"progression {number}"
        values: dict[str, Any] = {"id": self.setting(where, rung.id, self.settings)}
        values["changes"] = self.changes(where, rung.changes)
        named: set[str] = set()
        for degree in _DEGREES:
            values[degree] = tuple(self.variation(where, named, variation) for variation in getattr(rung, degree))
        return rung.changed(**values)

    def variation(self, where: str, named: set[str], variation: Variation) -> Variation:
        id = self.setting(f"{where}, variation “{variation.name or variation.id}”", variation.id, named)
        return variation.changed(id=id, changes=self.changes(f"{where}, {id}", variation.changes))

    def setting(self, where: str, id: str, named: set[str]) -> str:
        """Return the id of a setting, a new one where ``named`` has it."""
        if id in named:
            old, id = id, self.fresh(id)
            self.notices.append(f"{where}: its id {old!r} stands for another one too; it is now {id!r}.")
        named.add(id)
        return id

    def changes(self, where: str, changes: Changes) -> Changes:
        """Return ``changes`` with each id once."""
        own: set[str] = set()
        count: Counter[tuple[str, str]] = Counter()
        values: dict[str, list[Any]] = {}
        for kind, record in _records(changes):
            count[kind, record.id] += 1
            key = (kind, record.id, count[kind, record.id])
            id = self.names.get(key, record.id)
            if id in own:
                id = self.names[key] = self.fresh(record.id)
            if id != record.id:
                self.notices.append(
                    f"{where}, {kind}: the id {record.id!r} stands for two records; the later one is now {id!r}."
                )
            own.add(id)
            values.setdefault(kind, []).append(record if id == record.id else record.changed(id=id))
        mended = {kind: records[0] if kind == "finish" else tuple(records) for kind, records in values.items()}
        return changes.changed(**mended)

    def fresh(self, id: str) -> str:
        """Return an id like ``id`` that no record has."""
        number = 2
        while (made := f"{id[: _LONGEST - len(str(number)) - 1]}-{number}") in self.taken:
            number += 1
        self.taken.add(made)
        return made


def _all_changes(drill: Drill) -> Iterator[Changes]:
    for rung in drill.progressions:
        yield rung.changes
        yield from (variation.changes for _, variation in variations(rung))


def _records(changes: Changes) -> Iterator[tuple[str, Any]]:
    for kind in KINDS:
        yield from ((kind, record) for record in getattr(changes, kind))
    if changes.finish is not None:
        yield "finish", changes.finish
