import json

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import json_values

from designer.storage.parsing import LARGEST, Unreadable, parse


def sentence(data):
    with pytest.raises(Unreadable) as refused:
        parse(data if isinstance(data, bytes) else data.encode(), "odd.drill.json")
    said = str(refused.value)
    assert said.startswith("odd.drill.json: ")
    assert said.endswith(".")
    assert "\n" not in said
    return said


@given(json_values())
def test_what_json_can_say_is_taken_as_it_is(value):
    assert parse(json.dumps(value).encode(), "x") == value
    assert parse(json.dumps(value, ensure_ascii=False, indent=1).encode(), "x") == value


def test_a_byte_order_mark_of_utf_8_does_no_harm():
    assert parse(b'\xef\xbb\xbf{"id": "d"}', "x") == {"id": "d"}


@pytest.mark.parametrize(
    ("data", "says"),
    [
        ("", "is empty; expected a drill"),
        (" \n\t", "is empty; expected a drill"),
        ("hello there", "is not a drill file; expected JSON that begins with a brace, found “hello there”"),
        ("%!PS-Adobe and a lot more of that", "found “%!PS-Adobe and a lot…”"),
        ("\x1b[2Jodd", "found “�[2Jodd”"),
        ('{"a": 1', "line 1, column 8: expected a comma or a closing bracket; the file may have been cut short"),
        (
            '{"a":\n  "b',
            "line 2, column 3: a text that begins here has no closing quote; the file may have been cut short",
        ),
        ('{"a": [1, 2', "the file may have been cut short"),
        ('{"a" 1}', "line 1, column 6: expected a colon"),
        ("{'a': 1}", "line 1, column 2: expected a key in double quotes"),
        ('{"a": tru}', "line 1, column 7: expected a value"),
        ('{"a": 1} {', "line 1, column 10: something follows after the last bracket"),
        ('{"a": "\n"}', "line 1, column 8: a line break or control character stands inside a text"),
        ('{"a": "\\x"}', "line 1, column 8: a backslash is followed by something unknown"),
        ('{"a": NaN}', "a: is no finite number; expected a number"),
        ('{"a": [1, -Infinity]}', "a, entry 2: is no finite number"),
        ('{"a": 1e999}', "a: is no finite number"),
        ('{"a": {"b": 1, "c": 2, "b": 3}}', "a: the key “b” stands twice; expected it once"),
        ('{"a": 1, "a": 1}', "the key “a” stands twice"),
        ('{"a": "\\ud800"}', "a: holds half of a character"),
        ('{"\\udc00": 1}', "a key holds half of a character"),
        ('{"a": ' + "9" * 5000 + "}", "holds a number of thousands of digits"),
        (b'{"a":\n"caf\xe9"}', "line 2 holds the byte E9, which is not UTF-8; expected text in UTF-8"),
        ('{"a": 1}'.encode("utf-16"), "is written in UTF-16; expected UTF-8"),
        ('{"a": 1}'.encode("utf-16-be"), "is written in UTF-16 or UTF-32; expected UTF-8"),
        ('{"a": 1}'.encode("utf-32"), "is written in UTF-32; expected UTF-8"),
    ],
)
def test_what_cannot_be_taken_in_one_way_is_refused_with_its_place(data, says):
    assert says in sentence(data)


def test_places_are_named_by_progression_kind_and_id():
    raw = '{"progressions": [{}, {"changes": {"items": [{"id": "tick", "corners": [[0, 1], [NaN, 2]]}]}}]}'
    assert "progression 2, items, 'tick', corners 2, x: is no finite number" in sentence(raw)


@pytest.mark.parametrize("opening", ["[", '{"a":'])
@pytest.mark.parametrize("depth", [101, 990, 10_000, 1_000_000])
def test_depth_is_refused_and_not_followed(opening, depth):
    assert "more than 100 deep in one another" in sentence(opening * depth + "1" + {"[": "]"}.get(opening, "}") * depth)


def test_depth_that_a_drill_may_have_is_taken():
    value = parse(b"[" * 100 + b"]" * 100, "x")
    for _ in range(99):
        (value,) = value
    assert value == []


def test_a_text_longer_than_any_drill_is_refused_before_it_is_parsed():
    assert sentence(b"[" + b" " * LARGEST + b"oops").endswith("is larger than 20 MB; expected a drill file.")


def outcome(data):
    """The data, or the sentence that refuses it."""
    try:
        return parse(data, "odd.drill.json"), ""
    except Unreadable as refused:
        return None, str(refused)


@given(st.binary(max_size=200))
def test_any_bytes_are_data_or_a_sentence(data):
    _, said = outcome(data)
    assert not said or said.startswith("odd.drill.json: ")


@given(st.text(alphabet='{}[]",:0123456789.eE+-\\untrfals \n', max_size=40))
def test_what_is_nearly_json_is_data_or_a_sentence(text):
    value, said = outcome(text.encode())
    if not said:
        assert value == json.loads(text)
    else:
        assert said.startswith("odd.drill.json: ")
