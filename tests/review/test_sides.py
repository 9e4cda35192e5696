import pytest
from hypothesis import given
from hypothesis import strategies as st
from review.situations import AT, RALLY, REPLY, drill, only

from designer.drill.drill import Changes, Progression, Variation
from designer.drill.setting import setting_at
from designer.review.sides import side_cautions, side_words, with_tokens


@pytest.mark.parametrize(
    ("text", "tokens"),
    [
        ("Stay on the left side.", "Stay on the {left} side."),
        ("Left, then right.", "{left}, then {right}."),
        ("serve to the deuce court, then ad", "serve to the {deuce} court, then {ad}"),
        ("A left-hander mirrors it.", "A {left}-hander mirrors it."),
        ("move clockwise", "move {clockwise}"),
        ("Backhand only", "{backhand} only"),
    ],
)
def test_side_words_become_tokens(text, tokens):
    assert with_tokens(text) == tokens


@pytest.mark.parametrize(
    "text",
    [
        "the {left} side",
        "All right, go right away.",
        "out if left",
        "no ball left over",
        "upright stance, brightly",
        "At deuce the next point wins.",
        "an ADVICE, AD 2026",
        "",
    ],
)
def test_other_meanings_of_the_same_words_stay(text):
    assert side_words(text) == ()
    assert with_tokens(text) == text


@given(st.text(alphabet="lefright {}-deucad.,", max_size=40))
def test_mending_twice_is_mending_once(text):
    mended = with_tokens(text)
    assert with_tokens(mended) == mended
    assert side_words(mended) == ()


def test_texts_are_found_wherever_a_version_would_turn_them():
    whole = drill(
        *RALLY,
        cues=("Look left.",),
        safety=("Nothing on the right.",),
        title="The Left Side",  # a title is a name and stays
        sources=("Right and Left, 1999",),
    ).changed(
        progressions=(
            Progression(
                id="p",
                name="From the left",
                changes=drill(*RALLY, REPLY.changed(note="to the ad side")).progressions[0].changes,
                harder=(Variation(id="v", name="Further right", changes=Changes(ball="left-over ball")),),
            ),
        )
    )
    said = [check.sentence.text for check in side_cautions(whole)]
    assert len(said) == 5
    assert any("{ad}" in text for text in said)


def test_one_text_in_several_settings_is_told_of_once_and_mended_everywhere():
    noted = REPLY.changed(note="Keep left.")
    variation = Variation(id="v", changes=Changes(shots=(noted.changed(pace="soft"),)))
    base = drill(*RALLY, noted)
    whole = base.changed(progressions=(base.progressions[0].changed(harder=(variation,)),))
    found = only(side_cautions(whole), "side-word")
    mended = found.mend(whole)
    assert setting_at(mended, AT).shots["reply"].note == "Keep {left}."
    assert mended.progressions[0].harder[0].changes.shots[0].note == "Keep {left}."
    assert list(side_cautions(mended)) == []


def test_a_wing_alone_is_a_suggestion_and_a_side_a_caution():
    found = {check.key: check.weight for check in side_cautions(drill(*RALLY, cues=("Forehand only", "Go left")))}
    assert found == {"wing-word": "suggestion", "side-word": "caution"}


def test_other_languages_have_other_words():
    assert list(side_cautions(drill(*RALLY, cues=("Es ist right so",), language="de"))) == []
    assert list(side_cautions(drill(*RALLY, cues=("Go right.",), language="en-GB"))) != []
