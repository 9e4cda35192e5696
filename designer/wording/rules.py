"""The rules of a rally: who, when, what, and what a breach costs."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from designer.drill.conditions import Event, In, Outcome
from designer.drill.rules import Keep, Part, Points, Rule
from designer.play.rally import opening_part, parts
from designer.wording.counts import listed
from designer.wording.events import clause, plain_hit
from designer.wording.musts import demand
from designer.wording.names import shots_named
from designer.wording.outcomes import outcome
from designer.wording.people import Group, calls, group
from designer.wording.scope import first_hits, in_hits, in_parts
from designer.wording.sentence import Sentence, sentence, sentences_of
from designer.wording.telling import Telling
from designer.wording.tokens import own_text
from designer.wording.where import bounces, edges, feet, foot_words, is_feet


def rules(told: Telling) -> tuple[Sentence, ...]:
    """Return the rules of the rally, feeds left out: they stand under the start."""
    found: list[Sentence] = [*_edges(told)]
    found += [rule_sentence(told, rule) for rule in ordered(told) if not is_about_feed(told, rule)]
    found += [s for part in parts(told.setting) if (s := _failed(told, part)) is not None]
    found += _replays(told)
    return tuple(found)


def ordered(told: Telling) -> list[Rule]:
    """Return the rules in the order of the parts they hold in, then as the file has them."""
    order = {part.id: place for place, part in enumerate(parts(told.setting))}
    return sorted(
        told.setting.rules.values(), key=lambda rule: min((order.get(id, 99) for id in rule.parts), default=-1)
    )


def is_about_feed(told: Telling, rule: Rule) -> bool:
    """Whether a rule is only about balls that are put in, so that it belongs to the start."""
    shots = [told.setting.shots[id] for id in rule.of if id in told.setting.shots]
    return bool(shots) and all(told.is_new_ball(shot) for shot in shots)


def doer_of(told: Telling, rule: Rule) -> Group | None:
    """Return whom a rule binds, None for everyone; a rule about drawn shots binds their hitters."""
    named = group(told, rule.who)
    if named is not None:
        return named
    shooters = tuple(dict.fromkeys(told.setting.shots[id].by for id in rule.of if id in told.setting.shots))
    return group(told, shooters) if len(shooters) == 1 else None


def rule_sentence(told: Telling, rule: Rule) -> Sentence:
    """Return the whole rule as a sentence: scope, demand, cost, who calls, and its note."""
    words = sentences_of(rule_words(told, rule), _if_not(told, rule), *_calls(told, rule), own_text(told, rule.note))
    return sentence(f"rule:{rule.id}", words, rule.id, *rule.of)


def rule_words(told: Telling, rule: Rule) -> str:
    """Return what a rule demands, with the cost where it stands in the same sentence."""
    doer = doer_of(told, rule)
    asked = demand(told, rule, doer)
    scope = [words for words in (_parts_words(told, rule, doer), in_hits(told, rule)) if words]
    condition = "" if _names_its_ball(rule) else when(told, rule)
    head = ", ".join([*scope, *([condition] if condition else [])])
    text = f"{head}, {asked.text}" if head else asked.text
    if asked.forbidden:
        cost = outcome(told, rule.breach, doer) if rule.breach is not None else ""
        return f"{text}: {cost}" if cost else f"{'not allowed: '}{text}"
    return text


def _parts_words(told: Telling, rule: Rule, doer: Group | None) -> str:
    return "" if first_hits(told, rule, doer) is not None or rule.of else in_parts(told, rule.parts)


def _names_its_ball(rule: Rule) -> bool:
    """Whether the demand itself says of which ball it speaks: nobody touches that ball."""
    must = rule.must
    return (
        rule.never and must.do == "use stroke" and not getattr(must, "strokes", ()) and not getattr(must, "wing", None)
    )


def _if_not(told: Telling, rule: Rule) -> str:
    doer = doer_of(told, rule)
    if rule.breach is None or demand(told, rule, doer).forbidden:
        return ""
    return f"if not: {outcome(told, rule.breach, doer)}"


def _calls(told: Telling, rule: Rule) -> Iterator[str]:
    doer = doer_of(told, rule)
    on_feet = demand(told, rule, doer).feet
    if rule.called_by and rule.called_by != told.drill.house.called_by:
        yield calls(told, rule.called_by, doer, feet=on_feet)
    if rule.in_doubt is not None and rule.in_doubt != told.drill.house.in_doubt:
        yield f"in doubt: {rule.in_doubt}"


def when(told: Telling, rule: Rule) -> str:
    """Return after what a rule holds: "after a bounce in the eight-racket side", "after the return"; "" for always."""
    places = tuple(item for item in rule.when if isinstance(item, In))
    if places:
        on_feet = [place for place in places if is_feet(place)]
        if on_feet:
            return f"with {foot_words(on_feet[0])} {feet(told, on_feet[0])}"
        doer = doer_of(told, rule)
        own = doer.own if doer is not None and doer.one is not None else None
        return f"after a bounce {bounces(told, places, own)}"
    words = [_after(told, event) for event in rule.when if isinstance(event, Event)]
    return listed(words, "or")


def _after(told: Telling, event: Event) -> str:
    if event.what in ("played", "landed") and event.of and not event.where:
        return f"after {shots_named(told, event.of)}"
    if event.what in ("played", "landed") and event.where and not event.of:
        on_feet = [place for place in event.where if is_feet(place)]
        if on_feet:
            return f"from {foot_words(on_feet[0])} {feet(told, on_feet[0])}"
        return f"after a ball {bounces(told, event.where)}"
    if event.strokes and not event.where:
        return f"after a {listed([str(stroke) for stroke in event.strokes], 'or')}"
    return f"once {clause(told, event)}"


def places_judged(told: Telling) -> Iterator[In]:
    """Yield every place that rules, points, parts and starts judge a ball by, in that order."""
    for rule in ordered(told):
        if isinstance(rule.must, Keep):
            yield from rule.must.where
        for condition in rule.when:
            yield from (condition,) if isinstance(condition, In) else _event_places(condition)
    for part in told.setting.parts.values():
        for event in part.until:
            yield from _event_places(event)
    for paid in told.setting.points.values():
        for event in paid.on:
            yield from _event_places(event)


def _event_places(event: Event) -> Iterator[In]:
    yield from event.where
    yield from event.when
    for inner in event.and_:
        yield from _event_places(inner)


def _edges(told: Telling) -> Iterator[Sentence]:
    """Yield what decides, and what a ball on an edge is: said once for all rules and points."""
    judged = [place for place in places_judged(told) if not is_feet(place)]
    on_edge = list(edges(told, judged))
    by_bounce = any(place.judged == "bounce" for place in judged)
    words = list(on_edge)
    if by_bounce and not told.brief:
        words = [f"first bounce decides; {on_edge[0]}", *on_edge[1:]] if on_edge else ["first bounce decides"]
    words += _volleyed(judged)
    if words:
        ids = dict.fromkeys(place.area for place in judged if place.area in told.setting.items)
        yield sentence("rules:edges", sentences_of(*words), *ids)


def _volleyed(judged: Iterable[In]) -> list[str]:
    answers = {place.volleyed for place in judged if place.volleyed is not None}
    if answers == {"in"}:
        return ["taken out of the air: in"]
    return ["taken out of the air: does not count"] if answers == {"out"} else []


def _failed(told: Telling, part: Part) -> Sentence | None:
    """Return what a rally that ends in a restricted part with no rule broken costs."""
    if part.failed is None:
        return None
    own = [told.setting.shots[id] for id in part.shots if id in told.setting.shots]
    hitters = tuple(dict.fromkeys(shot.by for shot in own))
    doer = group(told, hitters) if len(hitters) == 1 else None
    cost = outcome(told, part.failed, doer)
    found = opening_part(told.setting)
    before = found is not None and found[0].id == part.id
    if doer is not None and len(own) == 1:
        text = f"{shots_named(told, [own[0].id])} in the net or out: {cost}"
    elif part.kind == "cooperative":
        text = f"a miss: {cost}"
    elif part.failed.then == "lose the point":
        text = f"net or out{' before it opens' if before else ''}: {cost}"
    else:
        text = f"a rally that ends{' before it opens' if before else ' in this part'}: {cost}"
    return sentence(f"part:{part.id}:failed", text, part.id)


def _replays(told: Telling) -> Iterator[Sentence]:
    """Yield what is replayed or does not count: points records that pay nothing, the stop word left out."""
    for points in told.setting.points.values():
        if points.gives.then != "points" and not is_stop(points):
            yield sentence(
                f"points:{points.id}",
                sentences_of(
                    f"{_happens(told, points.on)}: {outcome(told, points.gives)}", own_text(told, points.note)
                ),
                points.id,
            )


def _happens(told: Telling, events: Iterable[Event]) -> str:
    words = []
    for event in events:
        if event.what in ("played", "landed") and not event.count:
            words.append(plain_hit(told, event).replace("each ", "a ", 1))
        else:
            words.append(clause(told, event))
    return listed(words, "or")


def is_stop(points: Points) -> bool:
    """Whether this is the call for a ball or a person on court."""
    return all(event.what == "called" for event in points.on) and points.gives.then in ("replay", "no score")


def same(a: Outcome | None, b: Outcome | None) -> bool:
    """Whether two outcomes are one."""
    return a is not None and a == b
