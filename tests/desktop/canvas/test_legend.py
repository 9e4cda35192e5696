import pytest

from designer.desktop.canvas.legend import with_legend
from designer.drawing.picture import picture
from designer.drawing.themes import theme
from designer.drill.drill import Drill, Progression

UNIT = 1.42 / 23
LIGHT = theme("light")


def legended(hand_or_drill, at, *, across):
    return with_legend(picture(hand_or_drill, at, unit=UNIT, theme=LIGHT, across=across), LIGHT)


@pytest.mark.parametrize("across", [False, True])
def test_the_legend_names_what_is_drawn_and_lies_beside_the_court_inside_the_extent(hand, across):
    plain = picture(hand.document.drill, hand.view.at, unit=UNIT, theme=LIGHT, across=across)
    made = legended(hand.document.drill, hand.view.at, across=across)
    (legend,) = [mark for mark in made.marks if mark.kind == "legend"]
    words = {shape.text for shape in legend.primitives if hasattr(shape, "text")}
    assert {entry.words for entry in plain.legend} <= words
    left, low, right, high = legend.bounds
    if across:
        assert high < plain.extent[1]
    else:
        assert left > plain.extent[2]
    assert made.extent[0] <= left
    assert made.extent[1] <= low
    assert right <= made.extent[2]
    assert high <= made.extent[3]


@pytest.mark.parametrize("across", [False, True])
def test_an_empty_court_takes_the_same_room_so_that_nothing_jumps_at_the_first_cone(hand, across):
    blank = Drill(id="d", progressions=(Progression(id="p"),))
    empty, full = (legended(drill, hand.view.at, across=across) for drill in (blank, hand.document.drill))
    assert empty.extent == pytest.approx(full.extent, abs=0.5)
