"""What becomes of one person at each swap: the jobs that follow one another, as a player's own card says it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from designer.drill.rules import Swap
from designer.wording.counts import listed
from designer.wording.events import trigger
from designer.wording.names import letter
from designer.wording.players_over import says_who
from designer.wording.sentence import Sentence, sentence, sentences_of
from designer.wording.swaps import (
    exchange,
    has_deeds,
    held_moves,
    mirrored_words,
    optional_jobs,
    ordered,
    swap_words,
    take_over,
    things_of_hands,
    times,
)
from designer.wording.telling import Telling
from designer.wording.tokens import own_text

ROUNDS: Final = "Rounds"
"""What the list is called that says where one plays in each round, and with whom."""
ROUNDS_KEY: Final = ":rounds"
"""How the key of its sentence ends."""


def own_swaps(told: Telling, start: str | None) -> tuple[Sentence, ...]:
    """Return the swaps as they are told to whoever starts in the job ``start``: what "you" become, and when."""
    found = []
    for swap in ordered(told):
        if not has_deeds(swap) and not swap.note.strip():
            continue
        own = "" if start is None else _own(told, swap, start)
        words = sentences_of(own or swap_words(told, swap), *take_over(swap))
        found.append(sentence(f"swap:{swap.id}", words, swap.id))
        if has_deeds(swap) and not _is_later(told, swap, start):
            found.append(_note(told, swap))
    return (*(each for each in found if each.parts), *things_of_hands(told))


def swaps_later(told: Telling, start: str | None) -> tuple[Sentence, ...]:
    """Return what the reader looks up when it comes: with whom one plays in which round, and who is over then."""
    found = []
    for swap in ordered(told):
        rounds = rounds_told(told, swap, start) if swap.table and start is not None else ""
        found.append(sentence(f"swap:{swap.id}{ROUNDS_KEY}", rounds, swap.id))
        if _is_later(told, swap, start):
            found.append(_note(told, swap))
    return tuple(each for each in found if each.parts)


def _note(told: Telling, swap: Swap) -> Sentence:
    return sentence(f"swap:{swap.id}:note", own_text(told, swap.note), swap.id)


def _is_later(told: Telling, swap: Swap, start: str | None) -> bool:
    """Whether a note is about players over, which whoever begins on the court need not know before."""
    return has_deeds(swap) and start in told.ends and says_who(swap.note)


def changes_job(told: Telling, start: str) -> bool:
    """Whether whoever starts as ``start`` has another job later."""
    for swap in ordered(told):
        if swap.table:
            own = own_rounds(told, swap, start)
            return own is not None and own.moves
        if held_moves(told, swap, optional_jobs(told) - {start}).get(start, start) != start:
            return True
    return False


def _own(told: Telling, swap: Swap, start: str) -> str:
    """Return a swap that the reader takes part in, "" for one that is told as to anybody."""
    if swap.table:
        return _told_by_rounds(told, swap, start)
    if any(len(key) > 1 for key in swap.moves):
        return ""
    moves = held_moves(told, swap, optional_jobs(told) - {start})
    if moves.get(start, start) == start:
        return ""
    when = times(told, swap)
    again = len(swap.on) == 1 and when != _once(told, swap)
    become, other = _with_more(told, swap, start, moves, again=again)
    mirrored = f"; {mirrored_words(told)}" if swap.mirrored else ""
    if _is_for_others_too(moves):
        partners = all(told.ends.get(old) == told.ends.get(new) for old, new in moves.items())
        together = "partners change places" if partners else exchange(told, swap, moves)
        return f"{_after(when)} {together}: {become}{mirrored}"
    ends = "" if len({told.ends.get(job) for job in moves}) == 1 else "change ends: " if swap.ends else ""
    keeps = "; stay at your end" if not swap.ends and _crosses(told, moves) else ""
    when = f"{when}," if ends else _after(when)  # "after the game change ends" is misread
    return ". ".join(text for text in (f"{when} {ends}{become}{keeps}{mirrored}", other) if text)


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


def _with_more(told: Telling, swap: Swap, start: str, moves: Mapping[str, str], *, again: bool) -> tuple[str, str]:
    """Return what the reader becomes, and what where those come who may: ("you are B", "With C you are C"), the second "" for the same.

    Where those only come in between, both are said at once: "you are B, then C if present, then A again".
    """
    more = optional_jobs(told) - {start}
    everybody = held_moves(told, swap, frozenset())
    if not again:
        usual, path = (letter(told, then.get(start, start)) for then in (moves, everybody))
    else:
        round_, full = _ring(moves, start), _ring(everybody, start)
        if round_ != full and round_ == [job for job in full if job not in more]:
            return f"you are {_chain(told, full, more)}", ""
        usual, path = _chain(told, round_), _chain(told, full)
    if path == usual:
        return f"you are {usual}", ""
    extra = listed([letter(told, job) for job in sorted(more) if job in everybody])
    return f"you are {usual}", f"With {extra} you are {path}"


def _ring(moves: Mapping[str, str], start: str) -> list[str]:
    """Return the jobs that a person has one after another from ``start`` on, until all begins again."""
    ring = [moves.get(start, start)]
    for _ in moves:
        if ring[-1] == start:
            break
        ring.append(moves.get(ring[-1], ring[-1]))
    return ring


def _chain(told: Telling, ring: Sequence[str], more: frozenset[str] = frozenset()) -> str:
    """Return jobs that follow one another: "B, then C if present, then A again"; those of ``more`` are not always there."""
    said = ", then ".join(f"{letter(told, job)}{' if present' if job in more else ''}" for job in ring)
    return f"{said} again"


@dataclass(frozen=True, slots=True)
class OwnRounds:
    """Where one person plays in each round of a table, and with whom, called by the letter that they began with; "" for nobody."""

    places: tuple[str, ...]
    partners: tuple[str, ...]

    @property
    def moves(self) -> bool:
        """Whether the place is not always the same."""
        return len(set(self.places)) > 1


def own_rounds(told: Telling, swap: Swap, start: str) -> OwnRounds | None:
    """Return the rounds of whoever starts as ``start``, None for somebody who has no place in the table."""
    more = (spot.job for spot in told.setting.spots.values() if spot.job not in told.ends)
    jobs = sorted([*told.ends, *more])
    rows = [dict(zip(jobs, row, strict=False)) for row in swap.table]
    places = [next((job for job, person in row.items() if person == start), "") for row in rows]
    if not any(places):
        return None
    partners = (
        listed([row[mate] for mate in told.team(told.ends[job]) if mate != job and mate in row])
        if job in told.ends
        else ""
        for row, job in zip(rows, places, strict=True)
    )
    return OwnRounds(tuple(places), tuple(partners))


def _told_by_rounds(told: Telling, swap: Swap, start: str) -> str:
    """Return that places or partners change after each round, where a list says which."""
    own, when = own_rounds(told, swap, start), _after(times(told, swap))
    if own is None:
        return f"{when} change places; letters stay on the court"
    with_whom = any(own.partners)
    if own.moves:
        if own.places[1] not in told.ends:
            return f"{when} change places{' and partners' if with_whom else ''}: see {ROUNDS}"
        partner = f", your partner began as {own.partners[1]}" if len(own.partners[1]) == 1 else ""
        then = f"in round 2 you are {letter(told, own.places[1])}{partner}"
        return sentences_of(f"{when} see {ROUNDS}: {then}", _with_those_over(told, swap, start))
    new = f", new partner: see {ROUNDS}" if with_whom else ""
    return f"{when} you are {letter(told, start)} again{new}"


def _with_those_over(told: Telling, swap: Swap, start: str) -> str:
    """Return where to look when more people are there than places, "" where nobody is ever over."""
    over = [letter(told, spot.job) for spot in told.setting.spots.values() if spot.job not in told.ends]
    return f"with {listed(over)} see Rules" if over and _is_later(told, swap, start) else ""


def rounds_told(told: Telling, swap: Swap, start: str) -> str:
    """Return at which places a person plays in which rounds, where these change, and with whom; "" for who has no place.

    Letters on the court are places, so a partner is "who began as D".
    """
    own = own_rounds(told, swap, start)
    if own is None:
        return ""
    partners = f"with who began as {', '.join(mate or '–' for mate in own.partners)}" if any(own.partners) else ""
    if not own.moves:
        return f"{ROUNDS}: {partners}" if partners else ""
    places = [f"at {letter(told, job)} in {_spoken(numbers)}" for job, numbers in _rounds_by_job(own.places).items()]
    # Rounds are named once.
    first, *more = places
    said = ", ".join([first, *(place.replace(" rounds ", " ").replace(" round ", " ") for place in more)])
    return f"{ROUNDS}: {'; '.join(words for words in (said, partners) if words)}"


def _rounds_by_job(own: Sequence[str]) -> dict[str, list[int]]:
    """Return the rounds that a person plays in each job, in order of the first of them."""
    found: dict[str, list[int]] = {}
    for number, job in enumerate(own, 1):
        if job:
            found.setdefault(job, []).append(number)
    return found


def _spoken(numbers: list[int]) -> str:
    """Return rounds as they are said: "round 4", "rounds 1 to 3", "rounds 1 and 5"."""
    if len(numbers) == 1:
        return f"round {numbers[0]}"
    if len(numbers) > 2 and numbers[-1] - numbers[0] == len(numbers) - 1:
        return f"rounds {numbers[0]} to {numbers[-1]}"
    return f"rounds {listed([str(number) for number in numbers])}"
