"""The author's own words with their tokens read."""

from wording.making import REPLY, SINGLES, ZONE, told

from designer.wording.sentence import unmarked
from designer.wording.tokens import own_text


def read(text, *records):
    return unmarked(own_text(told(*SINGLES, REPLY, ZONE, *records), text))


def test_letters_sides_and_names_are_read():
    assert read("{A} plays {left} into {zone}.") == "A plays left into the reply zone."
    assert read("Never the {backhand} on {reply}.") == "Never the backhand on ball 1."


def test_a_token_that_means_nothing_stays_as_it_is_written():
    assert read("{nowhere} and {Z} and {") == "{nowhere} and {Z} and {"


def test_two_braces_are_one():
    assert read("{{A}") == "{A}"


def test_text_is_one_line_with_curly_quotes():
    assert read('Say "ready"\r\n\tthen\0 throw.') == "Say “ready” then throw."
