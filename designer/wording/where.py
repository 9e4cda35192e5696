"""Where: areas, lines and regions of the court as places for a ball or for feet."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from designer.drill.conditions import In, Where
from designer.drill.items import Hoop, Line
from designer.wording.counts import listed
from designer.wording.names import name_of, without_article
from designer.wording.sentence import unmarked
from designer.wording.telling import Telling

FEET: Final = ("one foot", "both feet")
_PAST: Final = "past the service line"
_TRADE: Final = {
    "deuce box": "deuce court",
    "ad box": "ad court",
    "singles court": "court",
    "doubles court": "doubles court",
}


def area_name(told: Telling, area: str, owner: str | None = None) -> str:
    """Return what a card calls an area, a line or a region, with the owner of its end where it has a copy at each.

    ``owner`` is such as "B's"; without one a region is "the right half".
    """
    name = name_of(told, area)
    if name is not None:
        both = getattr(told.setting.items.get(area), "both_ends", False)
        return f"{owner} {without_article(name)}" if both and owner else name
    words = _TRADE.get(area, area).removeprefix("the ")
    if area == "singles court" and told.setting.in_play in ("doubles court", "singles court", None):
        return "the singles court" if told.setting.in_play == "doubles court" else "the court"
    return f"{owner} {words}" if owner and area != "the net" else f"the {words}"


def is_line(told: Telling, area: str) -> bool:
    """Whether ``area`` names a line, drawn or painted, rather than a part of the court."""
    return isinstance(told.setting.items.get(area), Line) or area.startswith("the ")


def is_feet(place: In) -> bool:
    """Whether it is feet that are judged, not the ball."""
    return place.judged in FEET


def bounces(told: Telling, where: Where, owner: str | None = None) -> str:
    """Return where a ball is, after a verb of rest: "in the reply zone", "past B's service line", "outside it"."""
    return _ball(told, where, owner, moving=False)


def travels(told: Telling, where: Where, owner: str | None = None) -> str:
    """Return where a ball goes, after a verb of motion: "into the reply zone", "past B's service line"."""
    return _ball(told, where, owner, moving=True)


def _ball(told: Telling, where: Where, owner: str | None, *, moving: bool) -> str:
    phrases = [_ball_in(told, place, owner, moving=moving) for place in where if not is_feet(place)]
    if not phrases:
        return ""
    inside = [phrase for phrase in phrases if phrase.startswith(("in", "on"))]
    if len(phrases) == 2 and len(inside) == 1:
        return f"{inside[0]}, {next(phrase for phrase in phrases if phrase != inside[0])}"
    return listed(phrases)


def _ball_in(told: Telling, place: In, owner: str | None, *, moving: bool) -> str:
    name = area_name(told, place.area, owner)
    if place.side is not None or (is_line(told, place.area) and place.area != "the net"):
        short = (place.side == "in front of") != place.outside
        return f"short of {name}" if short else f"past {name}"
    if place.area == _PAST:
        line = f"{owner} service line" if owner else "the service line"
        return f"short of {line}" if place.outside else f"past {line}"
    if place.area == "between the service lines":
        return f"{'not ' if place.outside else ''}between the service lines"
    if place.outside:
        return f"outside {name}"
    plain = unmarked(without_article(name))
    if plain.startswith("middle"):
        return f"through {name}"
    on = plain.endswith(("target", "strip", "line", "spot")) and not isinstance(
        told.setting.items.get(place.area), Hoop
    )
    return f"{'on' if on else 'in'}{'to' if moving else ''} {name}"


def feet(told: Telling, place: In, owner: str | None = None) -> str:
    """Return where feet are: "on or inside the service line", "in the keep-off strip", "behind the baseline"."""
    name = area_name(told, place.area, owner)
    if not is_line(told, place.area):
        if place.outside:
            return f"outside {name}"
        return f"on or in {name}" if place.line == "in" else f"in {name}"
    front = (place.side == "in front of") != place.outside
    if place.side is None:
        front = place.outside
    counts_as_in = (place.line == "in") != place.outside if place.line is not None else False
    side = ("inside" if _back_line(place.area) else "in front of") if front else "behind"
    return f"on or {side} {name}" if counts_as_in else f"{side} {name}"


def _back_line(area: str) -> bool:
    return area in ("the baseline", "the service line")


def foot_words(place: In) -> str:
    """Return which feet are judged: "a foot", "both feet"."""
    return "both feet" if place.judged == "both feet" else "a foot"


def edges(told: Telling, places: Sequence[In]) -> tuple[str, ...]:
    """Return what touching the edge of each place counts as, each answer once; places without an answer are left out.

    One answer for all areas judged by the bounce is said in one sentence: "On the edge of an area is in".
    """
    answered = [place for place in places if place.line is not None and not is_feet(place) and place.judged != "net"]
    named = {area_name(told, place.area): place for place in answered}
    if not named:
        return ()
    answers = {(place.line, place.outside) for place in named.values()}
    if len(answers) == 1 and len(named) > 1:
        lines = [is_line(told, place.area) or place.area == _PAST for place in named.values()]
        return (
            f"on any {'line' if all(lines) else 'edge' if not any(lines) else 'edge or line'} is {answered[0].line}",
        )
    return tuple(_edge(told, place, name) for name, place in named.items())


def _edge(told: Telling, place: In, name: str) -> str:
    if place.area == _PAST:
        name = "the service line"
    if is_line(told, place.area) or place.area == _PAST:
        past = (place.side != "in front of") == (place.line == "in")
        return f"on {name} is {'past it' if past else 'short of it'}"
    if isinstance(told.setting.items.get(place.area), Hoop):
        return f"touching {name} is {place.line}"
    return f"on the edge of {name} is {place.line}"
