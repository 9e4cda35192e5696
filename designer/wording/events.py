"""What happens: a hit, a miss, a rally won, a score reached, as a card says it."""

from __future__ import annotations

from typing import Final

from designer.drill.conditions import Event
from designer.drill.movement import Stroke
from designer.wording.counts import listed, many, number, ordinal
from designer.wording.names import name_of, shots_named
from designer.wording.people import Group, group, owner
from designer.wording.sentence import unmarked
from designer.wording.telling import Telling
from designer.wording.tokens import own_text
from designer.wording.where import bounces, feet, foot_words, is_feet

_A_STROKE: Final[dict[Stroke, str]] = {"underarm serve": "an underarm serve"}


def a_stroke(strokes: tuple[Stroke, ...], wing: str | None = None, article: str = "a") -> str:
    """Return strokes as a noun: "a volley or smash", "a forehand", "the first volley"."""
    if not strokes:
        return f"{article} {wing}"
    words = [f"{wing} {stroke}" if wing else str(stroke) for stroke in strokes]
    if article == "a" and len(words) == 1 and strokes[0] in _A_STROKE:
        return _A_STROKE[strokes[0]]
    return f"{article} {listed(words, 'or')}"


def trigger(told: Telling, event: Event, doer: Group | None = None) -> str:
    """Return when something follows, as it stands first in a sentence: "after five starts", "at 8", "after 6 min"."""
    who = group(told, event.by, doer, link="or")
    match event.what:
        case "starts":
            return f"after {many(event.count or 1, 'start')}"
        case "score":
            side = "one side" if len(told.playing) > 2 else "one player"
            subject = side if who is None else who.words
            return f"when {subject} reaches {event.count}" if event.count else f"when {subject} scores"
        case "round":
            return "after each round" if event.count in (None, 1) else f"after {many(event.count or 1, 'round')}"
        case "game won":
            return "after each game" if event.count in (None, 1) else f"after {many(event.count or 1, 'game')}"
        case "minutes":
            return f"after {event.count or 1} min"
        case "finished":
            return "at the end" if event.count in (None, 1) else f"when it has ended {_times(event.count or 1)}"
        case "won":
            count = event.count or 1
            won = "a rally" if count == 1 else many(count, "rally").replace("rallys", "rallies")
            row = " in a row" if event.running and count > 1 else ""
            return f"when {who.words} wins {won}{row}" if who else f"after {'each rally' if count == 1 else won + row}"
    return _moment(told, event, who, doer)


def _times(count: int) -> str:
    return "twice" if count == 2 else f"{number(count)} times"


def _moment(told: Telling, event: Event, who: Group | None, doer: Group | None) -> str:
    """Return the moment at which something in a rally has happened: "after four hits", "once A's foot is there"."""
    if event.what == "played" and event.of and not event.where:
        return f"after {shots_named(told, event.of)}" if shots_named(told, event.of) else "after that hit"
    if event.what == "played" and event.count and not event.where:
        row = " in a row" if event.running else ""
        if who is not None and who.one is not None:
            return (
                f"after {who.own} {ordinal(event.count)} hit" if not row else f"after {number(event.count)} hits{row}"
            )
        return f"after {many(event.count, 'hit')}{row}"
    if event.what in ("played", "landed") and event.count and event.count > 1:
        row = " in a row" if event.running else ""
        return f"after {many(event.count, 'ball')} {bounces(told, event.where)}{row}"
    return f"once {clause(told, event, doer)}"


def clause(told: Telling, event: Event, doer: Group | None = None) -> str:
    """Return an event as a clause of its own: "B catches the ball", "A's ball bounces in B's left half"."""
    who = group(told, event.by, doer, link="or")
    subject = "a player" if who is None else who.words
    match event.what:
        case "caught":
            return f"{subject} catches the ball"
        case "missed":
            return f"{subject} misses" if who is not None else "a ball is missed"
        case "struck":
            return f"the ball strikes {_struck(told, event)}"
        case "reached":
            return _reached(told, event, who)
        case "called":
            call = own_text(told, event.call or "stop")
            callers = group(told, event.called_by, who, link="or")
            return f"{callers.words if callers else subject} calls “{call}”"
        case "won":
            return won(told, event, doer)
        case "played" | "landed":
            return f"{hit_subject(told, event, who)} {_does(told, event, who)}"
    return trigger(told, event, doer).removeprefix("when ")


def _struck(told: Telling, event: Event) -> str:
    names = [name for place in event.where if (name := name_of(told, place.area)) is not None]
    return listed(names, "or") or "something on court"


def _reached(told: Telling, event: Event, who: Group | None) -> str:
    runs = [told.setting.runs[id] for id in event.of if id in told.setting.runs]
    runner = who or (group(told, (runs[0].by,)) if runs else None)
    ends = [name for run in runs if (name := name_of(told, run.id)) is not None]
    goal = listed(list(dict.fromkeys(ends)), "or")
    foot = f"{runner.own} foot" if runner is not None else "the player's foot"
    return f"{foot} is at {goal}" if goal else f"{foot} is there"


def hit_subject(told: Telling, event: Event, who: Group | None, *, each: bool = False) -> str:
    """Return the ball of an event: "the return", "A's second ball", "a ball of A's", "each hit"."""
    named = shots_named(told, event.of)
    article = "each" if each else "a"
    if named:
        return named
    noun = "volley" if event.strokes == ("volley",) else "ball"
    if event.strokes and noun == "ball":
        noun = a_stroke(event.strokes, event.wing, "").strip()
    elif event.wing:
        noun = event.wing if noun == "ball" else f"{event.wing} {noun}"
    if who is None:
        return f"{article} {noun}"
    if event.count:
        return f"{who.own} {ordinal(event.count)} {noun}"
    return f"{article} {noun} of {who.own}"


def _does(told: Telling, event: Event, who: Group | None) -> str:
    letters = who.letters if who is not None else shooters(told, event)
    where = bounces(told, event.where, owner(told, letters))
    feet_places = [place for place in event.where if is_feet(place)]
    phrases = []
    if where:
        crosses = any(place.judged == "net" for place in event.where)
        phrases.append(f"{'crosses the net' if crosses else 'bounces' if event.what == 'landed' else 'lands'} {where}")
    if feet_places:
        own = f"{who.own}" if who is not None and who.one else None
        phrases.append(f"is hit with {foot_words(feet_places[0])} {feet(told, feet_places[0], own)}")
    if event.when:
        phrases.append(f"comes after a bounce {bounces(told, event.when)}")
    return listed(phrases) or ("lands" if event.what == "landed" else "is hit")


def shooters(told: Telling, event: Event) -> tuple[str, ...]:
    """Return who hits the drawn shots that an event names."""
    return tuple(dict.fromkeys(told.setting.shots[id].by for id in event.of if id in told.setting.shots))


def won(told: Telling, event: Event, doer: Group | None = None) -> str:
    """Return a rally won, as it stands after its value: "rally won", "A wins with a volley or smash"."""
    who = group(told, event.by, doer, link="or")
    how = _how_won(told, event, who)
    plain = not how and who is None
    subject = "rally won" if who is None else f"{who.words} {who.verb('wins', 'win')}"
    if plain:
        return subject
    if who is not None and not how:
        return f"{subject} the rally"
    return f"{subject} {how}"


def _how_won(told: Telling, event: Event, who: Group | None) -> str:
    phrases: list[str] = []
    condition = next((inner for inner in event.and_ if inner.what in ("played", "landed", "called")), None)
    stroke = _winning_stroke(event, condition)
    named = shots_named(told, event.of)
    if named:
        phrases.append(
            f"with {'an untouched ' if event.untouched else ''}{named.replace('the ', '', 1) if event.untouched else named}"
        )
    elif stroke:
        phrases.append(f"with {'an untouched ' + stroke.split(' ', 1)[1] if event.untouched else stroke}")
    elif event.untouched and event.within is None:
        phrases.append("with a ball that nobody touches")
    letters = who.letters if who is not None else ()
    if event.when:
        phrases.append(_when_won(told, event, who))
    feet_places = [place for place in event.where if is_feet(place)]
    if feet_places:
        phrases.append(f"with {foot_words(feet_places[0])} {feet(told, feet_places[0])} at the last hit")
    ball_where = bounces(told, event.where, owner(told, letters))
    if ball_where:
        phrases.append(f"with a ball {ball_where}")
    if condition is not None and condition.strokes and stroke:
        return " ".join(phrases)
    phrases += [_after(told, event, inner, who) for inner in event.and_]
    return " ".join(phrase for phrase in phrases if phrase)


def _winning_stroke(event: Event, condition: Event | None) -> str:
    if event.strokes or event.wing:
        return a_stroke(event.strokes, event.wing)
    if condition is not None and condition.strokes and event.within == 1 and not condition.where:
        return a_stroke(condition.strokes, condition.wing, "the first")
    return ""


def _when_won(told: Telling, event: Event, who: Group | None) -> str:
    own = f"{who.own}" if who is not None and who.one else None
    phrases = [
        f"{foot_words(place)} {feet(told, place, None if own is None else own)} at the last hit"
        for place in event.when
        if is_feet(place)
    ]
    if phrases:
        return f"with {listed(phrases)}"
    return f"after a bounce {bounces(told, event.when, own)}"


def _after(told: Telling, event: Event, inner: Event, who: Group | None) -> str:
    """Return the condition that came before a rally was won: "after a return past the line"."""
    doers = group(told, inner.by, who, link="or")
    within = event.within
    if inner.what == "called" or inner.call:
        call = own_text(told, inner.call or "")
        tail = {None: "", 1: " with that hit", 2: " with that hit or the next"}.get(
            within, f" within {number(within or 1)} hits"
        )
        caller = "own call of" if inner.called_by == ("doer",) else "a call of"
        return f"{tail.strip() + ' ' if tail else ''}after {caller} “{call}”"
    if inner.what in ("played", "landed"):
        shooter = doers.letters if doers is not None else shooters(told, inner)
        what = shots_named(told, inner.of) or (f"{doers.own} ball" if doers is not None else "a ball")
        place = bounces(told, inner.where, owner(told, shooter)) or _does(told, inner, doers)
        same = who is None or doers is None or doers.letters == who.letters
        return f"{_within(within, same=same, untouched=event.untouched)}after {what} {place}"
    return f"when {clause(told, inner, who)}"


def _within(count: int | None, *, same: bool, untouched: bool) -> str:
    clean = ", untouched, " if untouched else " "
    if count is None:
        return ""
    if same:
        words = {1: "with that hit", 2: "with that hit or the next"}.get(count, f"within {number(count)} hits")
    else:
        words = "with the very next hit" if count == 1 else f"within the next {number(count)} hits"
    return f"{words}{clean}"


def plain_hit(told: Telling, event: Event) -> str:
    """Return a hit or landing that is paid, as it stands after its value: "each hit on the target"."""
    who = group(told, event.by, link="or")
    letters = who.letters if who is not None else shooters(told, event)
    named = shots_named(told, event.of)
    each = named or (
        "each hit"
        if event.what == "played" and not event.strokes
        else f"each {a_stroke(event.strokes, event.wing, '').strip() if event.strokes or event.wing else 'ball'}"
    )
    by = "" if named or who is None else f" by {who.words}"
    where = bounces(told, event.where, owner(told, letters))
    feet_places = [place for place in event.where if is_feet(place)]
    tail = f" with {foot_words(feet_places[0])} {feet(told, feet_places[0])}" if feet_places else ""
    rest = f" after a bounce {bounces(told, event.when)}" if event.when else ""
    more = "".join(f", and {clause(told, inner)}" for inner in event.and_)
    return unmarked_spaces(f"{each}{by} {where}{tail}{rest}{more}")


def unmarked_spaces(text: str) -> str:
    """Return ``text`` with single spaces."""
    return " ".join(text.split()) if unmarked(text) else ""
