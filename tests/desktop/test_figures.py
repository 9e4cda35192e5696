"""The numbers of what is picked, against the painted court."""

import pytest

from designer.bundle import sample
from designer.desktop.document import Document
from designer.desktop.figures import figures, size_words
from designer.desktop.view import View
from designer.drill.setting import At
from designer.storage.reading import open_drill


@pytest.fixture
def view(qapp):
    document = Document(open_drill(sample("wide-start.drill.json")).drill)
    made = View(document)
    made.document_kept = document
    made.go_to(At("p-fed"))
    return made


def test_a_size_is_said_in_counts_and_in_metres():
    # An adult racket is 27 in, a stride one yard; 1 in is 0.0254 m exactly.
    assert size_words(2 * 0.6858, 3 * 0.9144, "rackets") == "2 rackets by 3 strides, 1.37 by 2.74 m"
    assert size_words(1.3716, 2.7432, "metres") == "1.37 by 2.74 m"


@pytest.mark.parametrize(
    ("id", "begins", "holds"),
    [
        ("reply", "Ball 2, A: ", "forehand, cross-court"),
        ("feed", "Feed 1, B: ", "racket feed"),
        ("back", "A’s run back: ", " m"),
        ("reply-zone", "Reply zone: ", "6 rackets by 6 strides"),
        ("tick", "Tick: ", "½ stride long"),
        ("spot-a", "A’s place: ", "1 stride behind the centre mark"),
    ],
)
def test_each_kind_of_thing_has_its_own(view, id, begins, holds):
    view.select([id])
    said = figures(view)
    assert said.startswith(begins)
    assert holds in said


def test_the_length_of_a_ball_is_that_from_its_contact_to_its_bounce(view):
    view.select(["reply"])
    shot = view.setting.shots["reply"]
    contact = shot.contact.at
    # The reply zone is B's right half behind the service line: its middle, moved by what the shot says.
    landing = (-4.1148 / 2 + shot.to.at[0], (6.4008 + 11.8872) / 2 + shot.to.at[1])
    length = ((contact[0] - landing[0]) ** 2 + (contact[1] - landing[1]) ** 2) ** 0.5
    assert figures(view).endswith(f"{length:.1f} m")


def test_what_has_no_measure_has_only_its_name(view):
    view.select(["end"])
    assert figures(view) == "Finish"
    view.select([])
    assert figures(view) == ""
