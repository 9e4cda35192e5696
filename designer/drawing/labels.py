"""The words on the picture: names, values, "waits", NET, YOU, deuce and ad."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from typing import Final

from designer.drawing.geometry import contains, grown, overlap
from designer.drawing.placing import Space, best
from designer.drawing.plan import Label, Plan
from designer.drawing.primitives import Align, Bounds, Layer, Path, Point
from designer.drawing.shot_marks import Flight
from designer.drawing.words import shown, text_width, wrap

SHARE: Final = re.compile(r"^\s*\d{1,3}\s*%\s*$")
TIP_STROKES: Final = frozenset({"lob", "drop shot", "volley", "smash", "slice", "half-volley"})
Choice = tuple[tuple[tuple[str, ...], Point, Align, str], Bounds, float]


def label_marks(plan: Plan, court: Bounds) -> dict[tuple[str, str], list[Bounds]]:
    """Add the wanted words, the dearest to place first; return the boxes that lie inside an area, by its (id, part)."""
    free: dict[tuple[str, str], list[Bounds]] = {}
    for label in plan.labels:
        choices = list(_choices(plan, label, court))
        if not choices:
            continue
        (lines, at, align, where), box, _ = best(plan.space, choices, label.id or "")
        pen = plan.pen
        shapes = list(pen.lines(lines, at, label.size, label.colour, bold=label.bold, align=align))
        if label.must_lead or (label.leads and where != "inside" and _apart(box, label.box) > 9 * plan.unit):
            shapes = [*_leader(plan, box, label), *shapes]
        plan.add(label.id, label.kind, Layer.WORDS, shapes, label.part)
        plan.space.take(grown(box, 0.5 * plan.unit), owner=f"{label.id} words")
        if where == "inside" and label.id is not None:
            part = "copy" if label.part.endswith("copy") else ""
            free.setdefault((label.id, part), []).append(grown(box, 1.6 * plan.unit))
    return free


def _broken(text: str, size: float, *, bold: bool) -> tuple[tuple[str, ...], ...]:
    """Return ``text`` on one line and on more, each way once."""
    text = shown(text.replace("\n", " "))
    whole = text_width(text, size, bold)
    longest = max((text_width(word, size, bold) for word in text.split()), default=whole)
    found: dict[tuple[str, ...], None] = {}
    for count in (1, 2, 3, 4):
        width = max(longest, whole / count)
        for extra in (1.0, 1.15, 1.35):
            lines = wrap(text, size, width * extra + 1e-6, bold)
            if len(lines) == count:
                found.setdefault(lines)
                break
    found.setdefault(wrap(text, size, longest + 1e-6, bold))
    return tuple(found)


def _choices(plan: Plan, label: Label, court: Bounds) -> Iterator[Choice]:
    pen = plan.pen
    for number, lines in enumerate(_broken(label.text, label.size, bold=label.bold)):
        box = pen.text_box(lines, (0.0, 0.0), label.size, bold=label.bold)
        width, height = box[2] - box[0], box[3] - box[1]
        more = number * 1.2
        if label.outline:
            yield from _inside(plan, label, lines, (width, height), more)
        yield from _around(plan, label, lines, (width, height), more)
        if label.outside:
            yield from _outside(plan, label, lines, (width, height), court, more)


def _made(plan: Plan, label: Label, lines: tuple[str, ...], at: Point, align: Align, where: str, own: float) -> Choice:
    box = plan.pen.text_box(lines, at, label.size, bold=label.bold, align=align)
    return ((lines, at, align, where), box, own)


def _inside(
    plan: Plan, label: Label, lines: tuple[str, ...], size: tuple[float, float], more: float
) -> Iterator[Choice]:
    margin = 2.2 * plan.unit
    left, low, right, high = grown(label.box, -margin)
    spare = (right - left - size[0], high - low - size[1])
    if spare[0] < 0 or spare[1] < 0:
        return
    shares = (
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
    for order, (across, along) in enumerate(shares):
        at = (left + size[0] / 2 + spare[0] * across, low + size[1] / 2 + spare[1] * along)
        choice = _made(plan, label, lines, at, "middle", "inside", more + order * 0.3)
        box = choice[1]
        corners = ((box[0], box[1]), (box[2], box[1]), (box[2], box[3]), (box[0], box[3]))
        if all(contains(label.outline, corner) for corner in corners):
            yield choice


def _around(
    plan: Plan, label: Label, lines: tuple[str, ...], size: tuple[float, float], more: float
) -> Iterator[Choice]:
    """Yield places beside, above and below what is named; farther off ones cost more."""
    left, low, right, high = label.box
    middle = ((left + right) / 2, (low + high) / 2)
    own = more + (5.0 if label.outline else 0.0)
    for gap, dear in ((2.6, 0.0), (7.0, 2.0), (13.0, 5.0), (20.0, 9.0)):
        off = gap * plan.unit
        for share in (0.5, 0.0, 1.0):
            y = low + (high - low) * share if high - low > size[1] else middle[1] + (share - 0.5) * size[1]
            x = left + (right - left) * share if right - left > size[0] else middle[0] + (share - 0.5) * size[0]
            cost = own + dear + (0.0 if share == 0.5 else 0.8)
            yield _made(plan, label, lines, (right + off, y), "left", "around", cost)
            yield _made(plan, label, lines, (left - off, y), "right", "around", cost + 0.1)
            yield _made(plan, label, lines, (x, low - off - size[1] / 2), "middle", "around", cost + 0.2)
            yield _made(plan, label, lines, (x, high + off + size[1] / 2), "middle", "around", cost + 0.3)


def _outside(
    plan: Plan, label: Label, lines: tuple[str, ...], size: tuple[float, float], court: Bounds, more: float
) -> Iterator[Choice]:
    """Yield places outside the court's outermost lines at the height of what is named."""
    left, low, right, high = label.box
    off = 3.0 * plan.unit
    across = plan.page.across
    for share, dear in ((0.5, 0.0), (0.3, 0.4), (0.7, 0.4), (0.1, 1.0), (0.9, 1.0)):
        y, x = low + (high - low) * share, left + (right - left) * share
        for sign in (1, -1):
            if across:
                edge = court[3] if sign > 0 else court[1]
                away = (edge - high) if sign > 0 else (low - edge)
                at, align = (x, edge + sign * (off + size[1] / 2)), "middle"
            else:
                edge = court[2] if sign > 0 else court[0]
                away = (edge - right) if sign > 0 else (left - edge)
                at, align = (edge + sign * off, y), "left" if sign > 0 else "right"
            cost = more + 3.0 + dear + max(0.0, away) / plan.unit * 0.12
            yield _made(
                plan,
                label,
                lines,
                at,
                "left" if align == "left" else "right" if align == "right" else "middle",
                "outside",
                cost,
            )


def _apart(one: Bounds, other: Bounds) -> float:
    across = max(0.0, one[0] - other[2], other[0] - one[2])
    along = max(0.0, one[1] - other[3], other[1] - one[3])
    return math.hypot(across, along)


def _leader(plan: Plan, box: Bounds, label: Label) -> Iterator[Path]:
    """Yield the thin line from words to what they name."""
    target = label.box
    middle = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)
    end = (min(max(middle[0], target[0]), target[2]), min(max(middle[1], target[1]), target[3]))
    start = (min(max(end[0], box[0] - 1.2 * plan.unit), box[2] + 1.2 * plan.unit), min(max(end[1], box[1]), box[3]))
    if math.dist(start, end) > plan.unit:
        yield Path((start, end), plan.pen.style(label.colour, 0.5))


def tip_labels(plan: Plan, drawn: tuple[Flight, ...]) -> None:
    """Ask for a word at the tip of each branch of a fan, and for the labels of other balls at their digits."""
    for flight in drawn:
        shot = flight.step.shot
        text = shot.label or (shot.stroke if flight.kind == "fan" and shot.stroke in TIP_STROKES else "") or ""
        if not text:
            continue
        tip, reach = flight.route.at(flight.route.length), 2.4 * plan.unit
        share = SHARE.match(text) is not None
        if flight.kind != "fan" and not share:
            digit = next(m for m in plan.marks if m.id == flight.id and m.kind == "step digit")
            box = digit.bounds
        else:
            box = (tip[0] - reach, tip[1] - reach, tip[0] + reach, tip[1] + reach)
        kind = "share" if share else flight.kind
        plan.labels.append(
            Label(flight.id, kind, "words", text.strip(), 9.0, "ball", box, bold=share, outside=False, leads=False)
        )


def court_words(plan: Plan) -> None:
    """Add YOU, NET, deuce and ad. They come last, so they give way; deuce and ad note their usual places before."""
    _you(plan)
    _net(plan)
    for text, at, align in side_words(plan):
        _side_word(plan, text, at, align)


def side_words(plan: Plan) -> Iterator[tuple[str, Point, Align]]:
    """Yield deuce and ad of both ends with their usual places beside the service boxes."""
    ground, u = plan.ground, plan.unit
    y = (ground.service_line if ground.service_line is not None else ground.baseline * 0.55) / 2
    for end in (-1, 1):
        for side in (-1, 1):
            text = "deuce" if side * end < 0 else "ad"
            edge = plan.page.to_page((side * ground.outer, end * y))
            beyond = plan.page.to_page((side * (ground.outer + 1.0), end * y))
            out = (round(beyond[0] - edge[0]), round(beyond[1] - edge[1]))
            off = 3.0 * u if out[0] else 7.0 * u
            align: Align = "left" if out[0] > 0 else "right" if out[0] < 0 else "middle"
            yield text, (edge[0] + out[0] * off, edge[1] + out[1] * off), align


def reserve_side_words(plan: Plan) -> None:
    """Note the usual places of deuce and ad, so that other words go elsewhere where they can."""
    for text, at, align in side_words(plan):
        plan.space.take(plan.pen.text_box((text,), at, 8.5, align=align), 12.0, "side words")


def _side_word(plan: Plan, text: str, at: Point, align: Align) -> None:
    steps = (0.0, 9.0, -9.0, 18.0, -18.0, 27.0, -27.0, 36.0, -36.0)
    along = (1.0, 0.0) if plan.page.across else (0.0, 1.0)
    choices = []
    for order, step in enumerate(steps):
        place = (at[0] + along[0] * step * plan.unit, at[1] + along[1] * step * plan.unit)
        choices.append((place, plan.pen.text_box((text,), place, 8.5, align=align), order * 1.0))
    place, box, _ = best(plan.space, choices, "side words")
    plan.add(
        None,
        "court words",
        Layer.WORDS,
        plan.pen.lines((text,), place, 8.5, "soft", align=align),
        f"{text} {at[0] > 0} {at[1] > 0}",
    )
    plan.space.take(box, owner="court words")


def _you(plan: Plan) -> None:
    """Add YOU behind the person at the reader's end, else behind the middle of that baseline."""
    u, ground = plan.unit, plan.ground
    beyond = max(3.55, 0.91 + 27 * u)
    most = ground.run_back - 7 * u
    foot = -1.0 if not plan.page.turned else 1.0
    across = _reader_across(plan)
    choices = []
    for order, (aside, more) in enumerate(
        ((0.0, 0.0), (0.0, 12.0), (0.0, -5.0), (28.0, 0.0), (-28.0, 0.0), (50.0, 0.0), (-50.0, 0.0))
    ):
        reach = ground.baseline + min(beyond + more * u, most)
        at = plan.page.to_page((across + aside * u * -foot, foot * reach))
        choices.append((at, plan.pen.text_box(("YOU",), at, 10.0, bold=True), order * 1.0))
    at, box, _ = best(plan.space, choices)
    plan.add(None, "court words", Layer.WORDS, plan.pen.lines(("YOU",), at, 10.0, "ink", bold=True), "you")
    plan.space.take(box, owner="court words")


def _reader_across(plan: Plan) -> float:
    """Return the x of who reads: the person called you, else the only one who plays at that end, else the middle."""
    from designer.drill.places import locate

    near = 1.0 if plan.page.turned else -1.0
    found = []
    for spot in plan.setting.spots.values():
        point = locate(plan.setting, spot.place)
        if point is None or spot.task != "plays" or point[1] * near <= plan.ground.baseline * 0.6:
            continue
        if spot.job == plan.you:
            return point[0]
        found.append(point[0])
    return found[0] if len(found) == 1 else 0.0


def _net(plan: Plan) -> None:
    """Add NET: beyond the right post, above its end, beyond the left, or on the net in the left alley."""
    u, pen = plan.unit, plan.pen
    ends = sorted(plan.page.to_page((sign * plan.ground.net.ends_x, 0.0)) for sign in (-1, 1))
    choices = []
    if plan.page.across:
        low, high = sorted(ends, key=lambda end: end[1])
        places: list[tuple[Point, Align]] = [
            ((low[0], low[1] - 8 * u), "middle"),
            ((high[0], high[1] + 8 * u), "middle"),
            ((low[0] + 3.5 * u, low[1] + 4 * u), "left"),
            ((low[0] - 3.5 * u, low[1] + 4 * u), "right"),
        ]
    else:
        left, right = ends
        alley = ((left[0] + (-plan.ground.singles)) / 2, left[1])
        places = [
            ((right[0] + 4 * u, right[1]), "left"),
            ((right[0] + 2 * u, right[1] + 7.5 * u), "right"),
            ((right[0] + 8 * u, right[1] + 7.5 * u), "right"),
            ((left[0] - 4 * u, left[1]), "right"),
            (alley, "middle"),
            ((right[0] + 2 * u, right[1] - 7.5 * u), "right"),
            ((left[0] - 2 * u, left[1] + 7.5 * u), "left"),
        ]
    for order, (at, align) in enumerate(places):
        box = pen.text_box(("NET",), at, 8.5, bold=True, align=align)
        choices.append(((at, align), box, order * 1.0))
    (at, align), box, _ = best(plan.space, choices, "net")
    plan.add(None, "court words", Layer.WORDS, pen.lines(("NET",), at, 8.5, "soft", bold=True, align=align), "net")
    plan.space.take(box, owner="court words")


def covers(space: Space, box: Bounds) -> bool:
    """Whether ``box`` lies over anything that must not be covered."""
    return any(overlap(box, taken.box) > 0 and taken.cost >= 1000 for taken in space.near_boxes(box))
