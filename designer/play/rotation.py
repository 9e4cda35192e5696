"""Swaps played out: who holds which job in each round, how often, beside whom, and whether that is fair.

People are called by the job they begin in. A round is the time between two swaps.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final, Literal

from designer.court.regions import end_of
from designer.drill.people import Job, Spot
from designer.drill.places import is_letter, locate
from designer.drill.rules import Swap
from designer.drill.setting import Setting
from designer.play.lanes import lanes
from designer.play.moments import Moment, moments, period
from designer.play.tally import Span, Tally

Side = Literal["near", "far"]
LONGEST: Final = 60
"""Rounds after which a rotation that has not come back to its beginning is given up on: 60 = 3 · 4 · 5."""


@dataclass(frozen=True, slots=True)
class Round:
    """Who holds each job: ``people`` gives the person of each job. ``waiting``: who has no job in this round.

    ``turned``: the places lie turned half round, since people have changed jobs and kept their ends, or the other way
    about; ``mirrored``: left for right.
    """

    number: int
    people: Mapping[str, str]
    waiting: tuple[str, ...] = ()
    ends_changed: bool = False
    mirrored: bool = False
    turned: bool = False


@dataclass(frozen=True, slots=True)
class Uneven:
    """Some do something more often than others: what, who most and how often, who least and how often."""

    what: str
    most: str
    most_often: int
    least: str
    least_often: int


@dataclass(frozen=True, slots=True)
class Fairness:
    """What ``rounds`` rounds come to. ``open``: it depends on who wins, so counts go from the least to the most.

    ``jobs``: how often each person held each job. ``doing``: the same by what a job is called, so that two jobs of one
    role are one. ``partners``: how often two played at one end in one rally. ``uneven``: what some do more often than others.
    """

    rounds: int
    open: bool
    jobs: Mapping[str, Mapping[str, Span]]
    doing: Mapping[str, Mapping[str, Span]]
    partners: Mapping[tuple[str, str], Span]
    uneven: tuple[Uneven, ...]

    @property
    def fair(self) -> bool:
        """Whether everybody does everything equally often. What depends on who wins is never called unfair."""
        return not self.uneven


class LosesPerson(ValueError):
    """A swap puts two people into one job, or leaves somebody without the job they had; the text says whom.

    ``swap`` is its id, ``twice`` the jobs that two people would take, ``left`` the jobs that nobody would hold.
    """

    def __init__(self, swap: str, twice: Iterable[str], left: Iterable[str]) -> None:
        self.swap = swap
        self.twice = tuple(sorted(twice))
        self.left = tuple(sorted(left))
        taken = " and ".join(self.twice)
        super().__init__(f"two people would be {taken}" if taken else f"nobody would be {' or '.join(self.left)}")


class NotWorkedOut(ValueError):
    """Who goes where cannot be told: it depends on which pair wins, or on another court."""


State = tuple[tuple[str, str], ...]
"""(job, person), by job."""


def group_of(setting: Setting, jobs: Iterable[Job], people: int | None = None) -> tuple[str, ...]:
    """Return the jobs that a group of ``people`` players holds: those that play first, then by letter.

    Coaches and machines are nobody's turn. None is as many players as there are places.
    """
    others = {job.letter for job in jobs if job.by != "player"}
    spots = [spot for spot in setting.spots.values() if spot.job not in others]
    spots.sort(key=lambda spot: (spot.task != "plays", spot.job))
    return tuple(dict.fromkeys(spot.job for spot in spots))[:people]


def rounds(
    setting: Setting, jobs: Iterable[Job], count: int, winners: Sequence[Side] = (), *, people: int | None = None
) -> tuple[Round, ...]:
    """Return who holds each job in the first ``count`` rounds; ``winners`` are those of each swap that asks, in order.

    Raises ``LosesPerson`` for a swap that does, ``NotWorkedOut`` where it cannot be told or a winner is not given.
    """
    table = _Table(setting, tuple(jobs), people)
    state, told = table.first, list(winners)
    ends = mirrored = turned = False
    found = [table.round(1, state)]
    for number, moment in enumerate(itertools.islice(moments(setting), count - 1), 2):
        for swap, turn in moment:
            winner: Side | None = None
            if _may_not_come(swap):
                raise NotWorkedOut("it depends on who wins")
            if _asks_who_won(swap):
                if not told:
                    raise NotWorkedOut("it depends on who wins")
                winner = told.pop(0)
            state = table.after(state, swap, turn, winner)
            ends, mirrored = ends != swap.ends, mirrored != swap.mirrored
            turned = turned != table.turns(swap)
        found.append(replace(table.round(number, state), ends_changed=ends, mirrored=mirrored, turned=turned))
    return tuple(found)


def fairness(setting: Setting, jobs: Iterable[Job], rounds: int, *, people: int | None = None) -> Fairness:
    """Return how often each person held each job and had each partner in ``rounds`` rounds, whoever wins.

    ``people``: how many players there are, by default as many as places. Raises as ``rounds`` does.
    """
    table = _Table(setting, tuple(jobs), people)
    counts: dict[State, Tally] = {table.first: table.counts(table.first)}
    for moment in itertools.islice(moments(setting), rounds - 1):
        counts = _after(table, counts, moment)
    total = Tally.either(counts.values())
    is_open = any(_asks_who_won(swap) for swap in setting.swaps.values())
    held = {who: {job: total.jobs.get((who, job), (0, 0)) for job in table.held} for who in table.people}
    doing = {who: table.by_role(total, who) for who in table.people}
    partners = dict(sorted(total.partners.items()))
    uneven = () if is_open else tuple(_uneven(doing, table))
    if not uneven and not is_open and any(swap.table for swap in setting.swaps.values()):
        uneven = tuple(_uneven_partners(partners, table))
    return Fairness(rounds, is_open, held, doing, partners, uneven)


def full_turn(setting: Setting, jobs: Iterable[Job], *, people: int | None = None) -> int | None:
    """Return after how many rounds everybody is where they began, for a table its number of rows.

    None where it depends on who wins, where nothing changes, or where it takes more than ``LONGEST`` rounds.
    """
    swaps = setting.swaps.values()
    if any(_asks_who_won(swap) for swap in swaps) or not any(swap.moves or swap.table for swap in swaps):
        return None
    table = _Table(setting, tuple(jobs), people)
    coming = moments(setting)
    every = period(setting)
    state, moved = table.first, False
    for number in range(1, LONGEST + 1):
        for swap, turn in next(coming):
            state = table.after(state, swap, turn, None)
        moved = moved or state != table.first
        if state == table.first and moved and number % every == 0:
            return number
    return None


def _asks_who_won(swap: Swap) -> bool:
    return any(not is_letter(name) for name in (*swap.moves, *swap.moves.values())) or _may_not_come(swap)


def _may_not_come(swap: Swap) -> bool:
    """Whether a swap comes only where a certain person, or one person in a row, wins or scores."""
    return all(event.what in ("won", "score") and bool(event.by or event.running) for event in swap.on)


class _Table:
    """The places of a setting and the people in them."""

    def __init__(self, setting: Setting, jobs: tuple[Job, ...], people: int | None) -> None:
        self.people = group_of(setting, jobs, people)
        self.held = self.people
        self.first: State = tuple(sorted((job, job) for job in self.people))
        self.roles = {job.letter: " ".join(job.role.split()) for job in jobs}
        self.spots: dict[str, Spot] = {spot.job: spot for spot in setting.spots.values() if spot.job in self.held}
        self.ends: dict[str, Side] = {}
        for letter, spot in self.spots.items():
            point = locate(setting, spot.place)
            end = None if point is None else end_of(point)
            if spot.task == "plays" and end is not None:
                self.ends[letter] = end
        self.lanes = lanes(setting, self.ends)

    def round(self, number: int, state: State) -> Round:
        waiting = tuple(person for job, person in state if job in self.spots and self.spots[job].task == "waits")
        return Round(number, dict(state), waiting)

    def turns(self, swap: Swap) -> bool:
        """Whether the places lie turned half round after a swap: the jobs change and the people stay, or the reverse.

        In a ring with somebody who waits everybody walks to the place of the new job.
        """
        goes = {job: self._goal(job, swap.moves) for job in self.ends}
        across = {job for job, goal in goes.items() if self.ends.get(goal, self.ends[job]) != self.ends[job]}
        if not across:
            return swap.ends and all(goal == job for job, goal in goes.items())
        return not swap.ends and all(goes[goes[job]] == job for job in across)

    def role(self, job: str) -> str:
        """Return what somebody in this job does: its role, else whether it plays, waits or collects."""
        task = self.spots[job].task if job in self.spots else "waits"
        return task if task == "waits" else self.roles.get(job) or task

    def counts(self, state: State) -> Tally:
        jobs = {(person, job): (1, 1) for job, person in state}
        partners: dict[tuple[str, str], Span] = {}
        for (one, first), (two, second) in itertools.combinations(state, 2):
            if self._together(one, two):
                low, high = sorted((first, second))
                partners[low, high] = (1, 1)
        return Tally(jobs, partners)

    def _together(self, one: str, two: str) -> bool:
        """Whether two jobs are at one end and not in two lanes."""
        apart = one in self.lanes and two in self.lanes and self.lanes[one] != self.lanes[two]
        return one in self.ends and self.ends[one] == self.ends.get(two) and not apart

    def by_role(self, total: Tally, who: str) -> dict[str, Span]:
        found: dict[str, Span] = {self.role(job): (0, 0) for job in self.held}
        for job in self.held:
            least, most = total.jobs.get((who, job), (0, 0))
            low, high = found[self.role(job)]
            found[self.role(job)] = (low + least, high + most)
        return found

    def after(self, state: State, swap: Swap, turn: int, winner: Side | None) -> State:
        if swap.table:
            return self._row(state, swap, turn)
        goes = dict(self._goes(swap, winner))
        now = dict(state)
        after: dict[str, str] = {}
        twice: set[str] = set()
        for job, person in now.items():
            goal = self._goal(job, goes)
            if goal in after:
                twice.add(goal)
            after[goal] = person
        if twice:
            raise LosesPerson(swap.id, twice, set(now) - set(after))
        return tuple(sorted(after.items()))

    def _goal(self, job: str, goes: Mapping[str, str]) -> str:
        """Return the job that whoever holds ``job`` takes; one that nobody holds today is passed over."""
        goal, passed = goes.get(job, job), {job}
        while goal not in self.held and goal in goes and goal not in passed:
            passed.add(goal)
            goal = goes[goal]
        return goal if goal in self.held else job

    def _goes(self, swap: Swap, winner: Side | None) -> Iterator[tuple[str, str]]:
        for who, goal in swap.moves.items():
            job, new = self._job(who, winner), self._job(goal, winner)
            if new.startswith("court"):
                raise NotWorkedOut("it goes on on another court")
            yield job, new

    def _job(self, name: str, winner: Side | None) -> str:
        """Return the job that a name of a move means: a letter, or whose end it is that has won or lost."""
        if is_letter(name) or name.startswith("court"):
            return name
        if winner is None:
            raise NotWorkedOut("it depends on who wins")
        side = winner if name == "winner" else ("far" if winner == "near" else "near")
        team = [job for job, end in self.ends.items() if end == side]
        if len(team) != 1:
            raise NotWorkedOut("it depends on which pair wins")
        return team[0]

    def _row(self, state: State, swap: Swap, turn: int) -> State:
        rows = swap.table
        row = rows[turn % len(rows)]
        jobs = self._jobs_of(row)
        extra = {job: person for job, person in state if job not in jobs}
        people = dict(zip(jobs, row, strict=False))
        twice = {person for person in row if row.count(person) > 1}
        missing = set(self.people) - set(row) - set(extra.values())
        if twice or missing or len(jobs) != len(row):
            raise LosesPerson(swap.id, twice, missing)
        return tuple(sorted({**extra, **people}.items()))

    def _jobs_of(self, row: tuple[str, ...]) -> list[str]:
        """Return the jobs that a row of a table fills: those that play, where it has as many, else all."""
        playing = sorted(self.ends)
        return playing if len(playing) == len(row) else sorted(self.held)[: len(row)]


def _after(table: _Table, counts: Mapping[State, Tally], moment: Moment) -> dict[State, Tally]:
    """Return what can have come about after one more moment, by who then holds which job."""
    reached: dict[State, list[Tally]] = {}
    for state, so_far in counts.items():
        for new in _outcomes(table, state, moment):
            reached.setdefault(new, []).append(so_far)
    return {state: Tally.either(ways).plus(table.counts(state)) for state, ways in reached.items()}


def _outcomes(table: _Table, state: State, moment: Moment) -> set[State]:
    states = {state}
    for swap, turn in moment:
        before = states
        sides: tuple[Side | None, ...] = ("near", "far") if _asks_who_won(swap) else (None,)
        states = {table.after(each, swap, turn, side) for each in states for side in sides}
        states |= before if _may_not_come(swap) else set()
    return states


def _uneven(doing: Mapping[str, Mapping[str, Span]], table: _Table) -> Iterator[Uneven]:
    """Yield what some do more often than others, most uneven first."""
    found = []
    for what in dict.fromkeys(table.role(job) for job in table.held):
        often = {who: doing[who].get(what, (0, 0))[0] for who in table.people}
        most, least = max(often, key=lambda who: often[who]), min(often, key=lambda who: often[who])
        if often[most] != often[least]:
            found.append(Uneven(what, most, often[most], least, often[least]))
    yield from sorted(found, key=lambda each: (each.least_often - each.most_often, each.what != "waits"))


def _uneven_partners(partners: Mapping[tuple[str, str], Span], table: _Table) -> Iterator[Uneven]:
    """Yield the pair that plays together most and the one that does least, where they differ by more than one round."""
    often = {pair: partners.get(pair, (0, 0))[0] for pair in itertools.combinations(sorted(table.people), 2)}
    if not often or not partners:
        return
    most, least = max(often, key=lambda pair: often[pair]), min(often, key=lambda pair: often[pair])
    if often[most] - often[least] > 1:
        yield Uneven("partners", " and ".join(most), often[most], " and ".join(least), often[least])
