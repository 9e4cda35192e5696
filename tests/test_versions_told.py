"""Each version of each sample is told in words that match its picture: the words turn with the places, and no check is new.

The oracle is language: in a mirrored drill left and right, deuce and ad, hands and turns change places and no other word
does; for the other wing forehand and backhand do too.
"""

import os
import re
from functools import cache

import pytest

from designer.bundle import sample
from designer.court.standards import ground
from designer.drill.drill import Drill
from designer.drill.setting import addresses, setting_at
from designer.play.sequence import sequence
from designer.play.versions import change_hand, mirror, swap_ends, swap_jobs, switch_wing
from designer.review.checks import checks
from designer.review.sides import side_words, texts
from designer.wording.card import card_words
from designer.wording.describe import describe

SAMPLES = sorted(path.name.removesuffix(".drill.json") for path in sample().glob("*.drill.json"))
VERSIONS = {
    "mirror": mirror,
    "switch-wing": switch_wing,
    "left-handed, strokes kept": lambda drill: change_hand(drill, drill.jobs[0].letter, "strokes"),
    "left-handed, paths kept": lambda drill: change_hand(drill, drill.jobs[0].letter, "paths"),
    "swap-ends": swap_ends,
    "swap-jobs": lambda drill: swap_jobs(drill, drill.jobs[0].letter, drill.jobs[1].letter),
}
SIDES = {"left": "right", "deuce": "ad", "clockwise": "anticlockwise"}
WINGS = {"forehand": "backhand", "forehands": "backhands"}

FIXED = {
    # By the rules a game begins from the right, in a mirrored drill too: ITF Rules of Tennis, rule 17.
    "deuce and ad": "@both",
    # It says that the two change places.
    "left for right": "@over",
}
FOR_OTHERS = re.compile(r"\nFor others\n.*")
DIRECTIONS = re.compile(
    r"\b(?:cross-court|down the line|wide|into either half|either half|through the middle|anywhere)\b(?: or cross-court\b)?"
)


@cache
def load(name):
    return Drill.model_validate_json(sample(f"{name}.drill.json").read_bytes())


@cache
def turned(name, version):
    return VERSIONS[version](load(name)).drill


@cache
def as_written(name, at):
    return told(load(name), at)


@cache
def keys_as_written(name):
    return {check.key for check in checks(load(name))}


def exchanged(text, words):
    both = words | {other: word for word, other in words.items()}

    def other(found):
        word = both[found[0].lower()]
        return word.capitalize() if found[0][0].isupper() else word

    return re.sub(rf"\b(?:{'|'.join(both)})\b", other, text, flags=re.IGNORECASE)


def told(drill, at):
    """The description without its title, which stays as it is written, and without its last line: code, date, version."""
    text = describe(drill, at).split("\n", 1)[1].rstrip().rpartition("\n\n")[0]
    for words, stand_in in FIXED.items():
        text = text.replace(words, stand_in)
    # A card for right-handers has a heading for whom its last word is; one for left-handers says it in the sentence.
    text = re.sub(r"\nLeft-handed\n  (?=Same)", "\nFor others\n  Left-handed: ", text)
    text = re.sub(r"\nLeft-handed\n", "\nFor others\n", text)
    return re.sub(r"(?<=-handed: )Same", "same", text)


# Every second setting by day, every one by night.
STEP = 1 if os.environ.get("HYPOTHESIS_PROFILE") == "thorough" else 2
CASES = [(name, at) for name in SAMPLES for at in list(addresses(load(name)))[::STEP]]
IDS = [f"{name} {at.progression}/{at.variation or ''}" for name, at in CASES]


@pytest.mark.parametrize(("name", "at"), CASES, ids=IDS)
def test_a_mirrored_drill_reads_the_same_with_its_sides_exchanged(name, at):
    assert told(turned(name, "mirror"), at) == exchanged(as_written(name, at), SIDES)


@pytest.mark.parametrize(("name", "at"), CASES, ids=IDS)
def test_for_the_other_wing_it_reads_the_same_with_wings_exchanged_too(name, at):
    before, after = as_written(name, at), told(turned(name, "switch-wing"), at)
    # Hands stay as they are: the last line is about them.
    mine, others = (FOR_OTHERS.sub("", text) for text in (before, after))
    mine = exchanged(mine, SIDES | WINGS)
    assert FOR_OTHERS.findall(before) == FOR_OTHERS.findall(after)
    if has_a_guess_that_stays(name):
        # Hit at the body, or a feed, a ball is taken as a forehand whichever side it is drawn on, so where it is sent
        # has another name. Nothing else differs.
        mine, others = DIRECTIONS.sub("@there", mine), DIRECTIONS.sub("@there", others)
    assert others == mine


@cache
def has_a_guess_that_stays(name):
    """Whether some ball's wing is guessed and comes out the same for the other wing."""
    both = (load(name), turned(name, "switch-wing"))
    for at in addresses(both[0]):
        before, after = (sequence(setting_at(d, at), ground(d.court), d.jobs) for d in both)
        if any(
            s.shot.wing is None and s.wing is not None and s.wing == after.step(s.shot.id).wing for s in before.steps
        ):
            return True
    return False


PLACES_SEEN_FROM_THE_NEAR_END = ("layout", "swap")
"""Where things stand level with the net, and in which order pairs are named."""


@pytest.mark.parametrize(("name", "at"), CASES, ids=IDS)
def test_from_the_other_end_each_player_s_left_and_right_stay(name, at):
    mine, others = (card_words(each, at, "stand-in") for each in (load(name), turned(name, "swap-ends")))
    for before, after in zip(mine.sections, others.sections, strict=True):
        assert before.heading == after.heading
        if before.key not in PLACES_SEEN_FROM_THE_NEAR_END:
            assert [s.text for s in after.sentences] == [ENDS.sub(other_end, s.text) for s in before.sentences]


ENDS = re.compile(r"\b(?:near|far)(?= end\b| pair\b)")


def other_end(found):
    return {"near": "far", "far": "near"}[found[0]]


PAIRS = [
    (name, version)
    for one, name in enumerate(SAMPLES)
    for two, version in enumerate(VERSIONS)
    if not (one + two) % (STEP + 1) or STEP == 1
]


@pytest.mark.parametrize(("name", "version"), PAIRS)
def test_no_version_brings_an_error_or_a_side_word_that_does_not_turn(name, version):
    drill = turned(name, version)
    found = checks(drill)
    assert [check.sentence.text for check in found if check.weight == "error"] == []
    assert [text for _, _, _, text in texts(drill) if side_words(text)] == []
    # Cautions are read afresh: what stands at one side only may now be in the way. On the samples nothing is.
    # Two rules that were said once for both may now have to be said twice.
    assert {check.key for check in found} <= keys_as_written(name) | {"wing-word", "reads-long"}
