"""When a rule holds and for which ball: the parts of the rally, the hits counted, the shots named."""

from __future__ import annotations

from designer.drill.conditions import In
from designer.drill.movement import SERVES
from designer.drill.rules import Part, Points, Rule
from designer.wording.branches import option_noun
from designer.wording.counts import number, ordinal
from designer.wording.events import trigger
from designer.wording.names import shots_named
from designer.wording.people import Group
from designer.wording.telling import Telling


def first_hits(told: Telling, rule: Rule, doer: Group | None) -> int | None:
    """Return how many of the doer's own first hits a rule covers, None where its parts do not count them."""
    part = _only_part(told, rule.parts)
    if part is None or doer is None or doer.one is None or rule.of or rule.from_hit > 1:
        return None
    if told.parts.index(part) > 0:
        return None
    counts = [e.count for e in part.until if e.what == "played" and e.by == (doer.one,) and e.count and not e.where]
    return counts[0] if counts and len(part.until) == 1 else None


def _only_part(told: Telling, ids: tuple[str, ...]) -> Part | None:
    known = [told.setting.parts[id] for id in ids if id in told.setting.parts]
    return known[0] if len(known) == 1 else None


def in_parts(told: Telling, ids: tuple[str, ...]) -> str:
    """Return during which parts of the rally something holds: "until open", "once open"; "" for all of it."""
    order = told.parts
    own = [part for part in order if part.id in ids]
    if not own or len(own) == len(order):
        return ""
    opened = [part for part in order if part.kind == "open"]
    if all(part.kind == "open" for part in own):
        return "once open" if len(opened) < len(order) else ""
    restricted = [part for part in order if part.kind != "open"]
    last = own[-1]
    if last.kind == "open":
        first = order.index(own[0])
        return f"after {_ending(told, order[first - 1])}" if first > 0 else ""
    if last == restricted[-1]:
        return "until open" if opened else ""
    return f"until {_ending(told, last)}"


def _ending(told: Telling, part: Part) -> str:
    words = [trigger(told, event) for event in part.until]
    return words[0].removeprefix("after ").removeprefix("once ") if words else "that part ends"


def in_hits(told: Telling, record: Rule | Points) -> str:
    """Return from which hit on something holds: "after the return", "after ball 2"; "" for every hit."""
    first, last = record.from_hit, getattr(record, "to_hit", None)
    if last is not None and last == first:
        return f"at the {ordinal(first)} hit"
    if last is not None:
        return f"in hits {first} to {last}" if first > 1 else f"in the first {number(last)} hits"
    if first == 1:
        return ""
    if first == 2:
        return "after the return" if _served(told) else "after ball 2" if told.first_starts else "after the first hit"
    return f"from the {ordinal(first)} hit on"


def _served(told: Telling) -> bool:
    shots = (told.setting.shots.get(start.shot or "") for start in told.first_starts)
    return any(shot is not None and shot.stroke in SERVES for shot in shots)


def ball_subject(told: Telling, rule: Rule, doer: Group | None, *, each: str = "every") -> str:
    """Return the ball that a rule is about: "ball 2", "A's first two balls", "every ball of B's", "every ball"."""
    if rule.of:
        step = told.sequence.step(rule.of[0])
        if len(rule.of) == 1 and step is not None and step.feed and step.alternatives:
            return option_noun(told, step)
        return shots_named(told, rule.of, "or") or "that ball"
    count = first_hits(told, rule, doer)
    if count is not None and doer is not None:
        return f"{doer.own} first ball" if count == 1 else f"{doer.own} first {number(count)} balls"
    drawn = drawn_shots(told, rule, doer)
    if len(drawn) == 1:
        return shots_named(told, drawn)
    if each == "every" and any(isinstance(place, In) and place.judged == "bounce" for place in rule.when):
        # It is about the answer to that one bounce, not all that come after it.
        owned = "the" if doer is None else doer.own
        return f"{owned} next ball" if doer is None or doer.one is not None else f"the next ball by {doer.either}"
    if doer is None:
        return f"{each} ball"
    if told.brief and each == "a" and doer.one is not None:
        return f"{doer.own} ball"
    return f"{each} ball of {doer.own}" if doer.one is not None else f"{each} ball by {doer.either}"


def drawn_shots(told: Telling, rule: Rule, doer: Group | None) -> tuple[str, ...]:
    """Return the drawn shots a rule covers where its one part is those shots and no more, else ()."""
    part = _only_part(told, rule.parts)
    if part is None or part.kind == "open" or not part.shots:
        return ()
    ends_by_shot = any(event.of for event in part.until)
    counted = any(event.count or event.where for event in part.until)
    if not ends_by_shot or counted:
        return ()
    own = [id for id in part.shots if id in told.setting.shots]
    return tuple(id for id in own if doer is None or not doer.letters or told.setting.shots[id].by in doer.letters)
