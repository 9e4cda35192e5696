"""How points are made: the value as the bullet, then what earns it."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from typing import Final

from designer.drill.conditions import Event
from designer.drill.rules import Points
from designer.wording.counts import listed, lowered
from designer.wording.events import clause, plain_hit
from designer.wording.names import letter
from designer.wording.people import Group, calls, group, opponents
from designer.wording.scope import in_hits, in_parts
from designer.wording.sentence import Lead, Sentence, sentence, sentences_of, unmarked
from designer.wording.telling import Telling
from designer.wording.tokens import own_text
from designer.wording.winning import OPENING, UNRETURNED, Win, win

_OR_THE_NEXT: Final = re.compile(r" or (?:with |the next |\S+'s next )")
"""In how a rally is won: with a ball, or with the hit after it."""
_SAYS: Final = re.compile(r"\S+(?: \S+)? (?:says|calls|judges|shouts)\b")
"""How a note begins that is about who says something: "F says the number"."""
_SHORT: Final = 5
"""A note of no more words, "only A scores", is read at once."""
_BESIDE: Final = {"instead": "instead", "added": "added"}


def points(told: Telling) -> tuple[Sentence, ...]:
    """Return what each way to score is worth: the plain rally first, then what is paid instead or beside it."""
    paying = [record for record in told.setting.points.values() if record.gives.then == "points"]
    paying.sort(
        key=lambda record: (
            value_of(record) < 0,
            _is_extra(record),
            abs(value_of(record)),
            record.on[0].by if told.brief else (),
            record.id,
        )
    )
    return tuple(_merged(told, paying))


def value_of(record: Points) -> int:
    """Return what the record pays; a value that is not said is 1."""
    return 1 if record.gives.value is None else record.gives.value


def value_words(record: Points) -> str:
    """Return the value as it stands as a bullet: "+2", "−1"."""
    value = value_of(record)
    return f"+{value}" if value >= 0 else f"−{-value}"


def _is_extra(record: Points) -> bool:
    return record.beside is not None or any(event.what != "won" or event.and_ for event in record.on)


def _merged(told: Telling, paying: list[Points]) -> Iterator[Sentence]:
    """Yield one sentence for points of one value that stand beside others in one way and need no words of their own."""
    done: set[str] = set()
    before: list[Points] = []
    for record in paying:
        if record.id in done:
            continue
        alike = [record]
        apart = _apart(told, record)
        if not apart and _is_joined(told, record):
            others = (other for other in paying if other.id not in (record.id, *done) and not _apart(told, other))
            alike += [other for other in others if _is_joined(told, other) and _key(other) == _key(record)]
        done |= {one.id for one in alike}
        alike.sort(key=lambda one: one.on[0].by)
        for number, own in enumerate([[one] for one in apart] or [alike], 1):
            yield points_sentence(told, own, before, f":{number}" if number > 1 else "")
            before = own


def _apart(told: Telling, record: Points) -> list[Points]:
    """Return a record of several wins, each after a ball of its own, as one of each win, the last with its note; else []."""
    if len(record.on) < 2 or not all(event.what == "won" and win(told, event).after for event in record.on):
        return []
    *first, last = ((event,) for event in record.on)
    return [*(record.changed(on=on, note="", called_by=()) for on in first), record.changed(on=last)]


def _is_joined(told: Telling, record: Points) -> bool:
    """Whether a record may share a sentence; to a player two balls that may win a point are as much as one can say."""
    two_ways = any(_OR_THE_NEXT.search(win(told, event).how) for event in record.on if event.what == "won")
    return _plain(record) and not (told.brief and two_ways)


def _key(record: Points) -> tuple[object, ...]:
    return (value_of(record), record.beside, record.gives.to, record.parts, record.from_hit)


def _plain(record: Points) -> bool:
    return record.beside is not None and not (record.note or record.grows_by or record.cap or record.called_by)


def points_sentence(told: Telling, records: list[Points], before: Sequence[Points] = (), apart: str = "") -> Sentence:
    """Return one sentence for points of one value, the value as its bullet; ``apart`` tells its key from another's.

    ``before`` are those of the sentence before it.
    """
    first = records[0]
    words = sentences_of(
        points_words(told, records, before),
        *(["the higher counts"] if first.beside == "the higher" else []),
        *_growth(first),
        *([] if told.brief else [calls(told, first.called_by, _only_doer(told, first))]),
        "" if _is_looked_up(told, first) else own_text(told, first.note),
    )
    lead = Lead("value", value_words(first))
    return sentence(f"points:{first.id}{apart}", words, *(record.id for record in records), lead=lead)


def points_later(told: Telling) -> tuple[Sentence, ...]:
    """Return who calls a way to score and what is noted about it, which a player looks up: "+2: a volley counts"."""
    paying = [record for record in told.setting.points.values() if record.gives.then == "points"]
    values = Counter(map(value_words, paying))
    found = []
    for record in paying:
        called = calls(told, record.called_by, _only_doer(told, record))
        note = own_text(told, record.note) if _is_looked_up(told, record) else ""
        said = [words for words in (called, note) if words]
        if said:
            first, *more = said
            value = value_words(record)
            about = value if values[value] == 1 else _ways(told, list(record.on))
            words = sentences_of(f"{about}: {lowered(first)}", *more)
            found.append(sentence(f"points:{record.id}:beside", words, record.id))
    return tuple(found)


def _is_looked_up(told: Telling, record: Points) -> bool:
    """Whether a note is no part of how a player scores: it is about who says something, or goes into cases."""
    note = record.note.strip()
    return told.brief and (_SAYS.match(note) is not None or len(note.split()) > _SHORT)


def points_words(told: Telling, records: list[Points], before: Sequence[Points] = ()) -> str:
    """Return what earns a value, in lower case: "rally won", "instead: A wins with the first volley or smash".

    To a player another way to earn what the sentence ``before`` pays is "or B wins with the very next hit after that ball".
    """
    first = records[0]
    another = told.brief and bool(before) and first.beside == "instead" and _key(before[0]) == _key(first)
    text = _ways(told, [event for record in records for event in record.on])
    if another:
        (text,) = _that_ball([_ways(told, [event for record in before for event in record.on]), text])[1:]
        return f"or {text}{_to(told, first)}"
    scope = ", ".join(words for words in (in_parts(told, first.parts), in_hits(told, first)) if words)
    beside, each = _beside(told, first), _each(told, first)
    head = ", ".join(words for words in ((each, beside, scope) if told.brief else (beside, each, scope)) if words)
    return f"{head}: {text}{_to(told, first)}" if head else f"{text}{_to(told, first)}"


def _beside(told: Telling, record: Points) -> str:
    """Return how a record adds to the plain rally: "added", "instead"; for a player "instead of 1"."""
    words = _BESIDE.get(record.beside or "", "")
    plain = [value_of(other) for other in told.setting.points.values() if _is_plain_rally(other)]
    return f"{words} of {plain[0]}" if words == "instead" and told.brief and len(plain) == 1 else words


def _is_plain_rally(record: Points) -> bool:
    return record.gives.then == "points" and not _is_extra(record) and record.on[0].what == "won"


def _only_doer(told: Telling, record: Points) -> Group | None:
    return group(told, record.on[0].by) if len(record.on) == 1 else None


def _ways(told: Telling, events: list[Event]) -> str:
    """Return all ways to earn a value; what ways have in common is said once."""
    wins = [win(told, event) for event in events if event.what == "won"]
    others = [_way(told, event) for event in events if event.what != "won"]
    ways = _that_ball(list(dict.fromkeys([*_wins(told, wins), *others])))
    return ", or ".join(ways) if any(" or " in way for way in ways) else listed(ways, "or")


def _wins(told: Telling, wins: list[Win]) -> list[str]:
    hows = {unmarked(found.how): found.how for found in wins if not found.after}
    if len(wins) > 1 and len(hows) == 1 and len({found.subject for found in wins}) == len(told.playing) > 1:
        return [Win("", _own_place(next(iter(hows.values())))).words]
    by_subject: dict[str, list[str]] = {}
    for found in wins:
        if not found.after:
            by_subject.setdefault(found.subject, []).append(found.how)
    plain = [Win(subject, ", or ".join(_shared_head(ways))).words for subject, ways in by_subject.items()]
    return [*plain, *(found.words for found in wins if found.after)]


def _own_place(how: str) -> str:
    """Return how anyone wins, a thing that each has at the own end as "your own": "after a bounce in your own target"."""
    head, after, place = how.partition("after a bounce in \x01")
    return f"{head}{after}{place.replace(chr(2) + 'the ', chr(2) + 'your own ', 1)}" if after else how


def _shared_head(ways: list[str]) -> list[str]:
    """Return ways to win each once; "with ball 3 unreturned", where the later ones begin so too, is said with the first."""
    first, *rest = dict.fromkeys(ways)
    head, found, _ = unmarked(first).partition(UNRETURNED)
    return [first, *(way.partition(f"{UNRETURNED} ")[2] if found and _begins(way, head) else way for way in rest)]


def _begins(way: str, head: str) -> bool:
    return unmarked(way).startswith(f"{head}{UNRETURNED} ")


def _that_ball(ways: list[str]) -> list[str]:
    """Return ways to score, the ball that the first of them has named as "that ball" in the later ones."""
    named = re.search(rf"with the (first ball .+?|{OPENING.removeprefix('the ')}){_OR_THE_NEXT.pattern}", ways[0])
    if named is None:
        return ways
    return [ways[0], *(re.sub(rf"(?:\S+'s|the) {re.escape(named[1])}$", "that ball", way) for way in ways[1:])]


def _way(told: Telling, event: Event) -> str:
    called = f"; {calls(told, event.called_by, group(told, event.by))}" if event.called_by and not event.call else ""
    if event.what in ("played", "landed") and (event.count is None or event.count == 1):
        return f"{plain_hit(told, event)}{called}"
    also = "".join(f", and {clause(told, inner)}" for inner in event.and_)
    return f"{clause(told, event)}{also}{called}"


def _each(told: Telling, record: Points) -> str:
    """Return whom a value is for, where each of a pair gets it and that is said before what earns it; else ""."""
    if record.gives.to != "side" or len(told.playing) <= 2:
        return ""
    if told.brief:
        return "each partner"
    return "for each" if record.beside == "instead" else ""


def _to(told: Telling, record: Points) -> str:
    if record.gives.to == "side" and len(told.playing) > 2 and not _each(told, record):
        return ", for each of the pair"
    if record.gives.to != "other":
        return ""
    doer = _only_doer(told, record)
    across = opponents(told, doer.letters) if doer is not None else ()
    return f", to {letter(told, across[0]) if len(across) == 1 else 'the opponent'}"


def _growth(record: Points) -> Iterator[str]:
    if record.grows_by:
        yield f"each time in a row {abs(record.grows_by)} {'more' if record.grows_by > 0 else 'less'}"
    if record.cap:
        yield f"at most {record.cap}"
