from xml.etree import ElementTree as ET

import pytest

from designer.drawing.svg import svg
from designer.drawing.themes import THEMES, theme
from designer.drawing.words import text_width

SPACE = "{http://www.w3.org/2000/svg}"


def parsed(text):
    return ET.fromstring(text)


def test_a_reader_hears_title_and_description_and_no_mark_up_of_theirs_is_obeyed(drawing):
    text = svg(
        drawing.of("wide-start"), theme("paper"), 600, title='<b> & "wide"', description="a\x00b\ud800 </desc>\ufffe"
    )
    root = parsed(text)
    assert root.get("role") == "img"
    assert root.findtext(f"{SPACE}title") == '<b> & "wide"'
    assert root.findtext(f"{SPACE}desc") == "ab </desc>"


def test_its_size_is_the_width_asked_for_and_its_shape_the_pictures(drawing):
    picture = drawing.of("wide-start")
    root = parsed(svg(picture, theme("paper"), 600))
    left, low, right, high = picture.extent
    assert float(root.get("width")) == 600
    assert float(root.get("height")) == pytest.approx(600 * (high - low) / (right - left), abs=0.01)


def test_no_letter_is_smaller_than_a_viewer_takes(drawing, drill_name):
    sizes = [
        float(word.get("font-size"))
        for word in parsed(svg(drawing.of(drill_name), theme("paper"), 600)).iter(f"{SPACE}text")
    ]
    assert min(sizes) > 1


def test_all_words_of_the_picture_are_live_text(drawing):
    words = {word.text for word in parsed(svg(drawing.of("wide-start"), theme("paper"), 600)).iter(f"{SPACE}text")}
    assert {"YOU", "NET", "deuce", "ad", "waits", "open", "2"} <= words


def test_words_keep_their_width_where_a_machine_has_another_face(drawing):
    """SVG 1.1, 10.5: textLength. The face on paper is the oracle: NET must end where it ends there."""
    (net,) = [
        word
        for word in parsed(svg(drawing.of("wide-start"), theme("paper"), 600)).iter(f"{SPACE}text")
        if word.text == "NET"
    ]
    size = float(net.get("font-size"))
    assert float(net.get("textLength")) == pytest.approx(text_width("NET", size, bold=True), rel=0.001)


@pytest.mark.parametrize("name", THEMES)
def test_it_is_small_and_holds_nothing_without_meaning(drawing, name):
    text = svg(drawing.of("short-approach"), theme(name), 600)
    assert len(text) < 40_000
    assert "nan" not in text
    assert "-0 " not in text
    assert "None" not in text


def test_the_same_picture_gives_the_same_text(drawing):
    assert svg(drawing.of("hoop-red"), theme("dark"), 400) == svg(drawing.of("hoop-red"), theme("dark"), 400)
