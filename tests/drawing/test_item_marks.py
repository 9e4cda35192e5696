import pytest

from designer.bundle import sample
from designer.drawing.item_marks import area_looks
from designer.drawing.primitives import Dots, Ellipse
from designer.drill.base import place
from designer.drill.drill import Drill
from designer.drill.items import Area, Disc, Line, Rectangle
from designer.drill.items import Ellipse as Oval
from designer.drill.setting import main_setting, setting_at


def area(corners, **options):
    return Area(kind="area", id="zone", shape=Rectangle(form="rectangle", corners=corners), **options)


def discs(made):
    rings = [
        s for m in made.marks if m.kind in ("disc", "line of discs") for s in m.primitives if isinstance(s, Ellipse)
    ]
    return sorted({tuple(round(value, 4) + 0.0 for value in ring.centre) for ring in rings})


def test_a_copy_at_the_other_end_is_turned_half_round(drawing):
    made = drawing.made(Disc(kind="disc", id="mark", place=place(2.0, -9.0), both_ends=True))
    assert discs(made) == [(-2.0, 9.0), (2.0, -9.0)]


def test_discs_stand_on_the_corners_of_an_area_that_are_no_painted_crossing(drawing):
    # The far corners lie where the baseline meets the singles line and the centre mark meets the baseline.
    made = drawing.made(area(((0.0, 8.2296), (4.1148, 11.8872)), marked="discs"))
    assert discs(made) == [(0.0, 8.2296), (4.1148, 8.2296)]


def test_a_line_of_five_discs_has_five(drawing):
    made = drawing.made(Line(kind="line", id="deep", corners=((-4.0, 8.0), (4.0, 8.0)), marked="discs", pieces=5))
    assert discs(made) == [(-4.0, 8.0), (-2.0, 8.0), (0.0, 8.0), (2.0, 8.0), (4.0, 8.0)]


def test_an_area_that_nothing_speaks_of_is_a_rule_area(drawing):
    made = drawing.made(area(((0.0, 2.0), (3.0, 5.0))))
    inside = next(mark for mark in made.marks if mark.key == ("zone", "rule area", ""))
    assert any(isinstance(shape, Dots) for shape in inside.primitives)


def test_an_oval_is_drawn_as_one(drawing):
    oval = Area(kind="area", id="zone", shape=Oval(form="ellipse", corners=((0.0, 2.0), (3.0, 8.0))))
    edge = next(mark for mark in drawing.made(oval).marks if mark.part == "edge")
    (ring,) = edge.primitives
    assert ring.centre == pytest.approx((1.5, 5.0))
    assert ring.radii == pytest.approx((1.5, 3.0))


def test_what_is_of_an_unknown_kind_is_passed_over(drawing, pair):
    from designer.drill.items import Unknown

    made = drawing.made(*pair, Unknown(kind="drone", id="odd"))
    assert all(mark.id != "odd" for mark in made.marks)


def test_an_area_that_only_pays_is_drawn_in_another_way_than_one_that_demands():
    drill = Drill.model_validate_json(sample("forehand-on-eight.drill.json").read_bytes())
    looks = area_looks(setting_at(drill, main_setting(drill)))
    assert looks == {"big-a": "rule", "big-b": "rule", "small-a": "paid", "small-b": "paid"}
