from __future__ import annotations

from designer.bundle import sample
from designer.drawing.picture import picture
from designer.drawing.primitives import Words
from designer.drawing.sheet import with_legend
from designer.drawing.themes import theme
from designer.drill.drill import Drill
from designer.drill.setting import main_setting


def drawn(name: str, unit: float = 0.1):
    drill = Drill.model_validate_json(sample(f"{name}.drill.json").read_bytes())
    return picture(drill, main_setting(drill), unit=unit, theme=theme("paper"))


def test_a_picture_that_stands_alone_says_what_each_mark_means() -> None:
    bare = drawn("wide-start")
    sheet = with_legend(bare, theme("paper"))
    legend = sheet.marks[-1]
    said = {shape.text for shape in legend.primitives if isinstance(shape, Words)}
    assert {entry.words for entry in bare.legend} <= said


def test_the_legend_stands_under_the_court_and_inside_the_picture() -> None:
    for unit in (0.05, 0.1, 0.2):
        bare = drawn("short-approach", unit)
        sheet = with_legend(bare, theme("paper"))
        left, low, right, high = sheet.marks[-1].bounds
        assert high < bare.extent[1]
        assert low >= sheet.extent[1]
        assert left >= sheet.extent[0]
        assert right <= sheet.extent[2] + 1e-6
        assert sheet.marks[:-1] == bare.marks
