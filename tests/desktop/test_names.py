"""What menus and steps call a record."""

import pytest

from designer.bundle import sample
from designer.desktop.names import name_of
from designer.drill.setting import At, main_setting, setting_at
from designer.storage.reading import open_drill


@pytest.mark.parametrize(
    ("id", "name"),
    [
        ("feed", "feed 1, B"),
        ("reply", "ball 2, A"),
        ("back", "A’s run back"),
        ("spot-a", "A’s place"),
        ("reply-zone", "reply zone"),
        ("tick", "tick"),
        ("forced", "forced part"),
        ("end", "finish"),
    ],
)
def test_a_record_has_a_name_a_coach_would_use(id, name):
    setting = setting_at(open_drill(sample("wide-start.drill.json")).drill, At("p-fed"))
    assert name_of(setting, setting.find(id)) == name


def test_several_of_a_kind_are_numbered():
    drill = open_drill(sample("one-lands-short.drill.json")).drill
    setting = setting_at(drill, main_setting(drill))
    names = [name_of(setting, points) for points in setting.points.values()]
    assert len(set(names)) == len(names) > 1
