"""The layout: where things and people stand, so that one person can lay it out with no tape."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from designer.drill.base import Point
from designer.drill.drill import Drill
from designer.drill.items import (
    Area,
    BallMachine,
    Barrier,
    Basket,
    Cone,
    Disc,
    Ellipse,
    HeightCord,
    Hoop,
    Line,
    Note,
    Obstacle,
    Rectangle,
    Unknown,
)
from designer.drill.people import Care, Spot
from designer.drill.places import corners_of, is_letter, locate, middle
from designer.drill.setting import At
from designer.play.rally import judged_by
from designer.play.walking import laying_order
from designer.wording.counts import listed, many, plural
from designer.wording.kit import corner_discs, line_pieces
from designer.wording.names import letter, thing_name, without_article
from designer.wording.places import end_seen, standing_words
from designer.wording.sentence import Lead, Sentence, ref, sentence, sentences_of, unmarked
from designer.wording.shapes import ellipse_words, is_level_or_upright, rectangle_words, segment_words, span
from designer.wording.telling import Telling, once, telling
from designer.wording.tokens import own_text
from designer.wording.units import EXACT, KEY, Units, height

_BULLET = Lead("bullet")
_SINGLE = (Cone, Disc, Hoop, Basket, BallMachine)


def layout(drill: Drill, at: At, units: Units = "rackets") -> tuple[Sentence, ...]:
    """Return where everything stands at ``at``: things first, then people, then what a stride is."""
    return layout_of(telling(drill, at, units=units))


@once
def layout_of(told: Telling) -> tuple[Sentence, ...]:
    """Return the layout list of a telling: things as one short walk from the basket comes to them, then people."""
    things = [*_areas(told), *_lines(told), *_singles(told), *_others(told)]
    order = {id: number for number, id in enumerate(laying_order(told.setting))}
    things.sort(key=lambda found: min((order.get(id, len(order)) for id in found.about), default=len(order)))
    people = list(_people(told))
    return (*things, *people, *_key(told, [*things, *people]))


def _key(told: Telling, sentences: list[Sentence]) -> Iterator[Sentence]:
    """Yield what a racket, a stride and "exact" mean, where the list uses them, and what a letter is where people change."""
    counts = told.units == "rackets" and any(re.search(r"\b(?:racket|stride)", found.text) for found in sentences)
    heads = [found.text.partition(": ")[0] for found in sentences]
    exact = any(re.search(r"\(.*\bexact\b.*\)", head) for head in heads)
    tables = any(swap.table for swap in told.setting.swaps.values())
    under_swap = "" if told.brief else ", under Swap people"
    letters = f"letters are places{under_swap}" if tables else ""
    words = sentences_of(KEY if counts else "", EXACT if exact else "", letters)
    if words:
        yield sentence("layout:key", words)


def care_of(told: Telling, item: Any) -> Care | None:
    """Return how exactly a thing must stand: as given, else exactly where a rule or a payment depends on it."""
    given: Care | None = item.care
    return "exact" if given is None and item.id in _judged(told) else given


@once
def _judged(told: Telling) -> frozenset[str]:
    return judged_by(told.setting)


def _care(told: Telling, item: Any, where: str) -> str:
    """Return how exactly a thing must stand and that nothing marks it, in brackets: " (exact, not marked)".

    In rackets and strides "measure" says that no such count comes near enough; the list then gives metres.
    """
    unmarked_area = isinstance(item, Area) and item.marked == "in thought"
    words = [care_of(told, item) or "", measure(told, where), "not marked" if unmarked_area else ""]
    return f" ({', '.join(word for word in words if word)})" if any(words) else ""


def measure(told: Telling, where: str) -> str:
    """Return "measure" for a place that rackets and strides do not give nearly enough, "" for any other."""
    return "measure" if told.units == "rackets" and re.search(r"\d m\b", unmarked(where)) else ""


def _both(item: Any) -> str:
    return ", the same at both ends" if item.both_ends else ""


def _owner(told: Telling, item: Any, point: Point | None) -> str | None:
    """Return whose end a thing stands at: "B's"; None where it stands at both or several play there."""
    return None if item.both_ends or point is None else owner_words(told, point)


def owner_words(told: Telling, point: Point) -> str | None:
    """Return "B's" for the one player who sees ``point`` at the own end; what is at the net is seen from the near end."""
    one = told.owner_of_end(end_seen(point) or "near")
    return None if one is None else f"{letter(told, one)}'s"


def _at_end(told: Telling, item: Any, point: Point | None, words: str) -> str:
    """Return "at the far end" where nobody's name says which end is meant."""
    if item.both_ends or point is None:
        return ""
    end = end_seen(point)
    if told.owner_of_end(end or "near") is not None:
        return ""
    return f", at the {end} end" if end is not None else seen_from(words)


def seen_from(words: str) -> str:
    """Return ", seen from the near end" where a place at the net has a side and nobody's name says whose."""
    return ", seen from the near end" if re.search(r"\b(?:left|right)\b", words) else ""


def _corners(told: Telling, item: Any, corners: tuple[Point, ...]) -> list[str]:
    """Return where each corner is; whose end it is at is said once, or each time where a shape lies at both."""
    exact = not isinstance(item, Obstacle) and care_of(told, item) == "exact"
    several = len({end_seen(corner) for corner in corners} - {None}) > 1
    found = []
    for number, corner in enumerate(corners):
        owner = None if number and not several else _owner(told, item, corner)
        words = standing_words(told.ground, corner, told.units, owner=owner, exact=exact)
        end = end_seen(corner)
        found.append(f"{words}, {end} end" if several and owner is None and end is not None else words)
    return found


def _whole_at_end(told: Telling, item: Any, corners: tuple[Point, ...], words: str) -> str:
    ends = {end_seen(corner) for corner in corners} - {None}
    return "" if len(ends) > 1 else _at_end(told, item, middle(corners), words)


def _areas(told: Telling) -> Iterator[Sentence]:
    for item in told.setting.items.values():
        if isinstance(item, Area):
            name = ref(item.id, without_article(thing_name(told, item) or "area"))
            corners = corners_of(item)
            if not corners:
                yield sentence(f"item:{item.id}", f"{name}: a shape this program does not know", item.id, lead=_BULLET)
                continue
            where = _shape(told, item, corners)
            where += _whole_at_end(told, item, corners, where)
            words = sentences_of(
                f"{name}{_care(told, item, where)}: {where}{_both(item)}",
                _marked(told, item),
                own_text(told, item.note),
            )
            yield sentence(f"item:{item.id}", words, item.id, lead=_BULLET)


def _shape(told: Telling, item: Area, corners: tuple[Point, ...]) -> str:
    owner = _owner(told, item, middle(corners))
    exact = care_of(told, item) == "exact"
    at_one_end = len({end_seen(corner) for corner in corners} - {None}) < 2
    if isinstance(item.shape, Rectangle) and at_one_end:
        return rectangle_words(told.ground, span(corners), told.units, owner, exact=exact)
    if isinstance(item.shape, Ellipse):
        return ellipse_words(told.ground, span(corners), corners, told.units, owner, exact=exact)
    return f"corners {'; '.join(_corners(told, item, corners))}"


def _marked(told: Telling, item: Area) -> str:
    match item.marked:
        case "discs":
            count = corner_discs(told.ground, item)
            return (
                ""
                if count == 0
                else "a disc on each corner"
                if count == len(corners_of(item))
                else f"{many(count, 'disc')} on the corners that are not painted"
            )
        case "chalk" | "tape":
            return f"marked with {item.marked}"
        case "throw-down":
            return "marked with throw-down lines"
    return ""


def _lines(told: Telling) -> Iterator[Sentence]:
    for item in told.setting.items.values():
        if isinstance(item, Line | Barrier):
            corners = item.corners
            owner = _owner(told, item, middle(corners))
            name = ref(item.id, without_article(thing_name(told, item) or "line"))
            if is_level_or_upright(corners):
                where = segment_words(told.ground, corners, told.units, owner, exact=care_of(told, item) == "exact")
            else:
                where = f"from {' to '.join(_corners(told, item, corners))}"
            where += _whole_at_end(told, item, corners, where)
            words = sentences_of(
                f"{name}{_care(told, item, where)}: {_made_of(told, item)}{where}{_both(item)}",
                *_runs_on(item),
                own_text(told, item.note),
            )
            yield sentence(f"item:{item.id}", words, item.id, lead=_BULLET)


def _made_of(told: Telling, item: Line | Barrier) -> str:
    if isinstance(item, Barrier):
        return f"soft and light, {height(item.height, told.units)} high, " if item.height is not None else ""
    name = thing_name(told, item) or ""
    if item.marked == "discs":
        return f"{many(line_pieces(item), 'disc')}, evenly spaced, "
    if item.marked is None or item.marked in name or (item.marked == "chalk" and name == "the tick"):
        return "chalk, " if item.marked == "chalk" and name == "the tick" else ""
    return "imagined, " if item.marked == "in thought" else f"{item.marked}, "


def _runs_on(item: Line | Barrier) -> Iterator[str]:
    if isinstance(item, Line) and item.runs_on:
        yield "imagine it longer at both ends"
    if isinstance(item, Line) and item.pieces is not None and item.marked in ("throw-down", "tape"):
        yield f"{many(item.pieces, 'piece')}"


def _singles(told: Telling) -> Iterator[Sentence]:
    """Yield cones, discs, hoops, baskets and machines, those of one kind and care together."""
    groups: dict[tuple[str, str | None, bool], list[Any]] = {}
    for item in told.setting.items.values():
        if isinstance(item, _SINGLE):
            groups.setdefault((item.kind, care_of(told, item), item.both_ends), []).append(item)
    for (kind, _, both), items in groups.items():
        under = [item.place.on for item in items if _is_under_a_person(item)]
        places = folded([_place(told, item) for item in items if not _is_under_a_person(item)])
        if under:
            places.append(
                f"where {listed([letter(told, on) for on in sorted(under)])} {'stand' if under[1:] else 'stands'}"
            )
        ids = [item.id for item in items]
        noun = _noun(kind, len(items))
        named = ref(ids[0], noun) if len(items) == 1 else noun
        notes = dict.fromkeys(own_text(told, item.note) for item in items)
        where = "; ".join(places)
        words = sentences_of(f"{named}{_care(told, items[0], where)}: {where}{_both(items[0]) if both else ''}", *notes)
        yield sentence(f"item:{ids[0]}", words, *ids, lead=_BULLET)


def _noun(kind: str, count: int) -> str:
    word = {"disc": "flat disc", "hoop": "flat hoop"}.get(kind, kind)
    return word if count == 1 else plural(word)


def _is_under_a_person(item: Any) -> bool:
    return item.place.on is not None and is_letter(item.place.on) and item.place.at == (0.0, 0.0)


def _place(told: Telling, item: Any) -> str:
    point = locate(told.setting, item.place)
    if point is None:
        return "where it stands is not known"
    owner = _owner(told, item, point)
    words = standing_words(told.ground, point, told.units, owner=owner, exact=care_of(told, item) == "exact")
    balls = f", {item.balls} balls" if isinstance(item, Basket) and item.balls is not None else ""
    return f"{words}{_at_end(told, item, point, words)}{balls}"


_SIDED = re.compile(r"(the|\S+'s) (?:left|right) (singles line|doubles line|side fence|service box)")


def folded(places: list[str]) -> list[str]:
    """Return places with those that differ only in the side, or only in the end, said once for both."""
    sides: list[str] = []
    for place in dict.fromkeys(places):
        other = _other_side(place)
        if other == place or other not in places:
            sides.append(place)
        elif places.index(place) < places.index(other):
            both = _SIDED.sub(_each, re.sub(r"\b(?:left|right) of\b", "either side of", place))
            sides += [both] if both != place else [place, other]  # no words for both: each is said
    ends: list[str] = []
    for place in sides:
        other = place.replace("at the near end", "at the far end")
        if place != other and other in sides:
            ends.append(place.replace("at the near end", "at both ends"))
        elif "at the far end" not in place or place.replace("at the far end", "at the near end") not in sides:
            ends.append(place)
    return ends


def _other_side(place: str) -> str:
    return re.sub(r"\b(left|right)\b", lambda found: "right" if found[1] == "left" else "left", place)


def _each(found: re.Match[str]) -> str:
    return f"each {found[2]}" if found[1] == "the" else f"each {found[2]} at {found[1]} end"


def _others(told: Telling) -> Iterator[Sentence]:
    for item in told.setting.items.values():
        words = ""
        if isinstance(item, Obstacle):
            name = ref(item.id, without_article(thing_name(told, item) or "obstacle"))
            words = f"{name}: corners {'; '.join(_corners(told, item, item.corners))}"
        elif isinstance(item, HeightCord):
            words = f"{ref(item.id, 'cord')} over the net: {height(item.height, told.units)} high"
        elif isinstance(item, Note) and item.text.strip():
            words = f"note on the drawing: “{own_text(told, item.text)}”"
        elif isinstance(item, Unknown):
            words = f"a thing this program does not know: {item.kind or 'it has no kind'}"
        if words:
            note = own_text(told, getattr(item, "note", ""))
            yield sentence(f"item:{item.id}", sentences_of(words, note), item.id, lead=_BULLET)


def _people(told: Telling) -> Iterator[Sentence]:
    """Yield where people stand, those at like places of their ends together."""
    groups: dict[tuple[str, str], list[Spot]] = {}
    for spot in sorted(told.setting.spots.values(), key=lambda spot: spot.job):
        key = (spot_words(told, spot), spot.note or ("" if spot.task == "plays" else spot.task))
        groups.setdefault(key, []).append(spot)
    for where, spots in _both_sides(groups):
        names = [_named(told, spot) for spot in spots]
        task = "" if spots[0].task == "plays" else f" {spots[0].task if len(spots) == 1 else spots[0].task[:-1]}"
        if all(_role(told, spot).endswith(spot.task) for spot in spots):
            task = ""
        words = f"{listed(names)}{task}: {where}{_at_ends(told, spots)}"
        ids = [spot.id for spot in spots]
        yield sentence(f"spot:{ids[0]}", sentences_of(words, own_text(told, spots[0].note)), *ids, lead=_BULLET)


def _at_ends(told: Telling, spots: list[Spot]) -> str:
    """Return which end people stand at where several share one: ", near end", ", A at the near end and C at the far"."""
    ends: dict[str, list[str]] = {}
    for spot in spots:
        point = locate(told.setting, spot.place)
        end = None if point is None else end_seen(point)
        if end is not None and told.owner_of_end(end) != spot.job:
            ends.setdefault(end, []).append(letter(told, spot.job))
    if len(ends) > 1:
        return f", {' and '.join(f'{listed(names)} at the {end} end' for end, names in ends.items())}"
    return f", {next(iter(ends))} end" if ends else ""


def _both_sides(groups: dict[tuple[str, str], list[Spot]]) -> Iterator[tuple[str, list[Spot]]]:
    """Yield places with who is there; those who wait at either side of the court are said once."""
    said: set[str] = set()
    for (where, what), spots in groups.items():
        other = _other_side(where)
        if where in said:
            continue
        if spots[0].task != "plays" and other != where and (other, what) in groups:
            said |= {where, other}
            each = re.sub(r"the side fence on \S+ (?:left|right)", "each side fence", _SIDED.sub(_each, where))
            yield each, [*spots, *groups[other, what]]
        else:
            yield where, spots


def _named(told: Telling, spot: Spot) -> str:
    """Return a letter with what is said about it in brackets: "F (coach, feeds)"."""
    # A place that need not be exact needs no word.
    care = spot.care if spot.task == "plays" and spot.care != "about" else None
    words = (_role(told, spot), care, measure(told, spot_words(told, spot)))
    about = ", ".join(word for word in words if word)
    return f"{letter(told, spot.job)} ({about})" if about else letter(told, spot.job)


def _role(told: Telling, spot: Spot) -> str:
    job = told.drill.job(spot.job)
    if job is None:
        return ""
    kind = {"coach": "coach", "machine": "machine"}.get(job.by, "")
    return ", ".join(words for words in (kind, own_text(told, job.role)) if words)


def spot_words(told: Telling, spot: Spot) -> str:
    """Return where a person starts, as seen from that person's own end."""
    point = locate(told.setting, spot.place)
    if point is None:
        return "where is not known"
    owner = owner_words(told, point) if end_seen(point) is None else None
    words = standing_words(told.ground, point, told.units, owner=owner, exact=spot.care == "exact")
    return words if end_seen(point) is not None or owner is not None else f"{words}{seen_from(words)}"
