import pytest


@pytest.fixture
def aiming(empty_hand):
    empty_hand.letter("Z", (2.0, -3.0))
    return empty_hand


def only(hand):
    (item,) = hand.setting.items.values()
    return item


def test_one_press_makes_the_part_under_the_pointer_an_area(aiming):
    assert aiming.bench.guide.words == "Right service box"
    assert len(aiming.bench.guide.outline) == 4
    aiming.click((2.0, -3.0))
    assert only(aiming).shape.corners == ((0.0, -6.4008), (4.1148, 0.0))
    assert only(aiming).marked == "painted"
    assert aiming.undo_text == "Add the right service box"
    assert aiming.view.tool == "select"
    assert not aiming.bench.guide.outline


def test_w_takes_another_part_there_and_the_choice_goes_along_with_the_pointer(aiming):
    for words in ("Right half", "Service boxes"):
        aiming.letter("W")
        assert aiming.bench.guide.words == words
    aiming.hover((-2.0, 3.0))
    assert aiming.bench.guide.words == "Service boxes"
    aiming.hover((-2.0, 9.0))
    assert aiming.bench.guide.words == "Right back court", "there are no service boxes here"
    said = set()
    for _ in range(12):
        aiming.letter("W", (-2.0, 11.5))
        said.add(aiming.bench.guide.words.splitlines()[0])
    assert {"Back court", "Singles court", "Depth strip at the baseline"} <= said


def test_what_no_paint_bounds_asks_to_be_marked(aiming):
    while "Depth strip" not in aiming.bench.guide.words:
        aiming.letter("W", (2.0, -11.0))
    assert aiming.bench.guide.words.splitlines()[1] == "No painted lines: mark it"
    aiming.click((2.0, -11.0))
    assert only(aiming).marked is None


def test_off_the_court_a_press_says_where_to_point(aiming):
    aiming.hover((8.0, 0.5))
    assert not aiming.bench.guide.outline
    aiming.click((8.0, 0.5))
    assert aiming.said == ["Point at a part of the court: a service box, the back court, an alley."]
    assert not aiming.setting.items


def test_w_leads_from_form_to_form_of_an_area(empty_hand):
    tools = []
    empty_hand.view.set_tool("area")
    for _ in range(3):
        empty_hand.letter("W", (2.0, -3.0))
        tools.append(empty_hand.view.tool)
    assert tools == ["round area", "polygon", "court area"]


def test_a_rectangle_is_turned_round_in_the_middle_of_its_drag(empty_hand):
    empty_hand.view.set_tool("area")
    empty_hand.pull((0.0, 0.0), (2.0, 3.0))
    empty_hand.letter("W", (2.0, 3.0))
    assert only(empty_hand).shape.form == "ellipse"
    empty_hand.release((2.0, 3.0))
    assert only(empty_hand).shape.form == "ellipse"
    assert empty_hand.undo_text == "Add a round area"
