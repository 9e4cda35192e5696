import pytest
from pydantic import ValidationError

from designer.drill.base import Place
from designer.drill.people import Job, Spot


def test_a_job_is_a_right_handed_player_s_until_it_is_said_otherwise():
    assert (Job(letter="A").by, Job(letter="A").hand, Job(letter="A").role) == ("player", "right", "")


@pytest.mark.parametrize("values", [{"letter": "a"}, {"by": "parent"}, {"hand": "both"}])
def test_a_job_that_cannot_be_is_refused(values):
    with pytest.raises(ValidationError):
        Job(**{"letter": "A", **values})


@pytest.mark.parametrize(
    "values", [{"facing": 360}, {"facing": -1}, {"facing": 1.5}, {"care": "roughly"}, {"task": "rests"}]
)
def test_a_spot_that_cannot_be_is_refused(values):
    with pytest.raises(ValidationError):
        Spot(**{"id": "s", "job": "A", "place": Place(), **values})
