import math

import pytest

from designer.drawing import people
from designer.drawing.geometry import overlap
from designer.drawing.pen import Pen
from designer.drawing.primitives import Ellipse
from designer.drill.base import place
from designer.drill.items import Basket
from designer.drill.people import Job, Spot

PEN = Pen(1.0)
UP = (0.0, 1.0)


def racket(hand, facing=UP):
    shapes = [shape for shape in people.person(PEN, (0.0, 0.0), facing, "A", hand=hand) if isinstance(shape, Ellipse)]
    return next(shape for shape in shapes if shape.radii[0] != shape.radii[1] and shape.style.stroke == "ink").centre


@pytest.mark.parametrize("degrees", [0, 40, 90, 180, 275])
def test_the_racket_is_on_the_hands_side_of_where_one_faces(degrees):
    facing = (math.sin(math.radians(degrees)), math.cos(math.radians(degrees)))
    for hand, sign in (("right", 1), ("left", -1)):
        x, y = racket(hand, facing)
        # Positive to the right of the facing.
        assert (x * facing[1] - y * facing[0]) * sign > 5


def test_the_far_player_faces_the_net_and_a_given_facing_is_kept(drawing):
    made = drawing.made(
        Spot(id="far", job="A", place=place(0.0, 12.0)),
        Spot(id="side", job="B", place=place(-6.0, 2.0), facing=90),
    )
    discs = {
        mark.id: next(s.centre for s in mark.primitives if isinstance(s, Ellipse) and s.style.width > drawing.unit)
        for mark in made.marks
        if mark.kind == "person"
    }
    back = (people.RADIUS + people.NOSE) * drawing.unit
    assert discs["far"] == pytest.approx((0.0, 12.0 + back))
    assert discs["side"] == pytest.approx((-6.0 - back, 2.0))


def test_who_reads_is_full_who_waits_has_no_nose_and_the_coach_a_second_ring(drawing):
    jobs = (Job(letter="A"), Job(letter="B"), Job(letter="C", by="coach"), Job(letter="D", by="machine"))
    made = drawing.made(
        Spot(id="a", job="A", place=place(0.0, -12.0)),
        Spot(id="b", job="B", place=place(7.0, 0.0), task="waits"),
        Spot(id="c", job="C", place=place(3.0, -4.0)),
        Spot(id="d", job="D", place=place(0.0, 10.0)),
        jobs=jobs,
        you="A",
    )
    kinds = {mark.id: mark.kind for mark in made.marks if mark.id and not mark.part}
    assert kinds == {"a": "person", "b": "waits", "c": "coach", "d": "ball machine"}
    rings = {
        mark.id: [
            s
            for s in mark.primitives
            if isinstance(s, Ellipse) and s.style.stroke == "ink" and s.radii[0] == s.radii[1]
        ]
        for mark in made.marks
        if mark.id and not mark.part
    }
    assert [ring.style.fill for ring in rings["a"]] == ["ink"]
    assert len(rings["c"]) == 2
    assert [bool(ring.style.dash) for ring in rings["b"]] == [True]


def test_who_waits_stands_clear_of_everybody_else_and_a_basket_of_who_plays(drawing):
    """Two at one bench, one beside a player, balls behind the feeder's feet: each is still seen."""
    made = drawing.made(
        Spot(id="a", job="A", place=place(5.0, 1.5)),
        Spot(id="b", job="B", place=place(7.0, -3.0), task="waits"),
        Spot(id="c", job="C", place=place(7.0, -3.4), task="collects"),
        Spot(id="d", job="D", place=place(5.3, 2.4), task="waits"),
        Basket(kind="basket", id="basket", place=place(5.0, 3.0)),
    )
    boxes = {mark.id: mark.bounds for mark in made.marks if mark.id and mark.kind in ("waits", "basket")}
    disc = next(
        s
        for mark in made.marks
        if mark.id == "a"
        for s in mark.primitives
        if isinstance(s, Ellipse) and s.radii[0] == s.radii[1]
    )
    assert set(boxes) == {"b", "c", "d", "basket"}
    assert overlap(boxes["b"], boxes["c"]) == 0
    for id in ("d", "basket"):
        middle = ((boxes[id][0] + boxes[id][2]) / 2, (boxes[id][1] + boxes[id][3]) / 2)
        assert math.dist(middle, disc.centre) > disc.radii[0] + 5 * drawing.unit
