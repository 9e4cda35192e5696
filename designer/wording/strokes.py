"""How a ball is played: the stroke, its pace and height, where it goes."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from designer.court.regions import RACKET, as_player, end_of
from designer.drill.base import Point
from designer.drill.conditions import In
from designer.drill.items import Area, Hoop, Line, Rectangle
from designer.drill.movement import SERVES, Shot
from designer.drill.places import corners_of, is_letter
from designer.drill.rules import Keep
from designer.play.directions import direction
from designer.play.layout import turned_point
from designer.play.sequence import Step
from designer.wording.counts import listed
from designer.wording.names import letter, name_of
from designer.wording.people import owner
from designer.wording.sentence import unmarked
from designer.wording.shapes import span
from designer.wording.telling import Telling
from designer.wording.tokens import own_text
from designer.wording.where import travels

HIGH: Final = 1.2
"""A ball this much over the net, in metres, is called high. A choice of words, no rule of the game."""
_WIDE: Final = 2 * RACKET
_TO_THE_MIDDLE: Final = 1.5 * RACKET

PACE: Final = {"soft": "softly", "half": "at half pace", "medium": "at medium pace", "full": "at full pace"}
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
}
CHOICE_VERBS: Final = {
    "pass": "passes",
    "lob": "lobs",
    "volley": "volleys",
    "smash": "smashes",
    "slice": "slices",
    "drive": "drives",
    "approach": "approaches",
    "drop shot": "plays a drop shot",
    "winner": "hits a winner",
}
"""What the words at the tips of a choice say that the hitter does."""
NOT_A_WAY: Final = frozenset({"hold", "change"})
"""Words at an arrow's tip that do not say how or where a ball is played."""
_NOUN: Final = {"slice", "lob", "drop shot", "volley", "half-volley", "smash"}


def deed(told: Telling, step: Step, *, with_pace: bool = True) -> str:
    """Return what the hitter does with the ball: "feeds wide", "plays high and cross-court into the reply zone"."""
    shot = step.shot
    if shot.stroke == "shadow swing":
        return f"swings {f'a {shot.wing} ' if shot.wing else ''}without a ball"
    if step.feed:
        return _put_in(told, step, with_pace=with_pace)
    destination = _destination(told, step)
    aim = [] if shot.stroke == "lob" and not destination else _direction(told, step, destination)
    manner = _manner(shot) if with_pace else []
    if shot.wing is not None:
        verb, adverbs = _with_wing(told, step)
    elif shot.stroke in (None, "drive"):
        verb, adverbs = ("returns" if _is_return(told, shot) else "plays"), _height(shot)
    else:
        verb, adverbs = _VERB[str(shot.stroke)], _height(shot)
    words = [*_label(told, step), *adverbs, *(word for word in manner if " " not in word), *aim]
    tail = listed([word for word in manner if " " in word])
    if not words and not destination and verb == "plays":
        destination = "anywhere"
    return " ".join(word for word in (verb, listed(words), destination, tail) if word)


def _label(told: Telling, step: Step) -> list[str]:
    """Return the word at the tip of a ball that is no choice: "short"; [] where it says nothing about the way."""
    label = unmarked(own_text(told, step.shot.label)).strip()
    plain = label.lower() not in CHOICE_VERBS and label.lower() not in NOT_A_WAY
    return [label] if label and plain and not step.alternatives else []


def _with_wing(told: Telling, step: Step) -> tuple[str, list[str]]:
    """Return "plays a high forehand" or "returns with the forehand", and what is said after it."""
    shot = step.shot
    noun = f"{shot.wing} {shot.stroke}" if shot.stroke in _NOUN else str(shot.wing)
    if _is_return(told, shot) and shot.stroke in (None, "drive"):
        return f"returns with the {noun}", _height(shot)
    return " ".join(["plays a", *_height(shot), noun]), []


def _is_return(told: Telling, shot: Shot) -> bool:
    before = told.setting.shots.get(shot.after or "")
    return before is not None and before.stroke in SERVES


def _height(shot: Shot) -> list[str]:
    return ["high"] if shot.over_net is not None and shot.over_net >= HIGH and shot.stroke != "lob" else []


def _manner(shot: Shot) -> list[str]:
    spin = None if shot.stroke == "slice" else _SPIN.get(shot.spin or "")
    return [words for words in (PACE.get(shot.pace or ""), spin) if words]


def _direction(told: Telling, step: Step, destination: str) -> list[str]:
    """Return cross-court or down the line; "through the middle" and the line only where no destination says more."""
    to = step.shot.to
    if to is None or (to.on is not None and is_letter(to.on)):
        return []
    half = _half_asked(told, step)
    found = direction(step, told.sequence, told.ground)
    if half is not None:
        right, _ = as_player(step.contact, step.end)
        if abs(right) > RACKET / 2:
            found = "cross-court" if (right > 0) == (half == "right") else "down the line"
    if found is None or (destination and found != "cross-court"):
        return []
    return ["through the middle" if found == "middle" else found]


def _half_asked(told: Telling, step: Step) -> str | None:
    """Return the half of the court in which a rule wants this ball, where the drawn ball lands there."""
    if step.landing is None:
        return None
    right, _ = as_player(step.landing, "near" if step.end == "far" else "far")
    for rule in told.setting.rules.values():
        if rule.never or not isinstance(rule.must, Keep) or not _covers(told, rule.of, rule.parts, rule.who, step):
            continue
        for place in rule.must.where:
            side, _, rest = place.area.partition(" ")
            if rest in ("half", "doubles half", "back court") and side in ("left", "right") and not place.outside:
                return side if (right > 0) == (side == "right") else None
    return None


def _covers(told: Telling, of: Sequence[str], parts: Sequence[str], who: Sequence[str], step: Step) -> bool:
    if of:
        return step.shot.id in of
    in_part = not parts or any(step.shot.id in told.setting.parts[id].shots for id in parts if id in told.setting.parts)
    return in_part and (not who or step.hitter in who)


def _destination(told: Telling, step: Step) -> str:
    """Return where the ball goes as far as its direction does not say it: "into the reply zone", "to D"."""
    to = step.shot.to
    if to is None:
        return ""
    if to.on is not None:
        return _towards(told, step, to.on)
    target = _target_hit(told, step)
    if target is not None:
        return _towards(told, step, target)
    wanted = _line_to_pass(told, step)
    if wanted is not None:
        return travels(told, (wanted,), owner(told, (step.hitter,)))
    if direction(step, told.sequence, told.ground) is not None or step.landing is None:
        return ""
    if step.landing[1] * step.contact[1] > 0:
        return ""
    right, _ = as_player(step.landing, "near" if step.end == "far" else "far")
    receiver = owner(told, (step.hitter,)) or "the"
    return f"into {receiver} {'right' if right > 0 else 'left'} half"


def _line_to_pass(told: Telling, step: Step) -> In | None:
    """Return the drawn line that a rule or points want this very ball to land past, None where there is none."""
    places = [
        place
        for rule in told.setting.rules.values()
        if step.shot.id in rule.of and isinstance(rule.must, Keep) and not rule.never
        for place in rule.must.where
    ]
    for points in told.setting.points.values():
        for event in points.on:
            for found in (event, *event.and_):
                places += found.where if step.shot.id in found.of and found.what in ("played", "landed") else ()
    lines = (place for place in places if isinstance(told.setting.items.get(place.area), Line))
    return next((place for place in lines if place.side == "behind" and not place.outside), None)


def _target_hit(told: Telling, step: Step) -> str | None:
    """Return the target with a copy at each end in which a ball lands, though it is tied to neither."""
    aimed = {shot.to.on for shot in told.setting.shots.values() if shot.to is not None and shot.to.on is not None}
    for id in sorted(aimed & told.setting.items.keys()):
        item = told.setting.items[id]
        if isinstance(item, Area) and item.both_ends and isinstance(item.shape, Rectangle) and step.landing is not None:
            corners = corners_of(item)
            if any(_inside(step.landing, copy) for copy in (corners, tuple(map(turned_point, corners)))):
                return id
    return None


def _inside(point: Point, corners: tuple[Point, ...]) -> bool:
    box = span(corners)
    right, away = as_player(point, box.end)
    return end_of(point) == box.end and box.left <= right <= box.right and box.front <= away <= box.back


def _towards(told: Telling, step: Step, on: str) -> str:
    if is_letter(on):
        return f"to {letter(told, on)}"
    item = told.setting.items.get(on)
    if isinstance(item, Area | Line | Hoop):
        place = In(area=on, side="behind") if isinstance(item, Line) else In(area=on)
        return travels(told, (place,), owner(told, (step.hitter,)))
    name = name_of(told, on)
    return "" if name is None else f"to {name}"


def _put_in(told: Telling, step: Step, *, with_pace: bool) -> str:
    """Return how a new ball is put in: "feeds wide", "serves to the deuce court", "drops the ball for A"."""
    shot = step.shot
    manner = _manner(shot) if with_pace else []
    if shot.stroke in SERVES:
        return " ".join(word for word in (_VERB[str(shot.stroke)], *manner, serve_aim(told, step)) if word)
    own_side = step.landing is not None and step.landing[1] * step.contact[1] > 0
    if shot.stroke == "drop feed":
        following = told.sequence.following(shot.id)
        taker = following[0].hitter if following and following[0].hitter != shot.by else None
        if own_side or step.landing is None:
            return f"drops the ball for {letter(told, taker)}" if taker else "drops the ball"
        return " ".join(("drops the ball and hits it", listed([*_fed(told, step), *manner]))).strip()
    if shot.stroke == "hand feed" and told.sequence.before.get(shot.id) is not None:
        # A ball thrown back in the rally: catch and throw.
        words = ("catches it and throws it", listed(manner), _destination(told, step))
        return " ".join(word for word in words if word)
    where = _feed_place(told, step, own_side=own_side)
    full = "on the full" if shot.bounces == 0 else ""
    return " ".join(word for word in (_VERB[str(shot.stroke)], _with_manner(where, manner), full) if word)


def _with_manner(where: str, manner: list[str]) -> str:
    """Return "short and softly", "wide at half pace", "softly to A"."""
    if not manner or not where:
        return where or listed(manner)
    if manner == ["softly"]:
        return f"{where} and softly" if where in ("short", "wide", "cross-court") else f"softly {where}"
    return f"{where} {listed(manner)}"


def _feed_place(told: Telling, step: Step, *, own_side: bool) -> str:
    to = step.shot.to
    if to is not None and to.on is not None and is_letter(to.on):
        return f"to {letter(told, to.on)}"
    named = {place.area for start in told.setting.starts.values() for place in start.good}
    if to is not None and to.on is not None and to.on not in named and isinstance(told.setting.items.get(to.on), Area):
        return _towards(told, step, to.on)
    following = told.sequence.following(step.shot.id)
    if own_side and following:
        return f"to {letter(told, following[0].hitter)}"
    if fed := listed(_fed(told, step)):
        return fed
    return _towards(told, step, to.on) if to is not None and to.on is not None else _destination(told, step)


def _fed(told: Telling, step: Step) -> list[str]:
    """Return how a feed lies for who takes it: short, wide, through the middle, cross-court."""
    if step.landing is None:
        return []
    found = direction(step, told.sequence, told.ground)
    side = "cross-court" if found == "cross-court" else ""
    x, y = abs(step.landing[0]), abs(step.landing[1])
    ground = told.ground
    if ground.service_line is not None and y < ground.service_line - 0.3:
        return ["short"]
    # A feed from beside the middle is a cross-court; one from the middle to the side is wide.
    if side and abs(step.contact[0]) > 2 * RACKET:
        return [side]
    outer = ground.singles if len(told.playing) <= 2 else ground.outer
    if x > outer - _WIDE - 0.05:
        return ["wide"]
    return ["through the middle"] if found == "middle" else [found] if found is not None else []


def serve_aim(told: Telling, step: Step) -> str:
    """Return where a drawn serve is aimed: "wide", "to the T", "into the wide part"; "" where nothing says so."""
    to = step.shot.to
    if to is None or step.landing is None or told.ground.service_line is None:
        return ""
    if to.on is not None and not is_letter(to.on):
        return _towards(told, step, to.on)
    x = abs(step.landing[0])
    if x >= told.ground.singles - _WIDE + 0.05:
        return "wide"
    return "to the T" if x <= _TO_THE_MIDDLE - 0.05 else ""
