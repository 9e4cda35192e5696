"""What is settled once for all rules and points: what decides, what an edge is, what a ball taken out of the air is."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from designer.drill.conditions import Event, In
from designer.drill.rules import Keep
from designer.wording.sentence import Sentence, sentence, sentences_of
from designer.wording.telling import Telling
from designer.wording.where import edges, is_feet, volleyed


def places_judged(told: Telling) -> Iterator[In]:
    """Yield every place that rules, parts and points judge a ball or feet by, in that order."""
    for rule in told.setting.rules.values():
        if isinstance(rule.must, Keep):
            yield from rule.must.where
        for condition in rule.when:
            yield from (condition,) if isinstance(condition, In) else _event_places(condition)
    for event in events(told):
        yield from _event_places(event)


def events(told: Telling) -> Iterator[Event]:
    """Yield every event that parts and points wait for, those inside another one too."""
    for part in told.setting.parts.values():
        yield from _all(part.until)
    for paid in told.setting.points.values():
        yield from _all(paid.on)


def _all(found: Iterable[Event]) -> Iterator[Event]:
    for event in found:
        yield event
        yield from _all(event.and_)


def _event_places(event: Event) -> Iterator[In]:
    # What a ball strikes is no place that it is judged by.
    if event.what != "struck":
        yield from event.where
        yield from event.when
    for inner in event.and_:
        yield from _event_places(inner)


def settled(told: Telling) -> Iterator[Sentence]:
    """Yield one sentence: what decides, and what a ball on an edge or taken out of the air is."""
    judged = list(dict.fromkeys(place for place in places_judged(told) if not is_feet(place)))
    doubts = {
        place.area: event.in_doubt
        for event in events(told)
        if event.in_doubt is not None and event.in_doubt in ("in", "out")
        for place in event.where
    }
    on_edge = list(edges(told, judged, {area: str(doubt) for area, doubt in doubts.items()}))
    words = on_edge
    if any(place.judged == "bounce" for place in judged) and not told.brief:
        words = [f"the first bounce decides; {on_edge[0]}", *on_edge[1:]] if on_edge else ["the first bounce decides"]
    words = [*words, *volleyed(told, judged)]
    if words:
        ids = dict.fromkeys(place.area for place in judged if place.area in told.setting.items)
        yield sentence("rules:settled", sentences_of(*words), *ids)
