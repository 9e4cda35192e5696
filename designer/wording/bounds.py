"""What a player may not do: each rule of the rally told from its breach, for a card that is read in half a minute."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from designer.drill.conditions import Event, In
from designer.drill.rules import Aim, Bounces, Height, Keep, Part, Rule, Start, UseStroke
from designer.wording.counts import listed, lowered, number, ordinal
from designer.wording.events import AIM, trigger, with_a
from designer.wording.misses import in_play, miss_words, off_and_out, replays
from designer.wording.musts import REACHES, at_own_hit, demand, is_drawn_there, is_next_hit, off, tall
from designer.wording.names import letter, shot_name, shots_named
from designer.wording.openings import balls_closed, opens_when
from designer.wording.outcomes import outcome
from designer.wording.people import Group
from designer.wording.rules import (
    condition_of,
    doer_of,
    from_middle,
    misses_left,
    remarks,
    rule_sentence,
    scope_of,
    told_together,
)
from designer.wording.scope import ball_subject
from designer.wording.sentence import Lead, Sentence, marked, sentence, sentences_of, unmarked
from designer.wording.settled import settled
from designer.wording.starts import later_words, left
from designer.wording.telling import Telling
from designer.wording.tokens import own_text
from designer.wording.where import feet, is_feet


def bounds(told: Telling) -> tuple[Sentence, ...]:
    """Return what is not allowed in the rally and what it costs; who calls and all that is said beside it are other rules.

    Rules of the first feed are left out: they stand under the start.
    """
    fed = [found for start in _fed_later(told) if (found := _too_early(told, start)) is not None]
    alike: dict[tuple[str, str], list[Bound]] = {}
    for place, each in enumerate(told_together(told)):
        if _is_bound(each[0]):
            bound = _bound(told, *each)
            # Breaches at the same time that cost the same are said together.
            alike.setdefault((bound.scope or str(place), bound.cost), []).append(bound)
    return (*fed, *_by_cost(list(alike.values())))


_SAID_OVER: Final = 3
"""So many breaches of one cost have it said once, over all of them."""


def _by_cost(breaches: list[list[Bound]]) -> Iterator[Sentence]:
    """Yield breaches, those that cost what many do at last and below one head: "Point lost:"."""
    often = Counter(own[0].cost for own in breaches if own[0].cost)
    for own in breaches:
        if often[own[0].cost] < _SAID_OVER:
            yield from _of_one_time(own)
    for cost, count in often.items():
        if count >= _SAID_OVER:
            below = [own for own in breaches if own[0].cost == cost]
            yield _head(cost, below)
            yield from (_said([replace(bound, cost="") for bound in each]) for each in below)


def _of_one_time(own: list[Bound]) -> Iterator[Sentence]:
    """Yield breaches of one time and cost: as one, several of them each below one head, "In the first four hits, no score:"."""
    missed = next((each.missed for each in own if each.missed), "")
    first = own[0]
    if not first.scope or not first.cost or len(own) + bool(missed) < _SAID_OVER:
        yield _said(own)
        return
    yield _head(f"{first.scope}, {first.cost}", [own])
    yield from (_said([replace(bound, scope="", cost="", missed="")]) for bound in own)
    if missed:
        yield sentence(f"rule:{first.rule}:missed", _bare(missed.removeprefix("or ")), *first.about, lead=Lead("bound"))


def _head(text: str, below: list[list[Bound]]) -> Sentence:
    """Return what breaches have in common as the line over them, ending in a colon."""
    about = dict.fromkeys(id for each in below for bound in each for id in bound.about)
    head = sentence(f"cost:{below[0][0].rule}", text, *about)
    return replace(head, parts=(*head.parts[:-1], f"{str(head.parts[-1]).removesuffix('.')}:"))


@dataclass(frozen=True, slots=True)
class Bound:
    """What is not allowed: the rule, its breach, a miss that costs the same ("" for none), in which part ("" for all), the cost.

    ``about`` are the records it is made from.
    """

    rule: str
    what: str
    missed: str
    scope: str
    cost: str
    about: tuple[str, ...]


def _said(bounds: list[Bound]) -> Sentence:
    first = bounds[0]
    missed = next((each.missed for each in bounds if each.missed), "")
    what = [each.what for each in bounds]
    if missed.startswith("or ") and not missed.endswith("a miss"):
        # "A volley or a second bounce, or a ball in the net or out" would have one "or" too many.
        what = [text.replace(" or ", ", ") for text in what]
    all_of_it = f"{', '.join(what)}, {missed}" if missed else listed(what, "or")
    head = f"{first.scope}, {all_of_it}" if first.scope else _bare(all_of_it)
    about = dict.fromkeys(id for each in bounds for id in each.about)
    return sentence(f"rule:{first.rule}", f"{head}{first.cost and f': {first.cost}'}", *about, lead=Lead("bound"))


def _fed_later(told: Telling) -> list[Start]:
    return [start for start in told.later_starts if told.sequence.step(start.shot or "") is not None]


def _too_early(told: Telling, start: Start) -> Sentence | None:
    """Return that a ball which waits for something may not be fed before it; None where it waits for nothing."""
    when = "" if start.once is None else trigger(told, start.once)
    step = told.sequence.step(start.shot or "")
    if not when.startswith("once ") or start.bad is None or step is None:
        return None
    what, cost = shot_name(told, step.shot), left(told, start)[0]
    who = f"{letter(told, step.shot.by)} hits "  # whoever reads is told whose fault it is
    words = f"{who}{what} before {when.removeprefix('once ')}: {cost}"
    return sentence(f"start:{start.id}", words, start.id, step.shot.id, lead=Lead("bound"))


def no_bounds(told: Telling) -> tuple[Sentence, ...]:
    """Return that a point has no bounds of its own, () where no point is played."""
    if not any(part.kind == "open" for part in told.parts):
        return ()
    return (sentence("bounds:none", "only what tennis itself forbids"),)


def other_rules(told: Telling) -> tuple[Sentence, ...]:
    """Return the rules of the rally that forbid nothing, misses and replays, then what is said beside those that do.

    What becomes of a ball that misses the place it is drawn to, where that only opens the point, its step says.
    """
    every = told_together(told)
    opens = (
        rule_sentence(told, rule, missed=part)
        for rule, _, part in every
        if not _is_bound(rule) and not _is_said_by_step(told, rule)
    )
    beside = [found for rule, twin, _ in every if _is_bound(rule) for found in _beside(told, rule, twin)]
    fed = (
        sentence(f"start:{start.id}", sentences_of(*later_words(told, start)), start.id) for start in _fed_later(told)
    )
    later = (each for each in fed if each.parts)
    of_steps = {id for rule, _, _ in every if _is_said_by_step(told, rule) for id in _parts_of(told, rule.of[0])}
    missed = (found for found in misses_left(told) if not of_steps & set(found.about))
    return (*settled(told), *in_play(told), *opens, *missed, *replays(told), *later, *beside)


@dataclass(frozen=True, slots=True)
class Astray:
    """What becomes of a ball that misses its place: sentences and the records they are made from."""

    words: tuple[str, ...] = ()
    about: tuple[str, ...] = ()


def astray(told: Telling, shot_id: str) -> Astray:
    """Return what becomes of a drawn ball that misses its place, as its step says it to a player; nothing where rules do."""
    rule = next((rule for rule, _, _ in told_together(told) if _is_said_by_step(told, rule, shot_id)), None)
    if rule is None or rule.breach is None:
        return Astray()
    words = [f"in court but outside it: {outcome(told, rule.breach, doer_of(told, rule))}", own_text(told, rule.note)]
    parts = _parts_of(told, shot_id)
    missed = [found for found in misses_left(told) if parts & set(found.about)]
    return Astray((*words, *map(marked, missed)), (rule.id, *(id for found in missed for id in found.about)))


def _is_said_by_step(told: Telling, rule: Rule, shot_id: str = "") -> bool:
    """Whether a rule is only about where one drawn ball lands, and a breach opens the point."""
    one = len(rule.of) == 1 and shot_id in ("", rule.of[0]) and not rule.called_by and rule.in_doubt is None
    return one and not _is_bound(rule) and is_drawn_there(told, rule, doer_of(told, rule))


def _parts_of(told: Telling, shot_id: str) -> set[str]:
    """Return the parts of the rally whose only hit is this ball."""
    found = set()
    for part in told.parts:
        hits = [id for id in part.shots if id in told.setting.shots and not told.is_new_ball(told.setting.shots[id])]
        found |= {part.id} if hits == [shot_id] else set()
    return found


def _beside(told: Telling, rule: Rule, twin: Rule | None) -> Iterator[Sentence]:
    """Yield who calls a breach, what doubt means and the rule's note, behind the breach that they are about."""
    whole = rule if twin is None else rule.changed(who=())
    said = [words for words in (*from_middle(whole), *remarks(told, whole)) if words]
    if said:
        first, *more = said
        words = sentences_of(f"{_bare(breach(told, whole, doer_of(told, whole)))}: {lowered(first)}", *more)
        yield sentence(f"rule:{rule.id}:beside", words, rule.id)


def _is_bound(rule: Rule) -> bool:
    """Whether a breach costs something; one that only opens the point, and a leave to do anything, forbid nothing."""
    return (rule.breach is None or rule.breach.then != "opens") and (rule.never or not _is_leave(rule))


def _is_leave(rule: Rule) -> bool:
    """Whether a demand is met by anything: any stroke, any number of bounces, a height not yet said."""
    match rule.must:
        case UseStroke() as must:
            return not must.strokes and must.wing is None
        case Bounces() as must:
            return not must.rising and not must.least and must.most is None
        case Height() as must:
            return must.least is None and must.most is None
    return False


def _bound(told: Telling, rule: Rule, twin: Rule | None, part: Part | None) -> Bound:
    """Return the breach of a rule; ``part`` is one in which a miss costs the same."""
    whole = rule if twin is None else rule.changed(who=())
    doer = doer_of(told, whole)
    cost = "" if whole.breach is None else outcome(told, whole.breach, doer)
    scope, text = "", off_and_out(told, whole, doer).removesuffix(f": {cost}")
    if not text:
        scope, text = _breach_in_place(told, whole, doer)
    if twin is not None and any(isinstance(condition, In) for condition in rule.when):
        text = text.replace("\x02the ", "\x02your own ", 1)
    twins = () if twin is None else (twin.id,)
    missed = () if part is None else (part.id,)
    miss = "" if part is None else miss_words(told, part)
    if miss.startswith("in ") and doer is not None and text.startswith(f"{doer.either} "):
        miss = f"or hits {miss.replace('in ', 'into ', 1)}"  # one more deed, not where the ball bounces twice
    return Bound(rule.id, text, miss, scope, cost, (rule.id, *twins, *rule.of, *missed))


def _bare(text: str) -> str:
    """Return ``text`` without its first article: at the head of a line it would be taken for player A."""
    return text.removeprefix("a ").removeprefix("an ")


def _breach_in_place(told: Telling, rule: Rule, doer: Group | None) -> tuple[str, str]:
    """Return when there is one at all, and the breach: ("until open", "volley"), ("", "backhand after a bounce in …")."""
    broken, condition = breach(told, rule, doer), condition_of(told, rule)
    scope, broken = _by_number(told, rule, doer, scope_of(told, rule), broken)
    scope = tuple(_counted_out(told, words) for words in scope)
    if _answered(told, rule):
        condition = ""  # the breach names the ball
    if is_next_hit(rule) or condition.startswith("once "):
        scope, condition = (*scope, condition), ""
    if condition.startswith("from ") and not demand(told, rule, doer).feet and " hit" not in broken:
        condition = f"hit {condition}"
    return ", ".join(scope), f"{broken} {condition}".strip()


def _by_number(
    told: Telling, rule: Rule, doer: Group | None, scope: tuple[str, ...], broken: str
) -> tuple[tuple[str, ...], str]:
    """Return when a breach counts and what it is; one before few counted balls names them instead.

    (("until open",), "a ball by A or C outside the half") becomes ((), "ball 2 or 3 outside the half"), where those two
    hit both; so nobody takes the feed, which is ball 1, for one of them.
    """
    balls = balls_closed(told) if scope == ("until open",) else ()
    named = shots_named(told, balls)
    if not balls or len(balls) > _FEW_BALLS or not unmarked(named).startswith("ball "):
        return scope, broken
    subject = ball_subject(told, rule, doer, each="a")
    hitters = {told.setting.shots[id].by for id in balls}
    if broken.startswith(f"{subject} ") and (doer is None or hitters <= set(doer.letters)):
        return (), f"{named}{broken.removeprefix(subject)}"
    if broken.endswith(" touches the ball"):
        # A ball is called by its hit: who volleys ball 3 makes ball 4, and that is no breach.
        return (), f"{broken.removesuffix('touches the ball')}plays {named}"
    return scope, broken


_FEW_BALLS: Final = 2
"""So many balls are named rather than counted."""


def _counted_out(told: Telling, scope: str) -> str:
    """Return when a breach counts, "until open" by the balls that this comes to: "before ball 4", "in the first four hits"."""
    closed = [part for part in told.parts if part.kind != "open"]
    when = opens_when(told, closed[-1], seen=True).split(" (")[0] if closed and scope in _BY_OPENING else ""
    first, _, rest = when.partition(" ")
    until = scope == "until open"
    if first == "from" and "," not in rest and " or " not in rest:
        return f"before {rest}" if until else f"from {rest} on"
    if first == "after" and rest.endswith(" hits"):
        return f"in the first {rest}" if until else when
    return scope


_BY_OPENING: Final = ("until open", "once open")


def _answered(told: Telling, rule: Rule) -> str:
    """Return the drawn ball of another that a breach by feet answers: "a pass (not a lob)"; "" where it is not one such."""
    events = [event for event in rule.when if isinstance(event, Event)]
    one = len(events) == len(rule.when) == 1 and bool(events[0].of) and not events[0].where
    by_feet = isinstance(rule.must, Keep) and any(place.judged == "one foot" for place in rule.must.where)
    if not (one and by_feet and is_next_hit(rule)) or rule.of or at_own_hit(rule):
        return ""
    _, after, ball = condition_of(told, rule).partition("after ")
    return ball if after else ""


def breach(told: Telling, rule: Rule, doer: Group | None) -> str:
    """Return what breaks a rule, as a clause or a noun, without when it holds and what it costs."""
    asked = demand(told, rule, doer)
    if asked.forbidden:
        return asked.text
    match rule.must:
        case Keep() as must:
            return _kept_badly(told, rule, must, doer)
        case UseStroke() as must:
            return _other_stroke(told, rule, must, doer)
        case Aim() as must:
            return f"{ball_subject(told, rule, doer, each='a')} that does not go {AIM[must.direction]}"
        case Height() as must:
            return _wrong_height(told, rule, must, doer)
        case Bounces() as must:
            return _wrong_bounces(must, doer)
    return asked.text


def _kept_badly(told: Telling, rule: Rule, must: Keep, doer: Group | None) -> str:
    on_feet = [place for place in must.where if is_feet(place)]
    if on_feet:
        return _feet_astray(told, rule, must, on_feet[0], doer)
    if any(place.judged == "contact" for place in must.where):
        who = doer.words if doer is not None else "the hitter"
        return f"{who} hits the ball {off(told, rule, None)}"
    subject = ball_subject(told, rule, doer, each="a")
    crosses = " over the net" if any(place.judged == "net" for place in must.where) else ""
    return f"{subject}{crosses} {off(told, rule, doer)}"


def _feet_astray(told: Telling, rule: Rule, must: Keep, place: In, doer: Group | None) -> str:
    """Return where feet break a rule: one foot is enough where both are asked for."""
    own = None if doer is None or doer.one is None else doer.own
    if place.judged == "both feet":
        where = feet(told, place.changed(outside=not place.outside))
        whose, astray = f"{own or 'a'} foot {where}", f"a foot {where}"
    else:
        whose = astray = f"both feet {feet(told, place.changed(outside=not place.outside))}"
    if rule.of:
        return f"{shots_named(told, rule.of)} hit with {astray}"
    if at_own_hit(rule):
        return astray
    if must.time == "all the time":
        return whose if place.judged == "both feet" or doer is None else f"{doer.words} with {astray}"
    if doer is not None and rule.from_hit > 1 and rule.to_hit == rule.from_hit:
        return f"{doer.words} with {astray}"  # after "at the fourth hit", whoever makes it
    if place.judged == "one foot":
        # Both feet behind a line is what everybody calls from behind it.
        where, answered = astray.removeprefix("both feet "), _answered(told, rule)
        if answered:  # "A hits a pass" would forbid A to play one
            return f"{'' if doer is None else f'{doer.either} '}{where} when answering {answered}"
        who = "hitting" if doer is None else f"{doer.either} hits"
        return f"{who} {'the next ball' if is_next_hit(rule) else 'a ball'} from {where}"
    hit = "next hit" if is_next_hit(rule) else "hit"
    if doer is None:
        return f"a {hit} with {astray}"
    return f"{own} {hit} with {astray}" if own else f"the {hit} by {doer.either} with {astray}"


_OTHER_WING = {"forehand": "backhand", "backhand": "forehand"}


def _other_stroke(told: Telling, rule: Rule, must: UseStroke, doer: Group | None) -> str:
    by = "" if doer is None else f" by {doer.either}"
    if not must.strokes and must.wing is None:
        return demand(told, rule, doer).text
    if not must.strokes and not rule.of:
        return f"{with_a(_OTHER_WING[str(must.wing)])}{by}"
    strokes = listed([f"{must.wing} {stroke}" if must.wing else str(stroke) for stroke in must.strokes], "or")
    one = with_a(strokes or str(must.wing))
    named = f"{shots_named(told, rule.of)} as " if rule.of else ""
    return f"{named}anything but {one}{'' if rule.of else by}"


def _wrong_height(told: Telling, rule: Rule, must: Height, doer: Group | None) -> str:
    subject = ball_subject(told, rule, doer, each="a")
    wrong = [
        f"{than} {tall(told, bound)}"
        for than, bound in (("lower than", must.least), ("higher than", must.most))
        if bound is not None
    ]
    verb = {"is hit": " hit", "rises": ""}.get(REACHES[must.at], f" that {REACHES[must.at]}")
    return f"{subject}{verb} {' or '.join(wrong)}" if wrong else demand(told, rule, doer).text


def _wrong_bounces(must: Bounces, doer: Group | None) -> str:
    if doer is None:
        return " or ".join(noun for noun, _ in _bounces_astray(must))
    # "A volley or a second bounce by A" would leave open whose the bounce is.
    deeds = [deed for _, deed in _bounces_astray(must)]
    first, *more = deeds
    return f"{doer.either} {' or '.join([first, *(deed.replace('the ball', 'it') for deed in more)])}"


def _bounces_astray(must: Bounces) -> Iterator[tuple[str, str]]:
    """Yield each way to take the wrong bounce, as a noun and as what somebody does: ("a volley", "volleys")."""
    least, most = must.least or 0, must.most
    if must.rising:
        yield "a hit after the top of the bounce", "hits after the top of the bounce"
        return
    if most == 0:
        yield "a bounce", "lets the ball bounce"
        return
    if least == 1:
        yield "a volley", "volleys"
    elif least > 1:
        yield f"a hit before the {ordinal(least)} bounce", f"hits before the {ordinal(least)} bounce"
    if most == 1:
        yield "a second bounce", "lets the ball bounce twice"
    elif most is not None:
        yield f"a hit after more than {number(most)} bounces", f"hits after more than {number(most)} bounces"
