"""What one rally brings either side: who wins it, and what the drill's own points make of that."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final, Literal

from designer.drill.conditions import Event
from designer.drill.rules import Points
from designer.numbers.contest import Gain
from designer.numbers.load import branches_of, chance_of
from designer.numbers.problems import Impossible
from designer.numbers.shots import SettingNumbers
from designer.numbers.situation import Situation
from designer.play.rally import opening_part

EQUAL: Final = 0.5
"""The first side's chance of a point once it is open: a shown input, to be changed."""

BONUS: Final = 0.2
"""How often a point is won in the way that is paid extra: a shown input, to be changed. Common practice, no source."""

Side = Literal["first", "second"]


@dataclass(frozen=True, slots=True)
class Rally:
    """The chances of one start: the first side wins it, the second does, or it brings nothing."""

    first: float
    second: float
    nothing: float


@dataclass(frozen=True, slots=True)
class Sides:
    """The letters at either end. ``first`` is the end of the first job that plays."""

    first: tuple[str, ...]
    second: tuple[str, ...]

    def of(self, letter: str) -> Side:
        """Return which side ``letter`` is on; a stranger counts as second."""
        return "first" if letter in self.first else "second"


def sides(here: Situation) -> Sides:
    """Return who plays against whom, by the ends at which they hit first."""
    ends: dict[str, str] = {}
    for step in here.sequence.steps:
        ends.setdefault(step.hitter, step.end)
    for spot in here.setting.spots.values():
        if spot.task == "plays" and spot.job not in ends:
            ends[spot.job] = "far" if spot.place.at[1] > 0 else "near"
    players = {job.letter for job in here.drill.jobs if job.by == "player"} or set(ends)
    playing = sorted(letter for letter in ends if letter in players)
    if not playing:
        return Sides((), ())
    first = ends[playing[0]]
    return Sides(
        tuple(letter for letter in playing if ends[letter] == first),
        tuple(letter for letter in playing if ends[letter] != first),
    )


def start_scores(here: Situation, both: Sides) -> tuple[int, int]:
    """Return what either side starts with, as the setting says: the most that anybody of it is given."""
    given = {"first": 0, "second": 0}
    for start in here.setting.starts.values():
        for person, points in start.score.items():
            side = both.of(person) if person in (*both.first, *both.second) else None
            if side is not None:
                given[side] = max(given[side], points)
    return given["first"], given["second"]


_IN_TURN: Final = ("in turn", "every two", "by the rules", "anyone")


def starts_in_turn(here: Situation, both: Sides) -> bool:
    """Whether both sides start rallies, though the drawing shows but one start: then the jobs even out by themselves."""
    return any(
        start.next in _IN_TURN and {both.of(letter) for letter in start.by} == {"first", "second"}
        for start in here.setting.starts.values()
        if start.once is None
    )


def jobs_change(here: Situation, both: Sides) -> bool:
    """Whether people of the two sides take over each other's jobs before the score is settled."""
    return any(
        event.what in ("starts", "score", "minutes", "won", "round")
        and any(both.of(old) != both.of(new) for old, new in swap.moves.items() if len(old) == len(new) == 1)
        for swap in here.setting.swaps.values()
        for event in swap.on
    )


def shared(rally: Rally) -> Rally:
    """Return a rally that either side starts as often: by symmetry each wins as often."""
    half = (rally.first + rally.second) / 2
    return Rally(half, half, rally.nothing)


def quick_rally(here: Situation, numbers: SettingNumbers, open_point: float = EQUAL) -> Rally:
    """Return a first estimate of a rally, without simulating: the drawn part is passed when every drawn hit comes off."""
    opens = opening_part(here.setting)
    passed = 1.0
    if opens is not None:
        for shot in numbers.shots:
            chance = chance_of(shot)
            if shot.shot in opens[0].shots and chance is not None:
                passed *= chance
        failed = opens[0].failed
        if failed is not None and failed.then == "lose the point":
            return Rally(open_point, 1 - open_point, 0.0)
    return Rally(passed * open_point, passed * (1 - open_point), 1 - passed)


def gains(here: Situation, numbers: SettingNumbers, rally: Rally, *, bonus: float = BONUS) -> tuple[Gain, ...]:
    """Return what one rally may bring either side, every combination with its chance.

    Points for a place are paid at the chance to hit it, those for a miss at the chance to miss, points for a way of
    winning at ``bonus``. Raises ``Impossible`` with a sentence for points that depend on several rallies.
    """
    _refuse_streaks(here)
    both = sides(here)
    found: dict[tuple[int, int], float] = {}
    for side, chance in (("first", rally.first), ("second", rally.second)):
        for value, share in _won(here, both, side, bonus):
            key = (value, 0) if side == "first" else (0, value)
            found[key] = found.get(key, 0.0) + chance * share
    found[0, 0] = found.get((0, 0), 0.0) + rally.nothing
    for side, value, chance in (*_landed(here, numbers, both), *_missed(here, numbers, both)):
        found = _added(found, (value, 0) if side == "first" else (0, value), chance)
    return tuple(Gain(chance, *score) for score, chance in found.items() if chance > 0)


def _refuse_streaks(here: Situation) -> None:
    for points in here.setting.points.values():
        in_a_row = any(event.what == "won" and (event.running or (event.count or 1) > 1) for event in points.on)
        if in_a_row or points.grows_by:
            raise Impossible(
                "Points that depend on several rallies in a row are not worked out; count the finish by hand."
            )


def _added(found: dict[tuple[int, int], float], more: tuple[int, int], chance: float) -> dict[tuple[int, int], float]:
    after: dict[tuple[int, int], float] = {}
    for (first, second), share in found.items():
        for score, part in (((first, second), 1 - chance), ((first + more[0], second + more[1]), chance)):
            after[score] = after.get(score, 0.0) + share * part
    return after


def _won(here: Situation, both: Sides, side: str, bonus: float) -> Iterable[tuple[int, float]]:
    """Yield (points, share) of a rally that ``side`` has won."""
    base, extra = 0, 0
    for points in here.setting.points.values():
        value = points.gives.value
        if points.gives.then != "points" or value is None:
            continue
        for event in points.on:
            if event.what != "won" or not _means(here, both, event.by, side):
                continue
            if _plain(event):
                base = max(base, value)
            else:
                extra = max(extra, value if points.beside != "added" else base + value)
    if not any(event.what == "won" for points in here.setting.points.values() for event in points.on):
        base = base or int(not here.setting.points)
    if extra > base:
        return ((base, 1 - bonus), (extra, bonus))
    return ((base, 1.0),)


def _plain(event: Event) -> bool:
    return not (event.when or event.and_ or event.untouched or event.within or event.strokes or event.wing or event.of)


def _means(here: Situation, both: Sides, who: Iterable[str], side: str) -> bool:
    """Whether ``who`` of an event may be somebody on ``side``; nobody named means anybody."""
    named = tuple(who)
    if not named or {"anyone", "doer", "winner", "other"} & set(named):
        return True
    letters = both.first if side == "first" else both.second
    if set(named) & set(letters):
        return True
    first_step = next(iter(here.sequence.steps), None)
    if first_step is None:
        return False
    serving = both.of(first_step.hitter)
    if {"server", "serving side"} & set(named):
        return serving == side
    if {"receiver", "receiving side"} & set(named):
        return serving != side
    ends = {"near": "near", "far": "far"}
    stands = first_step.end if serving == side else ("near" if first_step.end == "far" else "far")
    return any(ends.get(word) == stands for word in named)


def _landed(here: Situation, numbers: SettingNumbers, both: Sides) -> Iterable[tuple[str, int, float]]:
    """Yield (side, points, chance) for every drawn ball that is paid for where it lands, whoever wins the rally.

    Of points for one ball that do not add up, only the dearest is paid, and the cheaper where that one is missed.
    """
    ways = [{step.shot.id for step in branch} for branch in branches_of(here)]
    for shot in numbers.shots:
        taken = sum(shot.shot in way for way in ways) / len(ways) if ways else 0.0
        paid = [
            (target.chance, points.gives.value or 0, points)
            for target in shot.targets
            if (points := here.setting.points.get(target.target.by)) is not None and _by_place(points)
        ]
        if not paid or shot.chance_in is None:
            continue
        paid.sort(key=lambda item: -item[1])
        used = 0.0
        for chance, value, points in paid:
            share = max(0.0, chance - used) if points.beside != "added" else chance
            if value and share > 0:
                yield both.of(shot.by), value, taken * (share / max(1e-12, 1 - used) if used else share)
            used = max(used, chance) if points.beside != "added" else used


def _missed(here: Situation, numbers: SettingNumbers, both: Sides) -> Iterable[tuple[str, int, float]]:
    """Yield (side, points, chance) for every drawn ball whose miss is paid for or costs points of its own."""
    ways = [{step.shot.id for step in branch} for branch in branches_of(here)]
    for shot in numbers.shots:
        taken = sum(shot.shot in way for way in ways) / len(ways) if ways else 0.0
        for points in here.setting.points.values():
            value = points.gives.value or 0
            means = any(
                event.what == "missed"
                and (not event.of or shot.shot in event.of)
                and (bool(event.of) or shot.by in event.by)
                for event in points.on
            )
            if means and points.gives.then == "points" and value and shot.chance_in is not None:
                side = both.of(shot.by)
                if points.gives.to == "other":
                    side = "second" if side == "first" else "first"
                yield side, value, taken * (1 - shot.chance_in)


def _by_place(points: Points) -> bool:
    return points.gives.then == "points" and any(event.what == "landed" for event in points.on)
