"""Where it ends."""

from __future__ import annotations

from collections.abc import Iterator

from designer.drill.rules import Finish
from designer.wording.counts import many, number
from designer.wording.names import letter
from designer.wording.people import opponents
from designer.wording.players_over import says_who
from designer.wording.sentence import Sentence, sentence, sentences_of
from designer.wording.telling import Telling
from designer.wording.tokens import own_text

_LAST = {"played out": "the last rally is played out", "stops": "a rally under way then does not count"}
_LEVEL = {
    "shared": "level totals share the win",
    "one more each": "level: one more start each until one leads",
    "next point": "level: the next point wins",
}


def finish(told: Telling) -> Sentence | None:
    """Return where the drill ends, None where nothing says so."""
    end = told.setting.finish
    if end is None:
        return None
    later = () if told.brief else _when_level(told, end)
    note = "" if told.brief and says_who(end.note) else own_text(told, end.note)
    words = sentences_of(_whole(told, end), *_added_up(told, end), *later, *_alone(told, end), note)
    return sentence(f"finish:{end.id}", words, end.id)


def finish_later(told: Telling) -> tuple[Sentence, ...]:
    """Return what a player need not know before the score is level or the time is up, () where there is no such thing."""
    end = told.setting.finish
    if end is None:
        return ()
    level = (text.replace("level: ", "level score: ") for text in _when_level(told, end))
    words = sentences_of(*level, own_text(told, end.note) if says_who(end.note) else "")
    return (sentence(f"finish:{end.id}:later", words, end.id),) if words else ()


def _whole(told: Telling, end: Finish) -> str:
    """Return what is played for with its rounds; a race of several rounds starts each of them anew."""
    if _is_race_for_oneself(end):
        head = finish_head(told, end)
        if told.brief and head.startswith("first"):
            return f"{number(end.rounds)} rounds, {head} in each; the highest own total wins"
        return f"{number(end.rounds)} rounds, each from 0: {head}{'; the highest own total wins' if told.brief else ''}"
    return f"{finish_head(told, end)}{_rounds(end)}"


def _is_race_for_oneself(end: Finish) -> bool:
    """Whether several rounds are each a race to a score, and everyone keeps an own total."""
    return end.kind == "race" and end.rounds > 1 and end.totals == "person" and end.to not in (None, "own best")


def finish_head(told: Telling, end: Finish) -> str:
    """Return what is played for, without rounds and ties: "first to 11 by 2", "goal: 20 together in 4 min"."""
    match end.kind:
        case "race":
            return _race(told, end)
        case "goal":
            return _goal(told, end)
        case "tie-break":
            return f"a tie-break to {end.to if end.to != 'own best' and end.to else 7}{_margin(end)}"
        case "game":
            return f"{'a game' if end.rounds == 1 else 'games'} by the rules of tennis"
    return _total(told, end)


def _race(told: Telling, end: Finish) -> str:
    together = (
        " together"
        if end.scores == "all together"
        else ", each pair for itself"
        if end.scores == "pair" and end.running
        else ""
    )
    if end.to == "own best":
        return f"beat your own best{' run' if end.running else ''}{together}{_minutes(end)}"
    if end.to is None:
        return f"the highest score wins{_minutes(end, 'in')}"
    if end.running:
        return f"{end.to} in a row{together}{_minutes(end)}"
    who = "first pair" if end.scores in ("pair", "side") and len(told.playing) > 2 else "first"
    floor = f", {end.floor} loses".replace("-", "−") if end.floor is not None else ""
    if end.scores == "all together":
        return f"{end.to} together{_minutes(end)}"
    ahead = f", or whoever leads after {end.minutes} min" if end.minutes is not None else ""
    return f"{who} to {end.to}{_margin(end)}{floor}{ahead}"


def _margin(end: Finish) -> str:
    by = f" by {end.margin}" if end.margin > 1 else ""
    if end.cap is None:
        return by
    return f"{by}; at {end.cap - 1}–{end.cap - 1} the next point wins"


def _minutes(end: Finish, link: str = "or") -> str:
    return f"{',' if link == 'or' else ''} {link} {end.minutes} min" if end.minutes is not None else ""


def _starts(end: Finish, link: str = "from") -> str:
    if end.starts is None:
        return ""
    return f" {link} {many(end.starts, 'start')}{' each' if end.each else ''}"


def _goal(told: Telling, end: Finish) -> str:
    to = end.to
    if to is None:
        return f"as many as you can{_starts(end, 'in')}{_minutes(end, 'in')}"
    if to == "own best":
        return f"beat your own best{_starts(end)}{_minutes(end, 'in')}"
    scorer = _only_scorer(told)
    if scorer is not None and end.scores != "all together" and not told.cooperative:
        across = opponents(told, (scorer,))
        lost = f"; if not, {letter(told, across[0])} wins" if len(across) == 1 else ""
        return f"{letter(told, scorer)} wins with {to} points or more{_starts(end)}{_minutes(end, 'in')}{lost}"
    together = " together" if end.scores == "all together" else ""
    each = " each round" if end.rounds > 1 else ""
    return f"goal{each}: {to}{together}{_starts(end)}{_minutes(end, 'in')}"


def _only_scorer(told: Telling) -> str | None:
    """Return the one letter that can score, None where others can too."""
    from designer.wording.events import shooters

    letters: set[str] = set()
    for record in told.setting.points.values():
        if record.gives.then != "points":
            continue
        for event in record.on:
            own = {name for name in event.by if len(name) == 1} or set(shooters(told, event))
            if not own:
                return None
            letters |= own
    return letters.pop() if len(letters) == 1 else None


def _total(told: Telling, end: Finish) -> str:
    people = sum(job.by == "player" for job in told.drill.jobs) if end.scores == "person" else len(told.playing)
    several = max(people, len(told.playing)) > 2 or bool(_order(told))
    wins = "highest total wins" if several else "higher total wins"
    if end.scores == "all together":
        return f"count the total{_starts(end, 'of')}{_minutes(end, 'in')}"
    length = " ".join(words for words in (_starts(end, "").strip(), _minutes(end, "").strip()) if words)
    return f"{length}; {wins}" if length else wins


def _rounds(end: Finish) -> str:
    if end.rounds == 1:
        return ""
    return f"; {number(end.rounds)} {'games' if end.kind == 'game' else 'rounds'}"


def _order(told: Telling) -> str:
    """Return in which order a level finish goes on, where more than two take turns at the starts."""
    turns = (swap for swap in told.setting.swaps.values() if any(event.what == "starts" for event in swap.on))
    rings = (any(swap.moves.get(to) not in (None, who) for who, to in swap.moves.items()) for swap in turns)
    return ", in the same order," if any(rings) else ""


def _added_up(told: Telling, end: Finish) -> Iterator[str]:
    if told.brief and _is_race_for_oneself(end):
        return
    if end.totals == "person":
        yield f"{'add up your' if told.brief else 'everyone adds up'} own points; the highest total wins"
    elif end.totals == "pair" and (end.scores != "pair" or end.rounds > 1):
        yield "each pair adds up its totals"


def _when_level(told: Telling, end: Finish) -> Iterator[str]:
    """Yield what becomes of the last rally and of a level score."""
    if end.last_rally is not None and end.minutes is not None:
        yield _LAST[end.last_rally]
    if end.level is not None:
        yield _LEVEL[end.level].replace("start each", f"start each{_order(told)}")


def _alone(told: Telling, end: Finish) -> Iterator[str]:
    if end.each and end.starts is None and len(told.playing) > 1:
        yield "each counts alone"
