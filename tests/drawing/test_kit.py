import itertools
import math

import pytest

from designer.drawing import kit
from designer.drawing.geometry import ahead
from designer.drawing.pen import Pen
from designer.drawing.primitives import Ellipse, Path, Strokes, bounds_of
from designer.drill.base import place
from designer.drill.items import Barrier, HeightCord, Hoop, Obstacle

PEN = Pen(0.1)


def inked(shapes):
    return [shape for shape in shapes if not (shape.style.stroke or shape.style.fill or "").startswith("casing")]


def test_a_hoop_has_its_true_size_but_is_never_too_small_to_be_seen():
    def outer(across):
        return max(shape.radii[0] * 2 + shape.style.width for shape in inked(kit.hoop(PEN, (0.0, 0.0), across)))

    assert outer(1.5) == pytest.approx(1.5)
    assert outer(0.6) == pytest.approx(1.0)  # 10 u


@pytest.mark.parametrize("degrees", [0, 90, 200])
def test_a_machine_opens_towards_its_throw(degrees):
    facing = (math.sin(math.radians(degrees)), math.cos(math.radians(degrees)))
    wedge, mouth = (
        shape for shape in inked(s for s in kit.ball_machine(PEN, (0.0, 0.0), facing, "M") if isinstance(s, Path))
    )
    back, front = math.dist(wedge.points[0], wedge.points[3]), math.dist(wedge.points[1], wedge.points[2])
    assert back == pytest.approx(1.56)
    assert front == pytest.approx(0.84)
    middle = tuple((a + b) / 2 for a, b in zip(*mouth.points, strict=True))
    assert middle == pytest.approx(ahead((0.0, 0.0), facing, 0.92))


def test_an_obstacle_has_its_true_outline():
    corners = ((0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (0.0, 1.0))
    (outline,) = inked(kit.obstacle(PEN, corners))
    assert outline.points == corners
    assert outline.style.fill == "obstacle"


def test_rungs_stand_five_u_apart_along_a_barrier():
    (rungs,) = (shape for shape in kit.barrier(PEN, ((0.0, 0.0), (4.0, 0.0))) if isinstance(shape, Strokes))
    places = [start[0] for start, _ in rungs.lines]
    assert [b - a for a, b in itertools.pairwise(places)] == [pytest.approx(0.5)] * (len(places) - 1)


def test_what_is_drawn_beside_its_symbol_in_words(drawing, pair):
    from designer.drawing.primitives import Words

    made = drawing.made(
        *pair,
        Barrier(kind="barrier", id="barrier", corners=((-2.0, 3.0), (2.0, 3.0)), height=0.9),
        Obstacle(
            kind="obstacle", id="bench", corners=((6.5, -3.0), (8.0, -3.0), (8.0, -2.0), (6.5, -2.0)), name="bench"
        ),
        HeightCord(kind="height cord", id="cord", height=1.5),
        Hoop(kind="hoop", id="hoop", place=place(1.0, 8.0)),
    )
    texts = {
        mark.id: shape.text
        for mark in made.marks
        if mark.id and not mark.id.startswith("spot")
        for shape in mark.primitives
        if isinstance(shape, Words)
    }
    assert texts == {"barrier": "0.9\u00a0m", "bench": "bench", "cord": "1.5 m"}


@pytest.mark.parametrize("across", [False, True])
def test_the_cord_lies_beside_the_net_at_its_far_side(drawing, pair, across):
    made = drawing.made(*pair, HeightCord(kind="height cord", id="cord", height=1.5), across=across)
    cord = next(mark for mark in made.marks if mark.id == "cord" and not mark.part)
    ends = next(s.points for s in inked(cord.primitives) if isinstance(s, Path) and s.style.dash)
    off = made.page.to_court(ends[0])[1], made.page.to_court(ends[1])[1]
    assert off == pytest.approx((4.2 * drawing.unit,) * 2)


def test_a_disc_is_six_u_across():
    ring = next(s for s in inked(kit.disc(PEN, (0.0, 0.0))) if isinstance(s, Ellipse))
    assert bounds_of([ring]) == pytest.approx((-0.3, -0.3, 0.3, 0.3))
