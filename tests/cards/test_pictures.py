from __future__ import annotations

import pypdfium2
import pytest

from designer.cards.card import make_card
from tests.cards.test_papers import MM, SHEETS, walked
from tests.drawing.test_reach import AT, footwork, rally


def pages_of(drill: object, **options: object) -> list[str]:
    document = pypdfium2.PdfDocument(make_card(drill, AT, **options).pdf)
    return [page.get_textpage().get_text_range() for page in document]


@pytest.mark.parametrize("paper", ["a5", "a4", "3x5"])
def test_a_crowded_court_is_shown_in_frames_and_none_is_lost(paper: str) -> None:
    """Start, restricted part and open part; the floors hold on them as well."""
    drill = rally(8)
    for across in (False, True):
        card = make_card(drill, AT, paper=paper, across=across)
        wide, high = (length * MM for length in SHEETS[paper])
        walked(card.pdf, (high, wide) if across else (wide, high), 4 * MM)
        text = "\n".join(page.get_textpage().get_text_range() for page in pypdfium2.PdfDocument(card.pdf))
        for title in ("Start: ball 1", "Then: balls 2 to 5", "Open: balls 6 to 9"):
            assert text.count(title) == 1
        assert text.count("YOU") == 3
        assert "ball\r\nfeed" in text, "the legend tells of what later frames show"


def test_six_balls_share_one_court() -> None:
    assert "Start: ball 1" not in "".join(pages_of(rally(5)))


def test_half_a_court_is_shown_larger_than_a_whole_one() -> None:
    def widest(drill: object) -> float:
        page = pypdfium2.PdfDocument(make_card(drill, AT).pdf)[0]
        textpage = page.get_textpage()
        places = []
        for word in ("deuce", "ad"):
            search = textpage.search(word, match_whole_word=True)
            places.append(textpage.get_charbox(search.get_next()[0])[0])
        return abs(places[0] - places[1])

    assert widest(footwork()) > 1.15 * widest(rally(3))
    assert sum(text.count("deuce") for text in pages_of(footwork())) == 1
