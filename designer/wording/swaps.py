"""Who takes whose place, and when."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Any, Final

from designer.drill.base import ON_THE_LINE, Point
from designer.drill.conditions import Event
from designer.drill.places import middle
from designer.drill.rules import Swap
from designer.play.layout import points_of, things_placed
from designer.play.rally import jobs_after
from designer.wording.counts import listed, lowered, many
from designer.wording.events import trigger
from designer.wording.kit import is_carried
from designer.wording.names import letter, thing_name, without_article
from designer.wording.sentence import Sentence, sentence, sentences_of
from designer.wording.telling import Telling
from designer.wording.tokens import own_text
from designer.wording.units import distance

_COURTS: Final = {"court up": "a court up", "court down": "a court down"}
_SOONER: Final = (
    *("played", "landed", "missed", "caught", "struck", "reached", "called", "won"),
    *("starts", "score", "minutes", "game won", "round", "finished"),
)
"""What happens sooner in play first."""


def swaps(told: Telling) -> tuple[Sentence, ...]:
    """Return who changes with whom, one sentence a swap, those that come sooner first, then what moves with a hand."""
    told_of = (swap for swap in ordered(told) if has_deeds(swap) or swap.note.strip())
    return (*(found for swap in told_of if (found := _swap(told, swap)).parts), *things_of_hands(told))


def _swap(told: Telling, swap: Swap) -> Sentence:
    note = own_text(told, swap.note) if has_deeds(swap) else ""
    words = swap_words(told, swap)
    stays = _laid_out_stays(told, swap) if words and not told.brief else ()
    return sentence(f"swap:{swap.id}", sentences_of(words, *take_over(swap), *stays, note), swap.id)


def times(told: Telling, swap: Swap) -> str:
    """Return when a swap comes: "after every five starts", "at the end"."""
    return listed(list(dict.fromkeys(each_time(told, event) for event in swap.on)), "or")


def has_deeds(swap: Swap) -> bool:
    """Whether anything changes that is data, not only what the note says."""
    return bool(swap.moves or swap.table or swap.ends or swap.mirrored)


def ordered(told: Telling) -> list[Swap]:
    """Return the swaps in the order in which they come in play."""
    return sorted(told.setting.swaps.values(), key=lambda swap: (_SOONER.index(swap.on[0].what), swap.on[0].count or 0))


def swap_words(told: Telling, swap: Swap) -> str:
    """Return when and what changes: "after every five starts A and B change jobs and ends"."""
    when = times(told, swap)
    deeds = [words for words in (_moves(told, swap), _table(told, swap)) if words]
    if swap.ends and not deeds:
        deeds = ["change ends"]
    if swap.mirrored:
        deeds.append(mirrored_words(told))
    if not deeds:
        note = own_text(told, swap.note)
        return f"{when}: {lowered(note)}" if note else f"{when}: who goes where is not yet said"
    comma = "," if when.startswith("when") else ""
    return f"{when}{comma} {'; '.join(deeds)}"


def each_time(told: Telling, event: Event) -> str:
    """Return when a swap comes: "after every five starts", where starts or minutes bring it more than once."""
    end = told.setting.finish
    length = {"starts": end.starts, "minutes": end.minutes}.get(event.what) if end is not None else None
    once = length is not None and not (end is not None and end.each) and 2 * (event.count or 1) >= length
    words = trigger(told, event)
    if event.what not in ("starts", "minutes") or once:
        return words
    return "after each start" if words == "after one start" else words.replace("after ", "after every ", 1)


def take_over(swap: Swap) -> Iterator[str]:
    """Yield what lets somebody who comes in stay, and for how long one may."""
    if swap.take_over is not None:
        row = " in a row" if swap.take_over > 1 else ""
        yield f"whoever comes in takes over with {many(swap.take_over, 'point')}{row}"
    if swap.most_stays is not None:
        yield f"nobody stays for more than {many(swap.most_stays, 'game')}"


def _moves(told: Telling, swap: Swap) -> str:
    """Return who takes whose job, first for as few people as the drill can do with, then for those who may come."""
    outcomes = [key for key in swap.moves if len(key) > 1]
    if outcomes:
        return _by_outcome(told, swap.moves, outcomes)
    if swap.table:
        return ""
    more = optional_jobs(told)
    everybody = exchange(told, swap, held_moves(told, swap, frozenset()))
    fewest = exchange(told, swap, held_moves(told, swap, more)) if more else everybody
    if not fewest or fewest == everybody:
        return everybody
    extra = [letter(told, job) for job in sorted(more) if job in swap.moves]
    return f"{fewest}; with {listed(extra)}, {everybody}"


def held_moves(told: Telling, swap: Swap, without: frozenset[str]) -> dict[str, str]:
    """Return who goes where at the first swap while nobody is in the jobs of ``without``."""
    spots = {id: spot for id, spot in told.setting.spots.items() if spot.job not in without}
    after = jobs_after(replace(told.setting, spots=spots), swap)
    return {old: new for old, new in after.items() if old != new}


def optional_jobs(told: Telling) -> frozenset[str]:
    """Return the jobs that nobody holds when as few people come as the drill can do with: those who wait, last first."""
    if told.drill.players is None:
        return frozenset()
    least, _ = told.drill.players
    rank = {"plays": 0, "collects": 1, "waits": 2}
    spots = [s for s in told.setting.spots.values() if (job := told.drill.job(s.job)) is None or job.by == "player"]
    jobs = [spot.job for spot in sorted(spots, key=lambda spot: (rank[spot.task], spot.job))]
    return frozenset(job for job in jobs[least:] if job not in told.ends)


def exchange(told: Telling, swap: Swap, moves: Mapping[str, str]) -> str:
    """Return moves between jobs in words: "A and B change jobs and ends", "A becomes B, B becomes C and C becomes A"."""
    if not moves:
        return ""
    pairs = [(a, b) for a, b in moves.items() if moves.get(b) == a and a < b]
    if len(pairs) * 2 < len(moves):
        ring = _round_words(told, moves)
        return f"{ring}; change ends" if swap.ends else ring
    if all(a in told.ends and b not in told.ends for a, b in pairs):
        come = "come" if len(pairs) > 1 else "comes"
        return f"{_letters(told, [b for _, b in pairs])} {come} in for {_letters(told, [a for a, _ in pairs])}"
    same_end = all(told.ends.get(a) == told.ends.get(b) for a, b in pairs)
    words = [f"{_letters(told, pair)}" for pair in pairs]
    first = f"{words[0]} change {'places' if same_end else 'jobs and ends' if swap.ends else 'jobs, not ends'}"
    return ", and so do ".join([first, *words[1:]])


def _laid_out_stays(told: Telling, swap: Swap) -> Iterator[str]:
    """Yield that what is laid out at one end stays there, where people change ends with their jobs."""
    items = told.setting.items.values()
    at_one_end = any(told.end_of_item(item.id) is not None and is_carried(item) for item in items)
    if swap.ends and swap.moves and at_one_end and not swap.mirrored:
        yield "what is laid out stays"


def mirrored_words(told: Telling) -> str:
    """Return that it is played with left for right, and that what is laid out goes over, where that is not where it was."""
    layout = ", the layout too" if _lies_on_one_side(told) else ""
    return f"play it mirrored{layout}: left for right"


def _lies_on_one_side(told: Telling) -> bool:
    """Whether anything laid out but balls is elsewhere when seen in a mirror."""
    placed = [(item.kind, points_of(told.setting, item, turned=turned)) for item, turned in things_placed(told.setting)]
    things = {(kind, frozenset(map(_to_millimetre, points))) for kind, points in placed if kind not in _NOT_LAID}
    return things != {(kind, frozenset((-x, y) for x, y in points)) for kind, points in things}


_NOT_LAID: Final = ("note", "basket")


def _to_millimetre(point: Point) -> Point:
    return round(point[0], 3) + 0.0, round(point[1], 3)


def things_of_hands(told: Telling) -> Iterator[Sentence]:
    """Yield whether what lies on the side of somebody's hand stays or moves when people change ends.

    Two of one hand find it on the same side of their own; where right meets left it moves to the other side of the middle.
    """
    changes = any(swap.ends for swap in told.setting.swaps.values())
    things = [
        item
        for item in told.setting.items.values()
        if getattr(item, "hand_of", None) and is_carried(item) and points_of(told.setting, item)
    ]
    if not things:
        return
    name = without_article(thing_name(told, things[0]) or "it")
    same = len({thing_name(told, item) for item in things}) == 1
    what = (f"each {name}" if len(things) > 1 else f"the {name}") if same else "each of them"
    astray = [item for item in things if not _fits_both_ends(told, item)]
    if not astray:
        words = f"{what} stays where it is" if changes and not told.brief else ""
    elif told.brief:
        words = "" if changes else "stay at your end"
    else:
        far = {distance(2 * abs(middle(points_of(told.setting, item))[0]), "across", told.units) for item in astray}
        moves = f"{what} moves {far.pop() if len(far) == 1 else 'as far'} to the other side of the middle"
        head = "players of different hands"
        words = f"{head} change ends: {moves}" if changes else f"{head} stay at their ends; to change them, {moves}"
    if words:
        yield sentence("swap:hands", words, *sorted(item.id for item in things))


def _fits_both_ends(told: Telling, item: Any) -> bool:
    """Whether whoever comes from the other end finds a thing on the side that the other one had it on there."""
    if item.both_ends:
        return True
    x, y = middle(points_of(told.setting, item))
    alike = [
        middle(points_of(told.setting, other))
        for other in told.setting.items.values()
        if is_carried(other) and thing_name(told, other) == thing_name(told, item) and points_of(told.setting, other)
    ]
    facing = [point for point in alike if point[1] * y < 0]
    if facing:
        return any(abs(other + x) <= ON_THE_LINE for other, _ in facing)
    return len({job.hand for job in told.drill.jobs if job.by == "player" and job.letter in told.ends}) < 2


def _letters(told: Telling, jobs: Sequence[str]) -> str:
    return listed([letter(told, job) for job in jobs])


def _round_words(told: Telling, moves: Mapping[str, str]) -> str:
    return listed([f"{letter(told, old)} becomes {letter(told, new)}" for old, new in _round(moves)])


def _round(moves: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """Yield the moves one after another as a person goes round, beginning with the first letter."""
    left = dict(sorted(moves.items()))
    while left:
        old = next(iter(left))
        while old in left:
            new = left.pop(old)
            yield old, new
            old = new


def _by_outcome(told: Telling, moves: Mapping[str, str], outcomes: list[str]) -> str:
    words = []
    for key in outcomes:
        goal = moves[key]
        if goal in _COURTS:
            words.append(f"the {key} moves {_COURTS[goal]}")
        elif moves.get(goal) == key:
            words.append(f"{letter(told, goal)} comes in for the {key}")
        else:
            words.append(f"the {key} becomes {letter(told, goal)}")
    words += [
        f"{letter(told, old)} comes in for the {new}"
        for old, new in moves.items()
        if len(old) == 1 and new in outcomes and moves[new] != old
    ]
    words += [
        f"{letter(told, old)} becomes {letter(told, new)}"
        for old, new in moves.items()
        if len(old) == 1 and new not in outcomes
    ]
    return listed(words)


def _table(told: Telling, swap: Swap) -> str:
    """Return who plays with whom, round by round."""
    if not swap.table:
        return ""
    jobs = sorted(told.ends)
    places = [*jobs, *(spot.job for spot in told.setting.spots.values() if spot.job not in told.ends)]
    rows = [_row(told, dict(zip(sorted(places), row, strict=False))) for row in swap.table]
    numbered = "; ".join(f"{number} {row}" for number, row in enumerate(rows, 1))
    return f"people change places. Rounds, {_order(told, jobs)}: {numbered}"


def _order(told: Telling, jobs: Sequence[str]) -> str:
    """Return in which order the rows of a table name people: by what the jobs are called, else by their letters."""
    roles = [
        [own_text(told, job.role) for job in map(told.drill.job, told.team(end)) if job] for end in ("near", "far")
    ]
    if roles[0] == roles[1] and all(roles[0]) and roles[0]:
        return f"each pair in the order {', '.join(roles[0])}"
    return f"in the places of {_row(told, {job: letter(told, job) for job in jobs})}"


def _row(told: Telling, people: Mapping[str, str]) -> str:
    """Return one round: "A and B v C and D"; the order in a pair is that of the jobs."""
    teams = [[people.get(job, "?") for job in told.team(end)] for end in ("near", "far")]
    waits = [who for job, who in people.items() if job not in told.ends]
    rest = f", {listed(waits)} {'waits' if len(waits) == 1 else 'wait'}" if waits else ""
    return " v ".join(listed(team) for team in teams if team) + rest
