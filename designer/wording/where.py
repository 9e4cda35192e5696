"""Where: areas, lines and regions of the court as places for a ball or for feet."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

from designer.drill.conditions import In, Where
from designer.drill.items import Hoop, Line
from designer.wording.counts import listed
from designer.wording.names import name_of, without_article
from designer.wording.sentence import unmarked
from designer.wording.telling import Telling

BACK_LINES: Final = ("the baseline", "the service line")
"""Lines that one is inside of rather than in front of."""
FEET: Final = ("one foot", "both feet")
PAST: Final = "past the service line"
MIDDLE: Final = "middle four rackets"
_HALVES: Final = {"right": "the right half", "left": "the left half"}
_TRADE: Final = {"deuce box": "deuce court", "ad box": "ad court"}
_ON: Final = ("target", "strip", "line", "spot")
"""Last words of names that a ball lands on rather than in."""


def area_name(told: Telling, area: str, owner: str | None = None) -> str:
    """Return what a card calls an area, a line or a region, with the owner of its end where it has a copy at each.

    ``owner`` is such as "B's"; without one a region is "the right half".
    """
    name = name_of(told, area)
    if name is not None:
        both = getattr(told.setting.items.get(area), "both_ends", False)
        return f"{owner} {without_article(name)}" if both and owner else name
    if area == "singles court":
        return "the singles court" if told.setting.in_play == "doubles court" else "the court"
    if area == "doubles court":
        return "the court" if told.setting.in_play == "doubles court" else "the doubles court"
    words = _TRADE.get(area, area).removeprefix("the ")
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
    phrases: list[str] = []
    for place in where:
        if not is_feet(place):
            # The owner of the end is said once: "into A's right half, past the service line".
            said = _ball_in(told, place, None if phrases and not _has_copy(told, place) else owner, moving=moving)
            phrases.append(said)
    first = [phrase for phrase in phrases if phrase.startswith(("in", "on", "through"))]
    return ", ".join([*first, *(phrase for phrase in phrases if phrase not in first)])


def _has_copy(told: Telling, place: In) -> bool:
    return bool(getattr(told.setting.items.get(place.area), "both_ends", False))


def _ball_in(told: Telling, place: In, owner: str | None, *, moving: bool) -> str:
    name = area_name(told, place.area, owner)
    if place.side is not None or (is_line(told, place.area) and place.area != "the net"):
        short = (place.side == "in front of") != place.outside
        return f"short of {name}" if short else f"past {name}"
    if place.area == PAST:
        line = f"{owner} service line" if owner else "the service line"
        return f"short of {line}" if place.outside else f"past {line}"
    if place.area == "between the service lines":
        return f"{'not ' if place.outside else ''}between the service lines"
    if place.outside:
        return f"outside {name}"
    if moving and place.area == MIDDLE:
        return f"through {name}"
    on = unmarked(name).endswith(_ON) and not isinstance(told.setting.items.get(place.area), Hoop)
    return f"{'on' if on else 'in'}{'to' if moving else ''} {name}"


def feet(told: Telling, place: In, owner: str | None = None) -> str:
    """Return where feet are: "on or inside the service line", "in the keep-off strip", "behind the baseline"."""
    name = area_name(told, place.area, owner)
    if not is_line(told, place.area):
        if place.outside:
            return f"outside {name}"
        return f"on or in {name}" if place.line == "in" else f"in {name}"
    front = place.outside if place.side is None else (place.side == "in front of") != place.outside
    counts_as_in = (place.line == "in") != place.outside if place.line is not None else False
    side = ("inside" if place.area in BACK_LINES else "in front of") if front else "behind"
    return f"on or {side} {name}" if counts_as_in else f"{side} {name}"


def foot_words(place: In) -> str:
    """Return which feet are judged: "a foot", "both feet"."""
    return "both feet" if place.judged == "both feet" else "a foot"


def edges(told: Telling, places: Sequence[In], doubts: dict[str, str] | None = None) -> tuple[str, ...]:
    """Return what touching the edge of each place counts as, each answer once; places without an answer are left out.

    One answer for all areas is said in one sentence. ``doubts`` says what doubt means for some of them.
    """
    answered = [
        place
        for place in places
        if place.line is not None and place.judged != "net" and not is_feet(place) and place.area not in _NO_EDGE
    ]
    halves = [place for place in answered if place.area in ("right half", "left half")]
    rest = {unmarked(area_name(told, place.area)): place for place in answered if place not in halves}
    doubts = doubts or {}
    said = list(dict.fromkeys(_half_edge(halves)))
    if not any(place.area in doubts for place in rest.values()):
        said += _one_answer(told, rest)
    else:
        shared = _shared_edge(told, rest, doubts)
        said += shared
        if told.brief and shared and len(rest) > 1 and {place.line for place in rest.values()} == {"in"}:
            said.append("other edges are in")
        else:
            said += [_edge(told, place, name, doubts.get(place.area)) for name, place in rest.items()]
    return tuple(dict.fromkeys(said))


_NO_EDGE: Final = ("singles court", "doubles court")
"""Lines are in by the rules of tennis: a card need not say so."""


def _shared_edge(told: Telling, rest: dict[str, In], doubts: dict[str, str]) -> list[str]:
    """Return what the edge between two areas is where one has it and the doubt too; ``rest`` loses the two."""
    sure = [(name, place) for name, place in rest.items() if doubts.get(place.area) == place.line]
    if len(sure) != 2 or {place.line for _, place in sure} != {"in", "out"}:
        return []
    (_, has), (_, loses) = sorted(sure, key=lambda found: found[1].line or "")
    for name, _ in sure:
        del rest[name]
    first, second = area_name(told, has.area), area_name(told, loses.area)
    if not told.brief:
        return [f"a ball between {second} and {first}, or a doubtful one, counts as {first}"]
    kinds = {unmarked(name).rsplit(" ", 1)[-1] for name in (first, second)}
    both = f"the two {kinds.pop()}s" if len(kinds) == 1 else f"{second} and {first}"
    return [f"between {both}, or not sure: {first}"]


def _half_edge(halves: Iterable[In]) -> list[str]:
    """Return on which side a ball on the middle line counts: "on the centre line is in the right half"."""
    said = []
    for place in halves:
        side = place.area.split(" ", 1)[0]
        if place.line == "out":
            side = "left" if side == "right" else "right"
        said.append(f"a ball on the centre line counts as {_HALVES[side]}")
    return said if len(set(said)) < 2 else ["a ball on the centre line counts for the half it was meant for"]


def _one_answer(told: Telling, named: dict[str, In]) -> list[str]:
    answers = {place.line for place in named.values()}
    lines = [_is_edge_line(told, place) or _is_hoop(told, place) for place in named.values()]
    if named and answers == {"in"} and not any(lines):
        if told.brief:
            return ["edges are in"]
        if len(named) > 1:
            return ["a ball on any edge is in"]
    if len(named) == 2 and answers == {"in", "out"} and not any(lines):
        has = next(place for place in named.values() if place.line == "in")
        return [f"{'edges belong to' if told.brief else 'a ball on an edge counts for'} {area_name(told, has.area)}"]
    return [_edge(told, place, name, None) for name, place in named.items()]


def _is_edge_line(told: Telling, place: In) -> bool:
    return is_line(told, place.area) or place.area == PAST


def _is_hoop(told: Telling, place: In) -> bool:
    return isinstance(told.setting.items.get(place.area), Hoop)


def _edge(told: Telling, place: In, name: str, doubt: str | None) -> str:
    name = area_name(told, place.area) if place.area != PAST else "the service line"
    if _is_edge_line(told, place):
        past = (place.side != "in front of") == ((place.line == "in") != place.outside)
        return f"a ball on {name} is {'past it' if past else 'short of it'}"
    if _is_hoop(told, place):
        return f"touching the hoop is {place.line}" if told.brief else f"a ball that touches {name} is {place.line}"
    if doubt is None:
        return f"a ball on the edge of {name} {'is in' if place.line == 'in' else 'counts as outside it'}"
    answer: dict[str | None, str] = {"in": "in it", "out": "outside it"}
    if doubt == place.line:
        return f"a ball on the edge of {name}, or in doubt: {answer[doubt]}"
    return f"a ball on the edge of {name}: {answer[place.line]}; in doubt: {answer[doubt]}"


def volleyed(told: Telling, places: Sequence[In]) -> tuple[str, ...]:
    """Return what a ball taken before its bounce counts as, for the places that say so."""
    counted: dict[str, str] = {}
    neither: dict[str, str] = {}
    for place in places:
        if place.volleyed is None or is_feet(place):
            continue
        where = bounces(told, (place.changed(outside=False),))
        (counted if (place.volleyed == "in") != place.outside else neither)[unmarked(where)] = where
    said = []
    if counted:
        said.append(f"a volley counts as {listed(list(counted.values()), 'or')}")
    if neither:
        lines = [where.removeprefix("past ") for where in neither if where.startswith("past ")]
        if lines and len(lines) == len(neither):
            said.append("a volley is neither past the line nor short of it")
        elif len(neither) == 1:
            where = next(iter(neither.values()))
            short = told.brief and where.startswith("short of ") and all(place.area != PAST for place in places)
            said.append(f"a volley is not {'short' if short else where}")
        elif {where.split(" ", 1)[0] for where in neither} == {"past", "short"} and len(neither) == 2:
            said.append("a volley is neither past the line nor short of it")
        elif len(neither) == 2 and not counted:
            said.append("a volley belongs to neither" if told.brief else "a volley counts for neither of the two")
        else:
            said.append(f"a volley is neither {' nor '.join(neither.values())}")
    return tuple(said)
