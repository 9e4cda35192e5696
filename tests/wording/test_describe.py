"""A setting as plain text: any drill can be told, in any unit, to any reader, and no sentence is broken."""

import functools
import re
from pathlib import Path

import pytest
import strategies
from hypothesis import given
from hypothesis import strategies as st

from designer.bundle import sample
from designer.drill.drill import Drill
from designer.drill.setting import At, addresses, find_setting, main_setting, setting_at, variations
from designer.wording.card import card_words
from designer.wording.changes import changes_in_words, short_changes
from designer.wording.describe import describe
from designer.wording.sentence import ENDINGS

UNITS = ("rackets", "metres", "feet")
READERS = ("player", "coach", "stand-in")
SAMPLES = sorted(Path(sample("wide-start.drill.json")).parent.glob("*.drill.json"))


@functools.cache
def drill_in(path):
    return Drill.model_validate_json(path.read_text("utf-8"))


def sentences_of(card):
    found = [sentence for section in card.sections for sentence in section.sentences]
    return found if card.left_handed is None else [*found, card.left_handed]


@given(strategies.drills(), st.sampled_from(UNITS), st.sampled_from(READERS))
def test_any_drill_can_be_told(drill, units, reader):
    for at in addresses(drill):
        text = describe(drill, at, units)
        assert text.endswith("\n")
        card = card_words(drill, at, reader, units=units)
        for sentence in sentences_of(card):
            assert sentence.text
            assert "\x01" not in sentence.text
            assert "\x02" not in sentence.text
            assert sentence.missing or sentence.text.endswith(ENDINGS), sentence.text[-40:]
        changes_in_words(drill, at)
        assert len(short_changes(drill, at)) <= 47


@given(strategies.drills())
def test_every_sentence_has_a_key_of_its_own(drill):
    for at in addresses(drill):
        for reader in READERS:
            keys = [
                sentence.key for section in card_words(drill, at, reader).sections for sentence in section.sentences
            ]
            assert len(keys) == len(set(keys))


OWN_WORDS = ("care:", "cue:", "watch:")
"""Sentences that are the author's from end to end."""


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_no_sentence_of_a_sample_is_broken(path):
    drill = drill_in(path)
    for at in addresses(drill):
        hyphened = {id for id in setting_at(drill, at).ids() if "-" in id} - WORDS_OF_THE_TRADE
        for reader, units in (*((reader, "rackets") for reader in READERS), ("coach", "metres"), ("stand-in", "feet")):
            for sentence in sentences_of(card_words(drill, at, reader, units=units)):
                said = sentence.text
                for broken in ("  ", " ,", " .", ",,", "..", "{", "'"):
                    assert broken not in said, said
                assert not hyphened & set(re.findall(r"[a-z][a-z0-9]*(?:-[a-z0-9]+)+", said)), said
                assert not said[0].islower(), said
                assert sentence.key.startswith(OWN_WORDS) or not re.search(r"\bNone\b", said), said


WORDS_OF_THE_TRADE = {"half-way", "cross-court", "keep-off"}
"""Ids of the samples that are also words."""


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_every_sample_says_whom_to_stop_for_and_that_the_court_must_be_inspected(path):
    drill = drill_in(path)
    for at in addresses(drill):
        text = describe(drill, at)
        assert "anyone calls “stop”" in text
        assert text.index("No other cautions from the drawing; inspect the court.") > text.index("Take care")
        player = card_words(drill, at, "player").section("care")
        assert any("“stop”" in sentence.text for sentence in player.sentences)


FACTS = {
    # What the text of each drill says, in the words a reader would look for; taken from the texts, not from the program.
    "shared-target": (
        ["A’s target", "B’s target", "half pace", "20 together in 4 min", "no score", "8 flat discs", "one bounce"],
        ["1 stride behind the service line", "1 stride inside the baseline", "the receiver calls"],
    ),
    "one-lands-short": (
        ["First to 15", "“short”", "+3", "middle four rackets", "past the depth line", "10 flat discs"],
        ["2 strides behind the service line", "C comes in for the loser", "reaches 8", "First to 11, not 15"],
    ),
    "forehand-on-eight": (
        ["First to 11 by 2", "15–15", "forehand only", "The hitter calls; the opponent may ask", "untouched forehand"],
        ["four-racket side", "eight-racket side", "B left-handed", "five discs", "9 rackets wide"],
    ),
    "chalk-line": (
        [
            "1 stride behind A’s baseline",
            "A calls A’s feet; B may ask",
            "A lob by B: replay",
            "First to 11, or whoever leads after 6 min",
        ],
        ["both feet inside the baseline at A’s last hit", "no higher than A’s shoulder", "chalk line on the baseline"],
    ),
    "wide-start": (
        ["bounces and hits into the feed area", "high forehand cross-court into the reply zone", "point to B"],
        ["20 starts", "one more start each", "After every five starts A and B change jobs and ends", "the point is on"],
        ["a new ball past A’s service line", "B judges A’s foot", "feed area 4 rackets wide", "basket, chalk"],
    ),
    "a-chooses": (
        [
            "From A’s third hit on, A may play into B’s left half",
            "a volley: point lost",
            "First to 7, or whoever leads after 6 min",
        ],
        ["A’s first two balls land in B’s right half", "untouched", "centre line", "From A’s fifth hit on"],
    ),
    "short-approach": (
        ["into the approach zone", "lobs or passes to either side", "first volley or smash", "untouched pass or lob"],
        ["a foot on or inside the service line", "After every five starts A and B change jobs and ends", "18 balls"],
        ["from behind the baseline", "C and D come in for A and B", "20 starts", "2 flat discs"],
    ),
    "serve-open": (
        ["two tries, deuce and ad in turn", "A double fault: point to B", "Past the service line", "untouched return"],
        [
            "after a serve in the wide part, A wins with ball 3 unreturned in the open half",
            "20 starts",
            "change jobs and ends",
            "2 flat discs",
        ],
    ),
    "volley-four": (
        [
            "After four hits",
            "Three rounds, each from 0: first pair to 5",
            "keep-off strip: point lost",
            "between the receiver’s knee and shoulder",
        ],
        [
            "higher than a raised racket: point lost",
            "A and D v C and B",
            "for each of the pair",
            "Softer ball",
            "at both ends",
        ],
    ),
    "hoop-red": (
        ["F throws", "18 together from six starts each", "ages 6 to 8", "6 red", "2 flat hoops", "3 flat discs"],
        ["Ball 2 in the hoop on A’s right", "after one bounce", "A becomes B, B becomes C and C becomes A", "red foam"],
    ),
    "doubles-six": (
        [
            "From ball 4 all play the point out",
            "B or D wins with an untouched volley",
            "Six rounds, each from 0: first pair to 5",
        ],
        [
            "A and D v B and C",
            "level totals share",
            "C lobs",
            "the receiving pair calls",
            "half-way between the net and the service line",
        ],
    ),
    "return-past": (
        [
            "A wins with 12 points or more from twelve starts",
            "the return past the depth line",
            "two tries, deuce and ad in turn",
        ],
        [
            "1 point to A",
            "A ball strikes the depth line: replay",
            "5 flat discs",
            "A wins with 9 points or more, not 12",
        ],
    ),
}


@pytest.mark.parametrize("name", FACTS)
def test_each_sample_says_what_its_text_says(name):
    path = next(path for path in SAMPLES if path.name.startswith(name))
    drill = drill_in(path)
    text = describe(drill, main_setting(drill)).lower()
    for fact in (fact for facts in FACTS[name] for fact in facts):
        assert fact.lower() in text


def test_a_setting_that_is_not_there_is_refused():
    drill = drill_in(SAMPLES[0])
    with pytest.raises(KeyError):
        describe(drill, At("p-nowhere"))


def test_the_text_of_a_harder_form_says_what_is_in_force_there():
    drill = drill_in(next(path for path in SAMPLES if path.name.startswith("short-approach")))
    (harder, *_) = [v for degree, v in variations(drill.progressions[2]) if degree == "harder"]
    wide = describe(drill, At(drill.progressions[2].id))
    narrow = describe(drill, At(drill.progressions[2].id, harder.id))
    assert "from B’s left singles line to the centre line extended" in wide
    assert "from B’s left singles line 3 rackets in" in narrow
    assert find_setting(drill, "3/harder") == At(drill.progressions[2].id, harder.id)
