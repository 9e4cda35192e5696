"""How long a card takes to read aloud: 42 words in 15 s is 168 a minute, half a minute is 84 (working budget of the trade)."""

import pytest
from review.situations import AT, RALLY, drill

from designer.bundle import sample
from designer.drill.drill import Drill
from designer.drill.setting import addresses
from designer.review.checks import checks
from designer.review.length import length_suggestions, spoken_words
from designer.wording.card import card_words

WON = next(record for record in RALLY if record.id == "won")


def with_note(words):
    noted = WON.changed(note=" ".join(["word"] * words) + ".")
    return drill(*(noted if record is WON else record for record in RALLY))


def test_only_what_is_heard_before_play_is_counted():
    short = drill(*RALLY)
    card = card_words(short, AT, "player")
    heard = " ".join(s.text for key in ("steps", "rules", "points") for s in card.section(key).sentences)
    assert spoken_words(short, AT) == len([word for word in heard.split() if any(map(str.isalnum, word))])


def test_twice_the_budget_is_said_with_its_seconds():
    before = spoken_words(with_note(100), AT) - 100  # a long note stands apart, under a head of its own
    assert list(length_suggestions(with_note(169 - before), AT)) == []
    (found,) = length_suggestions(with_note(170 - before), AT)
    assert (found.weight, found.key, found.at) == ("suggestion", "reads-long", AT)
    assert "take 61 s to read aloud" in found.sentence.text  # 170 words at 168 a minute, rounded up
    assert "reads-long" in [check.key for check in checks(with_note(200))]


@pytest.mark.parametrize("code", ["wide-start", "doubles-six", "hoop-red"])
def test_of_all_settings_the_longest_is_named(code):
    whole = Drill.model_validate_json(sample(f"{code}.drill.json").read_bytes())
    longest = max(spoken_words(whole, at) for at in addresses(whole))
    for found in length_suggestions(whole, None):
        assert spoken_words(whole, found.at) == longest
