import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from designer.drawing.picture import picture, thumbnail
from designer.drawing.primitives import Layer, Path, Words, words_bounds
from designer.drawing.themes import theme
from designer.drill.base import place
from designer.drill.drill import Court, Drill, Progression
from designer.drill.items import Area, Basket, Cone, Rectangle
from designer.drill.movement import Run, Shot
from designer.drill.people import Job, Spot
from designer.drill.setting import Setting


def boxes(picture, *kinds, parts=None):
    return {m.key: m.bounds for m in picture.marks if m.kind in kinds and (parts is None or m.part in parts)}


def shared(one, other):
    width = min(one[2], other[2]) - max(one[0], other[0])
    height = min(one[3], other[3]) - max(one[1], other[1])
    return width * height if width > 0 and height > 0 else 0.0


def texts(picture):
    return [shape.text for mark in picture.marks for shape in mark.primitives if isinstance(shape, Words)]


def words_of(picture):
    """Every line of text but those inside a mark's own form, with its box."""
    return [
        (mark.key, shape.text, words_bounds(shape))
        for mark in picture.marks
        for shape in mark.primitives
        if isinstance(shape, Words) and mark.layer == Layer.WORDS
    ]


def test_no_two_words_lie_over_one_another(drawing, drill_name):
    found = words_of(drawing.of(drill_name))
    for (key, text, box), (other_key, other_text, other) in itertools.combinations(found, 2):
        if key != other_key:
            # An em's box reaches over its letters: a tenth of a letter is no collision that anyone sees.
            assert shared(box, other) < 12 * drawing.unit**2, (text, other_text)


def test_no_word_lies_over_a_head_or_a_bounce(drawing, drill_name):
    made = drawing.of(drill_name)
    tips = boxes(made, "bounce", "contact") | boxes(made, "ball path", "feed", "fan", parts=("head",))
    for key, text, box in words_of(made):
        for tip, other in tips.items():
            assert shared(box, other) < 4 * drawing.unit**2, (key, text, tip)


def test_no_digit_lies_over_a_person_or_another_digit(drawing, drill_name):
    made = drawing.of(drill_name)
    digits = boxes(made, "step digit")
    for (one, box), (other, second) in itertools.combinations(digits.items(), 2):
        assert shared(box, second) < 10 * drawing.unit**2, (one, other)
    for person in (m for m in made.marks if m.kind in ("person", "coach") and not m.part):
        disc = next(
            s for s in person.primitives if not isinstance(s, Path | Words) and s.style.width > 0.8 * drawing.unit
        )
        reach = disc.radii[0]
        for key, box in digits.items():
            x, y = disc.centre
            assert shared(box, (x - reach, y - reach, x + reach, y + reach)) < 8 * drawing.unit**2, (key, person.id)


def test_everything_lies_within_what_is_shown(drawing, drill_name):
    made = drawing.of(drill_name)
    left, low, right, high = made.extent
    for mark in made.marks:
        x0, y0, x1, y1 = mark.bounds
        assert x0 >= left - 1e-9, mark.key
        assert y0 >= low - 1e-9, mark.key
        assert x1 <= right + 1e-9, mark.key
        assert y1 <= high + 1e-9, mark.key


def test_every_mark_can_be_told_apart_by_its_key(drawing, drill_name):
    keys = [mark.key for mark in drawing.of(drill_name).marks]
    assert len(keys) == len(set(keys))


def test_marks_come_in_the_order_of_their_layers(drawing, drill_name):
    layers = [mark.layer for mark in drawing.of(drill_name).marks]
    assert layers == sorted(layers)


def test_the_same_drill_gives_the_same_picture(drawing, drill_name):
    assert drawing.of(drill_name) == drawing.of(drill_name)


def test_a_picture_does_not_hang_on_the_order_of_a_file(pair):
    records = (
        *pair,
        Cone(kind="cone", id="cone-one", place=place(2.0, 4.0)),
        Cone(kind="cone", id="cone-two", place=place(-2.0, 4.0)),
        Area(kind="area", id="zone", name="zone", shape=Rectangle(form="rectangle", corners=((0.0, 6.4), (4.0, 11.0)))),
    )
    drill = Drill(id="d-own", jobs=(Job(letter="A"), Job(letter="B")), progressions=(Progression(id="p"),))
    one, other = (
        picture(drill, Setting().having(*order), unit=0.1, theme=theme("paper")) for order in (records, records[::-1])
    )
    assert set(one.marks) == set(other.marks)


def test_moving_one_cone_leaves_every_other_mark_equal(drawing, pair):
    def marks(x):
        made = drawing.made(
            *pair, Cone(kind="cone", id="far", place=place(3.0, 9.0)), Cone(kind="cone", id="it", place=place(x, 1.0))
        )
        return {mark.key: mark for mark in made.marks}

    before, after = marks(2.0), marks(2.5)
    assert {key for key in before if before[key] != after[key]} == {("it", "cone", "")}


def test_you_are_at_the_foot_net_and_both_deuce_courts_are_named(drawing, drill_name):
    for turned in (False, True):
        made = drawing.of(drill_name, turned=turned)
        found = {text: [] for text in ("YOU", "NET", "deuce", "ad")}
        for _, text, box in words_of(made):
            if text in found:
                found[text].append(((box[0] + box[2]) / 2, (box[1] + box[3]) / 2))
        assert len(found["YOU"]) == len(found["NET"]) == 1
        assert found["YOU"][0][1] < -3
        # Rules of tennis: the deuce court is the right one of whoever faces the net. Common knowledge of the game.
        assert {(x > 0, y > 0) for x, y in found["deuce"]} == {(True, False), (False, True)}
        assert {(x > 0, y > 0) for x, y in found["ad"]} == {(False, False), (True, True)}


def test_across_the_reader_is_at_the_left(drawing, drill_name):
    made = drawing.of(drill_name, across=True, unit=1.42 / 23)
    you = next(box for _, text, box in words_of(made) if text == "YOU")
    assert you[2] < -3
    assert made.extent[2] - made.extent[0] > made.extent[3] - made.extent[1]


def hatches(made):
    from designer.drawing.primitives import Strokes

    for mark in made.marks:
        if mark.kind.endswith("area"):
            for shape in mark.primitives:
                if isinstance(shape, Strokes):
                    yield from (
                        (mark.kind, math.degrees(math.atan2(y1 - y0, x1 - x0)) % 180)
                        for (x0, y0), (x1, y1) in shape.lines
                    )


@pytest.mark.parametrize(("across", "turned"), [(False, False), (True, False), (False, True), (True, True)])
def test_hatches_keep_their_angles_on_the_page(drawing, across, turned):
    angles = {kind: set() for kind in ("target area", "feed area", "keep out area")}
    for name in ("short-approach", "volley-four"):
        for kind, angle in hatches(drawing.of(name, across=across, turned=turned)):
            angles.setdefault(kind, set()).add(round(angle) % 180)
    assert angles["target area"] == {45}
    assert angles["feed area"] == {0}
    assert angles["keep out area"] == {45, 135}


def test_letters_never_turn(drawing):
    upright, laid = (drawing.of("short-approach", across=across, turned=across) for across in (False, True))
    assert sorted(" ".join(texts(upright)).split()) == sorted(" ".join(texts(laid)).split())
    # A line of words has no angle at all: it can only stand upright on its page.
    assert not hasattr(Words("A", (0.0, 0.0), 1.0, "ink"), "turn")


def test_a_nose_stands_on_the_exact_place_however_the_page_lies(drawing, pair):
    for across in (False, True):
        made = drawing.made(*pair, across=across)
        person = next(mark for mark in made.marks if mark.id == "spot-a")
        tips = [shape.points[0] for shape in person.primitives if isinstance(shape, Path) and shape.style.fill == "ink"]
        assert made.page.to_court(tips[0]) == pytest.approx((0.0, -12.8016))


def test_heads_point_at_the_bounce_and_a_contact_away_from_its_hitter_has_a_bar(drawing):
    made = drawing.of("wide-start")
    reply = {mark.kind: mark for mark in made.marks if mark.id == "reply" and not mark.part}
    head = next(mark for mark in made.marks if mark.id == "reply" and mark.part == "head")
    bounce = reply["bounce"].primitives[-1].centre
    tip = head.primitives[-1].points[0]
    assert math.dist(tip, bounce) == pytest.approx(2.7 * drawing.unit)
    assert "contact" in reply
    assert not any(mark.kind == "contact" and mark.id == "second" for mark in made.marks)


def test_a_fan_has_one_digit_and_says_or(drawing):
    made = drawing.of("short-approach")
    digits = [
        mark for mark in made.marks if mark.kind == "step digit" and mark.id in ("pass-left", "pass-right", "lob")
    ]
    assert len(digits) == 1
    assert texts(made).count("or") == 1
    assert texts(made).count("3") == 1


def test_lines_out_of_play_go_thin(drawing, pair):
    def thick(in_play):
        lines = next(mark for mark in drawing.made(*pair, in_play=in_play).marks if mark.kind == "court lines")
        widest = max(shape.style.width for shape in lines.primitives)
        return {point for shape in lines.primitives if shape.style.width == widest for point in shape.points}

    # ITF Rules of Tennis, rule 1: the doubles lines lie 18 ft from the middle, the singles lines 13 ft 6 in.
    assert max(x for x, _ in thick("singles court")) == pytest.approx(13.5 * 0.3048)
    assert max(x for x, _ in thick("doubles court")) == pytest.approx(18 * 0.3048)


def test_an_assumed_fence_is_dashed_and_a_stated_one_is_not(drawing, pair):
    def dashes(court):
        fence = next(mark for mark in drawing.made(*pair, court=court).marks if mark.kind == "fence")
        return [bool(shape.style.dash) for shape in fence.primitives]

    assert dashes(Court()) == [True] * 4
    assert dashes(Court(run_back=6.4, side_run=3.66)) == [False] * 4
    assert dashes(Court(run_back=6.4)) == [True, True, False, False]


def test_a_basket_against_the_fence_is_drawn_inside_it(drawing, pair):
    made = drawing.made(*pair, Basket(kind="basket", id="balls", place=place(0.0, 17.3736)))
    basket = next(mark for mark in made.marks if mark.kind == "basket")
    assert basket.bounds[3] <= 17.3736


def test_what_stands_outside_the_fence_is_shown(drawing, pair):
    made = drawing.made(*pair, Cone(kind="cone", id="out", place=place(12.0, 0.0)))
    assert made.extent[2] > 12.0


def test_a_circle_of_shots_leaves_the_rest_of_the_picture(drawing, pair):
    made = drawing.made(*pair, Shot(id="one", by="A", after="two"), Shot(id="two", by="B", after="one"))
    assert {mark.kind for mark in made.marks} >= {"person", "net"}
    assert not any(mark.kind == "ball path" for mark in made.marks)


def test_the_legend_names_every_class_once_and_only_those_drawn(drawing, drill_name):
    made = drawing.of(drill_name)
    drawn = {mark.kind for mark in made.marks}
    named = [entry.kind for entry in made.legend]
    assert set(named) <= drawn
    assert len(named) == len(set(named))
    assert drawn & {"ball path", "feed", "fan", "bounce", "run", "recovery run", "basket", "cone", "disc"} <= set(named)


def test_a_thumbnail_has_no_words(drawing):
    from designer.drill.setting import main_setting

    drill = drawing.drill("wide-start")
    made = thumbnail(drill, main_setting(drill), theme=theme("paper"))
    outside_marks = [mark.kind for mark in made.marks if mark.layer in (Layer.WORDS, Layer.DIGITS)]
    assert outside_marks == []


coordinates = st.tuples(st.floats(-20, 20), st.floats(-20, 20))


@given(st.lists(coordinates, min_size=1, max_size=6), st.floats(0.01, 1.0), st.booleans(), st.booleans())
def test_any_places_give_a_picture_of_finite_marks(places, unit, across, turned):
    spots = [Spot(id=f"s{n}", job="ABCDEF"[n], place=place(*at)) for n, at in enumerate(places)]
    shots = [Shot(id=f"h{n}", by="A", after=f"h{n - 1}" if n else None, to=place(*at)) for n, at in enumerate(places)]
    runs = [Run(id="r", by="A", during="h0", to=place(*places[0]), via=(places[-1],))]
    drill = Drill(id="d-any", jobs=tuple(Job(letter=s.job) for s in spots), progressions=(Progression(id="p"),))
    made = picture(
        drill, Setting().having(*spots, *shots, *runs), unit=unit, theme=theme("paper"), across=across, turned=turned
    )
    assert all(math.isfinite(value) for mark in made.marks for value in mark.bounds)


def test_signs_are_larger_on_a_poster_and_marks_are_not(drawing):
    """Letters and digits have to be read from two metres; heads and dots as large would hide one another."""
    plain, large = (drawing.of("wide-start", names=False, signs=signs) for signs in (1.0, 1.5))

    def letters(made):
        return [w.size for mark in made.marks for w in mark.primitives if isinstance(w, Words)]

    def widths(made, kind):
        return sorted(mark.bounds[2] - mark.bounds[0] for mark in made.marks if mark.kind == kind)

    assert letters(large) == pytest.approx([size * 1.5 for size in letters(plain)])
    assert widths(large, "step digit") == pytest.approx([width * 1.5 for width in widths(plain, "step digit")])
    assert widths(large, "bounce") == pytest.approx(widths(plain, "bounce"))
