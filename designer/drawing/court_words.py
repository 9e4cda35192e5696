"""The words of the court itself: YOU, NET, deuce and ad."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from designer.drawing.geometry import grown, inside_box, overlap, within
from designer.drawing.labels import CLEAR, COVERS, within_box
from designer.drawing.pen import Pen
from designer.drawing.placing import AREA, ASIDE_OF_PLAY, COURT, best
from designer.drawing.plan import Plan
from designer.drawing.primitives import Align, Bounds, Layer, Point
from designer.drawing.words import text_width
from designer.drill.places import locate
from designer.wording.spoken import label


def net_and_side_words(plan: Plan) -> None:
    """Add NET, deuce and ad. They come last, so they give way; deuce and ad have noted their usual places before."""
    _net(plan)
    for word in side_words(plan):
        _side_word(plan, word)


@dataclass(frozen=True, slots=True)
class SideWord:
    """Deuce or ad: its text and size in u, and its usual place beside a service box, by which end it stands there."""

    text: str
    size: float
    at: Point
    align: Align

    def box(self, pen: Pen, at: Point | None = None, align: Align | None = None) -> Bounds:
        """Return the box it fills at its usual place, or at another."""
        return pen.text_box((self.text,), at or self.at, self.size, align=align or self.align)


def side_words(plan: Plan) -> Iterator[SideWord]:
    """Yield deuce and ad of both ends at their usual places beside the service boxes."""
    ground, u = plan.ground, plan.unit
    size, gap = _side_size(plan)
    y = (ground.service_line if ground.service_line is not None else ground.baseline * 0.55) / 2
    for end in (-1, 1):
        for side in (-1, 1):
            text = label("deuce" if side * end < 0 else "ad")
            edge = plan.page.to_page((side * ground.outer, end * y))
            beyond = plan.page.to_page((side * (ground.outer + 1.0), end * y))
            if not within(plan.space.extent, edge):
                continue  # the other half of the court is not shown
            out = (round(beyond[0] - edge[0]), round(beyond[1] - edge[1]))
            off = gap * u if out[0] else 7.0 * u
            align: Align = "left" if out[0] > 0 else "right" if out[0] < 0 else "middle"
            yield SideWord(text, size, (edge[0] + out[0] * off, edge[1] + out[1] * off), align)


def _side_size(plan: Plan) -> tuple[float, float]:
    """Return the size of deuce and ad, and how far they stand beside the court, both in u.

    Where the run-off is too narrow for them they are a little smaller, and as far from the line as from the fence.
    """
    if plan.page.across or not plan.patient:
        return SIDE[0], SIDE_GAP
    room = (plan.ground.side_fence - plan.ground.outer) / plan.unit
    for size in SIDE:
        spare = room - max(text_width(label(word), size) for word in ("deuce", "ad"))
        if spare >= 2 * LEAST_SIDE_GAP:
            return size, min(SIDE_GAP, spare / 2)
    return SIDE[0], SIDE_GAP


def reserve_side_words(plan: Plan) -> None:
    """Note the usual places of deuce and ad, so that other words go elsewhere where they can."""
    for word in side_words(plan):
        plan.space.take(grown(word.box(plan.pen), plan.unit), 40.0, "side words")


def _cased(plan: Plan, box: Bounds) -> bool:
    return not plan.space.is_bare(grown(box, plan.unit))


def _side_word(plan: Plan, word: SideWord) -> None:
    """Add deuce or ad; it is left out where it would hide a head, a person or other words: three more say the same."""
    place, align, box, cost = _side_place(plan, word)
    if cost >= COVERS:
        return
    part = f"{word.text} {word.at[0] > 0} {word.at[1] > 0}"
    plan.draw(
        None,
        "court words",
        Layer.WORDS,
        Pen.lines,
        (word.text,),
        place,
        word.size,
        "ink",
        part=part,
        align=align,
        cased=_cased(plan, box),
    )
    plan.space.take(grown(box, 1.4 * plan.unit), owner="court words")


def _side_place(plan: Plan, word: SideWord) -> tuple[Point, Align, Bounds, float]:
    """Return where deuce or ad stands best, by which end, the box it fills there, and what that costs.

    Where there is no room beside the court, it stands in the service box itself.
    """
    at, align, usual = word.at, word.align, word.box(plan.pen)
    if plan.space.cost(usual, "side words") + _untidy(plan, usual, LEAST_SIDE_GAP) <= 1.0:
        return at, align, usual, 0.0  # no other place costs less; on most courts there is nothing to look for
    steps = (0.0, 9.0, -9.0, 18.0, -18.0, 27.0, -27.0, 36.0, -36.0, 45.0, -45.0)
    outward = 1.0 if align == "left" or (align == "middle" and at[1] > 0) else -1.0
    choices: list[tuple[tuple[Point, Align], Bounds, float]] = []
    for order, step in enumerate(steps):
        for place, own in _within_its_box(plan, at, step * plan.unit):
            box = word.box(plan.pen, place, "middle")
            choices.append(((place, "middle"), box, own + order + _untidy(plan, box)))
        for aside, dear in ((0.0, 0.0), (12.0, 3.0), (24.0, 5.0), (-16.0, 6.0), (-32.0, 8.0), (36.0, 9.0)):
            along, off = step * plan.unit, aside * outward * plan.unit
            place = (at[0] + along, at[1] + off) if plan.page.across else (at[0] + off, at[1] + along)
            if not _over_net(at, place, 6 * plan.unit, across=plan.page.across):
                box = word.box(plan.pen, place)
                choices.append(((place, align), box, order * 1.0 + dear + _untidy(plan, box, LEAST_SIDE_GAP)))
    (place, align), box, cost = best(plan.space, choices, "side words")
    return place, align, box, cost


def _within_its_box(plan: Plan, at: Point, step: float) -> Iterator[tuple[Point, float]]:
    """Yield places in the service box beside ``at``, ``step`` metres along, and what each costs."""
    x, y = plan.page.to_court(at)
    line = plan.ground.service_line
    if line is None:
        return
    for share, cost in ((0.5, 4.0), (0.66, 4.5), (0.34, 5.0)):
        along = abs(y) + step
        if 0.15 * line < along < 0.85 * line:
            yield (
                plan.page.to_page((math.copysign(plan.ground.singles * share, x), math.copysign(along, y))),
                cost,
            )


def _untidy(plan: Plan, box: Bounds, clear: float = CLEAR) -> float:
    """Return what it costs that words come nearer to the fence than ``clear`` u, or lie across a court line."""
    inside = within_box(grown(plan.space.extent, -clear * plan.unit), box)
    near = plan.space.near_pieces(box)
    crosses = any(
        piece.owner in (COURT, ASIDE_OF_PLAY) and inside_box(piece.start, piece.end, box) > 0 for piece in near
    )
    return (0.0 if inside else 25.0) + (12.0 if crosses else 0.0)


SIDE: Final = (9.0, 8.5, 8.2)
"""Sizes of deuce and ad in u, the first that there is room for: they are read in the sun."""

SIDE_GAP: Final = 3.0
"""How far deuce and ad stand beside the court, in u."""

LEAST_SIDE_GAP: Final = 1.3
"""The same where the run-off is narrow, and how far they then keep from the fence."""


def _over_net(at: Point, place: Point, least: float, *, across: bool) -> bool:
    """Whether ``place`` lies at the other end than ``at``, or too near the net to tell."""
    one, other = (at[0], place[0]) if across else (at[1], place[1])
    return one * other <= 0 or abs(other) < min(least, abs(one))


_ROUND_A_PERSON: Final = (
    (0.0, 26.0),
    (14.0, 22.0),
    (-14.0, 22.0),
    (32.0, 10.0),
    (-32.0, 10.0),
    (32.0, 0.0),
    (-32.0, 0.0),
)
"""Where a word may stand beside and behind a person, in print points."""


def you_word(plan: Plan) -> None:
    """Add YOU behind the person at the reader's end, wherever that is, else behind the middle of that baseline."""
    u, ground = plan.unit, plan.ground
    beyond = max(3.55, 0.91 + 27 * u)
    most = (
        ground.run_back - (13 if plan.page.across else 7) * u
    )  # half of the word's width, or of its height, is beyond
    foot = -1.0 if not plan.page.turned else 1.0
    across, stands = _reader(plan)
    choices = []
    if stands < 0.6 * ground.baseline:  # too far from the baseline for a word behind it to be taken as theirs
        for order, (aside, behind) in enumerate(_ROUND_A_PERSON):
            at = plan.page.to_page((across + aside * u * -foot, foot * (stands + behind * u)))
            choices.append((at, plan.pen.text_box(("YOU",), at, 10.0, bold=True), order * 0.2 - 1.0))
    for order, (aside, more) in enumerate(
        ((0.0, 0.0), (0.0, 12.0), (0.0, -5.0), (28.0, 0.0), (-28.0, 0.0), (50.0, 0.0), (-50.0, 0.0))
    ):
        reach = ground.baseline + min(beyond + more * u, most)
        at = plan.page.to_page((across + aside * u * -foot, foot * reach))
        choices.append((at, plan.pen.text_box(("YOU",), at, 10.0, bold=True), order * 1.0))
    at, box, _ = best(plan.space, choices)
    plan.draw(
        None,
        "court words",
        Layer.WORDS,
        Pen.lines,
        ("YOU",),
        at,
        10.0,
        "ink",
        part="you",
        bold=True,
        cased=_cased(plan, box),
    )
    plan.space.take(grown(box, 1.4 * plan.unit), owner="court words")


def _reader(plan: Plan) -> tuple[float, float]:
    """Return the x of who reads and how far from the net: the person called you, else the only one at that baseline.

    The middle of the baseline, where that is nobody.
    """
    near = 1.0 if plan.page.turned else -1.0
    found = []
    for spot in plan.setting.spots.values():
        point = locate(plan.setting, spot.place)
        if point is None or spot.task != "plays" or point[1] * near <= 0:
            continue
        if spot.job == plan.you:
            return point[0], abs(point[1])
        if point[1] * near > plan.ground.baseline * 0.6:
            found.append((point[0], abs(point[1])))
    return found[0] if len(found) == 1 else (0.0, plan.ground.baseline)


def _net(plan: Plan) -> None:
    """Add NET where it hides least."""
    choices, words = [], (label("net").upper(),)
    for order, (at, align) in enumerate(_net_places(plan)):
        box = plan.pen.text_box(words, at, 8.5, bold=True, align=align)
        room = grown(box, NET_CLEAR * plan.unit)
        own = order * 1.0 + _untidy(plan, room, CLEAR - NET_CLEAR) + (IN_AREA if _in_area(plan, room) else 0.0)
        choices.append(((at, align), room, own))
    (at, align), room, _ = best(plan.space, choices, "net")
    box = grown(room, -NET_CLEAR * plan.unit)
    plan.draw(
        None,
        "court words",
        Layer.WORDS,
        Pen.lines,
        words,
        at,
        8.5,
        "soft",
        part="net",
        bold=True,
        align=align,
        cased=_cased(plan, box),
    )
    plan.space.take(grown(box, 1.4 * plan.unit), owner="court words")


def _in_area(plan: Plan, box: Bounds) -> bool:
    return any(taken.cost == AREA and overlap(box, taken.box) > 0 for taken in plan.space.near_boxes(box))


IN_AREA: Final = 12.0
"""What it costs NET to stand in an area, whose name it would seem to be."""

NET_CLEAR: Final = 1.0
"""How far NET keeps from lines and marks, in u."""


def _net_places(plan: Plan) -> list[tuple[Point, Align]]:
    """Return the places of NET, the dearest first: beyond the right post, above its end, beyond the left, in the alley."""
    u = plan.unit
    ends = sorted(plan.page.to_page((sign * plan.ground.net.ends_x, 0.0)) for sign in (-1, 1))
    if plan.page.across:
        low, high = sorted(ends, key=lambda end: end[1])
        return [
            ((low[0], low[1] - 8 * u), "middle"),
            ((high[0], high[1] + 8 * u), "middle"),
            ((low[0] + 3.5 * u, low[1] + 4 * u), "left"),
            ((low[0] - 3.5 * u, low[1] + 4 * u), "right"),
            ((low[0], low[1] - 20 * u), "middle"),
            ((high[0], high[1] + 20 * u), "middle"),
            ((high[0] + 3.5 * u, high[1] - 4 * u), "left"),
            ((high[0] - 3.5 * u, high[1] - 4 * u), "right"),
        ]
    left, right = ends
    alley = ((left[0] + (-plan.ground.singles)) / 2, left[1])
    return [
        ((right[0] + 4 * u, right[1]), "left"),
        ((right[0] + 2 * u, right[1] + 7.5 * u), "right"),
        ((right[0] + 8 * u, right[1] + 7.5 * u), "right"),
        ((right[0] + 11 * u, right[1] + 5.5 * u), "right"),
        ((left[0] - 4 * u, left[1]), "right"),
        (alley, "middle"),
        ((right[0] + 11 * u, right[1] - 5.5 * u), "right"),
        ((right[0] + 2 * u, right[1] - 7.5 * u), "right"),
        ((left[0] - 11 * u, left[1] + 5.5 * u), "left"),
        ((left[0] - 11 * u, left[1] - 5.5 * u), "left"),
        ((left[0] - 2 * u, left[1] + 7.5 * u), "left"),
        ((left[0] - 2 * u, left[1] - 7.5 * u), "left"),
        ((right[0] + 2 * u, right[1] + 15 * u), "right"),
        ((right[0] + 2 * u, right[1] - 15 * u), "right"),
    ]
