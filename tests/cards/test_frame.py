import pytest

from designer.bundle import sample
from designer.cards.frame import Frame
from designer.cards.papers import PAPERS
from designer.cards.text import Typesetter
from designer.drawing.words import text_width
from designer.drill.drill import Drill
from designer.drill.setting import main_setting
from designer.wording.card import card_words


@pytest.mark.parametrize("paper", ["3x5", "5x8"])
def test_a_title_that_takes_two_lines_leaves_no_scrap_on_the_second(paper: str) -> None:
    """Lines of a heading are even: common practice, no source."""
    drill = Drill.model_validate_json(sample("volley-four.drill.json").read_bytes())
    words = card_words(drill, main_setting(drill), "player")
    frame = Frame(PAPERS[paper], words, "player", drill, None, None, Typesetter(), 2, grey=False)
    lines = frame.title_lines() if paper == "5x8" else frame.short_title(0)[1]
    first, second = (text_width(line, 1.0, bold=True) for line in lines)
    assert second > 0.7 * first
    assert " ".join(lines) == drill.title
