import random

import pytest

from designer.desktop.canvas.placing import PLACED, copied, fresh_id, placed, stretched
from designer.drill.places import anchor
from designer.drill.setting import At, setting_at


class Always:
    """A source of chance that always gives the first, until that is taken."""

    def __init__(self):
        self.turn = 0

    def choice(self, characters):
        self.turn += 1
        return characters[0] if self.turn <= 10 else characters[1]


def test_an_id_is_one_that_no_setting_has(hand):
    taken = fresh_id(hand.document.drill, "cone", Always())
    drill = placed(hand.document.drill, hand.view.at, "cone", (0.0, 0.0), taken)
    assert fresh_id(drill, "cone", Always()) != taken


def test_the_same_source_gives_the_same_ids(hand):
    ids = [fresh_id(hand.document.drill, kind, random.Random(3)) for kind in PLACED]
    assert ids == [fresh_id(hand.document.drill, kind, random.Random(3)) for kind in PLACED]


def test_corners_come_in_order_whichever_way_it_was_drawn(hand):
    drill = stretched(hand.document.drill, hand.view.at, "area", (3.0, -1.0), (-2.0, -4.0), "new")
    assert setting_at(drill, hand.view.at).items["new"].shape.corners == ((-2.0, -4.0), (3.0, -1.0))


def test_copies_keep_what_ties_them_together_and_a_player_becomes_another(hand):
    hand.drag_handle("wide", "end", (2.0, -9.0))
    drill, copies = copied(
        hand.document.drill, hand.view.at, ("cone", "wide", "spot-a"), (1.0, 0.0), hand.document.source
    )
    setting = setting_at(drill, hand.view.at)
    run = next(setting.runs[id] for id in copies if id in setting.runs)
    cone = next(id for id in copies if id in setting.items)
    assert run.to.on == cone
    assert anchor(setting, run.id) == (3.0, -9.0)
    assert [setting.spots[id].job for id in copies if id in setting.spots] == ["C"]


def test_a_setting_that_is_not_there_is_an_error_of_the_caller(hand):
    with pytest.raises(KeyError):
        placed(hand.document.drill, At("nowhere"), "cone", (0.0, 0.0), "new")
