"""Where players usually stand on a new court."""

import pytest

from designer.desktop.blank import blank, with_players
from designer.drill.setting import main_setting, setting_at

STRIDE = 0.9144
"""One yard: Weights and Measures Act 1985, section 1 (0.9144 m exactly)."""

BASELINE = 11.8872
"""ITF Rules of Tennis, rule 1: a court of 78 ft, so 39 ft from net to baseline."""


def stood(source, count, court="tennis"):
    drill = blank(source, court)
    at = main_setting(drill)
    drill = with_players(drill, at, count, source)
    return drill, {spot.job: spot.place.at for spot in setting_at(drill, at).spots.values()}


def test_a_new_drill_has_one_progression_and_nothing_on_court(source):
    drill = blank(source)
    assert len(drill.progressions) == 1
    assert not setting_at(drill, main_setting(drill)).ids()


def test_two_stand_a_stride_behind_their_centre_marks(source):
    drill, places = stood(source, 2)
    assert places == {"A": (0.0, -(BASELINE + STRIDE)), "B": (0.0, BASELINE + STRIDE)}
    assert [job.letter for job in drill.jobs] == ["A", "B"]
    assert drill.players == (2, 2)


@pytest.mark.parametrize("count", [1, 2, 3, 4])
@pytest.mark.parametrize("court", ["tennis", "red", "orange"])
def test_nobody_stands_on_anybody_and_all_behind_a_baseline(source, count, court):
    from designer.court.standards import ground

    drill, places = stood(source, count, court)
    assert len(set(places.values())) == count
    assert all(abs(y) > ground(drill.court).baseline for _, y in places.values())


def test_four_face_one_another_in_pairs(source):
    _, places = stood(source, 4)
    near = {letter for letter, (_, y) in places.items() if y < 0}
    assert len(near) == 2
    assert sorted(x for x, y in places.values() if y < 0) == sorted(x for x, y in places.values() if y > 0)
