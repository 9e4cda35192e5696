import pytest

from designer.drawing.primitives import Ellipse
from designer.drill.drill import Court
from designer.drill.items import Area, Rectangle


def lines(made):
    (found,) = (mark for mark in made.marks if mark.kind == "court lines")
    widest = max(shape.style.width for shape in found.primitives)
    thick = {shape.points for shape in found.primitives if shape.style.width == widest}
    return thick, {shape.points for shape in found.primitives} - thick


def length(pieces):
    return sum(abs(x1 - x0) + abs(y1 - y0) for (x0, y0), (x1, y1) in pieces)


def test_all_paint_of_a_tennis_court_is_drawn_once(drawing):
    thick, thin = lines(drawing.made())
    # Rules of tennis, rule 1, in feet: four sidelines of 78, two baselines of 36, two service lines of 27, the centre line of
    # 42, and two centre marks of 4 in.
    feet = 4 * 78 + 2 * 36 + 2 * 27 + 42 + 2 * 4 / 12
    assert length(thick | thin) == pytest.approx(feet * 0.3048, abs=0.01)


def test_half_a_court_in_play_leaves_the_rest_thin(drawing):
    thick, thin = lines(drawing.made(in_play="right half"))
    # Each player's right half: x > 0 near, x < 0 far.
    assert all(x >= -0.07 for line in thick for x, y in line if y < -0.2)
    assert all(x <= 0.07 for line in thick for x, y in line if y > 0.2)
    assert thin


def test_an_area_can_be_what_is_in_play(drawing):
    strip = Area(
        kind="area",
        id="strip",
        shape=Rectangle(form="rectangle", corners=((-4.1148, -6.4008), (4.1148, 0.0))),
        both_ends=True,
    )
    thick, _ = lines(drawing.made(strip, in_play="strip"))
    assert max(abs(y) for line in thick for _, y in line) == pytest.approx(6.4008)


def test_a_small_court_on_a_large_one_shows_its_host_thin(drawing):
    alone = lines(drawing.made(court=Court(standard="red")))
    hosted = lines(drawing.made(court=Court(standard="red", hosted_on="tennis")))
    assert hosted[0] == alone[0]
    assert length(hosted[1]) > length(alone[1]) + 100


def test_singles_sticks_stand_inside_the_posts(drawing):
    def feet_of(supports):
        net = next(mark for mark in drawing.made(court=Court(supports=supports)).marks if mark.kind == "net")
        return sorted(shape.centre[0] for shape in net.primitives if isinstance(shape, Ellipse))

    # Rules of tennis, rule 1: posts stand 3 ft outside the doubles line, sticks 3 ft outside the singles line.
    assert feet_of("posts") == pytest.approx([-6.4008, 6.4008], abs=1e-3)
    assert feet_of("sticks") == pytest.approx([-6.4008, -5.0292, 5.0292, 6.4008], abs=1e-3)
