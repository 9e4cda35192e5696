"""Marks of what stands or lies on the court."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from designer.drawing import areas, kit, lines, people
from designer.drawing.areas import Look
from designer.drawing.geometry import (
    between,
    bounds_of_points,
    grown,
    overlap,
    point_to_piece,
    rectangle,
    round_points,
    unit_vector,
)
from designer.drawing.pen import Pen
from designer.drawing.people_marks import clear_of
from designer.drawing.placing import AREA, PATH
from designer.drawing.plan import Label, Plan
from designer.drawing.primitives import Bounds, Layer, Point, bounds_of
from designer.drawing.words import shown, wrap
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
)
from designer.drill.setting import Setting
from designer.play.layout import points_of, things_placed, turned_facing
from designer.play.rally import area_roles, judged_by
from designer.wording.labels import value_for_label, words_for_label
from designer.wording.token_words import drawn_text

HOOP: Final = 0.6
"""A hoop's true diameter in metres. Common practice, no source."""

LAID: Final = frozenset({"throw-down", "chalk", "tape"})
"""What is laid along an area's sides, and is drawn there as what it is."""

SHORT: Final = 6.0
"""A marked thing shorter than this, in u, gets its name and a leader."""

LINE_KINDS: Final = {
    "painted": "painted line",
    "throw-down": "throw-down line",
    "chalk": "chalk line",
    "tape": "tape line",
    "discs": "line of discs",
    "in thought": "line in thought",
}


def item_marks(plan: Plan) -> None:
    """Add the marks of every item but the inside of areas, which waits until words have found their place."""
    looks = area_looks(plan.setting)
    for item, copy in things_placed(plan.setting):
        part = "copy" if copy else ""
        points = tuple(plan.page.to_page(point) for point in points_of(plan.setting, item, turned=copy))
        if isinstance(item, Cone | Disc | Hoop | Basket | BallMachine | Note):
            if points:
                _symbol(plan, item, points[0], part)
        elif isinstance(item, Line):
            _line(plan, item, points, part)
        elif isinstance(item, Barrier):
            _barrier(plan, item, points, part)
        elif isinstance(item, Obstacle):
            _obstacle(plan, item, points, part)
        elif isinstance(item, HeightCord):
            _cord(plan, item)
        elif isinstance(item, Area) and points:
            _note_area(plan, item, points, part, looks[item.id])


def _symbol(plan: Plan, item: Cone | Disc | Hoop | Basket | BallMachine | Note, at: Point, part: str) -> None:
    if isinstance(item, Note):
        _note(plan, item, at, part)
        return
    if isinstance(item, Cone):
        made = plan.draw(item.id, "cone", Layer.KIT, kit.cone, at, part=part)
    elif isinstance(item, Disc):
        made = plan.draw(item.id, "disc", Layer.KIT, kit.disc, at, part=part)
    elif isinstance(item, Hoop):
        made = plan.draw(item.id, "hoop", Layer.KIT, kit.hoop, at, HOOP, part=part)
    elif isinstance(item, Basket):
        reach = (people.RADIUS + 1.65) * plan.sign_pen.unit + 7.5 * plan.unit
        aside = clear_of(plan.held(at, 7.5), plan.discs, reach)  # a hidden basket is one that nobody looks for
        made = plan.draw(item.id, "basket", Layer.KIT, kit.basket, plan.held(aside, 7.5), part=part)
    else:
        towards_net = 0 if plan.page.to_court(at)[1] < 0 else 180
        facing = towards_net if item.facing is None else turned_facing(item.facing) if part else item.facing
        towards = plan.page.direction(facing)
        made = plan.draw(
            item.id, "ball machine", Layer.KIT, kit.ball_machine, plan.held(at, 9), towards, "M", part=part
        )
    plan.take(made, owner=item.id)


def _note(plan: Plan, item: Note, at: Point, part: str) -> None:
    text = wrap(shown(drawn_text(item.text)), 9.0, 80.0)
    made = plan.draw(item.id, "note", Layer.WORDS, Pen.lines, text, at, 9.0, "ink", part=part)
    plan.take(made, owner=item.id)


def _line(plan: Plan, item: Line, points: Sequence[Point], part: str) -> None:
    marked = item.marked or "in thought"
    kind = LINE_KINDS[marked]
    if item.runs_on:
        ways = tuple(running_on(plan, item, copy=bool(part)))
        for way in ways:
            plan.space.cross(way, PATH / 2, item.id + " running on")
        plan.draw(item.id, "line in thought", Layer.LINES, lines.ways_in_thought, ways, part=part)
    made = plan.draw(item.id, kind, Layer.LINES, lines.line, points, marked, part=part)
    if marked == "discs":
        places = lines.discs_along(points, item.pieces)
        plan.take(
            plan.draw(item.id, "line of discs", Layer.KIT, lines.discs, places, part=f"discs{part}"), f"{item.id} discs"
        )
    if made is None:
        return
    length = sum(math.dist(one, other) for one, other in itertools.pairwise(points))
    short = length < SHORT * plan.unit
    if short:
        plan.take(made, owner=item.id)
    else:
        plan.space.cross(points, PATH, item.id)
    name = item.name or (kind.removesuffix(" line") if short else "")
    if name:
        box = bounds_of(made.primitives)
        label = Label(item.id, kind, f"words{part}", name, 9.0, "ink", box, bold=False, must_lead=short)
        plan.labels.append(label)


def running_on(plan: Plan, item: Line, *, copy: bool) -> Iterator[tuple[Point, Point]]:
    """Yield the two ways on which a line runs on in thought: to the next painted line it meets, else to the fence."""
    corners = points_of(plan.setting, item, turned=copy)
    for end, other in ((corners[0], corners[1]), (corners[-1], corners[-2])):
        reach = _next_line(plan, end, unit_vector(other, end))
        if reach > plan.unit:
            direction = unit_vector(other, end)
            stop = (end[0] + direction[0] * reach, end[1] + direction[1] * reach)
            yield plan.page.to_page(end), plan.page.to_page(stop)


def _next_line(plan: Plan, start: Point, direction: Point) -> float:
    side, back = plan.ground.side_fence, plan.ground.back_fence
    box = ((-side, -back), (side, -back), (side, back), (-side, back))
    fences = list(zip(box, (*box[1:], box[0]), strict=True))
    painted = [line.as_tuple() for line in plan.ground.lines]
    found = [reach for piece in (*painted, *fences) if (reach := _meets(start, direction, piece)) is not None]
    return min(found, default=0.0)


def _meets(start: Point, direction: Point, piece: tuple[Point, Point]) -> float | None:
    """Return how far along ``direction`` the piece is met, None where it is not, or where the start lies on it."""
    (x0, y0), (x1, y1) = piece
    dx, dy = x1 - x0, y1 - y0
    cross = direction[0] * dy - direction[1] * dx
    if abs(cross) < 1e-9:
        return None
    along = ((x0 - start[0]) * dy - (y0 - start[1]) * dx) / cross
    share = ((x0 - start[0]) * direction[1] - (y0 - start[1]) * direction[0]) / cross
    return along if along > 0.02 and -1e-6 <= share <= 1 + 1e-6 else None


def _barrier(plan: Plan, item: Barrier, points: Sequence[Point], part: str) -> None:
    made = plan.draw(item.id, "barrier", Layer.KIT, kit.barrier, points, part=part)
    plan.space.cross(points, PATH, item.id)
    if made is not None and item.height is not None:
        text = f"{item.height:g}\N{NO-BREAK SPACE}m"
        plan.labels.append(Label(item.id, "barrier", f"words{part}", text, 9.0, "ink", made.bounds, bold=False))


def _obstacle(plan: Plan, item: Obstacle, points: Sequence[Point], part: str) -> None:
    made = plan.draw(item.id, "obstacle", Layer.KIT, kit.obstacle, points, part=part)
    plan.take(made, owner=item.id)
    if made is not None and item.name:
        plan.labels.append(Label(item.id, "obstacle", f"words{part}", item.name, 9.0, "ink", made.bounds, bold=False))


def _cord(plan: Plan, item: HeightCord) -> None:
    left, right = (plan.page.to_page((sign * plan.ground.net.ends_x, 0.0)) for sign in (-1, 1))
    far = plan.page.to_page((0.0, 1.0))
    far = far if (far[1] > 0 or far[0] > 0) else (-far[0], -far[1])
    made = plan.draw(item.id, "height cord", Layer.KIT, kit.height_cord, left, right, far)
    if made is None:
        return
    plan.space.cross((left, right), PATH, item.id)
    middle = between(left, right, 0.5)
    at = (middle[0] + far[0] * kit.CORD_ASIDE * plan.unit, middle[1] + far[1] * kit.CORD_ASIDE * plan.unit)
    text = (f"{item.height:g} m",)
    words = plan.draw(item.id, "height cord", Layer.WORDS, Pen.lines, text, at, 9.0, "ink", part="words", bold=True)
    plan.take(words, owner=item.id)


def _note_area(plan: Plan, item: Area, points: tuple[Point, ...], part: str, role: Look) -> None:
    """Note an area's space, its discs, and the words it asks for."""
    box = bounds_of_points(points)
    plan.space.take(box, AREA, item.id)
    plan.space.cross((*points, points[0]), 1.0, item.id)
    if item.marked == "discs":
        places = tuple(point for point in points if not _is_crossing(plan, point))
        plan.take(plan.draw(item.id, "disc", Layer.KIT, lines.discs, places, part=f"discs{part}"), f"{item.id} discs")
    colour = areas.COLOURS[role]
    value = value_for_label(plan.setting, item.id) if role == "target" else ""
    if value:
        plan.labels.append(
            Label(
                item.id,
                "target area",
                f"value{part}",
                value,
                10.0,
                colour,
                box,
                outline=points,
                outside=False,
                leads=False,
            )
        )
    text = words_for_label(plan.setting, item.id)
    if not text or item.id == plan.setting.in_play:
        return
    both = _with_its_copy(plan, item)
    if both is None:
        plan.labels.append(Label(item.id, f"{role} area", f"words{part}", text, 9.0, colour, box, outline=points))
    elif not part:
        corners = rectangle(both)
        plan.labels.append(Label(item.id, f"{role} area", "words", text, 9.0, colour, both, outline=corners))


def _with_its_copy(plan: Plan, item: Area) -> Bounds | None:
    """Return the box of an area and its copy where these lie side by side, as on both sides of the net: one name does for both."""
    if not item.both_ends:
        return None
    ends = (points_of(plan.setting, item, turned=turned) for turned in (False, True))
    one, other = (bounds_of_points(tuple(map(plan.page.to_page, points))) for points in ends)
    return bounds_of_points((one[:2], one[2:], other[:2], other[2:])) if overlap(grown(one, TOGETHER), other) else None


TOGETHER: Final = 0.3
"""What lies no farther apart than this, in metres, is seen as one."""


def area_looks(setting: Setting) -> dict[str, Look]:
    """Return how each area is drawn: as what it is for.

    Where rules demand something of areas, one that points alone speak of is drawn in another way, so that the two are
    told apart.
    """
    found: dict[str, Look] = dict(area_roles(setting).items())
    demanded = judged_by(replace(setting, points={}, parts={}))
    if demanded:
        paid = judged_by(setting) - demanded - {setting.in_play}
        found.update((id, "paid") for id, role in found.items() if role == "rule" and id in paid)
    return found


def area_marks(plan: Plan, free: dict[tuple[str, str], list[Bounds]]) -> None:
    """Add the areas themselves; ``free`` gives, for (id, part), the boxes of words that the hatch keeps out of."""
    looks = area_looks(plan.setting)
    for item, copy in things_placed(plan.setting):
        if not isinstance(item, Area):
            continue
        part = "copy" if copy else ""
        points = tuple(plan.page.to_page(point) for point in points_of(plan.setting, item, turned=copy))
        if not points:
            continue
        role = looks[item.id]
        boxes = free.get((item.id, part), [])
        in_play = item.id == plan.setting.in_play
        kind = f"{role} area"
        outline, round_in = points, None
        if isinstance(item.shape, Ellipse):
            left, low, right, high = bounds_of_points(points)
            round_in = (((left + right) / 2, (low + high) / 2), ((right - left) / 2, (high - low) / 2))
            outline = round_points(*round_in)
        plan.draw(item.id, kind, Layer.AREAS, areas.inside, outline, role, part=part, free=tuple(boxes), empty=in_play)
        if in_play and all(_is_crossing(plan, point) for point in points):
            continue  # the court's own lines say it
        # The edge lies over the court's lines, which would else hide most of it where the two coincide.
        if round_in is None and item.marked in LAID:
            _laid_edge(plan, item, points, role, part)
        else:
            plan.draw(item.id, kind, Layer.LINES, areas.edge, outline, role, part=f"edge{part}", round_in=round_in)


def _laid_edge(plan: Plan, item: Area, points: Sequence[Point], role: Look, part: str) -> None:
    """Add an area's edge where something is laid for it: what is laid on its free sides, its own edge on painted lines."""
    sides = list(zip(points, (*points[1:], points[0]), strict=True))
    painted = tuple(side for side in sides if _is_painted(plan, side))
    laid = tuple(side for side in sides if side not in painted)
    plan.draw(item.id, f"{role} area", Layer.LINES, areas.sides, painted, role, part=f"edge{part}")
    marked = item.marked or "chalk"
    plan.draw(item.id, LINE_KINDS[marked], Layer.LINES, lines.pieces, laid, marked, part=f"laid{part}")


def _is_crossing(plan: Plan, point: Point) -> bool:
    """Whether two painted lines meet or cross at ``point`` of the page."""
    at = plan.page.to_court(point)
    ends = [line for line in plan.ground.lines if _on_line(at, line.start, line.end)]
    upright = {abs(line.start[0] - line.end[0]) < 1e-6 for line in ends}
    return len(upright) == 2


def _is_painted(plan: Plan, side: tuple[Point, Point]) -> bool:
    """Whether one painted line runs along the whole of ``side`` of the page."""
    start, end = (plan.page.to_court(point) for point in side)
    return any(
        _on_line(start, line.start, line.end) and _on_line(end, line.start, line.end) for line in plan.ground.lines
    )


def _on_line(at: Point, start: Point, end: Point) -> bool:
    return point_to_piece(at, start, end) < 0.03
