"""What the tabs and the row under them do to a drill: progressions and variations added, copied, moved, removed."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Final, Literal

from designer.drill import edits
from designer.drill.drill import Drill, Progression, Variation
from designer.drill.ids import Chooser, new_id
from designer.drill.setting import At, addresses, below, progression_at, setting_at, variations

Degree = Literal["easier", "harder", "others"]


def _taken(drill: Drill) -> set[str]:
    return {name for at in addresses(drill) for name in (at.progression, at.variation) if name is not None}


def added(drill: Drill, after: str, source: Chooser, name: str = "") -> tuple[Drill, At]:
    """Return ``drill`` with a new progression after the one called ``after``, at first the same as it, and its place."""
    made = Progression(id=new_id("p", source, _taken(drill)), name=name)
    return edits.add_progression(drill, made, after), At(made.id)


def copied(drill: Drill, id: str, source: Chooser) -> tuple[Drill, At]:
    """Return ``drill`` with a copy of a progression after it, with copies of its variations, and the copy's place."""
    original = progression_at(drill, At(id))
    taken = _taken(drill)

    def renamed(variation: Variation) -> Variation:
        fresh = new_id("v", source, taken)
        taken.add(fresh)
        return variation.changed(id=fresh)

    made = Progression(
        id=new_id("p", source, taken),
        name=f"{original.name} copy".strip(),
        aim=original.aim,
        minutes=original.minutes,
        note=original.note,
        easier=tuple(map(renamed, original.easier)),
        harder=tuple(map(renamed, original.harder)),
        others=tuple(map(renamed, original.others)),
    )
    return edits.add_progression(drill, made, id), At(made.id)


def moved(drill: Drill, id: str, by: int) -> Drill:
    """Return ``drill`` with a progression ``by`` places later in the order of play, as far as there are places."""
    ids = [progression.id for progression in drill.progressions]
    place = ids.index(id)
    ids.insert(max(0, min(len(ids) - 1, place + by)), ids.pop(place))
    return edits.reorder_progressions(drill, ids)


def varied(drill: Drill, progression: str, degree: Degree, source: Chooser, name: str = "") -> tuple[Drill, At]:
    """Return ``drill`` with a new variation of a progression, at first the same as it, and its place."""
    made = Variation(id=new_id("v", source, _taken(drill)), name=name)
    return edits.add_variation(drill, progression, degree, made), At(progression, made.id)


def neighbour(drill: Drill, at: At, by: int) -> At:
    """Return the progression ``by`` places later, the last or first where there is none so far."""
    ids = [progression.id for progression in drill.progressions]
    place = max(0, min(len(ids) - 1, ids.index(at.progression) + by))
    return At(ids[place])


def of_degree(drill: Drill, at: At, degree: Degree) -> tuple[Variation, ...]:
    """Return the variations of this degree that the progression in view has."""
    found: tuple[Variation, ...] = getattr(progression_at(drill, at), degree)
    return found


def degree_of(drill: Drill, at: At) -> Degree | None:
    """Return the degree of the variation in view, None for "as set"."""
    for degree, variation in variations(progression_at(drill, at)):
        if variation.id == at.variation:
            return degree  # type: ignore[return-value]
    return None


def called(drill: Drill, at: At) -> str:
    """Return how the window names a setting: "2 Fed, then open, harder: Wider feed"."""
    ids = [progression.id for progression in drill.progressions]
    progression = progression_at(drill, at)
    words = f"{ids.index(at.progression) + 1} {progression.name}".strip()
    degree = degree_of(drill, at)
    if degree is None:
        return words
    name = next(v.name for d, v in variations(progression) if v.id == at.variation)
    said = {"easier": "easier", "harder": "harder", "others": "other"}[degree]
    return f"{words}, {said}: {name}" if name else f"{words}, {said}"


def renamed(drill: Drill, at: At, name: str) -> Drill:
    """Return ``drill`` with another name for the progression or variation at ``at``."""
    if at.variation is None:
        return edits.change_progression(drill, at.progression, name=name)
    return edits.change_variation(drill, at, name=name)


IN_PLAY: Final = "in play"
BALL: Final = "the ball"
"""What a setting says beside its records; with their space these are never ids."""


@dataclass(frozen=True, slots=True)
class Own:
    """One thing that a setting has of its own: a record's id, or what is in play, or the ball, and how it differs."""

    id: str
    how: Literal["changed", "new", "gone"]


def owns(drill: Drill, at: At) -> tuple[Own, ...]:
    """Return what the setting at ``at`` has of its own over the one below it; () for the first progression as set."""
    if at == At(drill.progressions[0].id):
        return ()
    parent, here = below(drill, at), setting_at(drill, at)
    found = [
        Own(record.id, "new" if old is None else "changed")
        for _, record in here.records()
        if (old := parent.find(record.id)) is not record and old != record
    ]
    found += [Own(record.id, "gone") for _, record in parent.records() if here.find(record.id) is None]
    found += [Own(IN_PLAY, "changed")] if here.in_play != parent.in_play else []
    found += [Own(BALL, "changed")] if here.ball != parent.ball else []
    return tuple(found)


def let_go(drill: Drill, at: At, ids: Iterable[str]) -> Drill:
    """Return ``drill`` with ``ids`` of what ``owns`` returns let go, so that they follow the setting below again."""
    wanted = frozenset(ids)
    drill = edits.follow_again(drill, at, wanted - {IN_PLAY, BALL})
    parent, here = below(drill, at), setting_at(drill, at)
    told = replace(
        here,
        in_play=parent.in_play if IN_PLAY in wanted else here.in_play,
        ball=parent.ball if BALL in wanted else here.ball,
    )
    return drill if told == here else edits.with_setting(drill, at, told)
