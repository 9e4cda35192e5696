import pytest
from shapely.geometry import LineString, Point, box
from shapely.ops import unary_union

from designer.bundle import sample
from designer.court.standards import ground
from designer.drawing.picture import picture
from designer.drawing.primitives import Path, Strokes, Words, words_bounds
from designer.drawing.themes import theme
from designer.drill.base import place
from designer.drill.conditions import Event, In, Outcome
from designer.drill.drill import Drill
from designer.drill.items import Area, Line, Note, Rectangle
from designer.drill.movement import Shot
from designer.drill.rules import Points, Rule, UseStroke
from designer.drill.setting import main_setting, setting_at


def zone(corners, name="", id="zone"):
    return Area(kind="area", id=id, name=name, shape=Rectangle(form="rectangle", corners=corners))


def said(made, id):
    return {
        mark.part: " ".join(s.text for s in mark.primitives if isinstance(s, Words))
        for mark in made.marks
        if mark.id == id and mark.layer == 13
    }


def box_of(made, id):
    return next(
        words_bounds(s)
        for mark in made.marks
        if mark.id == id and mark.layer == 13
        for s in mark.primitives
        if isinstance(s, Words)
    )


def test_a_name_that_fits_stands_inside_and_the_hatch_leaves_it_free(drawing, pair):
    made = drawing.made(*pair, zone(((-4.0, 6.5), (4.0, 11.5)), "deep"), Shot(id="s", by="A", to=place(3.6, 7.0)))
    left, low, right, high = box_of(made, "zone")
    assert -4 < left < right < 4
    assert 6.5 < low < high < 11.5
    strokes = [s for mark in made.marks if mark.id == "zone" for s in mark.primitives if isinstance(s, Strokes)]
    for start, end in (line for shape in strokes for line in shape.lines):
        for share in (0.25, 0.5, 0.75):
            x, y = start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share
            assert not (left < x < right and low + 0.2 < y < high - 0.2)


def test_a_name_too_wide_stands_outside(drawing, pair):
    made = drawing.made(*pair, zone(((0.0, 6.5), (1.0, 7.5)), "recovery corner"))
    left, low, right, high = box_of(made, "zone")
    assert right < 0 or left > 1 or low > 7.5 or high < 6.5


def test_what_a_target_pays_is_written_on_it(drawing, pair):
    hit = Event(what="landed", where=(In(area="zone", judged="bounce"),))
    paid = Points(id="pay", on=(hit,), gives=Outcome(then="points", value=2))
    made = drawing.made(*pair, zone(((-4.0, 6.5), (4.0, 11.5)), "deep"), paid)
    assert said(made, "zone") == {"value": "+2", "words": "deep"}
    assert any(mark.kind == "target area" for mark in made.marks)


def test_a_rule_area_without_a_name_says_its_rule(drawing, pair):
    rule = Rule(id="r", when=(In(area="zone", judged="bounce"),), must=UseStroke(do="use stroke", wing="forehand"))
    made = drawing.made(*pair, zone(((-4.0, -11.5), (4.0, -6.5))), rule)
    assert said(made, "zone") == {"words": "forehand"}


def test_a_tick_too_short_to_be_seen_gets_its_word_and_a_leader(drawing, pair):
    tick = Line(kind="line", id="tick", corners=((0.6858, -11.8872), (0.6858, -12.3444)), marked="chalk")
    long = Line(kind="line", id="long", corners=((-4.0, 8.0), (4.0, 8.0)), marked="chalk")
    made = drawing.made(*pair, tick, long)
    assert said(made, "tick") == {"words": "chalk"}
    assert said(made, "long") == {}
    words = next(mark for mark in made.marks if mark.id == "tick" and mark.part == "words")
    assert any(not isinstance(s, Words) and s.style.stroke == "ink" for s in words.primitives)


def test_two_balls_to_one_place_keep_their_labels_apart(drawing, pair):
    shots = [
        Shot(id=id, by="A", to=place(2.0, 9.0), label=label, stroke=stroke)
        for id, label, stroke in (("one", "pass", "drive"), ("two", "lob", "lob"))
    ]
    made = drawing.made(*pair, *shots)
    one, two = box_of(made, "one"), box_of(made, "two")
    assert one[2] <= two[0] or two[2] <= one[0] or one[3] <= two[1] or two[3] <= one[1]


def test_a_share_is_bare_and_bold_at_its_head(drawing, pair):
    made = drawing.made(*pair, Shot(id="one", by="A", to=place(2.0, 9.0), label="60 %"))
    words = next(mark for mark in made.marks if mark.kind == "share")
    (text,) = (s for s in words.primitives if isinstance(s, Words))
    assert text.bold
    assert abs(text.at[0] - 2.0) < 1.5
    assert abs(text.at[1] - 9.0) < 1.5


def test_no_text_of_a_user_breaks_the_picture(drawing, pair):
    note = Note(kind="note", id="n", place=place(0.0, 3.0), text="<b>\x00 ⇄ 100 %\n" + "x" * 3000)
    made = drawing.made(*pair, note, zone(((0.0, 6.5), (1.0, 7.5)), "\x00\n"))
    text = said(made, "n")[""]
    assert text.startswith("<b> ? 100 %")
    assert "\x00" not in text


def test_the_name_of_an_area_stands_on_its_own_side_of_the_net():
    """Words beyond the net would name something in the other half."""
    drill = Drill.model_validate_json(sample("serve-open.drill.json").read_bytes())
    setting = setting_at(drill, main_setting(drill))
    made = picture(drill, setting, unit=0.108, theme=theme("paper"), patient=True)
    names = [mark for mark in made.marks if mark.kind == "target area" and mark.part == "words"]
    assert len(names) == 3
    for mark in names:
        drawn = next(own for own in made.marks if own.id == mark.id and own.part == "edge")
        assert drawn.bounds[1] > -0.1, "all three lie in the far half"
        assert mark.bounds[1] > -0.1


def test_an_area_on_both_sides_of_the_net_is_named_once(drawing):
    assert len(said(drawing.of("volley-four", patient=True), "keep-off")) == 1
    middle = Area(
        kind="area",
        id="zone",
        name="deep",
        shape=Rectangle(form="rectangle", corners=((-4.0, 6.5), (4.0, 11.5))),
        both_ends=True,
    )
    assert len(said(drawing.made(middle, patient=True), "zone")) == 2, "one at each end has its name at each"


@pytest.mark.parametrize("points", [146, 168, 200])
def test_a_name_nearer_to_another_area_leads_well_into_its_own(drawing, points):
    """On its edge, or without one, the leader would not be seen and the name would be read as the other's."""
    made = drawing.of("serve-open", unit=17.0688 / points, patient=True)
    edges = {mark.id: box(*mark.bounds) for mark in made.marks if mark.part == "edge"}
    for mark in made.marks:
        if mark.id not in edges or mark.part != "words":
            continue
        names = unary_union([box(*words_bounds(s)) for s in mark.primitives if isinstance(s, Words)])
        nearest = min(edges, key=lambda id: edges[id].distance(names.centroid))
        leaders = [s for s in mark.primitives if isinstance(s, Path) and s.style.stroke == "target"]
        assert nearest == mark.id or len(leaders) == 1
        for leader in leaders:
            assert edges[mark.id].buffer(-2 * made.unit).contains(Point(leader.points[-1]))


def test_the_name_of_a_small_area_is_led_to_it_and_lies_over_no_line_in_play(drawing):
    made = drawing.of("hoop-red", unit=2 * ground(drawing.drill("hoop-red").court).side_fence / 157.6, patient=True)
    (mark,) = (mark for mark in made.marks if mark.kind == "feed area" and mark.part == "words")
    lines = [LineString(line.as_tuple()) for line in ground(drawing.drill("hoop-red").court).lines]
    words = [box(*words_bounds(s)) for s in mark.primitives if isinstance(s, Words)]
    assert words
    assert not any(word.intersects(line) for word in words for line in lines)
    assert any(isinstance(s, Path) and s.style.stroke == "ball" for s in mark.primitives)
