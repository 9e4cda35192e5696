import math

import pytest

from designer.drawing.geometry import overlap
from designer.drawing.primitives import Ellipse, Words
from designer.drill.base import place
from designer.drill.items import Line
from designer.drill.movement import Run, Shot


def marks(made, id):
    return {(mark.kind, mark.part): mark for mark in made.marks if mark.id == id}


def test_a_ball_that_may_go_anywhere_is_a_short_path_towards_the_other_end_without_a_bounce(drawing, pair):
    found = marks(drawing.made(*pair, Shot(id="one", by="A")), "one")
    assert ("ball path", "head") in found
    assert ("bounce", "") not in found
    head = found["ball path", "head"].bounds
    assert -12.9 < head[1] < head[3] < -6


def test_a_ball_taken_before_it_bounces_has_no_bounce(drawing, pair):
    found = marks(drawing.made(*pair, Shot(id="one", by="A", to=place(1.0, 6.0), bounces=0)), "one")
    assert ("bounce", "") not in found


def test_a_ball_goes_on_to_whoever_plays_it_and_nowhere_else(drawing, pair):
    first = Shot(id="one", by="A", to=place(1.0, 8.0))
    assert ("going on", "") not in marks(drawing.made(*pair, first), "one")
    answered = drawing.made(*pair, first, Shot(id="two", by="B", after="one", to=place(0.0, -8.0)))
    assert ("going on", "") in marks(answered, "one")
    # A new ball is fed; nobody plays the first one.
    fed = drawing.made(*pair, first, Shot(id="two", by="B", after="one", stroke="racket feed", to=place(0.0, -8.0)))
    assert ("going on", "") not in marks(fed, "one")


def test_a_bar_marks_a_contact_only_where_nobody_is_drawn(drawing, pair):
    ball = Shot(id="one", by="B", stroke="racket feed", to=place(3.0, -9.0))
    reply = Shot(id="two", by="A", after="one", to=place(0.0, 9.0))
    stays = drawing.made(*pair, ball, reply)
    runs = drawing.made(*pair, ball, reply, Run(id="run", by="A", during="one", to=place(4.0, -11.0)))
    assert ("contact", "") not in marks(stays, "two")
    assert ("contact", "") in marks(runs, "two")
    assert ("contact", "") not in marks(runs, "one")


@pytest.mark.parametrize(
    ("purpose", "during", "kind"),
    [
        ("recover", "one", "recovery run"),
        ("approach", "one", "run"),
        ("approach", "two", "recovery run"),
        ("reach", "two", "run"),
        (None, "one", "run"),
    ],
)
def test_a_run_after_ones_own_hit_is_dotted_and_ends_on_feet(drawing, pair, purpose, during, kind):
    made = drawing.made(
        *pair,
        Shot(id="one", by="B", stroke="racket feed", to=place(3.0, -9.0)),
        Shot(id="two", by="A", after="one", to=place(0.0, 9.0)),
        Run(id="run", by="A", during=during, to=place(-3.0, -4.0), purpose=purpose),
    )
    assert list(marks(made, "run")) == [(kind, "")]


def test_feet_stand_beside_the_tick_they_go_back_to(drawing, pair):
    tick = Line(kind="line", id="tick", corners=((0.6858, -11.8872), (0.6858, -12.3444)), marked="chalk")
    made = drawing.made(
        *pair,
        tick,
        Shot(id="one", by="A", to=place(0.0, 9.0), contact=place(4.0, -11.5)),
        Run(id="back", by="A", during="one", to=place(0.6858, -12.1), purpose="recover", via=((2.5, -11.0),)),
    )
    chalk = marks(made, "tick")["chalk line", ""].bounds
    feet = [
        s
        for s in marks(made, "back")["recovery run", ""].primitives
        if isinstance(s, Ellipse) and s.style.fill == "feet"
    ]
    for foot in feet:
        assert foot.centre[0] - foot.radii[1] > chalk[2] or foot.centre[1] - foot.radii[0] > chalk[3]
        assert math.dist(foot.centre, (0.6858, -12.1)) < 20 * drawing.unit


def test_a_path_begins_outside_the_disc_of_whoever_stands_on_its_start(drawing, pair):
    made = drawing.made(*pair, Shot(id="one", by="A", to=place(0.0, 9.0), contact=place(0.0, -13.9)))
    person = next(mark for mark in made.marks if mark.id == "spot-a")
    disc = next(s for s in person.primitives if isinstance(s, Ellipse) and s.style.width > drawing.unit)
    shaft = next(s for s in marks(made, "one")["ball path", ""].primitives if s.style.stroke == "ball")
    assert math.dist(shaft.points[0], disc.centre) >= disc.radii[0]


def test_digits_run_on_through_later_balls_of_one_start(drawing):
    made = drawing.of("wide-start")
    digits = {
        mark.id: next(s.text for s in mark.primitives if isinstance(s, Words))
        for mark in made.marks
        if mark.kind == "step digit"
    }
    assert digits == {"feed": "1", "reply": "2", "second": "3"}


def test_a_digit_stands_on_its_path(drawing, pair):
    made = drawing.made(*pair, Shot(id="one", by="A", to=place(2.0, 9.0)))
    (digit,) = (mark for mark in made.marks if mark.kind == "step digit")
    shaft = next(s for s in marks(made, "one")["ball path", ""].primitives if s.style.stroke == "ball")
    (x0, y0), (x1, y1) = shaft.points
    x, y = (digit.bounds[0] + digit.bounds[2]) / 2, (digit.bounds[1] + digit.bounds[3]) / 2
    assert abs((x - x0) * (y1 - y0) - (y - y0) * (x1 - x0)) / math.dist((x0, y0), (x1, y1)) < 0.02


def test_the_open_flag_stands_at_the_last_restricted_ball(drawing):
    made = drawing.of("wide-start")
    flag = next(mark for mark in made.marks if mark.kind == "open flag")
    assert flag.id == "second"
    assert [s.text for s in flag.primitives if isinstance(s, Words)] == ["open"]


def test_a_wide_court_has_room_for_open_from_here(drawing):
    made = drawing.of("wide-start", unit=drawing.unit / 2.5)
    flag = next(mark for mark in made.marks if mark.kind == "open flag")
    assert [s.text for s in flag.primitives if isinstance(s, Words)] == ["open from here"]


@pytest.mark.parametrize("points", [140, 157.6, 168])
def test_a_digit_does_not_hide_the_head_of_its_own_short_path(drawing, points):
    """A ball of a few steps is little more than its head; touching corners of the two boxes hide nothing."""
    made = drawing.of("hoop-red", unit=17.0688 / points, patient=True)
    digits = {mark.id: mark.bounds for mark in made.marks if mark.kind == "step digit"}
    heads = {mark.id: mark.bounds for mark in made.marks if mark.part == "head"}
    assert len(digits) == len(heads) == 2
    for id, digit in digits.items():
        assert overlap(digit, heads[id]) < 5 * made.unit**2
