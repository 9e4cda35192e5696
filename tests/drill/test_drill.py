import pytest
from hypothesis import given
from pydantic import ValidationError
from strategies import drills

from designer.drill.drill import CLUB_RUN_BACK, CLUB_SIDE_RUN, Drill, Progression


def small(**values):
    return Drill(id="d-small", progressions=(Progression(id="p-1"),), **values)


def test_the_assumed_run_off_is_the_club_minimum():
    # ITF Technical Booklet 2015, table 5, notes d and e: 18 ft behind the baseline, 10 ft beside; 1 ft is 0.3048 m.
    assert pytest.approx(18 * 0.3048) == CLUB_RUN_BACK
    assert pytest.approx(10 * 0.3048) == CLUB_SIDE_RUN


def test_a_drill_has_a_progression():
    with pytest.raises(ValidationError):
        Drill(id="d-none", progressions=())


@pytest.mark.parametrize(
    "values",
    [
        {"players": (0, 2)},
        {"minutes": 0},
        {"balls": -1},
        {"edition": 0},
        {"format": 0},
        {"language": "English"},
        {"tags": ("Two Words",)},
        {"main": "Not An Id"},
        {"turned": ("upside down",)},
        {"court": {"run_back": -1.0}},
    ],
)
def test_values_out_of_range_are_refused(values):
    with pytest.raises(ValidationError):
        small(**values)


def test_run_off_that_is_not_stated_is_unknown():
    assert (small().court.run_back, small().court.side_run, small().court.wet) == (None, None, None)


@given(drills(most_progressions=1))
def test_a_drill_is_a_value(drill):
    again = Drill(**dict(drill))
    assert again == drill
    assert drill.changed(edition=drill.edition + 1 if drill.edition < 100_000 else 1) != drill


@given(drills(most_progressions=1))
def test_a_job_is_found_by_its_letter(drill):
    for letter in "ABCDE":
        found = drill.job(letter)
        assert (found is None) == (letter not in [job.letter for job in drill.jobs])
        assert found is None or found.letter == letter
