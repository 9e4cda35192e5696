"""The glossary has the terms that are used, in the academy's words, and no other."""

from designer.cards.book.glossary import Glossary, meanings
from designer.drill.handbook import Term
from designer.wording.vocabulary import Vocabulary


def test_only_terms_in_use_are_explained_in_order() -> None:
    glossary = Glossary("en", (), Vocabulary())
    glossary.notice("B feeds; A plays cross-court from the Alleys, then both volley.")
    assert [word for word, _, _ in glossary.entries()] == ["alley", "cross-court", "feed", "volley"]


def test_a_phase_is_explained_where_it_is_listed_and_not_where_it_is_a_plain_word() -> None:
    glossary = Glossary("en", (), Vocabulary({"both back": "zone rally"}))
    glossary.notice("They finish in defence of the closed gate.")
    assert list(glossary.entries()) == []
    glossary.name(["finish", "both back", "own idea"])
    assert [(word, other) for word, _, other in glossary.entries()] == [("finish", ""), ("zone rally", "both back")]


def test_the_academys_word_is_explained_with_what_it_is_called_elsewhere() -> None:
    glossary = Glossary("en", (Term(word="Zip", means="Into the alley, quick."),), Vocabulary({"alley": "tramline"}))
    glossary.notice("Into the tramlines, not the short alleyway.")
    found = {word: (means, elsewhere) for word, means, elsewhere in glossary.entries()}
    assert set(found) == {"tramline", "Zip"}
    assert found["tramline"][1] == "alley"
    assert found["Zip"] == ("Into the tramline, quick.", "")


def test_a_language_without_a_glossary_of_its_own_has_the_english_one() -> None:
    assert meanings("xx") == meanings("en")
    assert all(one.means.endswith((".", "?")) for one in meanings("en"))
