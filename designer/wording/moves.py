"""How a thing or a person stands differently in one setting than in the one below: wider, deeper, nearer the net."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from designer.court.readings import RACKET, STRIDE
from designer.court.regions import as_player, end_of
from designer.drill.base import ON_THE_LINE, Point
from designer.drill.items import Area, Line, Rectangle
from designer.drill.places import corners_of, locate
from designer.wording.counts import listed, plural
from designer.wording.kit import corner_discs
from designer.wording.names import letter, thing_name, without_article
from designer.wording.places import place_words
from designer.wording.sentence import ref, unmarked
from designer.wording.shapes import Span, edge_words, span
from designer.wording.telling import Telling
from designer.wording.units import distance

_SOME = ON_THE_LINE
_COUNTED = 0.2
"""How far a count of half rackets or half strides may be from a whole one and still be said."""


@dataclass(frozen=True, slots=True)
class Moved:
    """Something of one kind that moved in one way: its ids, its name, what it does, in how many pieces."""

    ids: tuple[str, ...]
    noun: str
    words: str


def moved_items(told: Telling) -> Iterator[tuple[tuple[str, ...], str]]:
    """Yield (ids, words) for the items that stand or look different than in the setting below; equal ones together."""
    groups: dict[tuple[str, str], list[Moved]] = {}
    for id, item in told.setting.items.items():
        before = told.below.setting.items.get(id)
        if before is None or before == item:
            continue
        for words in item_change(told, before, item):
            noun = without_article(unmarked(thing_name(told.below, before) or "thing"))
            kind = getattr(item, "kind", "")
            family = kind if kind in ("cone", "disc", "hoop") else noun
            groups.setdefault((family, words), []).append(Moved((id,), ref(id, noun), words))
    for (family, words), found in _both_sides(groups).items():
        ids = tuple(id for one in found for id in one.ids)
        # Hoops moved alike are "hoops"; two areas of one name, one at each end, keep it.
        noun = plural(family) if len(found) > 1 and family in ("cone", "disc", "hoop") else found[0].noun
        yield ids, f"{noun} {words}"


def _both_sides(groups: dict[tuple[str, str], list[Moved]]) -> dict[tuple[str, str], list[Moved]]:
    """Return the groups with those that lie as far to the left as to the right of the middle taken together."""
    joined: dict[tuple[str, str], list[Moved]] = {}
    for (family, words), found in groups.items():
        other = words.replace("left of", "right of") if "left of" in words else words.replace("right of", "left of")
        both = other != words and (family, other) in groups
        either = words.replace("left of", "from").replace("right of", "from")
        joined.setdefault((family, either if both else words), []).extend(found)
    return joined


def item_change(told: Telling, before: Any, after: Any) -> Iterator[str]:
    """Yield what is different about an item, as it stands after its name."""
    old_at, new_at = _point(told.below, before), _point(told, after)
    old_shape, new_shape = getattr(before, "shape", None), getattr(after, "shape", None)
    if isinstance(old_shape, Rectangle) and isinstance(new_shape, Rectangle):
        yield from _rectangle(told, span(corners_of(before)), span(corners_of(after)))
    elif isinstance(before, Line) and isinstance(after, Line) and before.corners != after.corners:
        yield edge_words(told.ground, after.corners, told.units, before=before.corners)
    elif corners_of(before) != corners_of(after):
        yield "has another shape"
    elif old_at is not None and new_at is not None and old_at != new_at:
        yield shift(told, old_at, new_at)
    if getattr(before, "marked", None) != getattr(after, "marked", None) and _is_new_mark(after):
        yield _marking(told, after)
    if getattr(after, "both_ends", False) and not getattr(before, "both_ends", False):
        yield "at both ends"
    for field, unit in (("height", " m high"), ("balls", " balls")):
        old, new = getattr(before, field, None), getattr(after, field, None)
        if old != new and new is not None:
            yield f"{new:g}{unit}"


def _is_new_mark(item: Any) -> bool:
    """Whether an item now needs something to mark it with; what is painted or thought of needs nothing."""
    return getattr(item, "marked", None) not in (None, "painted", "in thought")


def _marking(told: Telling, item: Any) -> str:
    marked = getattr(item, "marked", None)
    if marked == "discs" and isinstance(item, Area):
        return f"with {corner_discs(told.ground, item)} discs"
    return {None: "not marked", "in thought": "not marked", "painted": "by the painted line"}.get(
        marked, f"marked with {marked}"
    )


def _point(told: Telling, item: Any) -> Point | None:
    place = getattr(item, "place", None)
    return None if place is None else locate(told.setting, place)


def _rectangle(told: Telling, old: Span, new: Span) -> Iterator[str]:
    across = abs(old.left - new.left) > _SOME or abs(old.right - new.right) > _SOME
    if across and abs(old.width - new.width) > _SOME:
        yield f"{distance(new.width, 'across', told.units)} wide"
    elif across:
        yield "moved across"
    ground = told.ground
    for name, was, now in (("front edge", old.front, new.front), ("back edge", old.back, new.back)):
        if abs(was - now) > _SOME:
            corners = ((new.left, -now), (new.right, -now))
            yield f"{name} {edge_words(ground, corners, told.units)}"


def shift(told: Telling, old: Point, new: Point) -> str:
    """Return how a point moved, as seen from its end: "1 stride deeper", "2 rackets right"; else where it now is."""
    end = end_of(new) or "near"
    if end_of(old) != end_of(new):
        return f"{place_words(told.ground, new, told.units)} at the {end} end"
    (x0, y0), (x1, y1) = as_player(old, end), as_player(new, end)
    across, along = x1 - x0, y1 - y0
    if abs(across) <= _SOME:
        return f"{distance(along, 'along', told.units)} {'further from' if along > 0 else 'nearer'} the net"
    if abs(along) <= _SOME:
        return f"{distance(across, 'across', told.units)} further {'right' if across > 0 else 'left'}"
    return place_words(told.ground, new, told.units)


def _start(told: Telling, old: Point, new: Point) -> str:
    """Return how a person's start moved where that is a whole count, else where it now is."""
    (x0, y0), (x1, y1) = as_player(old, "near"), as_player(new, "near")
    halves_moved = (abs(x1 - x0) * 2 / RACKET, abs(y1 - y0) * 2 / STRIDE)
    if told.units == "rackets" and any(abs(moved - round(moved)) > _COUNTED for moved in halves_moved):
        return place_words(told.ground, new, told.units)
    return shift(told, old, new)


def moved_people(told: Telling) -> Iterator[tuple[tuple[str, ...], str]]:
    """Yield (ids, words) for the people who start elsewhere than in the setting below."""
    groups: dict[str, list[tuple[str, str]]] = {}
    for id, spot in sorted(told.setting.spots.items(), key=lambda entry: entry[1].job):
        before = told.below.setting.spots.get(id)
        if before is None or before == spot:
            continue
        old, new = locate(told.below.setting, before.place), locate(told.setting, spot.place)
        words = _start(told, old, new) if old is not None and new is not None and old != new else ""
        if spot.task != before.task:
            words = f"now {spot.task}"
        if words:
            groups.setdefault(words, []).append((id, letter(told, spot.job)))
    for words, found in groups.items():
        names = [name for _, name in found]
        who = "all" if len(found) == len(told.playing) > 2 else listed(names)
        if words.startswith("now "):
            yield tuple(id for id, _ in found), f"{who} {words if len(found) == 1 else words.removesuffix('s')}"
            continue
        verb = "start" if len(found) > 1 else "starts"
        yield tuple(id for id, _ in found), f"{who} {verb} {words}"
