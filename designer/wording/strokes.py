"""How a ball is played: the stroke, its pace and height, where it goes."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from designer.court.regions import RACKET, as_player
from designer.drill.conditions import In
from designer.drill.items import Area, Hoop, Line
from designer.drill.movement import SERVES, Shot
from designer.drill.places import is_letter
from designer.play.directions import direction
from designer.play.sequence import Step
from designer.wording.counts import listed
from designer.wording.names import letter, name_of
from designer.wording.people import owner
from designer.wording.telling import Telling
from designer.wording.where import travels

HIGH: Final = 1.2
"""A ball this much over the net, in metres, is called high. A choice of words, no rule of the game."""
_WIDE: Final = 2 * RACKET
_TO_THE_MIDDLE: Final = 1.5 * RACKET

_PACE: Final = {"soft": "softly", "half": "at half pace", "medium": "at medium pace", "full": "at full pace"}
_SPIN: Final = {"topspin": "with topspin", "slice": "with slice", "flat": "flat", "sidespin": "with sidespin"}
_VERB: Final = {
    "serve": "serves",
    "second serve": "hits a second serve",
    "underarm serve": "serves underarm",
    "slice": "slices",
    "lob": "lobs",
    "drop shot": "plays a drop shot",
    "volley": "volleys",
    "half-volley": "half-volleys",
    "smash": "smashes",
    "racket feed": "feeds",
    "machine feed": "throws",
    "hand feed": "throws",
    "shadow swing": "swings without a ball",
}
_NOUN: Final = {"slice", "lob", "drop shot", "volley", "half-volley", "smash"}


def deed(told: Telling, step: Step) -> str:
    """Return what the hitter does with the ball: "feeds wide", "plays high and cross-court into the reply zone"."""
    shot = step.shot
    if step.feed:
        return _put_in(told, step)
    adverbs = [*_height(shot), *_manner(shot), *_direction(told, step)]
    if shot.wing is not None and shot.stroke != "shadow swing":
        verb, adverbs = _with_wing(told, step)
    elif shot.stroke in (None, "drive"):
        verb = "returns" if _is_return(told, shot) else "plays"
    else:
        verb = _VERB[shot.stroke]
    if shot.stroke == "shadow swing":
        return verb if shot.wing is None else f"swings a {shot.wing} without a ball"
    destination = _destination(told, step)
    if not adverbs and not destination and shot.stroke in (None, "drive") and verb == "plays":
        destination = "anywhere"
    return " ".join(word for word in (verb, _adverbs(adverbs), destination) if word)


def _with_wing(told: Telling, step: Step) -> tuple[str, list[str]]:
    """Return "plays a high forehand" or "returns with the forehand", and what is said after it."""
    shot = step.shot
    tail = [*_manner(shot), *_direction(told, step)]
    noun = f"{shot.wing} {shot.stroke}" if shot.stroke in _NOUN else str(shot.wing)
    if _is_return(told, shot) and shot.stroke in (None, "drive"):
        return f"returns with the {noun}", [*_height(shot), *tail]
    return " ".join(["plays a", *_height(shot), noun]), tail


def _is_return(told: Telling, shot: Shot) -> bool:
    before = told.setting.shots.get(shot.after or "")
    return before is not None and before.stroke in SERVES


def _height(shot: Shot) -> list[str]:
    return ["high"] if shot.over_net is not None and shot.over_net >= HIGH else []


def _manner(shot: Shot) -> list[str]:
    return [
        words
        for words in (_PACE.get(shot.pace or ""), None if shot.stroke == "slice" else _SPIN.get(shot.spin or ""))
        if words
    ]


def _adverbs(words: Sequence[str]) -> str:
    return listed(list(words))


def _direction(told: Telling, step: Step) -> list[str]:
    if step.shot.to is None or (step.shot.to.on is not None and is_letter(step.shot.to.on)):
        return []
    found = direction(step, told.sequence, told.ground)
    if found == "middle":
        return [] if _names_a_place(told, step) else ["through the middle"]
    return [found] if found is not None else []


def _names_a_place(told: Telling, step: Step) -> bool:
    to = step.shot.to
    return to is not None and to.on is not None and name_of(told, to.on) is not None


def _destination(told: Telling, step: Step) -> str:
    """Return where the ball goes as far as its direction does not say it: "into the reply zone", "to D"."""
    to = step.shot.to
    if to is None:
        return ""
    if to.on is not None:
        return _towards(told, step, to.on)
    if direction(step, told.sequence, told.ground) is not None or step.landing is None:
        return ""
    if step.landing[1] * step.contact[1] > 0:
        return ""
    right, _ = as_player(step.landing, "near" if step.end == "far" else "far")
    receiver = owner(told, (step.hitter,)) or "the"
    return f"into {receiver} {'right' if right > 0 else 'left'} half"


def _towards(told: Telling, step: Step, on: str) -> str:
    if is_letter(on):
        return f"to {letter(told, on)}"
    item = told.setting.items.get(on)
    if isinstance(item, Area | Line | Hoop):
        place = In(area=on, side="behind") if isinstance(item, Line) else In(area=on)
        return travels(told, (place,), owner(told, (step.hitter,)))
    name = name_of(told, on)
    return "" if name is None else f"to {name}"


def _put_in(told: Telling, step: Step) -> str:
    """Return how a new ball is put in: "feeds wide", "serves to the deuce court", "drops the ball for A"."""
    shot = step.shot
    if shot.stroke in SERVES:
        return " ".join(word for word in (_VERB[str(shot.stroke)], *_manner(shot), serve_aim(told, step)) if word)
    own_side = step.landing is not None and step.landing[1] * step.contact[1] > 0
    if shot.stroke == "drop feed":
        following = told.sequence.following(shot.id)
        taker = following[0].hitter if following and following[0].hitter != shot.by else None
        if own_side or step.landing is None:
            return f"drops the ball for {letter(told, taker)}" if taker else "drops the ball"
        return " ".join(("drops the ball and hits", _adverbs([*_manner(shot), *_fed(told, step)]))).strip()
    verb = _VERB[str(shot.stroke)]
    where = _feed_place(told, step, own_side=own_side)
    full = "on the full" if shot.bounces == 0 else ""
    return " ".join(word for word in (verb, _adverbs(_manner(shot)), where, full) if word)


def _feed_place(told: Telling, step: Step, *, own_side: bool) -> str:
    to = step.shot.to
    if to is not None and to.on is not None and is_letter(to.on):
        return f"to {letter(told, to.on)}"
    following = told.sequence.following(step.shot.id)
    if own_side and following:
        return f"to {letter(told, following[0].hitter)}"
    return _adverbs(_fed(told, step)) or (_towards(told, step, to.on) if to is not None and to.on is not None else "")


def _fed(told: Telling, step: Step) -> list[str]:
    """Return how a feed lies for who takes it: short, wide, through the middle, cross-court."""
    if step.landing is None:
        return []
    x, y = abs(step.landing[0]), abs(step.landing[1])
    ground = told.ground
    words = ["short"] if ground.service_line is not None and y < ground.service_line - 0.3 else []
    outer = ground.singles if len(told.playing) <= 2 else ground.outer
    if x > outer - _WIDE - 0.05:
        return [*words, "wide"]
    found = direction(step, told.sequence, ground)
    if found == "middle":
        return words or ["through the middle"]
    return words or ([found] if found is not None else [])


def serve_aim(told: Telling, step: Step) -> str:
    """Return where a drawn serve is aimed: "wide", "at the T", "into the wide part"; "" where nothing says so."""
    to = step.shot.to
    if to is None or step.landing is None:
        return ""
    if to.on is not None and not is_letter(to.on):
        return _towards(told, step, to.on)
    x = abs(step.landing[0])
    if x >= told.ground.singles - _WIDE + 0.05:
        return "wide"
    return "at the T" if x <= _TO_THE_MIDDLE - 0.05 else ""
