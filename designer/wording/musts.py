"""What a rule demands, or forbids, as a clause."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from designer.drill.conditions import Event, In
from designer.drill.rules import Aim, Bounces, Height, Keep, Rule, UnknownMust, UseStroke
from designer.wording.counts import listed, number, ordinal, plural
from designer.wording.events import AIM, with_a
from designer.wording.names import shots_named
from designer.wording.people import Group, owner
from designer.wording.scope import ball_subject, drawn_shots
from designer.wording.sentence import one_line, unmarked
from designer.wording.telling import Telling
from designer.wording.units import height
from designer.wording.where import BACK_LINES, bounces, feet, foot_words, is_feet, is_line

_BODY: Final = {
    "knee": "the knee",
    "waist": "the waist",
    "shoulder": "the shoulder",
    "raised racket": "a raised racket",
    "net": "the net",
}
REACHES: Final = {"contact": "is hit", "net": "crosses the net", "highest": "rises", "arrival": "arrives"}


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
        return _bounces(must, doer)
    return Demand(f"a rule this program does not know: {_unknown(must)}")


def _unknown(must: UnknownMust) -> str:
    name = one_line(must.do)
    return f"“{name}”" if name else "it has no name"


def _keep(told: Telling, rule: Rule, must: Keep, doer: Group | None) -> Demand:
    on_feet = [place for place in must.where if is_feet(place)]
    if on_feet:
        return _keep_feet(told, rule, must, on_feet[0], doer)
    end = owner(told, shooters(told, rule, doer))
    place = bounces(told, must.where, end)
    if any(place.judged == "contact" for place in must.where):
        who = doer.words if doer is not None else "the hitter"
        return Demand(f"{who} hits the ball {bounces(told, must.where)}", forbidden=rule.never)
    if rule.never:
        return Demand(f"{ball_subject(told, rule, doer, each='a')} {place}", forbidden=True)
    subject = ball_subject(told, rule, doer)
    if is_drawn_there(told, rule, doer):
        return Demand(f"{subject} in court but {off(told, rule, doer)}", forbidden=True)
    crosses = any(place.judged == "net" for place in must.where)
    several = unmarked(subject).endswith("balls")
    verb = ("cross" if several else "crosses") + " the net" if crosses else "land" if several else "lands"
    return Demand(f"{subject} {verb} {place}")


def shooters(told: Telling, rule: Rule, doer: Group | None) -> tuple[str, ...]:
    """Return whose balls a rule is about."""
    if rule.of:
        return tuple(dict.fromkeys(told.setting.shots[id].by for id in rule.of if id in told.setting.shots))
    return () if doer is None else doer.letters


def is_drawn_there(told: Telling, rule: Rule, doer: Group | None) -> bool:
    """Whether the steps already say that these shots go to this very place, so that only the miss is left to say."""
    must = rule.must
    if not isinstance(must, Keep) or rule.never or len(must.where) != 1 or must.where[0].judged != "bounce":
        return False
    shots = [told.setting.shots[id] for id in (rule.of or drawn_shots(told, rule, doer)) if id in told.setting.shots]
    return bool(shots) and all(shot.to is not None and shot.to.on == must.where[0].area for shot in shots)


def off(told: Telling, rule: Rule, doer: Group | None) -> str:
    """Return where a ball is that misses the place a rule asks for: "outside the reply zone"."""
    where = rule.must.where if isinstance(rule.must, Keep) else ()
    end = owner(told, shooters(told, rule, doer))
    return bounces(told, tuple(place.changed(outside=not place.outside) for place in where), end)


def _keep_feet(told: Telling, rule: Rule, must: Keep, place: In, doer: Group | None) -> Demand:
    own = None if doer is None or doer.one is None else doer.own
    if rule.never or (place.outside and place.judged == "one foot"):
        foot = "both feet" if place.judged == "both feet" else f"{own} foot" if own else "a foot"
        return Demand(f"{foot} {feet(told, place.changed(outside=False))}", forbidden=True, feet=True)
    where = f"{foot_words(place)} {feet(told, place)}{_on_the_line(told, place)}"
    if rule.of:
        return Demand(f"{shots_named(told, rule.of)} is hit with {where}", feet=True)
    if at_own_hit(rule):
        return Demand(where, feet=True)
    who = doer.words if doer is not None else "everyone"
    if must.time == "all the time":
        return Demand(f"{who} {doer.verb('keeps', 'keep') if doer is not None else 'keeps'} {where}", feet=True)
    hit = "next hit" if is_next_hit(rule) else "hit"
    if doer is not None and rule.from_hit > 1 and rule.to_hit == rule.from_hit:
        return Demand(f"{doer.words}: {where}", feet=True)  # after "at the fourth hit", whoever makes it
    if doer is None:
        return Demand(f"{'the' if hit == 'next hit' else 'each'} {hit}: {where}", feet=True)
    return Demand(f"{own} {hit}: {where}" if own else f"the {hit} by {doer.either}: {where}", feet=True)


def _on_the_line(told: Telling, place: In) -> str:
    """Return what a foot on the line is, where the words for the place do not say it."""
    if place.line != "out" or place.side != "in front of" or place.outside or not is_line(told, place.area):
        return ""
    return f"; on the line counts as {'outside' if place.area in BACK_LINES else 'behind'} it"


def is_next_hit(rule: Rule) -> bool:
    """Whether a rule is about the doer's next hit after what it waits for."""
    must = rule.must
    timed = isinstance(must, Keep) and must.time == "at the next hit"
    return timed or (bool(rule.when) and rule.to_hit is not None and rule.to_hit == rule.from_hit)


def at_own_hit(rule: Rule) -> bool:
    """Whether a rule waits for the doer's own counted hit, so that it need not be named again."""
    return any(
        isinstance(event, Event) and event.what == "played" and event.count and event.by == rule.who and not event.where
        for event in rule.when
    )


def _stroke(told: Telling, rule: Rule, must: UseStroke, doer: Group | None) -> Demand:
    strokes = [f"{must.wing} {stroke}" if must.wing else str(stroke) for stroke in must.strokes]
    one = listed(strokes, "or") or str(must.wing or "")
    by = "" if doer is None else f" by {doer.either if rule.never else doer.words}"
    if not one:
        return _touch(told, rule, doer)
    if rule.never and doer is None and not rule.of:
        by = " by either player" if len(told.playing) == 2 else " by anyone"
    if rule.never:
        named = f" at {shots_named(told, rule.of)}" if rule.of else ""
        return Demand(f"{with_a(one)}{by}{named}", forbidden=True)
    if rule.of and set(must.strokes) == {"serve", "underarm serve"}:
        return Demand(f"{shots_named(told, rule.of)} is overarm or underarm")
    if rule.of:
        return Demand(f"{shots_named(told, rule.of)} is {with_a(one)}")
    if rule.when:
        return Demand(f"{one} only" if doer is None else f"{doer.words} {doer.verb('plays', 'play')} {with_a(one)}")
    several = listed([plural(stroke) for stroke in strokes], "or") or f"{must.wing}s"
    return Demand(f"{several} only{by}")


def _touch(told: Telling, rule: Rule, doer: Group | None) -> Demand:
    if not rule.never:
        return Demand(f"any stroke{'' if doer is None else f' for {doer.words}'}")
    named = [id for event in rule.when if not isinstance(event, In) for id in event.of]
    ball = shots_named(told, (*rule.of, *named)) or _any_ball(told, rule)
    who = "anyone" if doer is None else doer.either
    if who == "everyone else":
        who = "anyone but the two hitting" if _between_two(told, rule) else "anyone else"
    return Demand(f"{who} touches {ball}", forbidden=True)


def _between_two(told: Telling, rule: Rule) -> bool:
    """Whether the balls that are drawn in the parts of a rule go between two players of more."""
    drawn = [id for part in told.parts if part.id in rule.parts for id in part.shots]
    hitters = {told.setting.shots[id].by for id in drawn if id in told.setting.shots}
    return len(hitters) == 2 and len(told.playing) > 2


def _any_ball(told: Telling, rule: Rule) -> str:
    """Return which ball nobody may touch: one after the feed, where another rule says what touching the feed costs."""
    feeds = {start.shot for start in told.first_starts}
    for other in told.setting.rules.values():
        touched = [id for event in other.when if isinstance(event, Event) for id in event.of]
        if other.never and other.who == rule.who and touched and feeds.issuperset(touched):
            return "a ball after the feed"
    return "the ball"


def _aim(told: Telling, rule: Rule, must: Aim, doer: Group | None) -> Demand:
    if rule.never and must.direction == "at a body" and not rule.of:
        # Nobody forbids the soft ones.
        return Demand(f"a hard hit{'' if doer is None else f' by {doer.either}'} at a body", forbidden=True)
    if rule.never:
        return Demand(f"{ball_subject(told, rule, doer, each='a')} {AIM[must.direction]}", forbidden=True)
    subject = ball_subject(told, rule, doer)
    go = "go" if unmarked(subject).endswith("balls") else "goes"
    return Demand(f"{subject} {go} {AIM[must.direction]}")


def _height(told: Telling, rule: Rule, must: Height, doer: Group | None) -> Demand:
    subject = ball_subject(told, rule, doer, each="a" if rule.never else "every")
    least = None if must.least is None else tall(told, must.least)
    most = None if must.most is None else tall(told, must.most)
    verb = REACHES[must.at]
    if least is not None and most is not None:
        return Demand(f"{subject} {verb} between {least} and {most}", forbidden=rule.never)
    if least is None and most is None:
        return Demand(f"{subject}: how high is not yet said")
    if not rule.never and least is None and must.at == "highest":
        return Demand(f"{subject.replace('every', 'a', 1)} higher than {most}", forbidden=True)
    low, high = ("lower than", "higher than") if rule.never else ("no higher than", "no lower than")
    return Demand(f"{subject} {verb} {f'{low} {most}' if least is None else f'{high} {least}'}", forbidden=rule.never)


def tall(told: Telling, value: float | str) -> str:
    """Return a height as a part of the body, or in metres or feet."""
    return _BODY[value] if isinstance(value, str) else height(value, told.units)


def _bounces(must: Bounces, doer: Group | None) -> Demand:
    by = "" if doer is None else f" by {doer.either}"
    each = "every ball is hit" if doer is None else f"{doer.words} {doer.verb('hits', 'hit')} every ball"
    least, most = must.least or 0, must.most
    if must.rising:
        return Demand(f"{each} on the rise")
    if most == 0:
        return Demand(
            "every ball is volleyed" if doer is None else f"{doer.words} {doer.verb('volleys', 'volley')} every ball"
        )
    if least == 1 and most is None:
        return Demand(f"a volley{by}", forbidden=True)
    if least and most == least:
        return Demand(f"{each} after {_times(least)}")
    if least:
        times = f"{number(least)} or {_times(most)}" if most is not None else f"at least {_times(least)}"
        return Demand(f"{each} after {times}")
    if most is not None:
        return Demand(f"{each} before its {ordinal(most + 1)} bounce")
    return Demand(f"any number of bounces{by}")


def _times(count: int) -> str:
    return "one bounce" if count == 1 else f"{number(count)} bounces"
