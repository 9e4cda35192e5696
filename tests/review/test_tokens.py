from review.situations import RALLY, REPLY, drill, only

from designer.review.tokens import token_cautions


def test_tokens_that_name_something_pass():
    texts = ("{A} and {B}", "the {left} {forehand}", "{{ is a brace", "after {reply}")
    assert list(token_cautions(drill(*RALLY, cues=texts))) == []


def test_a_token_that_names_nothing_is_told_of_where_it_stands():
    found = only(token_cautions(drill(*RALLY, REPLY.changed(note="past {replly}"))), "unknown-token")
    assert found.about == ("reply",)
    assert "“{replly}”" in found.sentence.text
    assert "did you mean “reply”?" in found.sentence.text


def test_a_person_who_is_not_there_is_told_of():
    assert "“{Z}”" in only(token_cautions(drill(*RALLY, cues=("{Z} waits",))), "unknown-token").sentence.text
