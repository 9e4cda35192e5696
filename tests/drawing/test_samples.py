import pytest

from designer.drawing.legend import WORDS, LegendEntry
from designer.drawing.primitives import Words, bounds_of
from designer.drawing.samples import WIDTH, kinds, legend_shapes, sample
from designer.drawing.themes import theme

PAPER = theme("paper")


@pytest.mark.parametrize("kind", kinds())
def test_a_sample_keeps_to_its_width_and_a_legends_row(kind):
    left, low, right, high = bounds_of(sample(kind, PAPER, 1.0))
    # Casing may reach out. A word may be wider; people have a racket, and stand in no legend.
    more = {"open flag": 14, "share": 14, "person": 6, "left-hander": 6, "you": 6, "coach": 6}.get(kind, 0)
    assert left >= -4 - more * (kind == "left-hander")
    assert right <= WIDTH + 4 + more
    assert -11 <= low < 0 < high <= 11.5


@pytest.mark.parametrize("kind", kinds())
def test_a_sample_grows_with_its_unit(kind):
    small, large = bounds_of(sample(kind, PAPER, 1.0)), bounds_of(sample(kind, PAPER, 2.5))
    assert large == pytest.approx(tuple(value * 2.5 for value in small))


def test_a_tag_shows_the_digit_it_is_given_and_two_digits_widen_it():
    (digit,) = (shape for shape in sample("step digit", PAPER, 1.0, "12") if isinstance(shape, Words))
    assert digit.text == "12"
    one, two = (bounds_of(sample("step digit", PAPER, 1.0, text)) for text in ("7", "12"))
    assert two[2] - two[0] > one[2] - one[0]


def test_every_class_of_the_legend_has_its_sample():
    assert set(WORDS) <= set(kinds())


def test_a_legend_fills_column_by_column_and_nothing_overlaps():
    entries = [LegendEntry(kind, words) for kind, words in list(WORDS.items())[:7]]
    shapes, height = legend_shapes(entries, PAPER, 1.0, columns=2, column_width=80.0)
    words = [shape for shape in shapes if isinstance(shape, Words)]
    assert [word.text for word in words] == [entry.words for entry in entries]
    assert height == 4 * 13
    assert {word.at[0] < 80 for word in words[:4]} == {True}
    assert {word.at[0] > 80 for word in words[4:]} == {True}
    assert min(bounds_of([shape])[1] for shape in words) >= -height


def test_no_classes_make_an_empty_legend():
    assert legend_shapes([], PAPER, 1.0, columns=2, column_width=80.0) == ((), 0)


def test_the_switched_pair_reaches_the_samples():
    def dashed(kind, *, switched):
        return any(shape.style.dash for shape in sample(kind, theme("paper", switched=switched), 1.0))

    assert [dashed(kind, switched=False) for kind in ("ball path", "run")] == [False, True]
    assert [dashed(kind, switched=True) for kind in ("ball path", "run")] == [True, False]
