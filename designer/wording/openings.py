"""When a point opens: which hits or balls end the part before."""

from __future__ import annotations

from designer.drill.conditions import Event
from designer.drill.movement import SERVES
from designer.drill.rules import Part
from designer.wording.branches import branch_words, branches_apart
from designer.wording.counts import listed
from designer.wording.events import clause, trigger
from designer.wording.sentence import unmarked
from designer.wording.telling import Telling


def opens_when(told: Telling, part: Part, *, seen: bool = False) -> str:
    """Return when ``part`` ends and the point opens: "after balls 2 and 3", "once ball 2 lands in the reply zone".

    ``seen``: the reader has the diagram of this very setting, so that counted hits which are drawn can be named by
    their digits and a hit that is named need not be said; the open flag stands there.
    """
    whens: list[str] = []
    branched = [event for event in part.until if _branch(told, event)]
    for event in part.until:
        if event in branched:
            whens += [_after_choices(told, branched)] if event is branched[0] else []
        elif _is_count(event):
            whens.append(_counted(told, event, seen=seen))
        elif not (seen and event.of and not event.where):
            whens.append(trigger(told, event))
    return listed(list(dict.fromkeys(whens)), "or").replace(" or once ", " or ")


def _is_count(event: Event) -> bool:
    named = event.by or event.of or event.where or event.aim is not None
    return event.what == "played" and bool(event.count) and not named


def _counted(told: Telling, event: Event, *, seen: bool) -> str:
    count = event.count or 1
    drawn = sorted({step.digit for step in told.sequence.steps if not step.feed})[:count]
    if seen and len(drawn) == count and drawn == list(range(drawn[0], drawn[0] + count)):
        if count == 1:
            return f"after ball {drawn[0]}"
        return f"after balls {drawn[0]} {'and' if count == 2 else 'to'} {drawn[-1]}"
    shots = [told.setting.shots.get(start.shot or "") for start in told.first_starts]
    if not any(shots):
        return trigger(told, event)
    put_in = "serve" if any(shot is not None and shot.stroke in SERVES for shot in shots) else "feed"
    return f"{trigger(told, event)} (the {put_in} does not count)"


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
