"""A text as it is typed and as it is kept: people and sides become tokens, and nobody sees a brace."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from designer.desktop.own_words import OwnWords, read, typed

NAMES = {"A": "A", "B": "B", "reply-zone": "the reply zone"}


def kept(text, before="", sides=True):
    return typed(text, read(before, NAMES.get), {"A", "B"}, sides=sides).kept


@pytest.mark.parametrize(
    ("shown", "stored"),
    [
        ("B may play it at once.", "{B} may play it at once."),
        ("A plays to B's left.", "{A} plays to {B}'s {left}."),
        ("Feed to A, then to B.", "Feed to {A}, then to {B}."),
        ("A ball lands. A and B go on.", "A ball lands. {A} and {B} go on."),
        ("A miss costs a point.", "A miss costs a point."),
        ("All right, Bob: 5A, C.", "All right, Bob: 5A, C."),
        ("Left foot first, forehand only.", "Left foot first, {forehand} only."),
        ("{A} odd", "{{{A}} odd"),
    ],
)
def test_people_and_sides_are_kept_as_tokens_and_an_article_is_not(shown, stored):
    assert kept(shown) == stored


def test_a_text_of_another_language_keeps_its_words():
    assert kept("B links, left", sides=False) == "{B} links, left"


def test_a_name_stays_a_token_while_it_is_not_typed_at():
    before = "Into {reply-zone}, {B}."
    assert read(before, NAMES.get).text == "Into the reply zone, B."
    assert kept("Into the reply zone, please, B.", before) == "Into {reply-zone}, please, {B}."
    assert kept("Into the reply zones, B.", before) == "Into the reply zones, {B}."


def test_what_names_nothing_is_read_without_its_braces():
    assert read("See {gone}.", NAMES.get).text == "See gone."


@given(st.text("aAB {}’'.,left", max_size=40))
def test_what_is_kept_reads_as_what_was_typed(text):
    words = typed(text, OwnWords(), {"A", "B"}, sides=True)
    assert read(words.kept, NAMES.get) == words
