"""What a miss costs, and what is replayed or does not count."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from designer.drill.conditions import Event
from designer.drill.items import Area, Hoop
from designer.drill.rules import Keep, Part, Points, Rule
from designer.play.rally import opening_part
from designer.wording.counts import listed
from designer.wording.events import clause, plain_hit
from designer.wording.musts import is_drawn_there, off
from designer.wording.names import shots_named
from designer.wording.outcomes import outcome
from designer.wording.people import Group, group
from designer.wording.sentence import Sentence, sentence, sentences_of
from designer.wording.telling import Telling
from designer.wording.tokens import own_text
from designer.wording.where import area_name


def off_and_out(told: Telling, rule: Rule, doer: Group | None) -> str:
    """Return a rule and the miss of its ball in one sentence where both cost the same; "" where they do not.

    "The approach outside the approach zone, in the net or out: point to B".
    """
    part = _part_of(told, rule)
    if part is None or rule.breach is None or not is_drawn_there(told, rule, doer):
        return ""
    cost = outcome(told, rule.breach, doer)
    if part.failed is None or outcome(told, part.failed, doer) != cost:
        return ""
    ball = shots_named(told, rule.of or part.shots)
    return f"{ball} {off(told, rule, doer)}, in the net or out: {cost}"


def _part_of(told: Telling, rule: Rule) -> Part | None:
    """Return the part whose hits are only the balls this rule is about, None where there is none."""
    for part in told.parts:
        own = [id for id in part.shots if id in told.setting.shots and not told.is_new_ball(told.setting.shots[id])]
        if own and part.kind == "forced" and (set(own) == set(rule.of) or (not rule.of and rule.parts == (part.id,))):
            return part if len(own) == 1 else None
    return None


def is_plain_miss(told: Telling, part: Part) -> bool:
    """Whether only this part says what a miss in it costs, and that is not simply the point."""
    several = sum(other.failed is not None for other in told.parts) > 1
    return not several and part.failed is not None and part.failed.then != "lose the point"


def miss_words(told: Telling, part: Part) -> str:
    """Return a plain miss as it stands after a rule's "if not": "or a miss", of one ball "in the net or out".

    Where a target pays, a miss might be taken for a ball beside it.
    """
    if " in the net or out:" in _miss(told, part, several=False):
        return "in the net or out"
    paying = (points for points in told.setting.points.values() if points.gives.then == "points")
    targets = any(_is_target(told, place.area) for points in paying for event in points.on for place in event.where)
    return "or a ball in the net or out" if targets else "or a miss"


def misses(told: Telling, binding: Iterable[Rule], joined: Iterable[Part] = ()) -> Iterator[Sentence]:
    """Yield what a rally that ends in a restricted part with no rule broken costs, parts that cost the same once.

    ``joined``: parts whose miss has been said with a rule.
    """
    merged = {
        part.id
        for rule in binding
        if off_and_out(told, rule, group(told, rule.who) or _hitter(told, rule.of))
        if (part := _part_of(told, rule)) is not None
    } | {part.id for part in joined}
    left = [part for part in told.parts if part.failed is not None and part.id not in merged]
    said: dict[str, list[Part]] = {}
    for part in left:
        words = _miss(told, part, several=len(left) > 1)
        if words:
            said.setdefault(words, []).append(part)
    for words, own in said.items():
        yield sentence(f"part:{own[0].id}:failed", words, *(part.id for part in own))


def _hitter(told: Telling, ids: Iterable[str]) -> Group | None:
    hitters = tuple(dict.fromkeys(told.setting.shots[id].by for id in ids if id in told.setting.shots))
    return group(told, hitters) if len(hitters) == 1 else None


def _miss(told: Telling, part: Part, *, several: bool) -> str:
    if part.failed is None:
        return ""
    own = [id for id in part.shots if id in told.setting.shots]
    doer = None if several else _hitter(told, own)
    cost = outcome(told, part.failed, doer)
    found = opening_part(told.setting)
    before = " before it opens" if found is not None and found[0].id == part.id and not several else ""
    if doer is not None and len(own) == 1 and part.kind == "forced":
        return f"{shots_named(told, own)} in the net or out: {cost}"
    if part.failed.then == "lose the point":
        # As in any point, so a player need not read it.
        return "" if told.brief else f"net or out{before}: {cost}"
    if part.kind == "cooperative" or not before:
        return f"a miss: {cost}"
    return f"a miss{before}: {cost}"


def in_play(told: Telling) -> Iterator[Sentence]:
    """Yield what is in play where that is less than the court, and that a missed target ends nothing."""
    area = told.setting.in_play
    if area is not None and area not in ("singles court", "doubles court"):
        yield sentence("rules:in-play", f"in play: only {area_name(told, area)}", *_item(told, area))
    if told.cooperative:
        asked = {p.area for r in told.setting.rules.values() if isinstance(r.must, Keep) for p in r.must.where}
        for points in told.setting.points.values():
            targets = [p.area for event in points.on for p in event.where if _is_target(told, p.area)]
            if points.gives.then == "points" and targets and not asked & set(targets):
                yield sentence(f"rules:off:{points.id}", f"off {area_name(told, targets[0])}: play goes on", points.id)
                return


def _is_target(told: Telling, area: str) -> bool:
    return isinstance(told.setting.items.get(area), Area | Hoop)


def _item(told: Telling, area: str) -> tuple[str, ...]:
    return (area,) if area in told.setting.items else ()


def replays(told: Telling) -> Iterator[Sentence]:
    """Yield what is replayed or does not count: points records that pay nothing, the stop word left out."""
    for points in told.setting.points.values():
        if points.gives.then != "points" and not is_stop(points):
            words = f"{_happens(told, points.on)}: {outcome(told, points.gives)}"
            yield sentence(f"points:{points.id}", sentences_of(words, own_text(told, points.note)), points.id)


def _happens(told: Telling, events: Iterable[Event]) -> str:
    words = [
        plain_hit(told, event, "a") if event.what in ("played", "landed") and not event.count else clause(told, event)
        for event in events
    ]
    return listed(words, "or")


def is_stop(points: Points) -> bool:
    """Whether this is the call for a ball or a person on court."""
    return all(event.what == "called" for event in points.on) and points.gives.then in ("replay", "no score")
