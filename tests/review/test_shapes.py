"""Areas that enclose nothing or cross themselves, and things beyond the fence. More cases: ``tests/faults``."""

import pytest
from review.situations import AT, RALLY, A, B, drill, keys, only, spot, told

from designer.drill.base import place
from designer.drill.drill import Court
from designer.drill.items import Area, Barrier, Cone, Ellipse, Line, Obstacle, Polygon, Rectangle
from designer.drill.setting import setting_at
from designer.play.shares import shares
from designer.review.shapes import shape_checks


def area(shape, **corners):
    return Area(kind="area", id="zone", shape=shape(form=shape.__name__.lower(), **corners))


def found(*records, **values):
    return list(shape_checks(told(*RALLY, *records, **values)))


BOW = ((-4.0, 7.0), (-1.0, 11.0), (-1.0, 7.0), (-4.0, 11.0))


@pytest.mark.parametrize(
    ("item", "expected"),
    [
        (area(Rectangle, corners=((0.0, 7.0), (4.0, 11.0))), []),
        (area(Rectangle, corners=((4.0, 11.0), (0.0, 7.0))), []),
        (area(Rectangle, corners=((0.0, 7.0), (0.02, 11.0))), ["empty-area"]),
        (area(Ellipse, corners=((0.0, 7.0), (4.0, 7.0))), ["empty-area"]),
        (area(Polygon, corners=((0.0, 7.0), (4.0, 8.0), (2.0, 11.0))), []),
        (area(Polygon, corners=((0.0, 7.0), (0.0, 7.0), (0.0, 7.0))), ["empty-area"]),
        (area(Polygon, corners=BOW), ["crossing-area"]),
        (area(Polygon, corners=((0.0, 7.0), (4.0, 7.0), (1.0, 8.0), (4.0, 11.0), (0.0, 11.0))), []),  # a notch
        (Line(kind="line", id="line", corners=((1.0, 3.0), (1.0, 3.3))), []),  # a tick
        (Barrier(kind="barrier", id="barrier", corners=((1.0, -14.0), (1.0, -14.0))), ["empty-line"]),
        (Obstacle(kind="obstacle", id="post", corners=((1.0, -14.0), (1.0, -14.0))), ["empty-line"]),
    ],
)
def test_shapes(item, expected):
    assert keys(found(item)) == expected


@pytest.mark.parametrize(
    "shape",
    [
        area(Polygon, corners=BOW),
        area(Polygon, corners=((0.0, 7.0), (1.0, 8.0), (3.0, 10.0))),
        area(Ellipse, corners=((0.0, 7.0), (4.0, 7.0))),
    ],
)
def test_a_mended_area_encloses_something(shape):
    (check,) = found(shape)
    mended = check.mend(drill(*RALLY, shape))
    assert shares(told(*RALLY).ground, setting_at(mended, AT).items["zone"]).area > 0.5


def test_a_mended_bow_keeps_its_corners():
    (check,) = found(area(Polygon, corners=BOW))
    mended = setting_at(check.mend(drill(*RALLY, area(Polygon, corners=BOW))), AT).items["zone"]
    assert set(mended.shape.corners) == set(BOW)


def test_beyond_the_fence():
    cone = Cone(kind="cone", id="cone", place=place(0.0, -17.0))
    assert found(cone) == []  # 6.40 m of run-back are stated
    near = found(cone, court=Court(run_back=5.0, side_run=3.6576))
    assert only(near, "outside-fence").about == ("cone",)
    assumed = only(found(cone.changed(place=place(0.0, -17.5)), court=Court()), "outside-fence")
    assert "the club minimum is assumed" in assumed.sentence.text
    far = spot("B", 0.0, 30.0)
    assert keys(shape_checks(told(A, far, *RALLY[2:]))) == ["outside-fence"]


def test_a_thing_is_told_of_once_though_it_stands_at_both_ends():
    cone = Cone(kind="cone", id="cone", place=place(0.0, -40.0), both_ends=True)
    assert keys(found(cone)) == ["outside-fence"]


def test_two_people_in_one_place():
    assert keys(found(spot("C", 0.1, -12.8))) == ["same-place"]
    assert found(spot("C", 1.5, -12.8)) == []
    assert B.place.at != A.place.at
