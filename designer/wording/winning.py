"""How a rally is won: by whom, with which ball, after what."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from designer.drill.conditions import Event
from designer.play.rally import opening_part
from designer.wording.counts import listed, many, number
from designer.wording.events import AIM, clause, shooters, stroke_noun, with_a
from designer.wording.names import shots_named
from designer.wording.people import Group, group, owner
from designer.wording.sentence import unmarked
from designer.wording.telling import Telling
from designer.wording.tokens import own_text
from designer.wording.where import bounces, feet, foot_words, is_feet

OPENING: Final = "the ball that opens"
"""What a player calls the ball whose bounce opens the point."""
UNRETURNED: Final = " unreturned"
"""Said of a ball that the opponent's next hit, if any, does not return."""


@dataclass(frozen=True, slots=True)
class Win:
    """Who wins a rally ("" for whoever does), how ("" for in any way) and after which earlier balls, said first."""

    subject: str
    how: str
    after: str = ""

    @property
    def words(self) -> str:
        """The win as it stands after its value: "rally won", "A wins with a volley or smash"."""
        head = f"{self.after}, " if self.after else ""
        if not self.subject:
            return f"{head}rally won {self.how}".strip()
        return f"{head}{self.subject} {self.how or 'the rally'}"


def win(told: Telling, event: Event) -> Win:
    """Return how a rally is won in the event of a rally won."""
    who = group(told, event.by, link="or")
    caller = next((inner for inner in event.and_ if inner.call or inner.what == "called"), None)
    subject = "" if who is None else f"{who.words} {who.verb('wins', 'win')}"
    by_caller = caller is not None and caller.called_by in (("doer",), ()) and who is None
    first, several = "", event.count is not None and event.count > 1
    if caller is not None and by_caller:
        # Calling wins nothing yet: "rally won by whoever calls", where it is one rally.
        if told.brief and not several and event.within is not None:
            # Calling alone wins nothing yet.
            return Win(f"call {_call(told, caller)}, then win the rally", _within(event.within))
        subject = f"whoever calls {_call(told, caller)} wins" if several else ""
        first = "" if several else f"by whoever calls {_call(told, caller)}{'' if event.within is None else ','}"
    elif several:
        subject = subject or f"one {'side' if len(told.playing) > 2 else 'player'} wins"
    phrases = [first, _how_many(event), _ball(told, event, who), *_state(told, event, who)]
    landed = [inner for inner in event.and_ if inner.what in ("played", "landed") and not inner.call]
    if not (len(landed) == 1 and _first_stroke(event, landed[0])):
        phrases += _landings(told, event, landed, who)
    if caller is not None:
        phrases.append(_within(event.within))
        if not by_caller:
            phrases.append(f"after a call of {_call(told, caller)}")
    if event.within is not None and not landed and caller is None:
        phrases.append(f"within {many(event.within, 'hit')}")
    others = [inner for inner in event.and_ if inner not in landed and inner is not caller]
    phrases += [f"when {clause(told, inner, who)}" for inner in others]
    how = " ".join(phrase for phrase in phrases if phrase)
    return Win(subject, how, _before(told, event, landed, who))


def _how_many(event: Event) -> str:
    """Return "three rallies in a row" where it takes more than one."""
    count = event.count or 1
    return f"{number(count)} rallies{' in a row' if event.running else ''}" if count > 1 else ""


def _call(told: Telling, event: Event) -> str:
    where = f" after a bounce {bounces(told, event.when)}" if event.when else ""
    return f"“{own_text(told, event.call or '')}”{where}"


def _ball(told: Telling, event: Event, who: Group | None) -> str:
    """Return the winning ball itself: "with an untouched volley", "with the first volley or smash"."""
    untouched = "untouched " if event.untouched else ""
    where = bounces(told, event.where, owner(told, who.letters if who is not None else ()))
    if event.aim is not None:
        where = f"{AIM[event.aim]} {where}".strip()
    inner = event.and_[0] if len(event.and_) == 1 else None
    if inner is not None and _first_stroke(event, inner):
        return f"with the first {untouched}{stroke_noun(inner.strokes, inner.wing)}"
    noun = stroke_noun(event.strokes, event.wing)
    named = shots_named(told, event.of)
    if named and not noun:
        bare = named.replace("the ", "", 1) if unmarked(named).startswith("the ") else named.replace("a ", "", 1)
        article = named if not untouched else with_a(f"{untouched}{bare}")
        return f"with {article} {where}".strip()
    if noun or where or (event.untouched and event.within is None):
        ball = with_a(f"{untouched}{noun or 'ball'}")
        return f"with {ball} {where}".strip()
    return ""


def _first_stroke(event: Event, inner: Event) -> bool:
    """Whether the condition is only that the winning hit was the first of such strokes."""
    return bool(inner.strokes) and event.within == 1 and not inner.where and inner.by in ((), event.by)


def _state(told: Telling, event: Event, who: Group | None) -> list[str]:
    """Return where the winner's feet were, or where the ball had bounced, at the last hit."""
    own = who.own if who is not None and who.one is not None else None
    on_feet = [place for place in (*event.when, *event.where) if is_feet(place)]
    said = [f"{foot_words(place)} {feet(told, place)}" for place in on_feet]
    last = own or "the winner's"
    bounce = bounces(told, event.when, own)
    return [
        *([f"with {listed(said)} at {last} last hit"] if said else []),
        *([f"after a bounce {bounce}"] if bounce else []),
    ]


def _landings(told: Telling, event: Event, landed: list[Event], who: Group | None) -> list[str]:
    """Return the balls that must have come before, the last of them as the one that hits are counted from."""
    if not landed:
        return []
    *earlier, last = landed
    before = [f"after {listed([_landing(told, inner, who) for inner in earlier])}"] if earlier else []
    ball = _landing(told, last, who)
    if not _same_doer(told, event, last):
        clean = ", untouched," if event.untouched else ""
        if event.within is None:
            return [*before, f"after {ball}"]
        if told.brief and event.within == 1:
            return [*before, f"with {'an untouched' if event.untouched else 'the'} answer to {ball}"]
        hits = "the very next hit" if event.within == 1 else f"one of the next {number(event.within)} hits"
        return [*before, f"with {hits}{clean} after {ball}"]
    if event.within is None:
        return [f"after {listed([*(_landing(told, inner, who) for inner in earlier), ball])}"]
    if event.within == 1:
        # The winner's last hit, so that the opponent's next one, if any, is a miss.
        return [f"with {_unreturned(ball)}"]
    next_hit = f"{who.own} next hit" if who is not None and who.one is not None else "the next hit"
    hits = next_hit if event.within == 2 else f"one of the next {number(event.within - 1)} hits"
    either = f"{ball} or {hits}" if told.brief else f"{ball} or with {hits} after it"
    return [f"with {either}, {'untouched' if event.untouched else 'unreturned'}", *before]


def _before(told: Telling, event: Event, landed: list[Event], who: Group | None) -> str:
    """Return after which earlier balls a ball that must end the rally counts, a condition that is said first."""
    *earlier, last = landed or [event]
    if not earlier or event.within != 1 or not _same_doer(told, event, last):
        return ""
    return f"after {listed([_landing(told, inner, who) for inner in earlier])}"


def _unreturned(ball: str) -> str:
    name, space, place = ball.partition(" in ") if " in " in ball else ball.partition(" past ")
    return f"{name}{UNRETURNED}{space}{place}"


def _same_doer(told: Telling, event: Event, inner: Event) -> bool:
    if "other" in inner.by or "other" in event.by:
        return False
    if not inner.by and not inner.of:
        return True
    own = group(told, event.by)
    theirs = group(told, inner.by)
    letters = theirs.letters if theirs is not None else shooters(told, inner)
    if own is None or own.words in ("the server", "the receiver"):
        return True
    return not letters or bool(set(own.letters) & set(letters))


def _is_opening(told: Telling, inner: Event) -> bool:
    """Whether an earlier ball is the one that opens the point, whose flag a player has seen: its place need not be said."""
    found = opening_part(told.setting) if told.brief else None
    if found is None or len(found[0].until) != 1:
        return False
    (opens,) = found[0].until
    return bool(opens.where) and opens == inner.changed(count=opens.count)


def _landing(told: Telling, inner: Event, who: Group | None) -> str:
    if _is_opening(told, inner):
        return OPENING
    doers = group(told, inner.by, who, link="or")
    letters = doers.letters if doers is not None else shooters(told, inner)
    named = shots_named(told, inner.of)
    named = named.replace("the serve", "a serve") if unmarked(named) == "the serve" else named
    first = "first " if inner.count == 1 and not named else ""
    ball = (
        named or (f"the {first}ball" if first else "a ball")
        if doers is None or (who is not None and doers.letters == who.letters)
        else f"{doers.own} {first}ball"
    )
    place = bounces(told, inner.where, owner(told, letters))
    if inner.aim is not None:
        place = f"{AIM[inner.aim]} {place}".strip()
    on_feet = [place for place in inner.where if is_feet(place)]
    if on_feet:
        place = f"{place} hit with {foot_words(on_feet[0])} {feet(told, on_feet[0])}".strip()
    return f"{ball} {place}".strip()


def _within(count: int | None) -> str:
    if count is None:
        return ""
    return {1: "with that hit", 2: "with that hit or the next"}.get(count, f"within {number(count)} hits")
