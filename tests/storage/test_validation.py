import pytest

from designer.storage.parsing import Unreadable
from designer.storage.reading import read_drill
from designer.storage.validation import as_far_as_known, validated
from designer.storage.writing import json_bytes

CONE = {"kind": "cone", "id": "home", "place": {"at": [0, 0]}}


def newer(**values):
    return {"format": 2, "id": "d", "progressions": [{"id": "p"}], **values}


def test_what_fits_is_a_drill_and_what_does_not_is_a_sentence():
    assert validated({"id": "d", "progressions": [{"id": "p"}]}, "x").progressions[0].id == "p"
    with pytest.raises(Unreadable, match=r"^x: progression 1, minutes: 0, expected at least 1\.$"):
        validated({"id": "d", "progressions": [{"id": "p", "minutes": 0}]}, "x")


def test_a_newer_drill_is_shown_without_what_is_not_understood():
    raw = newer(
        dated="week 7",
        later={"kept": True},
        progressions=[
            {
                "id": "p",
                "minutes": "ten",
                "changes": {"items": [CONE, {**CONE, "id": "far", "place": "polar"}, {**CONE, "id": "near"}, 6]},
                "easier": [{"name": "without an id"}, {"id": "v"}],
            }
        ],
    )
    drill, notices = as_far_as_known(raw, "x")
    assert [item.id for item in drill.progressions[0].changes.items] == ["home", "near"]
    assert [variation.id for variation in drill.progressions[0].easier] == ["v"]
    assert (drill.dated, drill.progressions[0].minutes) == (None, None)
    assert drill.model_extra == {"later": {"kept": True}}
    assert "is in format 2" in notices[0]
    assert {notice.partition(":")[0] for notice in notices[1:]} == {
        "dated",
        "progression 1, items, 'far'",
        "progression 1, items, entry 4",
        "progression 1, minutes",
        "progression 1, easier 1",
    }


def test_the_data_itself_stays_as_it_was():
    raw = newer(dated="week 7")
    as_far_as_known(raw, "x")
    assert raw == newer(dated="week 7")


@pytest.mark.parametrize("values", [{"progressions": {}}, {"progressions": []}, {"id": 7}, {"progressions": [{}]}])
def test_a_newer_drill_of_which_too_little_is_understood_is_refused(values):
    with pytest.raises(Unreadable, match="x: is in format 2, written by a newer program; expected at most format 1"):
        as_far_as_known(newer(**values), "x")


def test_a_newer_drill_is_read_only_and_says_so():
    opened = read_drill(json_bytes(newer()), "x")
    assert opened.read_only
    assert opened.notices == ("is in format 2, written by a newer program; expected at most format 1.",)
    assert opened.drill.format == 2
