"""How a rally starts: who puts the ball in, where it must go, and what a bad one is."""

from __future__ import annotations

from collections.abc import Iterator

from designer.drill.conditions import Where
from designer.drill.movement import SERVES
from designer.drill.rules import Start
from designer.wording.counts import listed
from designer.wording.names import letter
from designer.wording.outcomes import outcome
from designer.wording.people import Group, calls, group, opponents, owner
from designer.wording.rules import is_about_feed, rule_sentence
from designer.wording.sentence import Sentence, sentence, sentences_of
from designer.wording.strokes import deed
from designer.wording.telling import Telling
from designer.wording.tokens import own_text
from designer.wording.where import travels

_COURTS = {
    "deuce": "to the deuce court",
    "ad": "to the ad court",
    "in turn": "to the deuce and ad courts in turn",
    "either": "to either court",
}
_PACE = {"soft": "softly", "half": "at half pace", "medium": "at medium pace", "full": "at full pace"}


def starts(told: Telling) -> tuple[Sentence, ...]:
    """Return how the first ball comes in, then later feeds of the same rally, then rules of the feed."""
    found = [_first(told, start) for start in told.first_starts]
    found += [_later(told, start) for start in told.later_starts]
    found += [rule_sentence(told, rule) for rule in told.setting.rules.values() if is_about_feed(told, rule)]
    return tuple(found)


def _feeder(told: Telling, start: Start) -> Group | None:
    return group(told, told.feeders(start), link="or")


def _first(told: Telling, start: Start) -> Sentence:
    words = sentences_of(
        put_in(told, start),
        _bad(told, start),
        *_accepted(told, start),
        *_next(told, start),
        *_score(told, start),
        own_text(told, start.note),
    )
    return sentence(f"start:{start.id}", words, start.id, *((start.shot,) if start.shot else ()))


def is_serve(told: Telling, start: Start) -> bool:
    """Whether this start is a serve."""
    shot = told.setting.shots.get(start.shot or "")
    return (shot is not None and shot.stroke in SERVES) or bool(start.serves)


def put_in(told: Telling, start: Start) -> str:
    """Return who puts the ball in, how, and where it must go."""
    feeders = told.feeders(start)
    step = told.sequence.step(start.shot or "")
    turn = start.next in ("in turn", "every two", "by the rules") and len(told.playing) == 2
    who = letter(told, feeders[0]) if feeders and (turn or len(feeders) == 1) else ""
    who = who or listed([letter(told, one) for one in feeders], "or") or "someone"
    if len(feeders) > 1:
        who = f"{listed([letter(told, one) for one in feeders])} in turn"
    if is_serve(told, start):
        return f"{who} {_serves(told, start, several=len(feeders) > 1)}"
    end = owner(told, feeders)
    where = travels(told, start.good, end)
    shot = step.shot if step is not None else None
    if shot is None:
        return f"{who} puts the ball in {where}"
    if shot.stroke == "racket feed":
        verb = "bounce and hit" if len(feeders) > 1 else "bounces and hits"
        pace = _PACE.get(shot.pace or "", "")
        aim = "" if where else deed(told, step).split(" ", 1)[1] if step is not None and " " in deed(told, step) else ""
        return f"{who} {verb} {pace if where else ''} {where or aim}"
    said = deed(told, step) if step is not None else "puts the ball in"
    return f"{who} {said} {where}"


def _serves(told: Telling, start: Start, *, several: bool) -> str:
    shot = told.setting.shots.get(start.shot or "")
    counts = set(start.serves.values())
    kind = shot.stroke if shot is not None and shot.stroke in SERVES else "serve"
    where = _COURTS.get(start.courts or "", "")
    verb = "serve" if several else "serves"
    if kind == "second serve":
        tries = "one second serve" if counts != {2} else "second serves, two tries"
        return f"{'hit' if several else 'hits'} {tries} {where}"
    under = " underarm" if kind == "underarm serve" else ""
    tries = {frozenset({1}): ", one serve", frozenset({2}): ", two serves"}.get(frozenset(counts), "")
    return f"{verb}{under} {where}{tries}"


def _bad(told: Telling, start: Start) -> str:
    if start.bad is None:
        return ""
    doer = group(told, told.feeders(start))
    doer = doer if doer is not None and doer.one is not None else None
    caller = ""
    if start.called_by and start.called_by != told.drill.house.called_by:
        caller = calls(told, start.called_by, doer)
        across = opponents(told, told.feeders(start))
        if start.called_by == ("receiver",) and len(across) == 1 and len(told.feeders(start)) == 1:
            caller = f"{letter(told, across[0])} calls"
        elif start.called_by == ("receiver",):
            caller = "the receiver calls"
    result = outcome(told, start.bad, doer)
    if is_serve(told, start):
        double = set(start.serves.values()) == {2}
        return f"{'a double fault' if double else 'a fault'}: {result}"
    head = "bad feed" if not told.brief or not start.good else "if not"
    return f"{head}: {result}{'; ' + caller if caller else ''}"


def _accepted(told: Telling, start: Start) -> Iterator[str]:
    played = told.drill.house.feed_played
    if played is not None and not is_serve(told, start):
        yield (
            "a feed that is played is accepted" if played == "accepted" else "a bad feed that is played does not count"
        )


def _next(told: Telling, start: Start) -> Iterator[str]:
    verb = "serve" if is_serve(told, start) else "feed"
    several = len(told.feeders(start)) > 1
    match start.next:
        case "in turn":
            yield "" if several else f"the {'server' if verb == 'serve' else 'feeder'} changes every rally"
        case "every two":
            yield f"the {'server' if verb == 'serve' else 'feeder'} changes every two rallies"
        case "winner":
            yield f"the winner {verb}s next"
        case "loser":
            yield f"the loser {verb}s next"
        case "by the rules":
            yield "serve in the order of the rules"


def _score(told: Telling, start: Start) -> Iterator[str]:
    if start.score:
        words = []
        for person, value in start.score.items():
            who = group(told, (person,))
            words.append(f"{who.words if who is not None else person} at {value}")
        yield f"the score starts with {listed(words)}"


def _later(told: Telling, start: Start) -> Sentence:
    """Return what a ball that is fed later must be; its step says when and where."""
    step = told.sequence.step(start.shot or "")
    name = f"ball {step.digit}" if step is not None else "the later ball"
    caller = calls(told, start.called_by, _feeder(told, start)) if not told.brief else ""
    result = outcome(told, start.bad, _feeder(told, start)) if start.bad is not None else ""
    again = "that ball again" if result == "replay" else result
    once = ""
    if start.once is not None and start.once.called_by:
        judge = group(told, start.once.called_by)
        once = f"{judge.words} {judge.verb('judges', 'judge')} the foot" if judge is not None else ""
    good = _not(told, start.good, owner(told, told.feeders(start)))
    bad = f"{name} {good}: {again}" if again else ""
    words = sentences_of(bad, caller, once, own_text(told, start.note))
    return sentence(f"start:{start.id}", words or f"Ball {step.digit if step else ''} is fed later.", start.id)


def _not(told: Telling, where: Where, end: str | None) -> str:
    phrase = travels(told, where, end)
    return f"not {phrase}, or out" if phrase else "out"
