"""A setting as it is told: the drill, the setting, for whom and in what units, with what follows from them."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace
from functools import cached_property, wraps
from threading import Lock
from typing import Any, Final, Literal, TypeVar, cast

from designer.court.regions import End, end_of
from designer.court.standards import Ground, ground
from designer.drill.base import Letter
from designer.drill.drill import Drill
from designer.drill.movement import FEEDS, SERVES, Shot
from designer.drill.places import corners_of, locate, middle
from designer.drill.rules import Part, Start
from designer.drill.setting import EMPTY, At, Setting, setting_at
from designer.play.rally import parts
from designer.play.sequence import Sequence, sequence
from designer.wording.units import Units

Reader = Literal["player", "coach", "stand-in"]


@dataclass(frozen=True)
class Telling:
    """One setting of a drill as it is told to one reader. What is derived is computed once and kept."""

    drill: Drill
    at: At
    setting: Setting
    reader: Reader = "coach"
    player: Letter | None = None
    units: Units = "rackets"
    family: dict[At, Telling] = field(default_factory=dict, compare=False, repr=False)
    """The tellings of this drill's other settings that have been made so far, so that each is read once."""

    def elsewhere(self, at: At) -> Telling:
        """Return another setting of the drill, told in the same way; raise ``KeyError`` where there is none."""
        if at == self.at:
            return self
        if at not in self.family:
            self.family[at] = replace(self, at=at, setting=setting_at(self.drill, at))
        return self.family[at]

    @property
    def brief(self) -> bool:
        """Whether only what a player needs is said."""
        return self.reader == "player"

    @cached_property
    def ground(self) -> Ground:
        """The court that the drill stands on."""
        return ground(self.drill.court)

    @cached_property
    def sequence(self) -> Sequence:
        """The shots in order of play; none where they come after one another in a circle, which the review says."""
        try:
            return sequence(self.setting, self.ground, self.drill.jobs)
        except ValueError:
            return sequence(replace(self.setting, shots={}), self.ground, self.drill.jobs)

    def digit(self, shot_id: str | None) -> int | None:
        """Return the number of a shot on the diagram, None where there is no such shot."""
        step = None if shot_id is None else self.sequence.step(shot_id)
        return None if step is None else step.digit

    @cached_property
    def below(self) -> Telling:
        """The setting that this one lies on, told in the same way."""
        if self.at.variation is not None:
            return self.elsewhere(At(self.at.progression))
        order = [progression.id for progression in self.drill.progressions]
        place = order.index(self.at.progression)
        return replace(self, setting=EMPTY) if place == 0 else self.elsewhere(At(order[place - 1]))

    @cached_property
    def parts(self) -> tuple[Part, ...]:
        """The parts of a rally in order."""
        return parts(self.setting)

    @cached_property
    def ends(self) -> dict[Letter, End]:
        """Which end each person who plays stands at, in order of letters; who waits or collects is left out."""
        found: dict[Letter, End] = {}
        for spot in sorted(self.setting.spots.values(), key=lambda spot: spot.job):
            point = locate(self.setting, spot.place)
            end = None if point is None else end_of(point)
            if spot.task == "plays" and end is not None:
                found[spot.job] = end
        return found

    @property
    def playing(self) -> tuple[Letter, ...]:
        """The letters of those who play."""
        return tuple(self.ends)

    def team(self, end: End) -> tuple[Letter, ...]:
        """Return the letters of those who play at ``end``."""
        return tuple(letter for letter, own in self.ends.items() if own == end)

    def opponents(self, letter: Letter) -> tuple[Letter, ...]:
        """Return the letters of those at the other end, () where that is not known."""
        end = self.ends.get(letter)
        return () if end is None else self.team("far" if end == "near" else "near")

    def owner_of_end(self, end: End) -> Letter | None:
        """Return the one player at ``end``, None where there is none or more than one."""
        team = self.team(end)
        return team[0] if len(team) == 1 else None

    def end_of_item(self, id: str) -> End | None:
        """Return the end at which an item stands, None where it stands at the net, at both ends or nowhere."""
        item = self.setting.items.get(id)
        if item is None or getattr(item, "both_ends", False):
            return None
        place = getattr(item, "place", None)
        corners = corners_of(item)
        point = locate(self.setting, place) if place is not None else middle(corners) if corners else None
        return None if point is None else end_of(point)

    @cached_property
    def first_starts(self) -> tuple[Start, ...]:
        """The starts that put in the first ball of a rally, in a steady order."""
        return tuple(start for start in self._starts if start.once is None)

    @cached_property
    def later_starts(self) -> tuple[Start, ...]:
        """The starts of balls fed later in the same rally."""
        return tuple(start for start in self._starts if start.once is not None)

    @cached_property
    def _starts(self) -> list[Start]:
        return sorted(self.setting.starts.values(), key=lambda start: (self.digit(start.shot) or 0, start.id))

    @cached_property
    def server(self) -> Letter | None:
        """The one letter that always puts in the first ball, None where several do or none is named."""
        letters = {letter for start in self.first_starts for letter in self.feeders(start)}
        return letters.pop() if len(letters) == 1 else None

    def feeders(self, start: Start) -> tuple[Letter, ...]:
        """Return who puts in the ball of ``start``: those it names, else the hitter of its shot."""
        shot = self.setting.shots.get(start.shot or "")
        return start.by or (() if shot is None else (shot.by,))

    def is_new_ball(self, shot: Shot) -> bool:
        """Whether ``shot`` puts a new ball in: a feed, a throw or a serve."""
        return shot.stroke in FEEDS or shot.stroke in SERVES

    @cached_property
    def cooperative(self) -> bool:
        """Whether everybody works for the same count, so that no rally is won."""
        parts = self.setting.parts.values()
        return bool(parts) and all(part.kind == "cooperative" for part in parts)


def telling(
    drill: Drill, at: At, reader: Reader = "coach", player: Letter | None = None, units: Units = "rackets"
) -> Telling:
    """Return the setting at ``at`` as it is told; raise ``KeyError`` where the drill has none of that name."""
    family = _family(drill, reader, player, units)
    if at not in family:
        family[at] = Telling(drill, at, setting_at(drill, at), reader, player, units, family)
    return family[at]


_FAMILIES: Final = 8
_families: OrderedDict[tuple[int, Reader, Letter | None, Units], tuple[Drill, dict[At, Telling]]] = OrderedDict()
"""The tellings of the drills last told, by the drill's identity: a card, its checks and its tabs tell the same ones.

A drill never changes, so what is derived from it stays true; it is kept beside its tellings so that no other drill can
come to have its identity.
"""
_turn = Lock()


def _family(drill: Drill, reader: Reader, player: Letter | None, units: Units) -> dict[At, Telling]:
    """Return the tellings of ``drill`` that have been made so far for this reader."""
    key = (id(drill), reader, player, units)
    with _turn:  # the checks run on a thread of their own
        family = _families.pop(key, (drill, {}))
        _families[key] = family
        if len(_families) > _FAMILIES:
            _families.popitem(last=False)
    return family[1]


Said = TypeVar("Said")


def once(make: Callable[[Telling], Iterable[Said]]) -> Callable[[Telling], tuple[Said, ...]]:
    """Return ``make`` so that what it makes of a telling is made once and kept with it: a card asks more than once."""
    key = f"{make.__module__}.{make.__qualname__}"

    @wraps(make)
    def kept(told: Telling) -> tuple[Said, ...]:
        made: dict[str, Any] = told.__dict__
        if key not in made:
            made[key] = tuple(make(told))
        return cast("tuple[Said, ...]", made[key])

    return kept
