from __future__ import annotations

import io

import pypdfium2
import pytest
from hypothesis import given
from hypothesis import strategies as st
from reportlab.pdfgen.canvas import Canvas

from designer.cards.papers import A5, Type
from designer.cards.text import Typesetter, fitted
from designer.drawing.pdf import register_fonts
from designer.drawing.words import text_width


@given(st.text(max_size=120), st.floats(min_value=30, max_value=400))
def test_no_line_is_wider_than_its_column(text: str, width: float) -> None:
    lines = Typesetter().lines(text, A5.body, width)
    assert all(text_width(line, A5.body.size) <= width + 0.01 for line in lines if len(line) > 1)


@given(st.text(max_size=400))
def test_every_sign_that_can_be_printed_is_printed(text: str) -> None:
    typesetter = Typesetter()
    clean = typesetter.clean(text)
    printed = "".join(typesetter.lines(text, A5.body, 120)).replace(" ", "")
    assert printed == clean.replace(" ", "").replace("\n", "")


def test_a_sign_the_font_lacks_is_replaced_and_said() -> None:
    typesetter = Typesetter()
    assert typesetter.clean("go ⇄ net ☂") == "go ? net ?"
    # A number and its sign stay on one line.
    assert typesetter.clean("50\u00a0%\u2003of") == "50\u00a0% of"
    (notice,) = typesetter.notices()
    assert "⇄ (U+21C4)" in notice
    assert "☂ (U+2602)" in notice


DRAWN = "← ↑ → ↓ ↔ ↕ ↖ ↗ ↘ ↙ ⇒ ✓ ✔ ✗ ✘ ☐ ☑ ■ □ ● ○ ▲ △ ► ★ ☆ ≤ ≥"


@pytest.mark.parametrize("bold", [False, True])
def test_arrows_ticks_and_the_like_are_drawn_and_copied_as_they_were_written(bold: bool) -> None:
    """Common practice, no source: what coaches type in notes; the text of the page gives the same characters back."""
    typesetter = Typesetter()
    assert typesetter.clean(DRAWN) == DRAWN
    assert typesetter.notices() == ()
    file = io.BytesIO()
    canvas = Canvas(file, initialFontName=register_fonts()[bold])
    for number, sign in enumerate(DRAWN.split()):
        canvas.setFont(register_fonts()[bold], 40)
        canvas.drawString(40, 40, sign)
        assert text_width(sign, 40, bold) > 10, number
        canvas.showPage()
    canvas.save()
    seen = set()
    with pypdfium2.PdfDocument(file.getvalue()) as document:
        for sign, page in zip(DRAWN.split(), document, strict=True):
            assert page.get_textpage().get_text_range().strip() == sign
            pixels = page.render(scale=1).to_numpy()
            ink = pixels[-90:, 30:110, 0] < 128
            assert 30 < ink.sum() < 900
            seen.add(ink.tobytes())
    assert len(seen) == len(DRAWN.split()) - 1, "no two look alike, but for the two empty squares"


def test_markup_and_control_characters_are_plain_text() -> None:
    typesetter = Typesetter()
    assert (
        typesetter.clean("x <b>y</b> & <img src='/etc/passwd'>\0\ud800\tz") == "x <b>y</b> & <img src='/etc/passwd'> z"
    )
    assert typesetter.notices() == ()


def test_greek_and_cyrillic_are_in_the_font() -> None:
    typesetter = Typesetter()
    assert typesetter.clean("Σέρβις Подача Ćwiczenie") == "Σέρβις Подача Ćwiczenie"


def test_lines_of_an_objective_are_even() -> None:
    text = "Pulled wide, I buy time with height and depth, get back, then play the point."
    typesetter = Typesetter()
    ragged = typesetter.lines(text, A5.objective, 300)
    even = typesetter.balanced(text, A5.objective, 300)

    def unevenness(lines: tuple[str, ...]) -> float:
        widths = [text_width(line, A5.objective.size) for line in lines]
        return max(widths) - min(widths)

    assert len(even) == len(ragged)
    assert " ".join(even) == text
    assert unevenness(even) < unevenness(ragged)


def test_what_is_cut_to_one_line_says_so() -> None:
    type_ = Type(8, 10)
    assert Typesetter().on_one_line("Short  words", type_, 200) == "Short words"
    cut = Typesetter().on_one_line("Words that go on, and on, and on without an end", type_, 80)
    assert cut == "Words that go on…"
    assert text_width(cut, 8) <= 80


def test_a_title_is_never_set_below_its_floor() -> None:
    assert fitted("Short", (20, 15), 300) == 20
    assert 15 < fitted("Wide Ball, Recover, Play the Point", (20, 15), 300) < 20
    assert fitted("An endless title " * 10, (20, 15), 300) == 15
