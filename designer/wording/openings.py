"""When a point opens: which hits or balls end the part before."""

from __future__ import annotations

from designer.drill.conditions import Event
from designer.drill.movement import SERVES
from designer.drill.rules import Part
from designer.wording.branches import branch_words, branches_apart
from designer.wording.counts import listed
from designer.wording.events import clause, trigger
from designer.wording.names import shots_named
from designer.wording.sentence import unmarked
from designer.wording.telling import Telling


def opens_when(told: Telling, part: Part, *, seen: bool = False) -> str:
    """Return when ``part`` ends and the point opens: "from ball 4", "once ball 2 lands in the reply zone".

    ``seen``: the reader has the diagram of this very setting, so that after counted hits which are drawn the first open
    ball can be named by its digit, where the flag stands, and a hit that is named need not be said.
    """
    whens: list[str] = []
    branched = [event for event in part.until if _branch(told, event)]
    for event in part.until:
        if event in branched:
            whens += [_after_choices(told, branched)] if event is branched[0] else []
        elif _is_count(event):
            whens.append(_counted(told, event, seen=seen))
        elif seen and _goes_there(told, event):
            whens.append("once it lands there")
        elif seen and _is_fed_later(told, event):
            whens.append(f"once {shots_named(told, event.of, 'or')} is hit")
        elif not (seen and event.of and not event.where):
            whens.append(trigger(told, event))
    return listed(list(dict.fromkeys(whens)), "or").replace(" or once ", " or ")


def _goes_there(told: Telling, event: Event) -> bool:
    """Whether an event is that the one ball it names lands where its step has just said that it goes."""
    step = told.sequence.step(event.of[0]) if len(event.of) == 1 else None
    plain = event.what == "landed" and len(event.where) == 1 and not (event.count or event.and_ or event.aim)
    if step is None or not plain or step.alternatives or step.shot.note:
        return False
    return step.shot.to is not None and step.shot.to.on == event.where[0].area and not event.where[0].outside


def _is_fed_later(told: Telling, event: Event) -> bool:
    """Whether an event is a ball that may have to be fed again, so that it must be said that its hit opens the point."""
    return event.what == "played" and any(start.shot in event.of for start in told.later_starts)


def _is_count(event: Event) -> bool:
    named = event.by or event.of or event.where or event.aim is not None
    return event.what == "played" and bool(event.count) and not named


def _counted(told: Telling, event: Event, *, seen: bool) -> str:
    count = event.count or 1
    drawn = sorted({step.digit for step in told.sequence.steps if not step.feed})[:count]
    if seen and len(drawn) == count and drawn == list(range(drawn[0], drawn[0] + count)):
        return f"from ball {drawn[-1] + 1}"
    shots = [told.setting.shots.get(start.shot or "") for start in told.first_starts]
    if not any(shots):
        return trigger(told, event)
    put_in = "serve" if any(shot is not None and shot.stroke in SERVES for shot in shots) else "feed"
    return f"{trigger(told, event)} (the {put_in} does not count)"


def balls_closed(told: Telling) -> tuple[str, ...]:
    """Return the drawn balls before the first open one where the point opens after so many counted hits, else ()."""
    counts = [
        event.count or 1 for part in told.parts if part.kind != "open" for event in part.until if _is_count(event)
    ]
    steps = [step for step in told.sequence.steps if not step.feed]
    digits = sorted({step.digit for step in steps})[: counts[0]] if len(counts) == 1 else []
    if not digits or len(digits) < counts[0] or digits != list(range(digits[0], digits[0] + counts[0])):
        return ()
    return tuple(step.shot.id for step in sorted(steps, key=lambda step: step.digit) if step.digit in digits)


def _branch(told: Telling, event: Event) -> str:
    """Return after which choice the balls of an event are played, where other balls of their digit follow another."""
    steps = [step for id in event.of if (step := told.sequence.step(id)) is not None]
    words = {branch_words(told, step).removesuffix(", ") for step in steps if branches_apart(told, step)}
    return words.pop() if len(words) == 1 and event.where else ""


def _after_choices(told: Telling, events: list[Event]) -> str:
    """Return what opens the point after each choice, the ball named once: "once ball 3 lands in … after …, or past …"."""
    clauses = [f"{clause(told, event)} {_branch(told, event)}" for event in events]
    subject = f"{unmarked(clauses[0]).split(' lands ', 1)[0]} lands "
    head = f"{clauses[0].split(' lands ', 1)[0]} lands "
    shared = [text.split(" lands ", 1)[1] if unmarked(text).startswith(subject) else text for text in clauses[1:]]
    return f"once {head}{', or '.join([clauses[0].split(' lands ', 1)[-1], *shared])}"
