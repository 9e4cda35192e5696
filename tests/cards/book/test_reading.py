"""The one legend of the book has every sign that a card can carry and that is not its own word."""

from typing import get_args

import pytest
from cards.book_of_samples import drill

from designer.bundle import sample
from designer.cards.book.binding import paged
from designer.cards.book.reading import LINES, PEOPLE, SHEET, reading
from designer.cards.book.rows import Setter
from designer.cards.book.survey import page_paper
from designer.cards.text import Typesetter
from designer.drawing.legend import WORDS
from designer.drawing.picture import picture
from designer.drawing.rotation import rotation_strip
from designer.drawing.samples import kinds
from designer.drawing.themes import theme
from designer.drill.handbook import Handbook
from designer.drill.setting import addresses, main_setting
from designer.wording.facts import FactIcon
from designer.wording.sentence import LeadKind
from designer.wording.vocabulary import Vocabulary

MARKS = {kind for kind, _ in (*PEOPLE, *WORDS.items(), *LINES)}
SIGNS = {kind for kind, _ in SHEET}
THEIR_OWN_WORDS = {"court words", "obstacle", "share", "choice"}
"""Marks that are words or carry them: deuce and NET, an obstacle's name, "60 %", "or"."""
CALLED = {"court lines": "in play", "painted line": "in play", "ground": "fence", "net": "fence"}
"""What is drawn under another name than it has in the legend; the net has its word beside it, the ground its fence."""


def test_every_class_of_mark_and_every_sign_of_a_sheet_is_explained() -> None:
    drawn = set(kinds())
    for name in (file.name.removesuffix(".drill.json") for file in sample().glob("*.drill.json")):
        own = drill(name)
        for at in (main_setting(own), tuple(addresses(own))[-1]):
            drawn |= {mark.kind for mark in picture(own, at, unit=0.03, theme=theme("paper")).marks}
    assert {CALLED.get(kind, kind) for kind in drawn - THEIR_OWN_WORDS} <= MARKS
    assert set(get_args(FactIcon)) <= SIGNS
    as_marks = {"hit", "feed", "choice", "run", "recover", "open", "person", "bullet", "number"}
    assert set(get_args(LeadKind)) - as_marks <= SIGNS
    rounds = rotation_strip(drill("hoop-red"), main_setting(drill("hoop-red")), width=300, theme=theme("paper"))
    assert rounds is not None
    assert {"bar", "way", "resting"} <= SIGNS, "what is on no diagram and in no lead"


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_all_of_it_has_room_on_one_page(paper: str) -> None:
    whole = Handbook(title="X", paper=paper, own_leaves=True, sections=())
    sheet = page_paper(whole)
    blocks = tuple(reading(whole, Setter(sheet, Typesetter(), Vocabulary(), frozenset()), theme("paper")))
    assert len(list(paged(blocks, sheet))) == 1
