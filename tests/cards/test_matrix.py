"""Every paper, for everybody, in colour and grey, upright and across: measured from the PDF by another program's reader."""

from __future__ import annotations

import ctypes
import functools
import itertools
import os
import re

import pypdfium2
import pytest

from designer.bundle import sample
from designer.cards.card import make_card
from designer.cards.papers import PAPERS
from designer.drill.brand import Brand
from designer.drill.drill import Drill
from designer.drill.setting import main_setting
from designer.wording.card import CardWords, card_words
from designer.wording.turns import ROUNDS_KEY
from tests.cards.test_papers import MM, SHEETS, walked

SAMPLES = sorted(path.name.removesuffix(".drill.json") for path in sample().glob("*.drill.json"))
READERS = ("player", "coach", "stand-in")
EDGE = 4 * MM
"""What most printers leave white. Common practice, no source."""
FLOOR = 7.99
"""No letter is smaller than 8 pt: the trade's floor for labels."""
BODY = 9.49
"""No sentence is set smaller than 9.5 pt: the trade's size for a card in the hand."""

EVERY = tuple(itertools.product(PAPERS, READERS, (False, True), (False, True)))


def by_day(number: int) -> tuple[str, ...]:
    """Return the samples tried for the case of this number: one by day, all by night."""
    if os.environ.get("HYPOTHESIS_PROFILE") == "thorough":
        return tuple(SAMPLES)
    # Every paper for every reader by day, each once or twice: across and grey take turns.
    paper, reader, across, grey = EVERY[number]
    turn = list(PAPERS).index(paper) + READERS.index(reader)
    return (SAMPLES[number % len(SAMPLES)],) if (across + 2 * grey) == turn % 4 else ()


@functools.cache
def load(name: str) -> Drill:
    return Drill.model_validate_json(sample(f"{name}.drill.json").read_bytes())


@functools.cache
def academy() -> tuple[Brand, str]:
    return Brand.model_validate_json(sample("brand.json").read_bytes()), sample("alder-quay.svg").read_text("utf-8")


def letters(page: pypdfium2.PdfPage) -> list[tuple[float, str]]:
    """Return (size in points, words) of every piece of text."""
    found = []
    filtered = [pypdfium2.raw.FPDF_PAGEOBJ_TEXT]
    for thing in page.get_objects(filter=filtered, textpage=page.get_textpage()):
        size = ctypes.c_float()
        pypdfium2.raw.FPDFTextObj_GetFontSize(thing, size)
        found.append((size.value * thing.get_matrix().d, thing.extract().strip()))
    return found


def squeezed(text: str) -> str:
    return re.sub(r"\s+", "", text)


@pytest.mark.parametrize("number", range(len(EVERY)))
def test_a_card_is_whole(number: int) -> None:
    paper, reader, across, grey = EVERY[number]
    wide, high = (length * MM for length in SHEETS[paper])
    for name in by_day(number):
        drill = load(name)
        at = main_setting(drill)
        brand, logo = academy()
        card = make_card(drill, at, paper=paper, reader=reader, across=across, grey=grey, brand=brand, logo=logo)
        assert card.notices == ()
        walked(card.pdf, (high, wide) if across else (wide, high), EDGE)
        words = card_words(drill, at, reader)
        with pypdfium2.PdfDocument(card.pdf) as document:
            printed = squeezed("".join(page.get_textpage().get_text_range() for page in document))
            sizes = [pair for page in document for pair in letters(page)]
            alone = [found for page in document for found in lonely(page, words)]
            for page in document:
                foot = squeezed(page.get_textpage().get_text_range())
                assert f"edition{drill.edition}" in foot, "a stale side is seen"
                assert squeezed(drill.code) in foot
                inside(page)
        assert alone == []
        assert min(sizes)[0] >= FLOOR, min(sizes)
        every_word(words, printed)
        said = squeezed(" ".join(sentence.text for section in words.sections for sentence in section.sentences))
        body = [size for size, text in sizes if len(text) > 20 and squeezed(text) in said]
        assert min(body) >= BODY


def lonely(page: pypdfium2.PdfPage, words: CardWords) -> list[str]:
    """Return the last words that stand alone on their line although the word before could go with them.

    Each line is one piece of text; a word that comes with them fits where both are no wider than the line above.
    """
    said = [" ".join(sentence.text.split()) for section in words.sections for sentence in section.sentences]
    lines = []
    for thing in page.get_objects(filter=[pypdfium2.raw.FPDF_PAGEOBJ_TEXT], textpage=page.get_textpage()):
        left, _, right, _ = thing.get_bounds()
        lines.append((thing.extract().strip(), right - left))
    found = []
    for (above, wide), (last, narrow) in itertools.pairwise(lines):
        behind, _, moved = above.rpartition(" ")
        ends = any(text.endswith(f"{above} {last}") for text in said)
        share = wide * (len(moved) + 1.5) / max(len(above), 1)
        if ends and " " not in last and len(behind) > len(last) and narrow + share < wide:
            found.append(f"{above} / {last}")
    return found


def inside(page: pypdfium2.PdfPage) -> None:
    """Assert that nothing drawn leaves the page."""
    width, height = page.get_size()
    for thing in page.get_objects():
        left, low, right, high = thing.get_bounds()
        assert left > -0.5, thing.type
        assert low > -0.5, thing.type
        assert right < width + 0.5, thing.type
        assert high < height + 0.5, thing.type


def every_word(words: object, printed: str) -> None:
    """Assert that all sections are there, rules and finish among them, word by word."""
    for section in words.sections:
        assert squeezed(section.heading) in printed
        for sentence in section.sentences:
            if sentence.key.endswith(ROUNDS_KEY):
                assert squeezed("Partners by the letter they began with.") in printed, "a table says it"
                continue
            for word in sentence.text.split():
                # A progression's name stands in a column of its own, without its full stop.
                assert word.rstrip(".") in printed, f"{word!r} of {sentence.text!r}"
