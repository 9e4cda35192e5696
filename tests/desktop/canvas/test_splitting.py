import pytest
from shapely.geometry import LineString
from shapely.geometry import Polygon as Outline
from shapely.ops import split as cut_by_shapely

from designer.court.standards import ground
from designer.desktop.canvas.splitting import halves, split
from designer.drill.drill import Court
from designer.drill.items import Area, Ellipse, Polygon, Rectangle
from designer.drill.places import corners_of


def area(form, corners, **more):
    shapes = {"rectangle": Rectangle, "ellipse": Ellipse, "polygon": Polygon}
    return Area(kind="area", id="zone", shape=shapes[form](form=form, corners=corners), **more)


BOX = area("rectangle", ((-4.1148, 0.0), (4.1148, 11.8872)))


@pytest.mark.parametrize(
    ("start", "end"),
    [((-1.0, -1.0), (2.0, 13.0)), ((-5.0, 3.0), (5.0, 9.0)), ((0.0, 0.0), (0.0, 1.0)), ((4.2, 2.0), (-4.2, 2.5))],
)
def test_both_shares_are_those_that_another_library_finds(start, end):
    found = halves(BOX, start, end)
    whole = Outline(corners_of(BOX))
    (x0, y0), (x1, y1) = start, end
    run_on = LineString([(x0 - 100 * (x1 - x0), y0 - 100 * (y1 - y0)), (x1 + 100 * (x1 - x0), y1 + 100 * (y1 - y0))])
    # shapely 2, shapely.ops.split: a general geometry library, cut by a line that runs on beyond the area.
    theirs = sorted(part.area / whole.area for part in cut_by_shapely(whole, run_on).geoms)
    assert sorted(found.shares) == pytest.approx(theirs, abs=1e-4)


def test_a_line_along_the_middle_leaves_two_rectangles_of_half_each():
    found = halves(BOX, (0.0, 2.0), (0.0, 5.0))
    assert found.shares == (0.5, 0.5)
    assert [words for _, words in found.tags(ground(Court()))] == [
        "50\N{NO-BREAK SPACE}%\n50\N{NO-BREAK SPACE}% of its half"
    ] * 2


@pytest.mark.parametrize(
    ("start", "end"),
    [
        ((-6.0, 0.0), (-6.0, 5.0)),  # beside it
        ((4.1148, 0.0), (4.1148, 5.0)),  # along its edge
        ((0.0, 0.0), (0.0, 0.0)),  # no line
    ],
)
def test_a_line_that_parts_nothing_finds_nothing(start, end):
    assert halves(BOX, start, end) is None


def test_a_line_that_would_leave_three_pieces_is_refused():
    comb = area(
        "polygon", ((0.0, 0.0), (6.0, 0.0), (6.0, 4.0), (4.0, 4.0), (4.0, 1.0), (2.0, 1.0), (2.0, 4.0), (0.0, 4.0))
    )
    assert halves(comb, (-1.0, 3.0), (7.0, 3.0)) is None
    assert halves(comb, (3.0, -1.0), (3.0, 5.0)) is not None


def test_a_round_area_is_halved_through_its_middle():
    disc = area("ellipse", ((-2.0, 4.0), (2.0, 8.0)))
    assert halves(disc, (-3.0, 6.0), (3.0, 6.5)).shares == pytest.approx((0.47, 0.53), abs=0.1)
    assert halves(disc, (-3.0, 5.5), (3.0, 6.5)).shares == pytest.approx((0.5, 0.5), abs=0.01)


def test_the_larger_half_keeps_the_rules_and_the_name(hand):
    zone = hand.setting.items["zone"].changed(name="deep", marked="painted")
    drill = split(hand.document.drill, hand.view.at, zone, halves(zone, (-3.0, 5.0), (-3.0, 12.0)), "other")
    hand.document.perform("Split", drill)
    kept, new = hand.setting.items["zone"], hand.setting.items["other"]
    assert (kept.name, kept.shape.form, kept.shape.corners) == ("deep", "rectangle", ((-3.0, 6.0), (0.0, 11.0)))
    assert (new.name, new.shape.corners) == ("deep 2", ((-4.0, 6.0), (-3.0, 11.0)))
    assert kept.marked is None, "the new side is painted nowhere"
