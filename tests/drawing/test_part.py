import pytest

from designer.bundle import sample
from designer.drawing.page import Page
from designer.drawing.part import part
from designer.drawing.picture import picture
from designer.drawing.themes import theme
from designer.drill.drill import Drill
from designer.drill.setting import addresses, setting_at

UNIT = 1.42 / 23
LIGHT = theme("light")
NAMES = sorted(path.name for path in sample().glob("*.drill.json"))


def looks(mark):
    """A mark, but for where the feet of a recovery run stand: they make room for what else is there."""
    return mark.primitives[0].points[0] if mark.kind == "recovery run" else mark


@pytest.mark.parametrize("name", NAMES)
def test_each_record_alone_has_the_marks_that_the_whole_picture_has_of_it(name):
    drill = Drill.model_validate_json(sample(name).read_bytes())
    for at in addresses(drill):
        setting = setting_at(drill, at)
        whole = picture(drill, setting, unit=UNIT, theme=LIGHT, words=False, across=True)
        for kind in ("spots", "items", "shots", "runs"):
            for id in getattr(setting, kind):
                alone = part(drill, setting, {id}, unit=UNIT, theme=LIGHT, page=Page(across=True))
                expected = [mark for mark in whole.marks if mark.id == id]
                assert {mark.key: looks(mark) for mark in alone} == {mark.key: looks(mark) for mark in expected}


def test_nothing_asked_for_is_nothing_drawn():
    drill = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes())
    setting = setting_at(drill, next(addresses(drill)))
    assert part(drill, setting, frozenset(), unit=UNIT, theme=LIGHT) == ()
