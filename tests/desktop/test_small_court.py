"""A setting as a small court: of the size that was asked for, and telling one setting from another."""

import pytest
from PySide6.QtCore import QSize

from designer.bundle import sample
from designer.desktop.small_court import small_court
from designer.drill.drill import Drill
from designer.drill.setting import At, main_setting

WIDE = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes())


@pytest.mark.parametrize("ratio", [1.0, 1.5, 2.0])
@pytest.mark.parametrize("across", [True, False])
def test_it_is_crisp_at_every_scale_of_a_screen(styled, ratio, across):
    size = QSize(70, 35) if across else QSize(22, 44)
    made = small_court(WIDE, main_setting(WIDE), size, ratio, across=across)
    assert made.devicePixelRatio() == ratio
    assert (made.width(), made.height()) == (round(size.width() * ratio), round(size.height() * ratio))


def test_two_settings_look_different_and_one_always_the_same(styled):
    size = QSize(70, 35)
    pictures = [small_court(WIDE, At(id), size, 1.0).toImage() for id in ("p-fed", "p-serve", "p-fed")]
    assert pictures[0] == pictures[2]
    assert pictures[0] != pictures[1]
