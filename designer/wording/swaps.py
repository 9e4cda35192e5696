"""Who takes whose place, and when."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from designer.drill.rules import Swap
from designer.play.rally import jobs_after
from designer.wording.counts import listed, lowered, many
from designer.wording.events import trigger
from designer.wording.names import letter
from designer.wording.sentence import Sentence, sentence, sentences_of
from designer.wording.telling import Telling
from designer.wording.tokens import own_text

_COURTS = {"court up": "a court up", "court down": "a court down"}


def swaps(told: Telling) -> tuple[Sentence, ...]:
    """Return who changes with whom, one sentence a swap, those that come sooner first."""
    return tuple(_swap(told, swap) for swap in ordered(told))


def _swap(told: Telling, swap: Swap) -> Sentence:
    note = own_text(told, swap.note) if has_deeds(swap) else ""
    words = sentences_of(swap_words(told, swap), *_take_over(swap), note)
    return sentence(f"swap:{swap.id}", words, swap.id)


def has_deeds(swap: Swap) -> bool:
    """Whether anything changes that is data, not only what the note says."""
    return bool(swap.moves or swap.table or swap.ends or swap.mirrored)


def ordered(told: Telling) -> list[Swap]:
    """Return the swaps, those after fewer starts, points or minutes first."""
    return sorted(told.setting.swaps.values(), key=lambda swap: (swap.on[0].what != "starts", swap.on[0].count or 0))


def swap_words(told: Telling, swap: Swap) -> str:
    """Return when and what changes: "after five starts A and B change jobs and ends"."""
    when = listed(list(dict.fromkeys(trigger(told, event) for event in swap.on)), "or")
    deeds = [words for words in (_moves(told, swap), _table(told, swap)) if words]
    if swap.ends:
        deeds = [_with_ends(deeds[0])] if deeds else ["change ends"]
    if swap.mirrored:
        deeds.append("all places move to the other side, left for right")
    if not deeds:
        note = own_text(told, swap.note)
        return f"{when}: {lowered(note)}" if note else f"{when}: who goes where is not yet said"
    comma = "," if when.startswith("when") else ""
    return f"{when}{comma} {'; '.join(deeds)}"


def _with_ends(deed: str) -> str:
    return deed.replace("change jobs", "change jobs and ends") if "change jobs" in deed else f"{deed}; change ends"


def _take_over(swap: Swap) -> Iterator[str]:
    if swap.take_over is not None:
        yield f"{many(swap.take_over, 'point')} in a row take over"


def _moves(told: Telling, swap: Swap) -> str:
    outcomes = [key for key in swap.moves if len(key) > 1]
    if outcomes:
        return _by_outcome(told, swap.moves, outcomes)
    after = {} if swap.table else jobs_after(told.setting, swap)
    moves = {old: new for old, new in after.items() if old != new}
    if not moves:
        return ""
    pairs = [(a, b) for a, b in moves.items() if moves.get(b) == a and a < b]
    if len(pairs) * 2 == len(moves):
        words = [f"{letter(told, a)} and {letter(told, b)}" for a, b in pairs]
        verb = "change places" if all(told.ends.get(a) == told.ends.get(b) for a, b in pairs) else "change jobs"
        return f"{listed([words[0] + ' ' + verb, *words[1:]])}{' too' if words[1:] else ''}"
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
        f"{letter(told, old)} becomes {letter(told, new)}"
        for old, new in moves.items()
        if len(old) == 1 and new not in outcomes
    ]
    return listed(words)


def _table(told: Telling, swap: Swap) -> str:
    """Return who plays with whom, round by round; in a player's card the line at the top says it."""
    if not swap.table:
        return ""
    if told.brief:
        return "change jobs"
    jobs = sorted(told.ends)
    rows = [_row(told, dict(zip(jobs, row, strict=False))) for row in swap.table]
    names = _row(told, {job: letter(told, job) for job in jobs})
    return f"people change jobs. Rounds, in the places of {names}: {'; '.join(rows)}"


def _row(told: Telling, people: Mapping[str, str]) -> str:
    """Return one round: "A and B v C and D"; the order in a pair is that of the jobs."""
    teams = [[people.get(job, "?") for job in told.team(end)] for end in ("near", "far")]
    return " v ".join(listed(team) for team in teams if team)


def path(told: Telling, start: str) -> str:
    """Return what becomes of the person who starts as ``start``: "After five starts you are B."; "" where nothing."""
    for swap in ordered(told):
        if swap.table:
            own = [
                job
                for row in swap.table
                for job, person in zip(sorted(told.ends), row, strict=False)
                if person == start
            ]
            return f"round by round you are {', '.join(own)}" if own else ""
        after = jobs_after(told.setting, swap).get(start, start)
        if after != start:
            when = trigger(told, swap.on[0])
            return f"{when}{',' if when.startswith('when') else ''} you are {letter(told, after)}"
    return ""
