from __future__ import annotations

import itertools

from designer.bundle import sample
from designer.drawing.picture import picture
from designer.drawing.primitives import Words
from designer.drawing.sheet import in_a_row, with_legend
from designer.drawing.themes import theme
from designer.drill.drill import Drill
from designer.drill.setting import At, main_setting


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


def test_courts_in_a_row_stand_side_by_side_each_under_its_name() -> None:
    drill = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes())
    courts = [
        (progression.name, picture(drill, At(progression.id), unit=0.1, theme=theme("paper")))
        for progression in drill.progressions
    ]
    row = in_a_row(courts)
    names = [mark for mark in row.marks if mark.kind == "name"]
    assert [" ".join(each.text for each in mark.primitives if isinstance(each, Words)) for mark in names] == [
        progression.name for progression in drill.progressions
    ]
    fences = sorted({mark.bounds for mark in row.marks if mark.kind == "fence" and mark.bounds[2] - mark.bounds[0] > 1})
    assert len(fences) >= len(courts)
    for one, other in itertools.pairwise(sorted(names, key=lambda mark: mark.bounds[0])):
        assert one.bounds[2] < other.bounds[0]
    for mark in row.marks:
        assert mark.bounds[0] >= row.extent[0] - 0.5
        assert mark.bounds[2] <= row.extent[2] + 0.5
        assert mark.bounds[3] <= row.extent[3]
    assert {entry.words for _, court in courts for entry in court.legend} == {entry.words for entry in row.legend}
