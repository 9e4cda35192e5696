from __future__ import annotations

import pytest

from designer.cards.imposing import grid
from designer.cards.papers import LARGE_PRINT, PAPERS, POSTERS
from designer.desktop.papers import CHOICES, NAMES, parts

FIGURES = {"two": 2, "four": 4}


def test_the_window_offers_every_paper_every_poster_and_large_print_under_their_own_names():
    plain = {name: words for name, words in CHOICES if parts(name) == (name, False, None)}
    assert set(plain) == {*PAPERS, *POSTERS}
    assert all(plain[name] == paper.title for name, paper in PAPERS.items())
    assert {parts(name)[0] for name in NAMES if parts(name)[1]} == set(LARGE_PRINT)


@pytest.mark.parametrize(("name", "words"), [(name, words) for name, words in CHOICES if " on " in name])
def test_as_many_cards_lie_on_a_sheet_as_the_words_say(name: str, words: str):
    paper, _, sheet = parts(name)
    lies = grid((PAPERS[paper].width, PAPERS[paper].height), sheet)
    assert lies.count == FIGURES[words.rpartition(", ")[2].partition(" ")[0]]
