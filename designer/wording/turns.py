"""What becomes of one person at each swap: the jobs that follow one another, as a player's own card says it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from designer.drill.rules import Swap
from designer.wording.counts import listed
from designer.wording.events import trigger
from designer.wording.names import letter
from designer.wording.sentence import Sentence, sentence, sentences_of
from designer.wording.swaps import (
    MIRRORED,
    exchange,
    has_deeds,
    held_moves,
    optional_jobs,
    ordered,
    swap_words,
    take_over,
    things_of_hands,
    times,
)
from designer.wording.telling import Telling
from designer.wording.tokens import own_text


def own_swaps(told: Telling, start: str | None) -> tuple[Sentence, ...]:
    """Return the swaps as they are told to whoever starts in the job ``start``: what "you" become, and when."""
    found = []
    for swap in ordered(told):
        if not has_deeds(swap) and not swap.note.strip():
            continue
        own = "" if start is None else _own(told, swap, start)
        words = sentences_of(own or swap_words(told, swap), *take_over(swap))
        found.append(sentence(f"swap:{swap.id}", words, swap.id))
        if has_deeds(swap):
            found.append(sentence(f"swap:{swap.id}:note", own_text(told, swap.note), swap.id))
    return (*(each for each in found if each.parts), *things_of_hands(told))


def changes_job(told: Telling, start: str) -> bool:
    """Whether whoever starts as ``start`` has another job later."""
    for swap in ordered(told):
        if swap.table:
            rows = [dict(zip(row, sorted(told.ends), strict=False)) for row in swap.table]
            return len({row[start] for row in rows if start in row}) > 1
        if held_moves(told, swap, optional_jobs(told) - {start}).get(start, start) != start:
            return True
    return False


def _own(told: Telling, swap: Swap, start: str) -> str:
    """Return a swap that the reader takes part in, "" for one that is told as to anybody."""
    if swap.table:
        return _own_rounds(told, swap, start)
    if any(len(key) > 1 for key in swap.moves):
        return ""
    moves = held_moves(told, swap, optional_jobs(told) - {start})
    if moves.get(start, start) == start:
        return ""
    when = times(told, swap)
    again = len(swap.on) == 1 and when != _once(told, swap)
    become = _chain(told, moves, start) if again else f"you are {letter(told, moves[start])}"
    mirrored = f"; all is mirrored: {MIRRORED}" if swap.mirrored else ""
    if _is_for_others_too(moves):
        together = exchange(told, swap, moves)
        return f"{_after(when)} {together}: {become}{mirrored}"
    ends = "" if len({told.ends.get(job) for job in moves}) == 1 else "change ends: " if swap.ends else ""
    keeps = "; stay at your end" if not swap.ends and _crosses(told, moves) else ""
    other = _with_more(told, swap, start, moves, again=again)
    return ". ".join(text for text in (f"{_after(when)} {ends}{become}{keeps}{mirrored}", other) if text)


def _once(told: Telling, swap: Swap) -> str:
    return trigger(told, swap.on[0])


def _after(when: str) -> str:
    return f"{when}," if when.startswith("when") else when


def _is_for_others_too(moves: Mapping[str, str]) -> bool:
    """Whether several pairs change at once, which each of them has to know."""
    return len(moves) > 2 and all(moves.get(new) == old for old, new in moves.items())


def _crosses(told: Telling, moves: Mapping[str, str]) -> bool:
    """Whether jobs of both ends change hands, so that it has to be said where people stay."""
    return all(job in told.ends for job in moves) and len({told.ends[job] for job in moves}) > 1


def _with_more(told: Telling, swap: Swap, start: str, moves: Mapping[str, str], *, again: bool) -> str:
    """Return what the reader becomes where those come who may: "With C: B, then C, then A again"; "" for the same."""
    more = optional_jobs(told) - {start}
    everybody = held_moves(told, swap, frozenset())
    path = _chain(told, everybody, start) if again else f"you are {letter(told, everybody.get(start, start))}"
    usual = _chain(told, moves, start) if again else f"you are {letter(told, moves[start])}"
    if path == usual:
        return ""
    extra = listed([letter(told, job) for job in sorted(more) if job in everybody])
    return f"With {extra}: {path.removeprefix('you are ')}"


def _chain(told: Telling, moves: Mapping[str, str], start: str) -> str:
    """Return what a person becomes until all begins again: "you are B, then C, then A again"."""
    job = moves.get(start, start)
    said = f"you are {letter(told, job)}"
    for _ in moves:
        if job == start:
            return f"{said} again"
        job = moves.get(job, job)
        said += f", then {letter(told, job)}"
    return said


def _own_rounds(told: Telling, swap: Swap, start: str) -> str:
    """Return where the reader plays in each round and with whom; "" for somebody who has no place in the table."""
    own = rounds_of(told, swap, start)
    change = f"{_after(times(told, swap))} change places"
    return f"{change}: {own}" if own else f"{change}; letters stay on the court"


def rounds_of(told: Telling, swap: Swap, start: str) -> str:
    """Return at which places a person plays in which rounds, where these change, and with whom; "" for who has no place.

    Letters on the court are places, so a partner is "who began as D".
    """
    rows = [dict(zip(sorted(told.ends), row, strict=False)) for row in swap.table]
    own = [next((job for job, person in row.items() if person == start), None) for row in rows]
    mates = [
        listed([row[mate] for mate in told.team(told.ends[job]) if mate != job and mate in row]) if job else ""
        for row, job in zip(rows, own, strict=True)
    ]
    if len({job for job in own if job is not None}) > 1:
        places = [f"at {letter(told, job)} in {_spoken(numbers)}" for job, numbers in _rounds_by_job(own).items()]
        # Rounds are named once.
        first, *more = places
        said = ", ".join([first, *(place.replace(" rounds ", " ").replace(" round ", " ") for place in more)])
        return f"you play {said}" + (f". Partners: who began as {', '.join(mates)}" if all(mates) else "")
    with_whom = [f"in round {number} with who began as {mate}" for number, mate in enumerate(mates, 1) if mate]
    return f"you begin each as {letter(told, start)}, {', '.join(with_whom[1:])}" if len(with_whom) > 1 else ""


def _rounds_by_job(own: Sequence[str | None]) -> dict[str, list[int]]:
    """Return the rounds that a person plays in each job, in order of the first of them."""
    found: dict[str, list[int]] = {}
    for number, job in enumerate(own, 1):
        if job is not None:
            found.setdefault(job, []).append(number)
    return found


def _spoken(numbers: list[int]) -> str:
    """Return rounds as they are said: "round 4", "rounds 1 to 3", "rounds 1 and 5"."""
    if len(numbers) == 1:
        return f"round {numbers[0]}"
    if len(numbers) > 2 and numbers[-1] - numbers[0] == len(numbers) - 1:
        return f"rounds {numbers[0]} to {numbers[-1]}"
    return f"rounds {listed([str(number) for number in numbers])}"
