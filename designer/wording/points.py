"""How points are made: the value as the bullet, then what earns it."""

from __future__ import annotations

from collections.abc import Iterator

from designer.drill.conditions import Event
from designer.drill.rules import Points
from designer.wording.counts import listed
from designer.wording.events import clause, plain_hit, won
from designer.wording.people import Group, calls, group
from designer.wording.scope import in_hits, in_parts
from designer.wording.sentence import Lead, Sentence, sentence, sentences_of
from designer.wording.telling import Telling
from designer.wording.tokens import own_text

_BESIDE = {"instead": "instead", "added": "added", "the higher": "the higher counts"}


def points(told: Telling) -> tuple[Sentence, ...]:
    """Return what each way to score is worth: the plain rally first, then what is paid instead or beside it."""
    paying = [record for record in told.setting.points.values() if record.gives.then == "points"]
    paying.sort(key=lambda record: (_is_extra(record), abs(_value(record)), record.id))
    return tuple(_merged(told, paying))


def _value(record: Points) -> int:
    return 1 if record.gives.value is None else record.gives.value


def _is_extra(record: Points) -> bool:
    return record.beside is not None or any(event.what != "won" or event.and_ for event in record.on)


def _merged(told: Telling, paying: list[Points]) -> Iterator[Sentence]:
    """Yield one sentence for points of one value that stand beside others in one way and need no words of their own."""
    done: set[str] = set()
    for record in paying:
        if record.id in done:
            continue
        alike = [record]
        if _plain(record):
            alike += [
                other
                for other in paying
                if other.id != record.id and other.id not in done and _plain(other) and _key(other) == _key(record)
            ]
        done |= {one.id for one in alike}
        yield points_sentence(told, alike)


def _key(record: Points) -> tuple[object, ...]:
    return (_value(record), record.beside, record.gives.to, record.parts, record.from_hit)


def _plain(record: Points) -> bool:
    return record.beside is not None and not (record.note or record.grows_by or record.cap or record.called_by)


def points_sentence(told: Telling, records: list[Points]) -> Sentence:
    """Return one sentence for points of one value, the value as its bullet."""
    first = records[0]
    value = _value(first)
    ways = [_way(told, event, first) for record in records for event in record.on]
    text = listed(list(dict.fromkeys(ways)), "or")
    scope = ", ".join(words for words in (in_parts(told, first.parts), in_hits(told, first)) if words)
    if scope:
        text = f"{scope}: {text}"
    if first.beside is not None:
        text = f"{_BESIDE[first.beside]}: {text}"
    to = _to(told, first)
    words = sentences_of(
        f"{text}{to}",
        *_growth(first),
        calls(told, first.called_by, _only_doer(told, first)),
        own_text(told, first.note),
    )
    lead = Lead("value", f"+{value}" if value >= 0 else f"−{-value}")
    return sentence(f"points:{first.id}", words, *(record.id for record in records), lead=lead)


def _only_doer(told: Telling, record: Points) -> Group | None:
    return group(told, record.on[0].by) if len(record.on) == 1 else None


def _way(told: Telling, event: Event, record: Points) -> str:
    called = f"; {calls(told, event.called_by, group(told, event.by))}" if event.called_by and not event.call else ""
    if event.what == "won":
        return f"{won(told, event)}{called if event.called_by else ''}"
    if event.what in ("played", "landed") and event.count is None:
        return f"{plain_hit(told, event)}{called}"
    del record
    return f"{clause(told, event)}{_also(told, event)}{called}"


def _also(told: Telling, event: Event) -> str:
    return "".join(f", and {clause(told, inner)}" for inner in event.and_)


def _to(told: Telling, record: Points) -> str:
    if record.gives.to == "side" and len(told.playing) > 2:
        return ", to each of the pair"
    return ", to the opponent" if record.gives.to == "other" else ""


def _growth(record: Points) -> Iterator[str]:
    if record.grows_by:
        yield f"each time in a row {abs(record.grows_by)} {'more' if record.grows_by > 0 else 'less'}"
    if record.cap:
        yield f"at most {record.cap}"
