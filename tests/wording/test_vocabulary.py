"""An academy's own words: found whole, in the singular and plural, with a capital or without."""

import pytest

from designer.bundle import resource, sample
from designer.cards.book.glossary import meanings
from designer.drill.drill import Drill
from designer.drill.setting import main_setting
from designer.wording.card import card_words
from designer.wording.vocabulary import NAMES, STAGES, Vocabulary, plural

OWN = Vocabulary(
    {
        "alley": "tramline",
        "service line": "T line",
        "stop": "freeze",
        "cone": "umbrella",
        "ad": "left",
        "basket": "ball basket",
    }
    | {"club": "bronze", "red": "mini", "both back": "zone rally", "finish": "end game"}
)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("Into the alley.", "Into the tramline."),
        ("Alleys are out.", "Tramlines are out."),
        ("ALLEY", "Tramline"),
        ("the alley's edge", "the tramline's edge"),
        ("alleyway, mid-alley", "alleyway, mid-alley"),
        ("an alley, a cone", "a tramline, an umbrella"),
        ("the service lines", "the T lines"),
        ("They stop. Anyone calls “stop”.", "They stop. Anyone calls “freeze”."),
        ("{ad} or ad, not add", "{ad} or left, not add"),
        ("The club minimum; they are both back and finish.", "The club minimum; they are both back and finish."),
        ("At club level, on the club's court", "At bronze level, on the club's court"),
    ],
)
def test_words_are_exchanged_whole(text, said):
    assert OWN.said(text) == said


def test_a_level_or_a_situation_is_a_word_of_the_academys_only_where_it_is_told_as_a_name():
    # The levels that there are data for, and what the glossary lists as a situation, a phase or a kind of work.
    assert [OWN.named(name) for name in ("club", "Both back", "finish")] == ["bronze", "zone rally", "end game"]
    assert OWN.named("flat cone") == "flat umbrella"
    listed = {one.word for one in meanings("en") if one.listed}
    assert listed < NAMES
    assert NAMES - listed == {path.stem for path in resource("levels").glob("*.json") if path.stem != "ages"} | set(
        STAGES
    )


def test_what_somebody_typed_keeps_plain_words_and_has_those_of_the_trade_exchanged():
    own = Vocabulary({"open": "free", "alley": "tramline"})
    assert own.said("The point is open from the alley.") == "The point is free from the tramline."
    assert own.written("Racket face open, into the alley.") == "Racket face open, into the tramline."
    serve = own.drill(Drill.model_validate_json(sample("serve-open.drill.json").read_bytes()))
    words = own.card(card_words(serve, main_setting(serve), "stand-in"))
    text = " ".join(one.text for section in words.sections for one in section.sentences)
    assert words.title == "Serve, Then First Ball to the Open Half"
    assert "into the open half" in text


def test_what_is_said_may_be_said_again():
    once = OWN.said("Two baskets and a basket by the cone")
    assert once == "Two ball baskets and a ball basket by the umbrella"
    assert OWN.said(once) == once


def test_what_explains_a_word_speaks_the_academys_but_for_what_it_quotes():
    text = 'An alley, which others call “alley” or "alleys".'
    assert OWN.explained(text) == 'A tramline, which others call “alley” or "alleys".'


def test_without_words_nothing_is_touched():
    drill = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes())
    assert Vocabulary().drill(drill) is drill
    assert Vocabulary({"unheard of": "x"}).drill(drill) is drill
    assert Vocabulary().said("alley") == "alley"


def test_what_an_author_wrote_is_exchanged_but_no_id_and_no_region():
    raw = sample("wide-start.drill.json").read_text("utf-8").replace('"Wide Ball', '"Alley Ball')
    drill = Drill.model_validate_json(raw)
    told = OWN.drill(drill)
    assert told.title.startswith("Tramline Ball")
    assert told.progressions[0].changes.model_dump_json() == drill.progressions[0].changes.model_dump_json()
    assert [one.id for one in told.progressions] == [one.id for one in drill.progressions]


def test_a_cards_sentences_keep_what_they_refer_to():
    drill = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes())
    words = card_words(drill, main_setting(drill), "stand-in")
    told = Vocabulary({"service line": "short line", "tick": "mark"}).card(words)
    before = [sentence for section in words.sections for sentence in section.sentences]
    after = [sentence for section in told.sections for sentence in section.sentences]
    assert [one.about for one in after] == [one.about for one in before]
    text = " ".join(one.text for one in after)
    assert "short line" in text
    assert "service line" not in text


@pytest.mark.parametrize(("word", "many"), [("box", "boxes"), ("body", "bodies"), ("tray", "trays"), ("line", "lines")])
def test_the_plain_plural(word, many):
    assert plural(word) == many
