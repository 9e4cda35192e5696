"""Time as it is played, with the time of a clock that the test turns itself."""

import pytest

from designer.bundle import sample
from designer.desktop.playing.clockwork import Clockwork
from designer.desktop.playing.course import Course
from designer.drill.setting import At
from designer.numbers.levels import level
from designer.numbers.situation import situation
from designer.storage.reading import open_drill


def clockwork(name, at):
    here = situation(open_drill(sample(f"{name}.drill.json")).drill, At(at), level("club"))
    made = Clockwork(Course(here))
    made.tick(100.0)
    return made


@pytest.fixture
def wide():
    return clockwork("wide-start", "p-fed")


@pytest.fixture
def approach():
    return clockwork("short-approach", "p-points")


def test_true_time_is_the_clock_s_own(wide):
    wide.tick(100.5)
    wide.tick(101.25)
    assert wide.seconds == pytest.approx(1.25)


def test_slower_and_faster(wide):
    wide.slower()
    wide.tick(101.0)
    assert wide.seconds == pytest.approx(0.5)
    wide.faster()
    wide.faster()
    wide.tick(102.0)
    assert wide.seconds == pytest.approx(2.5)
    for _ in range(9):
        wide.slower()
    assert wide.pace > 0


def test_a_pause_costs_no_time(wide):
    wide.tick(100.5)
    wide.pause()
    wide.tick(160.0)
    wide.pause()
    wide.tick(160.25)
    assert wide.seconds == pytest.approx(0.75)


def test_shot_by_shot(wide):
    starts = [leg.starts for leg in wide.course.legs]
    wide.next_shot()
    assert wide.seconds == starts[1]
    wide.next_shot()
    assert (wide.seconds, wide.number) == (starts[2], 2)
    wide.next_shot()
    assert wide.over
    wide.previous_shot()
    assert wide.seconds == pytest.approx(starts[2])
    wide.previous_shot()
    assert wide.seconds == pytest.approx(starts[1])
    wide.tick(101.0)
    wide.previous_shot()
    assert wide.seconds == pytest.approx(starts[1])


def test_when_all_is_over_space_plays_it_again(wide):
    wide.tick(1000.0)
    assert wide.over
    wide.pause()
    assert wide.seconds == 0.0
    wide.tick(1000.5)
    assert wide.seconds == pytest.approx(0.5)


def test_it_waits_for_a_choice_as_long_as_it_takes(approach):
    approach.tick(1000.0)
    assert approach.waits
    assert not approach.over
    seconds = approach.seconds
    approach.tick(2000.0)
    assert approach.seconds == seconds
    assert approach.choose("lob")
    assert not approach.waits
    approach.tick(2000.4)
    assert approach.seconds == pytest.approx(seconds + 0.4)
