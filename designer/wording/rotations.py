"""A swap played out in words: who is where in each round, how often each did what and with whom, and whether it is fair.

People are called by the letter they begin with; what a column is headed by is the job.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final, Literal

from designer.drill.drill import Drill
from designer.drill.setting import At
from designer.play.rotation import (
    Fairness,
    LosesPerson,
    NotWorkedOut,
    Round,
    Uneven,
    fairness,
    full_turn,
    group_of,
    rounds,
)
from designer.play.tally import Span
from designer.wording.counts import listed, lowered, many, number
from designer.wording.players_over import says_who
from designer.wording.questions import of_swap
from designer.wording.sentence import Sentence, one_line, sentence, unmarked
from designer.wording.telling import Telling, telling
from designer.wording.tokens import own_text

TRIED: Final = 8
"""Rounds that are played out where it depends on who wins."""
SHOWN: Final = 12
"""Rows that are shown at most; what is counted may be more."""

Weight = Literal["even", "uneven", "open", "lost"]


@dataclass(frozen=True, slots=True)
class Row:
    """One row of a table: its head, a cell a column, and what else is true of it, "" for nothing."""

    head: str
    cells: tuple[str, ...]
    note: str = ""


@dataclass(frozen=True, slots=True)
class Grid:
    """A small table of words: what stands over its first column, over the others, and its rows."""

    corner: str
    heads: tuple[str, ...]
    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class RotationTable:
    """The swaps of one setting played out for ``people`` players.

    ``places``: a row a round, a column a job, in each cell who holds it. ``counts``: a row a person, a column what can be
    done, how often in ``rounds`` rounds; "1 to 5" where it depends on who wins. ``partners``: the same for each two at
    one end, None where nobody has a partner. ``verdict`` says in a sentence whether it is fair, ``weight`` in a word:
    "open" depends on who wins, "lost" puts two into one place. ``asked``: what is still open about a player over.
    """

    people: int
    rounds: int
    places: Grid
    counts: Grid
    partners: Grid | None
    verdict: Sentence
    weight: Weight
    asked: tuple[Sentence, ...] = ()


def rotation_table(
    drill: Drill, at: At, *, people: int | None = None, rounds: int | None = None
) -> RotationTable | None:
    """Return the swaps of the setting at ``at`` played out; None where fewer than two play or nobody changes places.

    ``people``: how many players there are, by default as many as there are places. ``rounds``: how many are counted, by
    default until everybody is where they began, or 8 where it depends on who wins. Raises ``KeyError`` where the drill has
    no such setting.
    """
    return table_of(telling(drill, at), people, rounds)


def table_of(told: Telling, people: int | None = None, count: int | None = None) -> RotationTable | None:
    """Return the rotation table of a telling, as ``rotation_table`` does."""
    jobs = group_of(told.setting, told.drill.jobs, people)
    swaps = [swap for swap in told.setting.swaps.values() if swap.moves or swap.table]
    if len(jobs) < 2 or not swaps:
        return None
    heads = tuple(_job(told, job) for job in jobs)
    asked = of_swap(told)
    about = tuple(sorted(swap.id for swap in swaps))
    corner = _unit(told).capitalize()
    try:
        counted = count or full_turn(told.setting, told.drill.jobs, people=people) or TRIED
        played = fairness(told.setting, told.drill.jobs, counted, people=people)
        rows = tuple(_rows(told, jobs, counted, played, people))
    except (LosesPerson, NotWorkedOut) as why:
        weight: Weight = "lost" if isinstance(why, LosesPerson) else "open"
        said = sentence("rotation", _why(told, why, len(jobs)), *about)
        first = Grid(corner, heads, (Row("1", jobs),))
        return RotationTable(len(jobs), 1, first, Grid("Begins as", (), ()), None, said, weight, asked)
    said, weight = _verdict(told, played, about)
    places = Grid(corner, heads, rows)
    return RotationTable(len(jobs), counted, places, _counts(told, played), _partners(played), said, weight, asked)


def _unit(told: Telling) -> str:
    """Return what the time between two swaps is called: a round where games or rounds end it, else a turn."""
    swaps = told.setting.swaps.values()
    over = any(event.what in ("round", "finished", "game won") for swap in swaps for event in swap.on)
    return "round" if over else "turn"


def _why(told: Telling, why: LosesPerson | NotWorkedOut, people: int) -> str:
    if isinstance(why, NotWorkedOut):
        return f"who goes where cannot be told: {why}"
    swap = told.setting.swaps[why.swap]
    if swap.table and people < len(swap.table[0]):
        return f"the table is for {number(len(swap.table[0]))} players, not for {number(people)}"
    return f"somebody is lost: {why}"


def _job(told: Telling, job: str) -> str:
    record = told.drill.job(job)
    role = "" if record is None else unmarked(own_text(told, record.role))
    spot = told.setting.spot_of(job)
    task = "" if spot is None or spot.task == "plays" else spot.task
    return " ".join(word for word in (job, role or task) if word)


def _rows(told: Telling, jobs: tuple[str, ...], count: int, played: Fairness, people: int | None) -> Iterator[Row]:
    """Yield who holds which job in each round; where that depends on who wins, the first round and what can follow."""
    group = told.drill.jobs
    if not played.open:
        shown = rounds(told.setting, group, min(count, SHOWN), people=people)
        before: Round | None = None
        for each in shown:
            yield Row(str(each.number), _cells(jobs, each), _turned(before, each))
            before = each
        return
    (first,) = rounds(told.setting, group, 1, people=people)
    yield Row("1", _cells(jobs, first))
    for side in ("near", "far"):
        try:
            after = rounds(told.setting, group, 2, [side] * len(told.setting.swaps), people=people)[-1]
        except NotWorkedOut:
            return
        winner = listed([job for job in told.team(side) if job in jobs])
        yield Row(f"2, {winner} {'win' if ' ' in winner else 'wins'}", _cells(jobs, after), _turned(first, after))


def _cells(jobs: tuple[str, ...], each: Round) -> tuple[str, ...]:
    return tuple(each.people.get(job, "") for job in jobs)


def _turned(before: Round | None, each: Round) -> str:
    """Return what else has changed since the round before: "ends changed", "left for right"."""
    if before is None:
        return ""
    ends = "ends changed" if before.ends_changed != each.ends_changed else ""
    sides = "left for right" if before.mirrored != each.mirrored else ""
    return ", ".join(words for words in (ends, sides) if words)


def _span(span: Span) -> str:
    least, most = span
    return str(least) if least == most else f"{least} to {most}"


def _counts(told: Telling, played: Fairness) -> Grid:
    """Return how often each person did what; where all have one role, how often each held which place."""
    roles = next(iter(played.doing.values()), {})
    by: Mapping[str, Mapping[str, Span]] = played.doing if len(roles) > 1 else played.jobs
    heads = tuple(next(iter(by.values()), {}))
    named = heads if by is played.doing else tuple(_job(told, job) for job in heads)
    rows = tuple(Row(who, tuple(_span(done[what]) for what in heads)) for who, done in by.items())
    return Grid("Begins as", named, rows)


def _partners(played: Fairness) -> Grid | None:
    people = sorted(played.jobs)
    if not played.partners:
        return None

    def together(one: str, two: str) -> str:
        low, high = sorted((one, two))
        return "" if one == two else _span(played.partners.get((low, high), (0, 0)))

    return Grid("With", tuple(people), tuple(Row(one, tuple(together(one, two) for two in people)) for one in people))


def _verdict(told: Telling, played: Fairness, about: tuple[str, ...]) -> tuple[Sentence, Weight]:
    unit = _unit(told)
    if played.uneven:
        tail = "; the swap’s own note says what is done about it" if settles(told) else ""
        said = f"not even: {uneven_words(told, played.uneven[0], played.rounds)}{tail}"
        return sentence("rotation", said, *about), "uneven"
    if played.open:
        waits = [span for doing in played.doing.values() if (span := doing.get("waits")) is not None]
        most = max((span[1] for span in waits), default=0)
        tail = f"; somebody may wait {times(most)}" if most else ""
        return sentence("rotation", f"in {many(played.rounds, unit)} it depends on who wins{tail}", *about), "open"
    return sentence("rotation", f"even: {even_words(told, played)}", *about), "even"


def shared_out(told: Telling) -> tuple[Sentence, ...]:
    """Return, for the coach, what the turns of a group of three or more come to, and whether they are even.

    Two who change places need no telling, and where it depends on who wins that is the game.
    """
    if told.brief:
        return ()
    places = len(group_of(told.setting, told.drill.jobs))
    least = places if told.drill.players is None else min(places, max(2, told.drill.players[0]))
    for people in (places, least):
        table = table_of(told, people) if people > 2 else None
        if table is not None and (_tells(told, table, people) or (table.weight == "uneven" and not settles(told))):
            head = f"with {number(people)} players, " if least < places and people != least else ""
            played = fairness(told.setting, told.drill.jobs, table.rounds, people=people)
            said = even_words(told, played) if table.weight == "even" else table.verdict.text
            said = f"{said.removesuffix('.')}{_whole_turns(told, table, instead=bool(head))}"
            return (sentence("swap:shared", f"{head}{lowered(said)}", *table.verdict.about),)
    return ()


def _tells(told: Telling, table: RotationTable, people: int) -> bool:
    """Whether the turns are even and come to something that can be said."""
    played = fairness(told.setting, told.drill.jobs, table.rounds, people=people) if table.weight == "even" else None
    return played is not None and bool(_alike(told, played))


def _whole_turns(told: Telling, table: RotationTable, *, instead: bool) -> str:
    """Return how many starts share the jobs out evenly, where the finish stops in the middle of a round of turns.

    ``instead``: only so many players need them, in place of the starts of the finish.
    """
    end = told.setting.finish
    moving = [swap for swap in told.setting.swaps.values() if swap.moves]
    each = moving[0].on[0].count if len(moving) == 1 and moving[0].on[0].what == "starts" else None
    if (
        end is None
        or end.kind != "total"
        or end.starts is None
        or end.each
        or each is None
        or end.starts % (each * table.rounds) == 0
    ):
        return ""
    whole = each * table.rounds
    fewer = end.starts // whole * whole
    even = f"{listed([str(count) for count in (fewer, fewer + whole) if count], 'or')} starts"
    return f"; play {even}, not {end.starts}" if instead else f"; {even} are even"


def settles(told: Telling) -> bool:
    """Whether the author has written what is done with a player over."""
    return any(says_who(swap.note) for swap in told.setting.swaps.values())


def even_words(told: Telling, played: Fairness) -> str:
    """Return what everyone has done in the end: "after six rounds everyone has done each job three times"."""
    moving = [swap for swap in told.setting.swaps.values() if swap.moves or swap.table]
    # Where swaps of two kinds come in turn, nobody counts the times between them.
    head = f"after {many(played.rounds, _unit(told))}" if len(moving) == 1 else "once all have changed"
    return f"{head} everyone has {listed(_alike(told, played)) or 'done the same'}"


def _alike(told: Telling, played: Fairness) -> list[str]:
    """Return what everyone has done as often as anybody: "done each job three times", "had each partner twice"."""
    moving = [swap for swap in told.setting.swaps.values() if swap.moves or swap.table]
    often = _often if len(moving) == 1 else _equally
    doing = {what: span[0] for what, span in next(iter(played.doing.values())).items()}
    done: list[str] = []
    if len(doing) == 1:
        places = {span for own in played.jobs.values() for span in own.values()}
        if len(places) == 1 and len(played.jobs) > 1:
            done.append(f"been in each place {often(places.pop()[0])}")
    elif len(set(doing.values())) == 1:
        done.append(f"done each job {often(next(iter(doing.values())))}")
    else:
        done += _done(told, doing, tuple(played.jobs))
    pairs = {played.partners.get(pair, (0, 0))[0] for pair in itertools.combinations(sorted(played.jobs), 2)}
    if played.partners and len(pairs) == 1:
        done.append(f"had each partner {often(pairs.pop())}")
    return done


def _often(count: int) -> str:
    return times(count)


def _equally(_count: int) -> str:
    return "equally often"


def _done(told: Telling, doing: Mapping[str, int], jobs: tuple[str, ...]) -> list[str]:
    """Return what somebody has done, jobs by their letter: "been A once", "B once", "waited twice"."""
    been: list[str] = []
    rest: list[str] = []
    for what, count in doing.items():
        own = [job for job in jobs if job_role(told, job) == what]
        if what in _TASKS:
            rest.append(f"{_TASKS[what]} {times(count)}")
        else:
            been.append(f"{own[0] if len(own) == 1 else f'“{what}”'} {times(count)}")
    return [*(f"{'' if number else 'been '}{words}" for number, words in enumerate(been)), *rest]


_TASKS: Final = {"plays": "played", "waits": "waited", "collects": "collected"}


def job_role(told: Telling, job: str) -> str:
    """Return what whoever holds a job is said to do: its role, or what its place is for."""
    spot = told.setting.spot_of(job)
    task = "waits" if spot is None else spot.task
    record = told.drill.job(job)
    return task if task == "waits" else one_line(record.role if record is not None else "") or task


def uneven_words(told: Telling, found: Uneven, rounds: int) -> str:
    """Return who does something more often than another: "in two rounds whoever begins as C waits twice, as A never"."""
    if found.what == "partners":
        return f"{found.most} are partners {times(found.most_often)}, {found.least} {times(found.least_often)}"
    if found.what == "waits" and found.most_often == rounds:
        return f"whoever begins as {found.most} waits all the time"
    jobs = [job.letter for job in told.drill.jobs if job_role(told, job.letter) == found.what]
    named = jobs[0] if len(jobs) == 1 else f"“{found.what}”"
    does = found.what if found.what in ("waits", "collects", "plays") else f"is {named}"
    return (
        f"in {many(rounds, _unit(told))} whoever begins as {found.most} {does} {times(found.most_often)}, "
        f"as {found.least} {times(found.least_often)}"
    )


def times(count: int) -> str:
    """Return how often: "never", "once", "twice", "three times"."""
    return {0: "never", 1: "once", 2: "twice"}.get(count, f"{number(count)} times")
