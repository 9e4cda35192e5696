"""What the numbers rest on is kept by level, and all that is computed follows it."""

import pytest

from designer.bundle import sample
from designer.desktop import settings
from designer.desktop.side_view.basis import Basis, chosen
from designer.drill.setting import At
from designer.numbers.levels import level
from designer.storage.reading import open_drill


def test_a_group_is_kept_with_its_level(styled):
    settings.set_level("club")
    settings.set_group("club", 1.5, "4 of 10")
    settings.set_drag(0.6)
    assert chosen() == Basis("club", (1.5, "4 of 10"), 0.6)
    settings.set_level("social")
    assert chosen() == Basis("social", None, 0.6)
    settings.set_level("club")
    settings.forget_group("club")
    settings.set_drag(None)
    assert chosen() == Basis("club")


@pytest.mark.parametrize("kept", ['[0, "x"]', "[1]", "nonsense", "{}", '["a", 2]'])
def test_nonsense_in_the_settings_is_no_group(styled, kept):
    settings.settings().setValue("numbers/group club", kept)
    assert settings.group("club") is None


def test_a_group_spreads_its_balls_and_the_drag_is_that_of_the_air():
    basis = Basis("club", (1.5, "4 of 10"), 0.6)
    here = basis.situation(open_drill(sample("wide-start.drill.json")).drill, At("p-fed"))
    assert here.level.spread.across == pytest.approx(1.5 * level("club").spread.across)
    assert here.around.ball.drag == 0.6
    assert basis.words == "club level, 4 of 10"
