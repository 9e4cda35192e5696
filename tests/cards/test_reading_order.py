"""The text of a card comes out of its PDF in the order in which it is read: by another program's reader."""

from __future__ import annotations

import io
import itertools
import os
import re

import pypdf
import pytest

from designer.bundle import sample
from designer.cards.card import make_card
from designer.drill.drill import Drill
from designer.drill.setting import main_setting
from designer.wording.card import CardWords, card_words
from designer.wording.turns import ROUNDS_KEY

SAMPLES = sorted(path.name.removesuffix(".drill.json") for path in sample().glob("*.drill.json"))
CASES = [
    ("a5", "player", {}),
    ("a5", "coach", {}),
    ("a6", "player", {}),
    ("3x5", "stand-in", {"across": True}),
    ("a4", "coach", {"binder": True}),
    ("a4", "player", {"large_print": True}),
    ("half-letter", "player", {"across": True}),
]
TRIED = range(len(CASES)) if os.environ.get("HYPOTHESIS_PROFILE") == "thorough" else (0, 2, 4)


def squeezed(text: str) -> str:
    """Return ``text`` without white space and full stops: a progression's name stands without one, in a column of its own."""
    return re.sub(r"[\s.]+", "", text)


def as_extracted(pdf: bytes) -> list[str]:
    """Return the text of each page as pypdf reads it: in the order of the page's content (ISO 32000-1, 14.8.2.3.1)."""
    return [squeezed(page.extract_text()) for page in pypdf.PdfReader(io.BytesIO(pdf)).pages]


@pytest.mark.parametrize("number", TRIED)
def test_title_words_diagram_foot_and_each_section_from_its_heading_on(number: int) -> None:
    paper, reader, options = CASES[number]
    drill = Drill.model_validate_json(sample(f"{SAMPLES[(5 * number) % len(SAMPLES)]}.drill.json").read_bytes())
    words = card_words(drill, main_setting(drill), reader)
    pages = as_extracted(make_card(drill, main_setting(drill), paper=paper, reader=reader, **options).pdf)
    for page in pages:
        assert page.startswith(squeezed(drill.title))
        assert squeezed(f"edition {drill.edition}") in page[-120:], "the foot comes last"
    whole = "".join(pages)
    for section in words.sections:
        said = (sentence for sentence in section.sentences if not sentence.key.endswith(ROUNDS_KEY))
        read_in_order(whole, [sentence.text for sentence in said])
    # A player's points, swap and rules may stand under the diagram, before or after one another.
    ordered = ("start", "steps", "bounds") if reader == "player" else ("start", "steps", "rules", "points")
    played = [words.section(key) for key in ordered]
    read_in_order(whole, [sentence.text for section in played if section for sentence in section.sentences])
    one_by_one(words, pages[0])


def read_in_order(whole: str, sentences: list[str]) -> None:
    """Assert that the sentences come one after another, first words and last words of each."""
    at = -1
    for text in sentences:
        for part in (squeezed(text)[:14], squeezed(text)[-14:]):
            found = whole.find(part, max(at, 0))
            assert found >= 0, f"{text!r} is missing or comes too early"
            at = found


def one_by_one(words: CardWords, front: str) -> None:
    """Assert that no word of the diagram stands between two sentences of one section."""
    for section in words.sections:
        for one, other in itertools.pairwise(sentence.text for sentence in section.sentences):
            begin, end = front.find(squeezed(one)), front.find(squeezed(other))
            if 0 <= begin < end:
                assert "YOUNET" not in front[begin:end]
                assert front[begin + len(squeezed(one)) : end].count("deuce") == 0
