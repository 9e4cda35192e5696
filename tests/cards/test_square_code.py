from __future__ import annotations

import functools
import io

import pypdfium2
import pytest

from designer.bundle import sample
from designer.cards.card import make_card
from designer.cards.papers import PAPERS
from designer.cards.square_code import MODULE, QUIET, SquareCode, modules
from designer.cards.text import Typesetter, Unprintable
from designer.drill.drill import Drill
from designer.drill.setting import main_setting

ADDRESS = "https://alderquay.example/d/wide-start"
MASKS = {
    0: lambda i, j: (i + j) % 2 == 0,
    1: lambda i, j: i % 2 == 0,
    2: lambda i, j: j % 3 == 0,
    3: lambda i, j: (i + j) % 3 == 0,
    4: lambda i, j: (i // 2 + j // 3) % 2 == 0,
    5: lambda i, j: (i * j) % 2 + (i * j) % 3 == 0,
    6: lambda i, j: ((i * j) % 2 + (i * j) % 3) % 2 == 0,
    7: lambda i, j: ((i + j) % 2 + (i * j) % 3) % 2 == 0,
}
"""ISO/IEC 18004, 7.8.2: the eight mask patterns, dark where they hold. From memory; a wrong one would read no address."""
BLOCKS = {3: (17, 17), 4: (24, 24)}
"""ISO/IEC 18004, table 9: data codewords of each block at level Q, by version. From memory; checked by reading."""


def read(rows: tuple[tuple[bool, ...], ...]) -> tuple[str, str]:
    """Return (level, text) of a code of version 3 or 4 without errors, read as ISO/IEC 18004 tells a reader to."""
    size = len(rows)
    version = (size - 17) // 4
    row = [rows[8][column] for column in (0, 1, 2, 3, 4, 5, 7, 8)]
    column = [rows[place][8] for place in (7, 5, 4, 3, 2, 1, 0)]
    information = int("".join(str(int(bit)) for bit in (*row, *column)), 2) ^ 0b101010000010010
    level = {0b01: "L", 0b00: "M", 0b11: "Q", 0b10: "H"}[information >> 13]
    mask = MASKS[information >> 10 & 0b111]
    bits = [rows[i][j] != mask(i, j) for i, j in path(size)]
    words = [int("".join(str(int(bit)) for bit in bits[start : start + 8]), 2) for start in range(0, len(bits) - 7, 8)]
    lengths = BLOCKS[version]
    blocks = [
        [words[place * len(lengths) + number] for place in range(length)] for number, length in enumerate(lengths)
    ]
    stream = "".join(f"{word:08b}" for block in blocks for word in block)
    assert stream[:4] == "0100", "byte mode"
    count = int(stream[4:12], 2)
    return level, bytes(int(stream[12 + 8 * n : 20 + 8 * n], 2) for n in range(count)).decode()


def path(size: int) -> list[tuple[int, int]]:
    """Return the places of data in the order in which they are read: upwards and downwards in columns of two."""
    places, upwards = [], True
    for right in (*range(size - 1, 6, -2), 5, 3, 1):
        for i in range(size - 1, -1, -1) if upwards else range(size):
            places += [(i, j) for j in (right, right - 1) if not is_pattern(i, j, size)]
        upwards = not upwards
    return places


def is_pattern(i: int, j: int, size: int) -> bool:
    """Whether a place belongs to a finder, the format, a timing line or the one alignment pattern of these versions."""
    finder = (i < 9 and j < 9) or (i < 9 and j >= size - 8) or (i >= size - 8 and j < 9)
    return finder or 6 in (i, j) or (size - 9 <= i <= size - 5 and size - 9 <= j <= size - 5)


@pytest.mark.parametrize("address", [ADDRESS, "https://a.example/x/2"])
def test_a_reader_that_follows_the_standard_reads_the_address_at_level_q(address: str) -> None:
    """ISO/IEC 18004. (zxing-cpp 3.1.1 read the same codes from a rendered card when this was written.)"""
    assert read(modules(address)) == ("Q", address)


@functools.cache
def printed(paper: str = "a5") -> bytes:
    drill = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes())
    return make_card(drill, main_setting(drill), paper=paper, reader="coach", address=ADDRESS).pdf


def test_modules_are_half_a_millimetre_in_a_quiet_zone_with_the_address_in_words_beside_them() -> None:
    document = pypdfium2.PdfDocument(printed())
    page = document[len(document) - 1]
    _, height = page.get_size()
    bars = [
        thing.get_bounds()
        for thing in page.get_objects(filter=[pypdfium2.raw.FPDF_PAGEOBJ_PATH])
        if thing.get_bounds()[2] - thing.get_bounds()[0] == pytest.approx(len(modules(ADDRESS)) * MODULE, abs=0.01)
    ]
    ((left, _, right, top),) = bars
    scale = 8
    seen = page.render(scale=scale, grayscale=True).to_numpy().squeeze()
    count = len(modules(ADDRESS))
    for row in range(-QUIET, count + QUIET):
        for column in range(-QUIET, count + QUIET):
            x, y = left + (column + 0.5) * MODULE, height - top + (row + 0.5) * MODULE
            inside = 0 <= row < count and 0 <= column < count
            dark = inside and modules(ADDRESS)[row][column]
            assert (seen[int(y * scale), int(x * scale)] < 128) == dark, (row, column)
    text = page.get_textpage()
    search = text.search("alderquay.example")
    x, low, _, _ = text.get_charbox(search.get_next()[0])
    assert x > right + QUIET * MODULE - 0.1
    assert top - count * MODULE < low < top


def test_no_address_no_code_and_every_paper_can_have_one() -> None:
    drill = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes())
    bare = make_card(drill, main_setting(drill), reader="coach").pdf
    assert "example" not in "".join(page.get_textpage().get_text_range() for page in pypdfium2.PdfDocument(bare))
    for paper in ("a4", "3x5"):
        words = "".join(
            page.get_textpage().get_text_range() for page in pypdfium2.PdfDocument(io.BytesIO(printed(paper)))
        )
        assert ADDRESS in words.replace("\r\n", "").replace("\n", "")


@pytest.mark.parametrize("address", ["a b", "é", "x" * 121])
def test_what_is_no_address_is_refused(address: str) -> None:
    with pytest.raises(Unprintable, match="expected"):
        modules(address)


def test_a_long_address_breaks_behind_a_stroke_and_nowhere_in_a_word_that_fits() -> None:
    beside = SquareCode("alderquay.example/drills/wide-start", PAPERS["3x5"].body, Typesetter())
    lines = beside.lines(PAPERS["3x5"].inner)
    assert len(lines) > 1
    assert "".join(lines) == beside.address
    assert all(line.endswith("/") for line in lines[:-1])
    assert "".join(SquareCode("x" * 100, PAPERS["3x5"].body, Typesetter()).lines(PAPERS["3x5"].inner)) == "x" * 100
