import math

import pytest
from shapely.geometry import LineString, Point, Polygon, box

from designer.drawing import areas
from designer.drawing.geometry import round_points
from designer.drawing.pen import Pen
from designer.drawing.primitives import Dots, Path, Strokes

PEN = Pen(1.0)
SQUARE = ((0.0, 0.0), (40.0, 0.0), (40.0, 30.0), (0.0, 30.0))
BENT = ((0.0, 0.0), (40.0, 0.0), (40.0, 30.0), (20.0, 10.0), (0.0, 30.0))


def hatched(look, outline=SQUARE, **options):
    return [shape for shape in areas.inside(PEN, outline, look, **options) if isinstance(shape, Strokes | Dots)]


@pytest.mark.parametrize("look", areas.COLOURS)
@pytest.mark.parametrize("outline", [SQUARE, BENT, round_points((20.0, 15.0), (20.0, 15.0))])
def test_the_inside_stays_inside(look, outline):
    whole = Polygon(outline).buffer(0.6)
    for shape in hatched(look, outline):
        if isinstance(shape, Dots):
            assert all(whole.contains(Point(centre)) for centre in shape.centres)
        else:
            assert all(whole.contains(LineString(line)) for line in shape.lines)


@pytest.mark.parametrize("look", areas.COLOURS)
def test_the_inside_keeps_out_of_words(look):
    words = (10.0, 10.0, 30.0, 20.0)
    free = box(*words).buffer(-0.01)
    shapes = hatched(look, free=(words,))
    assert shapes
    for shape in shapes:
        if isinstance(shape, Dots):
            assert not any(free.contains(Point(centre)) for centre in shape.centres)
        else:
            assert not any(free.intersects(LineString(line)) for line in shape.lines)


@pytest.mark.parametrize("look", areas.COLOURS)
def test_a_shape_too_narrow_for_a_hatch_has_none(look):
    assert hatched(look, ((0.0, 0.0), (7.9, 0.0), (7.9, 50.0), (0.0, 50.0))) == []
    assert hatched(look, ((0.0, 0.0), (8.1, 0.0), (8.1, 50.0), (0.0, 50.0)))


def test_the_dots_of_a_rule_area_lie_apart_by_their_pitch():
    (dots,) = hatched("rule")
    nearest = min(math.dist(one, other) for one in dots.centres for other in dots.centres if one != other)
    assert nearest == pytest.approx(4.6, abs=0.02)
    # A triangular grid has one point for each pitch squared times root three halves.
    assert len(dots.centres) == pytest.approx(40 * 30 / (4.6**2 * 3**0.5 / 2), rel=0.15)


def test_a_keep_out_area_has_the_heaviest_edge():
    widths = {
        look: max(s.style.width for s in areas.edge(PEN, SQUARE, look) if isinstance(s, Path))
        for look in ("target", "rule", "keep out")
    }
    assert max(widths, key=widths.get) == "keep out"


def test_the_dots_of_a_feed_areas_edge_run_all_round():
    (edge,) = areas.edge(PEN, SQUARE, "feed")
    ring = Polygon(SQUARE).exterior
    along = sorted(ring.project(Point(centre)) for centre in edge.centres)
    gaps = [later - earlier for earlier, later in zip(along, [*along[1:], ring.length], strict=True)]
    assert max(gaps) < 2.8
    assert min(gaps) > 2.2
