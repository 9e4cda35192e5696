"""A setting: one playable state of a drill, and how settings lie one over another.

``resolve`` lays changes over a parent; ``difference`` says what a setting has of its own. For every parent ``p`` and
setting ``s``: ``resolve(p, difference(p, s)) == s``.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Any, Final

from designer.drill.drill import Changes, Drill, Progression, Variation
from designer.drill.items import Item
from designer.drill.movement import Run, Shot
from designer.drill.people import Spot
from designer.drill.rules import Finish, Part, Points, Rule, Start, Swap

KINDS: Final = ("spots", "items", "shots", "runs", "parts", "rules", "points", "starts", "swaps")
"""The kinds of record that a setting holds many of, in the order of a file."""

_NOTHING: Mapping[str, Any] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Setting:
    """Maps from id to record. The order inside a map means nothing, and two settings are equal whatever it is."""

    spots: Mapping[str, Spot] = field(default_factory=lambda: _NOTHING)
    items: Mapping[str, Item] = field(default_factory=lambda: _NOTHING)
    shots: Mapping[str, Shot] = field(default_factory=lambda: _NOTHING)
    runs: Mapping[str, Run] = field(default_factory=lambda: _NOTHING)
    parts: Mapping[str, Part] = field(default_factory=lambda: _NOTHING)
    rules: Mapping[str, Rule] = field(default_factory=lambda: _NOTHING)
    points: Mapping[str, Points] = field(default_factory=lambda: _NOTHING)
    starts: Mapping[str, Start] = field(default_factory=lambda: _NOTHING)
    swaps: Mapping[str, Swap] = field(default_factory=lambda: _NOTHING)
    finish: Finish | None = None
    in_play: str | None = None
    ball: str | None = None

    def records(self) -> Iterator[tuple[str, Any]]:
        """Yield (kind, record) for every record, the finish last."""
        for kind in KINDS:
            for record in getattr(self, kind).values():
                yield kind, record
        if self.finish is not None:
            yield "finish", self.finish

    def ids(self) -> frozenset[str]:
        """Return the id of every record."""
        return frozenset(id for _, id in self.names())

    def names(self) -> Iterator[tuple[str, str]]:
        """Yield (kind, id) for every record, the finish last."""
        for kind in KINDS:
            yield from ((kind, id) for id in getattr(self, kind))
        if self.finish is not None:
            yield "finish", self.finish.id

    def find(self, id: str) -> Any | None:
        """Return the record with this id, of whatever kind, or None."""
        for kind in KINDS:
            record = getattr(self, kind).get(id)
            if record is not None:
                return record
        return self.finish if self.finish is not None and self.finish.id == id else None

    def spot_of(self, letter: str) -> Spot | None:
        """Return where the person in this job starts, or None."""
        return next((spot for spot in self.spots.values() if spot.job == letter), None)

    def having(self, *records: Any) -> Setting:
        """Return this setting with ``records`` added, each in place of the one of its id, of whatever kind that is."""
        from designer.drill.kinds import kind_of

        kinds = {record.id: kind_of(record) for record in records}
        moved = [id for kind, id in self.names() if kinds.get(id, kind) != kind]
        below = self.without(*moved) if moved else self
        maps: dict[str, Any] = {}
        for record in records:
            kind = kinds[record.id]
            if kind == "finish":
                maps["finish"] = record
                continue
            maps.setdefault(kind, dict(getattr(below, kind)))[record.id] = record
        return replace(below, **maps)

    def without(self, *ids: str) -> Setting:
        """Return this setting without the records of these ids."""
        gone = frozenset(ids)
        maps: dict[str, Any] = {
            kind: {id: record for id, record in records.items() if id not in gone}
            for kind in KINDS
            if gone & (records := getattr(self, kind)).keys()
        }
        if self.finish is not None and self.finish.id in gone:
            maps["finish"] = None
        return replace(self, **maps)


EMPTY: Final = Setting()


def resolve(parent: Setting, changes: Changes) -> Setting:
    """Return ``parent`` with ``changes`` laid over it: first the drops, then whole records by id.

    A record takes the place of the one of its id, of whatever kind that was.
    """
    dropped = frozenset(changes.drop)
    kinds = {record.id: kind for kind in KINDS for record in getattr(changes, kind)}
    if changes.finish is not None:
        kinds[changes.finish.id] = "finish"
    maps: dict[str, Any] = {}
    replaced = dropped | kinds.keys()
    for kind in KINDS:
        own = getattr(changes, kind)
        below = getattr(parent, kind)
        if not own and replaced.isdisjoint(below):
            maps[kind] = below  # shared, so that whoever compares settings sees at once that nothing differs
            continue
        gone = {id for id in below if id in dropped or kinds.get(id, kind) != kind}
        kept = {id: record for id, record in below.items() if id not in gone}
        kept.update((record.id, record) for record in own)
        maps[kind] = kept
    finish = parent.finish
    if finish is not None and finish.id in replaced:
        finish = None
    return Setting(
        **maps,
        finish=finish if changes.finish is None else changes.finish,
        in_play=_laid("in-play", parent.in_play, changes.in_play, dropped),
        ball=_laid("ball", parent.ball, changes.ball, dropped),
    )


def _laid(word: str, below: str | None, own: str | None, dropped: frozenset[str]) -> str | None:
    if own is not None:
        return own
    return None if word in dropped else below


def difference(parent: Setting, setting: Setting) -> Changes:
    """Return the changes that turn ``parent`` into ``setting``; records that are the same in both are left out."""
    ids = setting.ids()
    drop = [id for _, id in parent.names() if id not in ids]
    drop += [
        word
        for word, below, own in (("in-play", parent.in_play, setting.in_play), ("ball", parent.ball, setting.ball))
        if below is not None and own is None
    ]
    # A record may be called "ball" or "in-play": whatever else its being dropped takes away is said again.
    again = frozenset(drop)
    own_records: dict[str, Any] = {}
    for kind in KINDS:
        below = getattr(parent, kind)
        own = tuple(
            record
            for id, record in getattr(setting, kind).items()
            # Most records are the very same object, which is quicker to see than that two are equal.
            if id in again or ((old := below.get(id)) is not record and old != record)
        )
        if own:
            own_records[kind] = own
    if setting.finish is not None and (setting.finish != parent.finish or setting.finish.id in again):
        own_records["finish"] = setting.finish
    if setting.in_play is not None and (setting.in_play != parent.in_play or "in-play" in again):
        own_records["in_play"] = setting.in_play
    if setting.ball is not None and (setting.ball != parent.ball or "ball" in again):
        own_records["ball"] = setting.ball
    if drop:
        own_records["drop"] = tuple(drop)
    return Changes(**own_records)


@dataclass(frozen=True, slots=True)
class At:
    """Which setting of a drill: a progression's id, and a variation's id or None for "as set"."""

    progression: str
    variation: str | None = None


def main_setting(drill: Drill) -> At:
    """Return the setting a card is made of when none is named: the main progression, else the first."""
    named = [progression.id for progression in drill.progressions if progression.id == drill.main]
    return At(named[0] if named else drill.progressions[0].id)


def progression_at(drill: Drill, at: At) -> Progression:
    """Return the progression; raise ``KeyError`` where the drill has none of that id."""
    for progression in drill.progressions:
        if progression.id == at.progression:
            return progression
    raise KeyError(at.progression)


def variations(progression: Progression) -> Iterator[tuple[str, Variation]]:
    """Yield ("easier" | "harder" | "others", variation) in file order."""
    for degree in ("easier", "harder", "others"):
        for variation in getattr(progression, degree):
            yield degree, variation


def variation_at(drill: Drill, at: At) -> Variation | None:
    """Return the variation, None for "as set"; raise ``KeyError`` where there is none of that id."""
    progression = progression_at(drill, at)
    if at.variation is None:
        return None
    for _, variation in variations(progression):
        if variation.id == at.variation:
            return variation
    raise KeyError(at.variation)


def addresses(drill: Drill) -> Iterator[At]:
    """Yield every setting: each progression, followed by its variations."""
    for progression in drill.progressions:
        yield At(progression.id)
        for _, variation in variations(progression):
            yield At(progression.id, variation.id)


def all_settings(drill: Drill) -> Iterator[tuple[At, Setting]]:
    """Yield (address, setting) for every setting, each worked out once."""
    parent = EMPTY
    for progression in drill.progressions:
        parent = resolve(parent, progression.changes)
        yield At(progression.id), parent
        for _, variation in variations(progression):
            yield At(progression.id, variation.id), resolve(parent, variation.changes)


def below(drill: Drill, at: At) -> Setting:
    """Return the setting that the one at ``at`` lies on: the progression for a variation, else the one before it."""
    if at.variation is not None:
        return setting_at(drill, At(at.progression))
    setting = EMPTY
    for progression in drill.progressions:
        if progression.id == at.progression:
            return setting
        setting = resolve(setting, progression.changes)
    raise KeyError(at.progression)


def setting_at(drill: Drill, at: At) -> Setting:
    """Return the whole setting at ``at``; raise ``KeyError`` where the drill has none of that name."""
    return resolve(below(drill, at), changes_at(drill, at))


def changes_at(drill: Drill, at: At) -> Changes:
    """Return what the setting at ``at`` has of its own."""
    variation = variation_at(drill, at)
    return progression_at(drill, at).changes if variation is None else variation.changes


def all_ids(drill: Drill) -> frozenset[str]:
    """Return the id of every record in any setting of ``drill``, and of every progression and variation."""
    ids: set[str] = set()
    for at, setting in all_settings(drill):
        ids |= setting.ids() | {name for name in (at.progression, at.variation) if name}
    return frozenset(ids)


def find_setting(drill: Drill, name: str) -> At:
    """Return the setting that ``name`` means: ``PROGRESSION[/VARIATION]`` by id, by number, or "easier" and "harder".

    ``2`` is the second progression, ``2/harder`` its first harder variation, ``2/harder2`` the second.
    Raises ``KeyError`` with a sentence that lists what there is.
    """
    first, _, second = name.partition("/")
    by_number = {str(number): p for number, p in enumerate(drill.progressions, 1)}
    by_id = {p.id: p for p in drill.progressions}
    progression = by_id.get(first) or by_number.get(first)
    if progression is None:
        known = ", ".join(f"{number} ({p.id})" for number, p in by_number.items())
        raise KeyError(f"there is no progression {first!r}; the drill has {known}")
    if not second:
        return At(progression.id)
    named: dict[str, str | None] = {"as-set": None}
    for degree in ("easier", "harder", "others"):
        for number, variation in enumerate(getattr(progression, degree), 1):
            named[f"{degree.removesuffix('s')}{number}"] = variation.id
            named.setdefault(degree.removesuffix("s"), variation.id)
    named.update((variation.id, variation.id) for _, variation in variations(progression))
    if second not in named:
        known = ", ".join(sorted(named))
        raise KeyError(f"progression {first} has no variation {second!r}; it has {known}")
    return At(progression.id, named[second])
