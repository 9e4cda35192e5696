import pytest

from designer.storage.location import MISSING, found, location_words

RAW = {
    "progressions": [
        {"id": "p-1"},
        {
            "changes": {
                "items": [
                    {"kind": "line", "id": "tick", "corners": [[0, 1], [2, 3]]},
                    {"kind": "cone", "place": {"at": [0, 1]}},
                ]
            },
            "harder": [{"id": "v"}],
        },
    ],
    "jobs": [{"letter": "A"}],
}


@pytest.mark.parametrize(
    ("location", "words"),
    [
        ((), ""),
        (("title",), "title"),
        (("progressions", 0), "progression 1"),
        (("progressions", 1, "changes", "items", 0, "corners"), "progression 2, items, 'tick', corners"),
        (("progressions", 1, "changes", "items", 0, "corners", 1, 0), "progression 2, items, 'tick', corners 2, x"),
        (("progressions", 1, "changes", "items", 1, "place", "at", 1), "progression 2, items, entry 2, place, at, y"),
        (("progressions", 1, "harder", 0, "name"), "progression 2, harder 1, name"),
        (("jobs", 0, "hand"), "jobs, 'A', hand"),
        (("jobs", 7), "jobs, entry 8"),
        (("bell \a",), "'bell \\x07'"),
    ],
)
def test_a_location_in_words(location, words):
    assert location_words(RAW, location) == words


def test_what_stands_there_is_found_and_what_does_not_is_missing():
    assert found(RAW, ("progressions", 0, "id")) == "p-1"
    assert found(RAW, ()) is RAW
    for location in (("progressions", 2), ("progressions", "id"), ("jobs", 0, "hand"), ("jobs", 0, "letter", 0), (0,)):
        assert found(RAW, location) is MISSING
