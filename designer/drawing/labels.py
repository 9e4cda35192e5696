"""The words on the picture: names, values, "waits", NET, YOU, deuce and ad."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Final

from designer.drawing.geometry import contains, grown, inside_box, overlap, rectangle
from designer.drawing.pen import Pen
from designer.drawing.placing import AREA, COURT, FORBIDDEN, best
from designer.drawing.plan import Label, Plan
from designer.drawing.primitives import Align, Bounds, Layer, Path, Point, Primitive
from designer.drawing.shot_marks import Flight
from designer.drawing.text_blocks import Block, blocks

SHARE: Final = re.compile(r"^\s*\d{1,3}\s*%\s*$")
TIP_STROKES: Final = frozenset({"lob", "drop shot", "volley", "smash", "slice", "half-volley"})


Place = tuple[Block, Point, Align, str]
"""A block, where it stands, by which end, and in what way: "inside", "around" or "outside"."""

Choice = tuple[Place, Bounds, float]


@dataclass(frozen=True, slots=True)
class Standing:
    """Where a label stands: its place and box, its leader, whether it needs casing, and what that costs."""

    label: Label
    place: Place
    box: Bounds
    lead: tuple[Point, Point] | None
    cased: bool
    cost: float


def label_marks(plan: Plan, court: Bounds) -> dict[tuple[str, str], list[Bounds]]:
    """Add the wanted words; return the boxes that lie inside an area, by its (id, part)."""
    free: dict[tuple[str, str], list[Bounds]] = {}
    for standing in _solved(plan, court):
        label = standing.label
        block, at, align, where = standing.place
        plan.draw(
            label.id,
            label.kind,
            Layer.WORDS,
            _drawn,
            label,
            block,
            at,
            align,
            standing.lead,
            part=label.part,
            cased=standing.cased,
        )
        if where == "inside" and label.id is not None:
            part = "copy" if label.part.endswith("copy") else ""
            free.setdefault((label.id, part), []).append(grown(standing.box, 1.6 * plan.unit))
    return free


def _solved(plan: Plan, court: Bounds) -> list[Standing]:
    """Return where the labels stand, in their own order.

    They are placed one after another. Where one then covers something, a patient picture is tried again with that
    one first, until none does or nothing gets better.
    """
    order = list(plan.labels)
    found = _one_by_one(plan, order, court)
    for _ in range(RETRIES if plan.patient else 0):
        badly = [standing.label for standing in found if standing.cost >= COVERS]
        if not badly:
            break
        _release(plan, found)
        order = [*badly, *(label for label in order if label not in badly)]
        again = _one_by_one(plan, order, court)
        if sum(standing.cost for standing in again) >= sum(standing.cost for standing in found):
            _release(plan, again)
            for standing in found:
                _take(plan, standing)
            break
        found = again
    number = {id(label): place for place, label in enumerate(plan.labels)}
    return sorted(found, key=lambda standing: number[id(standing.label)])


RETRIES: Final = 4
COVERS: Final = FORBIDDEN / 4
"""A label that costs this much lies over a head, a bounce, a person, a digit or other words."""


def _one_by_one(plan: Plan, labels: Iterable[Label], court: Bounds) -> list[Standing]:
    found = []
    for label in labels:
        place, box, cost = _placed(plan, label, court)
        cased = not plan.space.is_bare(grown(box, plan.unit))
        standing = Standing(label, place, box, _leader(plan, box, label, place[3]), cased, cost)
        _take(plan, standing)
        found.append(standing)
    return found


def _take(plan: Plan, standing: Standing) -> None:
    plan.space.take(grown(standing.box, 1.4 * plan.unit), owner=f"{standing.label.id} words")


def _release(plan: Plan, standings: Iterable[Standing]) -> None:
    plan.space.release({f"{standing.label.id} words" for standing in standings})


def _drawn(
    pen: Pen, label: Label, block: Block, at: Point, align: Align, lead: tuple[Point, Point] | None, *, cased: bool
) -> Iterator[Primitive]:
    if lead is not None:
        yield Path(lead, pen.style(label.colour, 0.5))
    yield from pen.lines(block.lines, at, label.size, label.colour, bold=label.bold, align=align, cased=cased)


def _placed(plan: Plan, label: Label, court: Bounds) -> tuple[Place, Bounds, float]:
    """Return where a label stands, its box, and what that costs."""
    # The name of an area may stand in it; all else keeps off what it names.
    owner = label.id or "" if label.outline else ""

    def lead(place: Place, box: Bounds) -> float:
        ends = _leader(plan, box, label, place[3])
        cost = 0.0 if ends is None else plan.space.cost_of_leader(*ends, label.id or "")
        # Words outside their own area must not stand in another one, whose name they would seem to be.
        strange = label.outline and place[3] != "inside" and _in_other_area(plan, box, label)
        cost += STRANGE if strange or _over_the_net(plan, box, label) else 0.0
        cost += ASTRIDE if label.outline and place[3] != "inside" and overlap(box, label.box) > 0 else 0.0
        if label.outline and place[3] != "inside" and _nearer_to_another(plan, box, label):
            cost += MISTAKEN if ends is None else NEIGHBOUR
        cost += CROSSES if label.outside and place[3] != "inside" and _over_a_line(plan, box) else 0.0
        inside = within_box(grown(plan.space.extent, -CLEAR * plan.unit), box)
        return cost + (0.0 if inside else 8.0)

    found: tuple[Place, Bounds, float] | None = None
    for least, tier in _tiers(plan, label, court):
        if found is not None and found[2] <= least:
            break
        choices = list(tier)
        if choices:
            found = best(plan.space, choices, owner, lead, found)
    if found is None:
        raise ValueError(f"nothing to place {label.text!r} by")
    return found


def _tiers(plan: Plan, label: Label, court: Bounds) -> Iterator[tuple[float, Iterable[Choice]]]:
    """Yield (the least that any of them costs, choices), from the near and usual places to the whole sheet."""
    every = list(enumerate(blocks(label.text, label.size, plan.unit, label.bold)))
    own = 5.0 if label.outline else 0.0
    if label.outline:
        yield 0.0, (choice for number, block in every for choice in _inside(plan, label, block, number * 1.2))
    if label.outside:
        yield 3.0, (choice for number, block in every for choice in _outside(plan, label, block, court, number * 1.2))
    for gap, dear in GAPS:
        yield (
            own + dear,
            (
                choice
                for number, block in every
                for choice in _around(plan, label, block, gap, own + dear + number * 1.2)
            ),
        )
    yield (ASIDE if plan.patient else FORBIDDEN / 8), _anywhere(plan, label)


ASIDE: Final = 24.0
"""From this cost on a patient picture looks for a place farther off: the words would lie over a path."""

STRANGE: Final = 120.0
"""What it costs to stand in the area of another name, or on the other side of the net."""


ASTRIDE: Final = 9.0
"""What it costs to stand half in and half out of the area that is named."""

NEIGHBOUR: Final = 30.0
"""What it costs to stand nearer to another area than to one's own, with a leader to one's own."""

MISTAKEN: Final = 150.0
"""The same without a leader: the name would be read as the other's."""

CROSSES: Final = 5.0
"""What it costs to lie across a line in play."""

CLEAR: Final = 1.2
"""How far words keep from the fence, in u."""


def within_box(outer: Bounds, inner: Bounds) -> bool:
    """Whether ``inner`` lies inside ``outer``."""
    return outer[0] <= inner[0] and outer[1] <= inner[1] and inner[2] <= outer[2] and inner[3] <= outer[3]


def _nearer_to_another(plan: Plan, box: Bounds, label: Label) -> bool:
    middle = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)
    at = (*middle, *middle)
    own = _apart(at, label.box)
    near = plan.space.near_boxes(grown(at, own))
    return any(one.cost == AREA and one.owner != label.id and _apart(at, one.box) < own - 1e-9 for one in near)


def _over_a_line(plan: Plan, box: Bounds) -> bool:
    near = plan.space.near_pieces(box)
    return any(piece.owner == COURT and inside_box(piece.start, piece.end, box) > 0 for piece in near)


def _over_the_net(plan: Plan, box: Bounds, label: Label) -> bool:
    """Whether words reach over the net, although what they name lies on one side of it."""
    if plan.page.across:
        low, high, begin, end = label.box[0], label.box[2], box[0], box[2]
    else:
        low, high, begin, end = label.box[1], label.box[3], box[1], box[3]
    slack = plan.unit
    return (low >= -slack and begin < -slack) or (high <= slack and end > slack)


def _in_other_area(plan: Plan, box: Bounds, label: Label) -> bool:
    near = plan.space.near_boxes(box)
    return any(taken.cost == AREA and taken.owner != label.id and overlap(box, taken.box) > 0 for taken in near)


GAPS: Final = ((2.6, 0.0), (7.0, 2.0), (13.0, 5.0), (20.0, 9.0))
"""How far beside what they name words are tried, in u, and what each costs."""

INSIDE: Final = (
    (0.5, 0.5),
    (0.5, 1.0),
    (0.5, 0.0),
    (0.0, 1.0),
    (1.0, 1.0),
    (0.0, 0.0),
    (1.0, 0.0),
    (0.0, 0.5),
    (1.0, 0.5),
    (0.5, 0.75),
    (0.5, 0.25),
)
"""Where inside an area words are tried, as shares of the room that is left, the best first."""


def _inside(plan: Plan, label: Label, block: Block, more: float) -> Iterator[Choice]:
    left, low, right, high = grown(label.box, -2.8 * plan.unit)
    spare = (right - left - block.width, high - low - block.height)
    if spare[0] < 0 or spare[1] < 0:
        return
    for order, (across, along) in enumerate(INSIDE):
        at = (left + block.width / 2 + spare[0] * across, low + block.below + spare[1] * along)
        box = block.box(at, "middle")
        if len(label.outline) == 4 or all(contains(label.outline, corner) for corner in rectangle(box)):
            yield (block, at, "middle", "inside"), box, more + order * 0.3


def _around(plan: Plan, label: Label, block: Block, gap: float, own: float) -> Iterator[Choice]:
    """Yield places ``gap`` u beside, above and below what is named."""
    left, low, right, high = label.box
    edge = grown(plan.space.extent, -CLEAR * plan.unit)
    off = gap * plan.unit
    for share in (0.5, 0.0, 1.0):
        # Level with the middle, or flush with one edge of what is named.
        x = left + block.width / 2 + (right - left - block.width) * share
        y = low + block.below + (high - low - block.height) * share
        # Above and below, words slide along so that they stay on the sheet.
        x = max(min(x, edge[2] - block.width / 2), edge[0] + block.width / 2)
        cost = own + (0.0 if share == 0.5 else 0.8)
        places: tuple[tuple[Point, Align], ...] = (
            ((right + off, y), "left"),
            ((left - off, y), "right"),
            ((x, low - off - block.above), "middle"),
            ((x, high + off + block.below), "middle"),
        )
        for order, (at, align) in enumerate(places):
            yield (block, at, align, "around"), block.box(at, align), cost + order * 0.1


OUTSIDE: Final = ((0.5, 0.0, 3.0), (0.5, 0.6, 1.5), (0.3, 0.4, 3.0), (0.7, 0.4, 3.0), (0.1, 1.0, 3.0), (0.9, 1.0, 3.0))
"""Where outside the sidelines words are tried: the share of what they name, the cost, and the u beyond the line."""


def _outside(plan: Plan, label: Label, block: Block, court: Bounds, more: float) -> Iterator[Choice]:
    """Yield places outside the court's outermost lines at the height of what is named."""
    left, low, right, high = label.box
    for share, dear, gap in OUTSIDE:
        off = gap * plan.unit
        y, x = low + (high - low) * share, left + (right - left) * share
        places: tuple[tuple[Point, Align, float], ...]
        if plan.page.across:
            places = (
                ((x, court[3] + off + block.below), "middle", court[3] - high),
                ((x, court[1] - off - block.above), "middle", low - court[1]),
            )
        else:
            places = (
                ((court[2] + off, y), "left", court[2] - right),
                ((court[0] - off, y), "right", left - court[0]),
            )
        for at, align, away in places:
            cost = more + 3.0 + dear + max(0.0, away) / plan.unit * 0.12
            yield (block, at, align, "outside"), block.box(at, align), cost


def _anywhere(plan: Plan, label: Label) -> Iterator[Choice]:
    """Yield places on a grid over the whole sheet, for words that find none near what they name."""
    left, low, right, high = plan.space.extent
    step = 11 * plan.unit
    for number, block in enumerate(blocks(label.text, label.size, plan.unit, label.bold)):
        for column in range(1, int((right - left) / step)):
            for row in range(1, int((high - low) / step)):
                at = (left + column * step, low + row * step)
                box = block.box(at, "middle")
                own = 14.0 + number + _apart(box, label.box) / plan.unit * 0.5
                yield (block, at, "middle", "around"), box, own


def _apart(one: Bounds, other: Bounds) -> float:
    across = max(0.0, one[0] - other[2], other[0] - one[2])
    along = max(0.0, one[1] - other[3], other[1] - one[3])
    return math.hypot(across, along)


def _leader(plan: Plan, box: Bounds, label: Label, where: str) -> tuple[Point, Point] | None:
    """Return the two ends of the thin line from words to what they name, None where they stand close enough."""
    far = 20.0 if where == "outside" else 9.0
    if where == "inside" or not (label.must_lead or (label.leads and _apart(box, label.box) > far * plan.unit)):
        return None
    target = _within(label.box, plan.unit)
    middle = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)
    end = (min(max(middle[0], target[0]), target[2]), min(max(middle[1], target[1]), target[3]))
    reach = 1.2 * plan.unit
    start = (min(max(end[0], box[0] - reach), box[2] + reach), min(max(end[1], box[1] - reach), box[3] + reach))
    return (start, end) if math.dist(start, end) > plan.unit else None


LEADER_INSIDE: Final = (4.0, 8.0)
"""How far within the edges of what it leads to a leader ends, in u: on an edge it would not be seen. What is no larger
than the second is led to at its edge."""


def _within(box: Bounds, unit: float) -> Bounds:
    """Return the part of ``box`` that a leader ends at."""
    most, small = LEADER_INSIDE[0] * unit, LEADER_INSIDE[1] * unit
    across, along = (min(most, max(0.0, side - small) / 3) for side in (box[2] - box[0], box[3] - box[1]))
    return (box[0] + across, box[1] + along, box[2] - across, box[3] - along)


def tip_labels(plan: Plan, drawn: tuple[Flight, ...]) -> None:
    """Ask for a word at the tip of each branch of a fan, and for the labels of other balls at their digits."""
    for flight in drawn:
        shot = flight.step.shot
        text = shot.label or (shot.stroke if flight.kind == "fan" and shot.stroke in TIP_STROKES else "") or ""
        if not text:
            continue
        tip, reach = flight.route.at(flight.route.length), 2.4 * plan.unit
        share = SHARE.match(text) is not None
        if not (flight.kind == "fan" or flight.step.alternatives or share):
            digit = next(m for m in plan.marks if m.id == flight.id and m.kind == "step digit")
            box = digit.bounds
        else:
            box = (tip[0] - reach, tip[1] - reach, tip[0] + reach, tip[1] + reach)
        kind = "share" if share else flight.kind
        plan.labels.append(
            Label(
                flight.id,
                kind,
                "words",
                text.strip().replace(" ", "\N{NO-BREAK SPACE}") if share else text.strip(),
                9.0,
                "ball",
                box,
                bold=share,
                outside=False,
                leads=False,
            )
        )
