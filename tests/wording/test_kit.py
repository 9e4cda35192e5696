"""What is carried to the court, counted: the card and the court on the screen say the same number."""

from designer.court.standards import ground
from designer.desktop.canvas.measures import size_words
from designer.drill.drill import Drill, Progression
from designer.drill.edits import put
from designer.drill.items import Area, Line, Rectangle, UnknownShape
from designer.drill.setting import At
from designer.wording.kit import kit

AT = At("p-one")
BARE = Drill(id="d-own", progressions=(Progression(id="p-one"),))
CORNER = Area(
    kind="area",
    id="corner",
    shape=Rectangle(form="rectangle", corners=((0.0, 8.2296), (4.1148, 11.8872))),
    marked="throw-down",
)
"""Two of its sides are painted. The others are 13.5 ft and 12 ft long: one line every 4 ft makes 4 and 3."""
ACROSS = Line(kind="line", id="across", corners=((-4.1148, -8.2296), (4.1148, -8.2296)), marked="throw-down")
"""27 ft: 7 lines."""


def test_throw_down_lines_are_counted_by_the_sides_they_lie_on_in_the_kit_and_on_the_court() -> None:
    for thing, count in ((CORNER, 7), (ACROSS, 7), (ACROSS.changed(pieces=3), 3)):
        assert kit(put(BARE, AT, thing), AT) == (f"{count} throw-down lines",)
        assert f"{count} throw-down lines" in size_words(ground(BARE.court), thing, "metres")
    assert kit(put(put(BARE, AT, CORNER), AT, ACROSS.changed(both_ends=True)), AT) == ("21 throw-down lines",)


def test_a_line_of_discs_has_one_at_each_given_point_in_the_kit_and_on_the_court() -> None:
    discs = ACROSS.changed(marked="discs")
    assert kit(put(BARE, AT, discs), AT) == ("2 flat discs",)
    assert "2 discs" in size_words(ground(BARE.court), discs, "metres")


def test_an_area_of_a_shape_that_is_not_known_has_a_kit_all_the_same() -> None:
    gate = Area(kind="area", id="gate", shape=UnknownShape(form="gate"), marked="throw-down")
    drill = put(Drill(id="d", progressions=(Progression(id="p"),)), At("p"), gate)
    assert [words for words in kit(drill, At("p")) if "throw-down" in words]
