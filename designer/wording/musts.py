"""What a rule demands, or forbids, as a clause."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from designer.drill.conditions import In
from designer.drill.rules import Aim, Bounces, Height, Keep, Rule, UnknownMust, UseStroke
from designer.wording.counts import listed, number, plural
from designer.wording.names import shots_named
from designer.wording.people import Group, owner
from designer.wording.scope import ball_subject, drawn_shots
from designer.wording.sentence import unmarked
from designer.wording.telling import Telling
from designer.wording.units import height
from designer.wording.where import bounces, feet, foot_words, is_feet

_AIM: Final = {
    "same line back": "back on the line it came on",
    "new line": "on a new line",
    "cross-court": "cross-court",
    "down the line": "down the line",
    "middle": "through the middle",
    "at a body": "at a body",
}
_BODY: Final = {
    "knee": "the knee",
    "waist": "the waist",
    "shoulder": "the shoulder",
    "raised racket": "a raised racket",
    "net": "the net",
}


@dataclass(frozen=True, slots=True)
class Demand:
    """A rule's clause. ``forbidden``: it says what breaks the rule, so the cost follows after a colon."""

    text: str
    forbidden: bool = False
    feet: bool = False


def demand(told: Telling, rule: Rule, doer: Group | None) -> Demand:
    """Return what ``rule`` demands of ``doer``, or forbids."""
    must = rule.must
    if isinstance(must, Keep):
        return _keep(told, rule, must, doer)
    if isinstance(must, UseStroke):
        return _stroke(told, rule, must, doer)
    if isinstance(must, Aim):
        return _aim(told, rule, must, doer)
    if isinstance(must, Height):
        return _height(told, rule, must, doer)
    if isinstance(must, Bounces):
        return _bounces(told, rule, must, doer)
    return Demand(f"a rule this program does not know: {_unknown(must)}")


def _unknown(must: UnknownMust) -> str:
    return f"“{' '.join(must.do.split())}”" if must.do.strip() else "it has no name"


def _keep(told: Telling, rule: Rule, must: Keep, doer: Group | None) -> Demand:
    on_feet = [place for place in must.where if is_feet(place)]
    if on_feet:
        return _keep_feet(told, rule, must, on_feet[0], doer)
    end = owner(told, _shooters(told, rule, doer))
    if any(place.judged == "contact" for place in must.where):
        who = doer.words if doer is not None else "the hitter"
        contact = f"{who} hits the ball {bounces(told, must.where)}"
        return Demand(contact, forbidden=rule.never)
    place = bounces(told, must.where, end)
    if rule.never:
        return Demand(f"{ball_subject(told, rule, doer, each='a')} {place}", forbidden=True)
    if _drawn_there(told, rule, must, doer):
        return Demand(f"{ball_subject(told, rule, doer)} in court but {_off(told, must.where, end)}", forbidden=True)
    crosses = any(place.judged == "net" for place in must.where)
    verb = "cross the net" if crosses else "land"
    subject = ball_subject(told, rule, doer)
    several = unmarked(subject).endswith("balls") or " and " in unmarked(subject)
    if not several:
        verb = "crosses the net" if crosses else "lands"
    return Demand(f"{subject} {verb} {place}")


def _shooters(told: Telling, rule: Rule, doer: Group | None) -> tuple[str, ...]:
    if rule.of:
        return tuple(dict.fromkeys(told.setting.shots[id].by for id in rule.of if id in told.setting.shots))
    return () if doer is None else doer.letters


def _drawn_there(told: Telling, rule: Rule, must: Keep, doer: Group | None) -> bool:
    """Whether the steps already say that these shots go to this very place, so that only the miss is left to say."""
    shots = [told.setting.shots[id] for id in (rule.of or drawn_shots(told, rule, doer)) if id in told.setting.shots]
    if not shots or len(must.where) != 1 or must.where[0].judged == "net":
        return False
    return all(shot.to is not None and shot.to.on == must.where[0].area for shot in shots)


def _off(told: Telling, where: tuple[In, ...], end: str | None) -> str:
    return bounces(told, tuple(place.changed(outside=not place.outside) for place in where), end)


def _keep_feet(told: Telling, rule: Rule, must: Keep, place: In, doer: Group | None) -> Demand:
    own = None if doer is None or doer.one is None else doer.own
    side = place
    if rule.never or side.outside:
        inner = side.changed(outside=False)
        foot = "both feet" if place.judged == "both feet" else f"{own} foot" if own else "a foot"
        return Demand(f"{foot} {feet(told, inner)}", forbidden=True, feet=True)
    where = feet(told, side)
    who = doer.words if doer is not None else "everyone"
    if rule.of:
        return Demand(f"{shots_named(told, rule.of, 'and')} is hit with {foot_words(place)} {where}", feet=True)
    if must.time == "all the time":
        return Demand(
            f"{who} {'keeps' if doer is None or not doer.several else 'keep'} {foot_words(place)} {where}", feet=True
        )
    hit = "next hit" if must.time == "at the next hit" else "hit"
    subject = f"{doer.own} {hit}" if doer is not None else f"each {hit}"
    return Demand(f"{subject}: {foot_words(place)} {where}", feet=True)


def _stroke(told: Telling, rule: Rule, must: UseStroke, doer: Group | None) -> Demand:
    strokes = [f"{must.wing} {stroke}" if must.wing else str(stroke) for stroke in must.strokes]
    one = listed(strokes, "or") or str(must.wing or "")
    by = "" if doer is None else f" by {doer.words}"
    if not one:
        who = doer.words if doer is not None else "anyone"
        touch = "touches" if doer is None or not doer.several else "touch"
        return (
            Demand(f"{who} {touch} {_ball(told, rule)}", forbidden=True) if rule.never else Demand(f"{who}: any stroke")
        )
    if rule.never:
        named = f" at {shots_named(told, rule.of, 'or')}" if rule.of else ""
        return Demand(f"a {one}{by}{named}", forbidden=True)
    several = listed([plural(stroke) for stroke in strokes], "or") or f"{must.wing}s"
    if rule.of:
        return Demand(f"{shots_named(told, rule.of, 'and')} is a {one}")
    if rule.when:
        return Demand(f"{one} only" if doer is None else f"{doer.words} plays a {one}")
    return Demand(f"{several} only" if doer is None else f"{several} only{by}")


def _ball(told: Telling, rule: Rule) -> str:
    named = [id for event in rule.when if not isinstance(event, In) for id in event.of]
    return shots_named(told, (*rule.of, *named), "or") or "the ball"


def _aim(told: Telling, rule: Rule, must: Aim, doer: Group | None) -> Demand:
    if rule.never:
        return Demand(f"{ball_subject(told, rule, doer, each='a')} {_AIM[must.direction]}", forbidden=True)
    subject = ball_subject(told, rule, doer)
    return Demand(f"{subject} goes {_AIM[must.direction]}".replace("balls goes", "balls go"))


def _height(told: Telling, rule: Rule, must: Height, doer: Group | None) -> Demand:
    subject = ball_subject(told, rule, doer, each="a" if rule.never else "every")
    least = None if must.least is None else _tall(told, must.least)
    most = None if must.most is None else _tall(told, must.most)
    if least is None and most is None:
        return Demand(f"{subject}: height not yet said")
    verb = {
        "contact": "is hit",
        "net": "crosses the net",
        "highest": "rises",
        "arrival": "arrives",
    }[must.at]
    if least is not None and most is not None:
        return Demand(f"{subject} {verb} between {least} and {most}", forbidden=rule.never)
    if not rule.never and least is None and must.at == "highest":
        return Demand(f"{subject.replace('every', 'a', 1)} higher than {most}", forbidden=True)
    how = f"no higher than {most}" if least is None else f"no lower than {least}"
    if rule.never:
        how = f"lower than {most}" if least is None else f"higher than {least}"
    return Demand(f"{subject} {verb} {how}", forbidden=rule.never)


def _tall(told: Telling, value: float | str) -> str:
    return _BODY[value] if isinstance(value, str) else height(value, told.units)


def _bounces(told: Telling, rule: Rule, must: Bounces, doer: Group | None) -> Demand:
    by = "" if doer is None else f" by {doer.words}"
    whose = f"{doer.words} may let it bounce" if doer is not None and not doer.several else "it may bounce"
    if must.rising:
        who = "every ball is hit" if doer is None else f"{doer.words} {doer.verb('hits', 'hit')} every ball"
        return Demand(f"{who} on the rise")
    if must.most == 0:
        if doer is None:
            return Demand("every ball is volleyed")
        return Demand(f"{doer.words} {doer.verb('volleys', 'volley')} every ball")
    if must.least and must.most in (None, must.least) and must.least == 1:
        tail = "" if must.most is None else f"; {whose} once"
        return Demand(f"a volley{by}", forbidden=True) if not tail else Demand(f"no volley{by}, one bounce only")
    if must.least and must.most and must.most > must.least:
        return Demand(f"no volley{by}; {_times(must.most)} allowed")
    if must.least:
        return Demand(f"{_times(must.least)} before every hit{by}")
    if must.most is not None:
        return Demand(f"{_times(must.most)} allowed{by}")
    return Demand(f"any number of bounces{by}")


def _times(count: int) -> str:
    return "one bounce" if count == 1 else f"{number(count)} bounces"
