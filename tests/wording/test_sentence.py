"""Sentences as data: what is read, and what stands behind it."""

from hypothesis import given
from hypothesis import strategies as st

from designer.wording.sentence import ENDINGS, Lead, Ref, marked, ref, sentence, sentences_of, unmarked


def test_names_become_references_and_their_records_stand_behind_the_sentence():
    made = sentence("rule:r", f"{ref('spot-a', 'A')} plays into {ref('zone', 'the zone')}", "r", lead=Lead("hit", "2"))
    assert made.text == "A plays into the zone."
    assert Ref("zone", "the zone") in made.parts
    assert made.about == ("r", "spot-a", "zone")


def test_each_text_is_a_sentence_of_its_own():
    assert (
        sentences_of("a volley: point lost", "", "B calls", "ask once?") == "A volley: point lost. B calls. Ask once?"
    )
    assert unmarked(sentences_of(f"{ref('zone', 'the zone')} , exact")) == "The zone, exact."
    assert sentences_of(" 50\N{NO-BREAK SPACE}%  of it") == "50\N{NO-BREAK SPACE}% of it."
    assert sentences_of("anyone calls “stop”") == "Anyone calls “stop”."


def test_an_apostrophe_is_set_as_a_printer_sets_it():
    assert sentence("k", f"{ref('spot-a', 'A')}'s ball").text == "A’s ball."


def test_a_question_is_left_as_it_is_asked():
    asked = sentence("question:doubt", "In doubt?", missing=True)
    assert (asked.text, asked.missing) == ("In doubt?", True)


@given(st.text(max_size=60))
def test_any_text_ends_as_a_sentence_and_can_be_put_into_another(text):
    made = sentence("k", text)
    assert not made.text or made.text.endswith(ENDINGS)
    assert sentence("k", marked(made)).text == made.text
