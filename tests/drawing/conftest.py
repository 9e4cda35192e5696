"""What the tests of the drawing room stand on: the sample drills, a small drill of one's own, and pictures of them."""

from types import SimpleNamespace

import pytest

from designer.bundle import sample
from designer.drawing.picture import picture
from designer.drawing.themes import theme
from designer.drill.base import place
from designer.drill.drill import Drill, Progression
from designer.drill.people import Job, Spot
from designer.drill.setting import Setting, main_setting

NAMES = tuple(sorted(path.name.removesuffix(".drill.json") for path in sample().glob("*.drill.json")))
A5 = 17.0688 / (55.6 / 25.4 * 72)
"""Metres a point where a court with club run-off is 55.6 mm wide."""


def pytest_generate_tests(metafunc):
    if "drill_name" in metafunc.fixturenames:
        metafunc.parametrize("drill_name", NAMES)


@pytest.fixture(scope="session")
def drawing():
    """Ways to a picture: of a sample by name, or of a setting made from records."""
    drills = {}

    def drill(name):
        if name not in drills:
            drills[name] = Drill.model_validate_json(sample(f"{name}.drill.json").read_bytes())
        return drills[name]

    def of(name, **options):
        return picture(drill(name), main_setting(drill(name)), **({"unit": A5, "theme": theme("paper")} | options))

    def made(*records, jobs=(), court=None, **options):
        values = {} if court is None else {"court": court}
        letters = {record.job for record in records if isinstance(record, Spot)}
        known = {job.letter for job in jobs}
        everyone = (*jobs, *(Job(letter=letter) for letter in sorted(letters - known)))
        own = Drill(id="d-own", jobs=everyone, progressions=(Progression(id="p-one"),), **values)
        in_play = options.pop("in_play", None)
        setting = Setting(in_play=in_play).having(*records)
        return picture(own, setting, **({"unit": A5, "theme": theme("paper")} | options))

    return SimpleNamespace(drill=drill, of=of, made=made, unit=A5)


@pytest.fixture
def pair():
    """Two people in the usual places."""
    return (
        Spot(id="spot-a", job="A", place=place(0.0, -12.8016)),
        Spot(id="spot-b", job="B", place=place(0.0, 12.8016)),
    )
