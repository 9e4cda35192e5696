import itertools

import pytest

from designer.drawing.primitives import Dots, Words
from designer.drawing.samples import sample
from designer.drawing.table import differences, style_table
from designer.drawing.themes import theme


@pytest.mark.parametrize("switched", [False, True])
def test_any_two_of_the_32_classes_differ_in_two_traits_without_colour(switched):
    table = style_table(switched=switched)
    assert len(table) == 32
    close = {
        (one, other): differences(table[one], table[other])
        for one, other in itertools.combinations(table, 2)
        if len(differences(table[one], table[other])) < 2
    }
    assert close == {}


@pytest.mark.parametrize("switched", [False, True])
@pytest.mark.parametrize("kind", style_table())
def test_the_table_says_what_is_drawn(kind, switched):
    """The table cannot drift from the marks: weight and dashes are read off the sample of each class."""
    traits = style_table(switched=switched)[kind]
    shapes = [shape for shape in sample(kind, theme("paper", switched=switched), 1.0) if not isinstance(shape, Words)]
    inked = [shape.style for shape in shapes if not (shape.style.stroke or shape.style.fill or "").startswith("casing")]
    if kind == "contact":  # its sample shows the path that it lies across as well
        inked = [style for style in inked if style.width == max(other.width for other in inked)]
    dots = [shape.radius * 2 for shape in shapes if isinstance(shape, Dots)]
    widths = [style.width for style in inked if style.stroke]
    if traits.weight:
        assert traits.weight in [pytest.approx(width) for width in widths + dots] or kind == "step digit"
    else:
        assert widths == []
    dashed = any(style.dash for style in inked)
    broken = {"dashes", "short dashes", "pieces", "fine dots", "long gaps", "dash and dot", "long and short dashes"}
    assert dashed == (traits.line in broken or traits.inside == "level dashes")


def test_the_basket_has_its_nine_balls():
    dots = [shape for shape in sample("basket", theme("paper"), 1.0) if isinstance(shape, Dots)]
    assert [len(shape.centres) for shape in dots] == [9]
