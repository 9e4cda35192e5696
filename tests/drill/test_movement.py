from typing import get_args

import pytest
from pydantic import ValidationError

from designer.drill.base import Place
from designer.drill.movement import FEEDS, SERVES, Run, Shot, Stroke


def test_a_feed_and_a_serve_are_strokes_and_never_both():
    assert set(get_args(Stroke)) >= FEEDS | SERVES
    assert not FEEDS & SERVES


def test_what_is_not_said_of_a_shot_is_open():
    shot = Shot(id="s", by="A")
    # No place to land means anywhere in play, and the wing is never guessed twice.
    assert (shot.to, shot.wing, shot.contact, shot.stroke, shot.after) == (None, None, None, None, None)


@pytest.mark.parametrize(
    "values",
    [
        {"by": "AB"},
        {"stroke": "forehand"},
        {"wing": "left"},
        {"bounces": 4},
        {"height": -0.1},
        {"over_net": -1.0},
        {"bend": 101.0},
    ],
)
def test_a_shot_that_cannot_be_is_refused(values):
    with pytest.raises(ValidationError):
        Shot(**{"id": "s", "by": "A", **values})


def test_a_run_goes_somewhere():
    with pytest.raises(ValidationError):
        Run(id="r", by="A")
    with pytest.raises(ValidationError):
        Run(id="r", by="A", to=Place(), purpose="rest")
