"""What happens: a hit, a miss, a catch, a score reached, as a card says it."""

from __future__ import annotations

from typing import Final

from designer.drill.conditions import Event, In
from designer.drill.movement import Stroke
from designer.wording.counts import listed, many, number, ordinal
from designer.wording.names import name_of, shots_named
from designer.wording.people import Group, group, owner
from designer.wording.telling import Telling
from designer.wording.tokens import own_text
from designer.wording.where import bounces, feet, foot_words, is_feet

AIM: Final = {
    "same line back": "back on the line it came on",
    "new line": "on a new line",
    "cross-court": "cross-court",
    "down the line": "down the line",
    "middle": "through the middle",
    "at a body": "at a body",
}
"""Where a ball is sent, as it stands after the ball."""


def stroke_noun(strokes: tuple[Stroke, ...], wing: str | None = None) -> str:
    """Return strokes as a noun: "volley or smash", "forehand", "backhand volley"; "" for none."""
    if not strokes:
        return wing or ""
    return listed([f"{wing} {stroke}" if wing else str(stroke) for stroke in strokes], "or")


def with_a(noun: str) -> str:
    """Return a noun with "a" or "an"."""
    return f"{'an' if noun[:1] in 'aeiou' else 'a'} {noun}"


def trigger(told: Telling, event: Event, doer: Group | None = None) -> str:
    """Return when something follows, as it stands first in a sentence: "after five starts", "at 8", "after 6 min"."""
    who = group(told, event.by, doer, link="or")
    match event.what:
        case "starts":
            return f"after {many(event.count or 1, 'start')}"
        case "score":
            subject = ("one side" if len(told.playing) > 2 else "one player") if who is None else who.words
            return f"when {subject} reaches {event.count}" if event.count else f"when {subject} scores"
        case "round":
            return _after_each("round", event.count)
        case "game won":
            return _after_each("game", event.count)
        case "minutes":
            return f"after {event.count or 1} min"
        case "finished":
            return _finished(told, event.count or 1)
        case "won":
            return _rallies(told, event, who)
    return _moment(told, event, who, doer)


def _finished(told: Telling, count: int) -> str:
    """Return when it has been played so often; a player is not told of an end, which is one of the court as well."""
    if not told.brief:
        return "at the end" if count == 1 else f"when it has been played {_times(count)}"
    end = told.setting.finish
    if end is not None and end.kind in ("race", "game", "tie-break") and not end.running and end.rounds == 1:
        return "after the game" if count == 1 else f"after {many(count, 'game')}"
    return "when it is over" if count == 1 else f"after playing it {_times(count)}"


def _times(count: int) -> str:
    return "twice" if count == 2 else f"{number(count)} times"


def _after_each(word: str, count: int | None) -> str:
    return f"after each {word}" if count in (None, 1) else f"after {many(count or 1, word)}"


def _rallies(told: Telling, event: Event, who: Group | None) -> str:
    count = event.count or 1
    row = " in a row" if event.running and count > 1 else ""
    rallies = f"{number(count)} rallies{row}"
    if who is None and row:
        return f"when one {'side' if len(told.playing) > 2 else 'player'} wins {rallies}"
    if who is None:
        return "after each rally" if count == 1 else f"after {rallies}"
    return f"when {who.words} {who.verb('wins', 'win')} {'a rally' if count == 1 else rallies}"


def _moment(told: Telling, event: Event, who: Group | None, doer: Group | None) -> str:
    """Return the moment at which something in a rally has happened: "after four hits", "once A's foot is there"."""
    row = " in a row" if event.running and (event.count or 1) > 1 else ""
    aim = f" {AIM[event.aim]}" if event.aim is not None else ""
    hit = event.what in ("played", "landed")
    if hit and event.of and not event.where and not aim:
        return f"after {shots_named(told, event.of) or 'that hit'}"
    if hit and event.count and event.count > 1 and (event.where or aim):
        where = f" {bounces(told, event.where)}" if event.where else ""
        return f"after {many(event.count, 'ball')}{aim}{where}{row}"
    if hit and event.count and not event.where:
        if who is not None and who.one is not None and not row:
            return f"after {who.own} {ordinal(event.count)} hit"
        return f"after {many(event.count, 'hit')}{row}"
    return f"once {clause(told, event, doer)}"


def clause(told: Telling, event: Event, doer: Group | None = None) -> str:
    """Return an event as a clause of its own: "B catches the ball", "A's ball bounces in B's left half"."""
    who = group(told, event.by, doer, link="or")
    subject = "a player" if who is None else who.words
    match event.what:
        case "caught":
            return f"{subject} catches {_caught(told, event)}"
        case "missed":
            return _missed(told, event, who)
        case "struck":
            return f"a ball strikes {_struck(told, event)}"
        case "reached":
            return _reached(told, event, who)
        case "called":
            callers = group(told, event.called_by, who, link="or")
            return f"{callers.words if callers else subject} calls “{own_text(told, event.call or 'stop')}”"
        case "won":
            return f"{subject} wins the rally" if who is not None else "the rally is won"
        case "played" | "landed":
            return f"{_hit_subject(told, event, who)} {_does(told, event, who)}"
    return trigger(told, event, doer).removeprefix("when ")


def _caught(told: Telling, event: Event) -> str:
    named = shots_named(told, event.of)
    return named if named.count("ball") == 1 and " or " not in named else "the ball"


def _missed(told: Telling, event: Event, who: Group | None) -> str:
    subject = "a player" if who is None else who.words
    if event.untouched:
        return f"{subject} gets no racket to {shots_named(told, event.of) or 'the ball'}"
    named = shots_named(told, event.of)
    hitters = group(told, shooters(told, event), link="or")
    if who is None and hitters is not None:
        return f"{hitters.words} {hitters.verb('misses', 'miss')} {named}"
    return f"{subject} misses {named}".strip() if who is not None else "a ball is missed"


def _struck(told: Telling, event: Event) -> str:
    names = [name for place in event.where if (name := name_of(told, place.area)) is not None]
    return listed(names, "or") or "something on court"


def _reached(told: Telling, event: Event, who: Group | None) -> str:
    runs = [told.setting.runs[id] for id in event.of if id in told.setting.runs]
    runner = who or (group(told, (runs[0].by,)) if runs else None)
    ends = [name for run in runs if (name := name_of(told, run.id)) is not None]
    goal = listed(list(dict.fromkeys(ends)), "or")
    if not goal and runner is not None and len(runs) == 1:
        # The run ends at a place without a name.
        arrived = {"approach": "has come in", "recover": "is back"}.get(runs[0].purpose or "", "is where the run ends")
        return f"{runner.words} {arrived}"
    foot = f"{runner.own} foot" if runner is not None else "the player's foot"
    return f"{foot} is at {goal}" if goal else f"{foot} is there"


def _hit_subject(told: Telling, event: Event, who: Group | None) -> str:
    """Return the ball of an event: "the return", "A's second ball", "a ball of A's"."""
    named = shots_named(told, event.of)
    if named:
        return named
    noun = stroke_noun(event.strokes, event.wing) or "ball"
    if who is None:
        return with_a(noun)
    if event.count and event.count > 1:
        return f"{who.own} {ordinal(event.count)} {noun}"
    return f"{with_a(noun)} of {who.own}" if who.one is not None else f"{with_a(noun)} by {who.words}"


def _does(told: Telling, event: Event, who: Group | None) -> str:
    letters = who.letters if who is not None else shooters(told, event)
    where = bounces(told, event.where, owner(told, letters))
    on_feet = [place for place in event.where if is_feet(place)]
    phrases = [f"goes {AIM[event.aim]}"] if event.aim is not None else []
    if where:
        crosses = any(place.judged == "net" for place in event.where)
        phrases.append(f"{'crosses the net' if crosses else 'lands'} {where}")
    if on_feet:
        phrases.append(f"is hit with {foot_words(on_feet[0])} {feet(told, on_feet[0])}")
    if event.when:
        phrases.append(f"comes after a bounce {bounces(told, event.when)}")
    return listed(phrases) or ("lands" if event.what == "landed" else "is hit")


def shooters(told: Telling, event: Event) -> tuple[str, ...]:
    """Return who hits the drawn shots that an event names."""
    return tuple(dict.fromkeys(told.setting.shots[id].by for id in event.of if id in told.setting.shots))


def plain_hit(told: Telling, event: Event, article: str = "each") -> str:
    """Return a hit or landing that is paid, as it stands after its value: "each hit on the target"."""
    who = group(told, event.by, link="or")
    letters = who.letters if who is not None else shooters(told, event)
    named = shots_named(told, event.of)
    noun = stroke_noun(event.strokes, event.wing) or ("hit" if event.what == "played" and not event.where else "ball")
    subject = named or f"{article} {noun}{'' if who is None else f' by {who.words}'}"
    where = bounces(told, event.where, owner(told, letters))
    if event.aim is not None:
        subject = f"{subject} {AIM[event.aim]}"
    rest = f"after a bounce {bounces(told, event.when)}" if event.when else ""
    conditions = [_hit_with(told, place) for place in event.where if is_feet(place)]
    others = []
    for inner in event.and_:
        on_feet = [place for place in inner.where if is_feet(place)]
        if inner.of == event.of and len(on_feet) == len(inner.where) and on_feet:
            conditions += [_hit_with(told, place) for place in on_feet]
        else:
            others.append(clause(told, inner))
    text = " ".join(word for word in (subject, where, rest) if word)
    return "".join([text, *(f", {words}" for words in conditions), *(f", and {words}" for words in others)])


def _hit_with(told: Telling, place: In) -> str:
    return f"hit with {foot_words(place)} {feet(told, place)}"
