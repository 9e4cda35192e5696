import pytest

from designer.numbers.balls import ball
from designer.numbers.problems import NoSuch
from designer.numbers.surfaces import surface, surface_names


def test_every_surface_that_a_drill_can_name_is_there():
    assert set(surface_names()) == {"hard", "clay", "grass", "carpet", "artificial grass"}


def test_slower_balls_come_up_lower():
    heights = [surface("clay").restitution_of(ball(name)) for name in ("yellow", "green", "orange", "red")]
    assert heights == sorted(heights, reverse=True)
    assert heights[0] == surface("clay").restitution


def test_an_unknown_surface_lists_the_surfaces():
    with pytest.raises(NoSuch, match="clay, grass, hard"):
        surface("ice")
