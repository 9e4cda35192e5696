"""How a rally starts: who puts the ball in, where it must go, and what a bad one is."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from designer.court.readings import reading
from designer.court.regions import as_player, end_of
from designer.drill.movement import SERVES
from designer.drill.people import Spot
from designer.drill.rules import Height, Keep, Rule, Start
from designer.play.sequence import Step
from designer.wording.counts import listed
from designer.wording.musts import tall
from designer.wording.names import letter, shot_name
from designer.wording.outcomes import outcome
from designer.wording.people import Group, calls, group, opponents, owner
from designer.wording.places import offset_words
from designer.wording.rules import is_about_feed, rule_sentence
from designer.wording.sentence import Lead, Sentence, sentence, sentences_of
from designer.wording.settled import events
from designer.wording.strokes import PACE, deed
from designer.wording.telling import Telling
from designer.wording.tokens import own_text
from designer.wording.where import MIDDLE, feet, is_feet, travels

_OWN: Final = ("knee", "waist", "shoulder")
"""Heights that are somebody's own."""
_EACH_SIDE: Final = "two each side of the centre line"
_COURTS: Final = {
    "deuce": "to the deuce court",
    "ad": "to the ad court",
    "in turn": "deuce and ad in turn",
    "either": "to either court",
}


def starts(told: Telling) -> tuple[Sentence, ...]:
    """Return how the first ball comes in, then rules of the feed; a ball that is fed later is told of with its step."""
    found = [_first(told, start) for start in told.first_starts]
    found += [_later(told, start) for start in told.later_starts if told.sequence.step(start.shot or "") is None]
    feeds = [rule for rule in told.setting.rules.values() if is_about_feed(told, rule)]
    found += [rule_sentence(told, rule) for rule in feeds if not is_folded(told, rule)]
    return tuple(found)


def _feeder(told: Telling, start: Start) -> Group | None:
    return group(told, told.feeders(start), link="or")


def _first(told: Telling, start: Start) -> Sentence:
    folded = [rule for rule in told.setting.rules.values() if start.shot in rule.of and is_folded(told, rule)]
    asked = "".join(_asked(told, start, rule) for rule in folded)
    numbered = is_numbered(told, start)
    step = told.sequence.step(start.shot or "")
    words = sentences_of(
        f"{put_in(told, start)}{asked}",
        own_text(told, step.shot.note) if numbered and step is not None else "",
        own_text(told, start.note) if told.brief else "",
        bad_words(told, start),
        *_counted(told, start),
        *_accepted(told, start),
        *_next(told, start),
        *_score(told, start),
        *_drawn_court(told, start),
        "" if told.brief else own_text(told, start.note),
        *(own_text(told, rule.note) for rule in folded if not told.brief),
    )
    about = (*((start.shot,) if start.shot else ()), *(rule.id for rule in folded))
    lead = Lead("feed", str(step.digit)) if numbered and step is not None else None
    return sentence(f"start:{start.id}", words, start.id, *about, lead=lead)


def is_numbered(told: Telling, start: Start) -> bool:
    """Whether the start is told as the first step too, with its number: on a player's card, where the feed has no choice.

    A feed that is to be met before its bounce keeps its step, which says so.
    """
    step = told.sequence.step(start.shot or "")
    if not told.brief or step is None or step.alternatives or len(told.first_starts) > 1 or start.once is not None:
        return False
    shot = step.shot
    return step.feed and told.digit(shot.id) == 1 and shot.bounces != 0 and shot.called_by is None


def _drawn_court(told: Telling, start: Start) -> Iterator[str]:
    """Yield for which of the two courts a serve is drawn that goes to both, and what the other one asks for."""
    other = _other_court(told, start)
    if other and told.brief:
        # Who plays is told so beside the own place.
        own = told.setting.spot_of(told.player or next(iter(told.playing), ""))
        if (own is None or not moves_over(told, own)) and is_all_mirrored(told):
            yield f"{other} side: all mirrored"
    elif other:
        yield f"drawn for the {'ad' if other == 'deuce' else 'deuce'} court; for the {other} court mirror it"


def moves_over(told: Telling, spot: Spot) -> bool:
    """Whether a person is one of two who play from both sides of the court in turn, so that the own place says so."""
    return bool(other_court(told)) and spot.task == "plays" and len(told.playing) == 2


def is_all_mirrored(told: Telling) -> bool:
    """Whether all places change sides with the court served to: those that the serve is judged by go with it."""
    return any(_is_judged_by_area(told, start) for start in told.first_starts)


def other_court(told: Telling) -> str:
    """Return the court, "deuce" or "ad", that is served to in turn with the one a serve is drawn for, "" for none."""
    found = [_other_court(told, start) for start in told.first_starts]
    return found[0] if len(found) == 1 else ""


def _other_court(told: Telling, start: Start) -> str:
    step = told.sequence.step(start.shot or "")
    if step is None or start.courts not in ("in turn", "either") or step.shot.stroke not in SERVES:
        return ""
    across, _ = as_player(step.contact, end_of(step.contact) or "near")
    return ("ad" if across > 0 else "deuce") if across else ""


def _is_judged_by_area(told: Telling, start: Start) -> bool:
    """Whether a rule, a part or points ask in which drawn area the first ball lands."""
    judged = [(rule.of, rule.must.where) for rule in told.setting.rules.values() if isinstance(rule.must, Keep)]
    judged += [(event.of, event.where) for event in events(told)]
    return any(start.shot in of and any(place.area in told.setting.items for place in where) for of, where in judged)


def is_folded(told: Telling, rule: Rule) -> bool:
    """Whether a rule of the feed is said within the feed's own sentence, since it costs what any bad feed does."""
    start = next((start for start in told.first_starts if start.shot in rule.of), None)
    plain = not rule.never and not rule.when and not rule.parts and len(rule.of) == 1
    if start is None or not plain or start.bad is None or rule.breach != start.bad:
        return False
    usual = ((), start.called_by, told.drill.house.called_by, _across(told, start))
    return rule.called_by in usual and rule.in_doubt is None and bool(_asked(told, start, rule))


def _across(told: Telling, start: Start) -> tuple[str, ...]:
    """Return who stands across from the feeder, and so is the receiver."""
    return opponents(told, told.feeders(start))


def _asked(told: Telling, start: Start, rule: Rule) -> str:
    """Return a rule of the feed as it stands after where the feed goes: ", from behind the baseline"."""
    must = rule.must
    if isinstance(must, Keep) and len(must.where) == 1 and is_feet(must.where[0]) and not must.where[0].outside:
        return f", from {feet(told, must.where[0])}"
    if isinstance(must, Height) and must.at == "arrival":
        body = owner(told, told.feeders(start)) or "the receiver's"
        low, high = (
            None
            if bound is None
            else tall(told, bound).replace("the ", f"{body} ", 1)
            if bound in _OWN
            else tall(told, bound)
            for bound in (must.least, must.most)
        )
        if low and high:
            return f", to arrive between {low} and {high.replace(f'{body} ', '')}"
        return f", to arrive no higher than {high}" if high else f", to arrive no lower than {low}" if low else ""
    return ""


def is_serve(told: Telling, start: Start) -> bool:
    """Whether this start is a serve."""
    shot = told.setting.shots.get(start.shot or "")
    return (shot is not None and shot.stroke in SERVES) or bool(start.serves)


def put_in(told: Telling, start: Start) -> str:
    """Return who puts the ball in, how, and where it must go."""
    feeders = told.feeders(start)
    step = told.sequence.step(start.shot or "")
    if start.next == "anyone" and step is not None:
        feeders = (step.hitter,)
    several = len(feeders) > 1
    who = listed([letter(told, one) for one in feeders]) if feeders else "someone"
    if is_serve(told, start):
        return f"{who} {_serves(told, start, several=several)}"
    who = f"{who} in turn" if several else who
    # Of several feeders each has another to hit to.
    where = travels(told, start.good, owner(told, feeders) or ("the receiver's" if told.brief and several else None))
    if told.brief:
        where = where.replace(MIDDLE, f"{MIDDLE} ({_EACH_SIDE})")
    if step is None:
        return f"{who} {'put' if several else 'puts'} the ball in {where}"
    if step.shot.stroke != "racket feed":
        return f"{who} {deed(told, step)} {where}"
    place = _fed_from(told, start, step)
    verb = "bounce and hit" if several else "bounces and hits"
    if where:
        return f"{who}{place} {verb} {PACE.get(step.shot.pace or '', '')} {where}"
    _, _, aim = deed(told, step).partition(" ")
    # Several feeders: the drawn feed is one of them, and goes to one receiver of several.
    return f"{who}{place} {verb} {'' if several and aim.startswith('to ') else aim}"


def _fed_from(told: Telling, start: Start, step: Step) -> str:
    """Return from where a feed is hit, for the coach, where no rule of the feed says it: ", from behind the baseline,"."""
    asked = any(
        isinstance(rule.must, Keep) and is_feet(rule.must.where[0])
        for rule in told.setting.rules.values()
        if start.shot in rule.of
    )
    along = reading(told.ground, step.contact).along
    if told.brief or asked or along is None or not step.placed:
        return ""
    if along.line == "the baseline" and along.direction == "behind":
        return ", from behind the baseline,"
    if along.direction == "on" or step.contact_drawn:
        words = offset_words(along, "along", told.units)
        return f", from {words.removeprefix('on ')},"
    return ""


def _serves(told: Telling, start: Start, *, several: bool) -> str:
    shot = told.setting.shots.get(start.shot or "")
    counts = set(start.serves.values())
    kind = shot.stroke if shot is not None and shot.stroke in SERVES else "serve"
    where = _COURTS.get(start.courts or "", travels(told, start.good, owner(told, told.feeders(start))))
    verb = ("serve in turn" if several else "serves") + (" underarm" if kind == "underarm serve" else "")
    if kind == "second serve":
        ball = "second serves" if several or counts == {2} else "one second serve"
        tries = ", two tries" if counts == {2} else ", one try" if several else ""
        hit = f"{'in turn hit' if several else 'hits'} {ball}"
        return f"{hit}{_joined(where)}{tries}" if not where.endswith("in turn") else f"{hit}{tries}{_joined(where)}"
    tries = {frozenset({1}): ", one try", frozenset({2}): ", two tries"}.get(frozenset(counts), "")
    if len(counts) > 1:
        # Some have one serve and some two.
        tries = f", {listed([f'{letter(told, who)} {_tries(count)}' for who, count in sorted(start.serves.items())])}"
    return f"{verb}{tries}{_joined(where)}" if where.endswith("in turn") else f"{verb}{_joined(where)}{tries}"


def _tries(count: int) -> str:
    return "one serve" if count == 1 else "two serves"


def _joined(where: str) -> str:
    """Return the courts as they stand after the serve: " to the deuce court", ", deuce and ad in turn"."""
    return "" if not where else f", {where}" if where.endswith("in turn") else f" {where}"


def bad_words(told: Telling, start: Start) -> str:
    """Return what a bad feed or a fault is; "" where nothing says so."""
    shot = told.setting.shots.get(start.shot or "")
    if start.bad is None or (shot is not None and shot.stroke == "shadow swing"):
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
        receiver = start.called_by == ("receiver",) or (start.called_by == across and len(across) == 1)
        if receiver and told.drill.house.feed_played == "accepted" and not told.brief:
            caller = f"{caller} before hitting"
    result = outcome(told, start.bad, doer)
    if is_serve(told, start):
        counts = set(start.serves.values())
        fault = "a double fault" if counts == {2} else "the last fault" if len(counts) > 1 else "a fault"
        return f"{fault}: {result}"
    head = "bad feed: "
    if told.brief and start.good:
        # A feed that is played counts, so a bad one is one that was left.
        head = "bad feed: leave it, " if told.drill.house.feed_played == "accepted" else "if not: "
    return f"{head}{result}{'; ' + caller if caller else ''}"


def _counted(told: Telling, start: Start) -> Iterator[str]:
    """Yield that faults which cost a point use up a start, where starts are counted."""
    end = told.setting.finish
    costs = start.bad is not None and start.bad.then in ("lose the point", "points")
    if costs and is_serve(told, start) and end is not None and end.starts is not None:
        yield "it counts as a start"


def _accepted(told: Telling, start: Start) -> Iterator[str]:
    played = told.drill.house.feed_played
    first = next((each for each in told.first_starts if each.bad is not None and not is_serve(told, each)), None)
    if played is not None and not told.brief and start == first:
        yield (
            "a feed that is played counts as good"
            if played == "accepted"
            else "a bad feed that is played does not count"
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
        case "anyone":
            yield "the next ball is fed at once by whoever holds one"


_CALLED: Final = {1: 15, 2: 30, 3: 40}
"""Points of a game as they are called: ITF Rules of Tennis, rule 5."""


def _score(told: Telling, start: Start) -> Iterator[str]:
    if start.score:
        words = []
        end = told.setting.finish
        called = _CALLED if end is not None and end.kind == "game" else {}
        for person, value in start.score.items():
            who = group(told, (person,))
            words.append(f"{who.words if who is not None else person} at {called.get(value, value)}")
        yield f"the score starts with {listed(words)}"


def _later(told: Telling, start: Start) -> Sentence:
    words = sentences_of(*later_words(told, start)) or sentences_of("a later ball is fed")
    return sentence(f"start:{start.id}", words, start.id)


def later_words(told: Telling, start: Start) -> tuple[str, ...]:
    """Return what makes a ball bad that is fed later, what becomes of it, and who judges; its step says when and where.

    A player reads it among what is not allowed, so it names the ball there.
    """
    step = told.sequence.step(start.shot or "")
    name = "the later ball " if step is None else f"{shot_name(told, step.shot)} " if told.brief else ""
    caller = calls(told, start.called_by, _feeder(told, start)) if not told.brief else ""
    where = travels(told, start.good, owner(told, told.feeders(start)))
    # The step has just said which line it must pass.
    astray = "short" if step is not None and where.startswith("past ") else f"not {where}" if where else ""
    faults = [fault for fault in ("too early" if start.once is not None else "", astray, "out") if fault]
    bad = [f"{name}{listed(faults, 'or')}: {left}" for left in left(told, start)[:1]]
    judge = _judge(told, start)
    if caller and judge:
        # Two who decide: one on the ball, one on the foot.
        judge, caller = f"{caller} the ball, {judge}", ""
    return (*bad, *left(told, start)[1:], caller, judge, own_text(told, start.note))


def left(told: Telling, start: Start) -> tuple[str, ...]:
    """Return what a bad later ball costs, then what becomes of one that is played all the same; () where nothing says so."""
    if start.bad is None:
        return ()
    feeder, across = _feeder(told, start), _across(told, start)
    result = outcome(told, start.bad, feeder)
    if result != "replay" or feeder is None:
        return (result,)
    again = f"{feeder.words} {feeder.verb('feeds', 'feed')} again"
    if told.drill.house.feed_played is None or len(across) != 1:
        return (again,)
    hitter = letter(told, across[0])
    played = "play on" if told.drill.house.feed_played == "accepted" else "it does not count"
    return f"{hitter} leaves it, {again}", f"if {hitter} hits it, {played}"


def _judge(told: Telling, start: Start) -> str:
    """Return who judges whether a later ball may be hit yet: "B judges A's foot"."""
    if start.once is None or not start.once.called_by:
        return ""
    judge, runner = group(told, start.once.called_by), group(told, start.once.by)
    if judge is None:
        return ""
    what = f"{runner.own} foot" if runner is not None and start.once.what == "reached" else "when"
    return f"{judge.words} {judge.verb('judges', 'judge')} {what}"
