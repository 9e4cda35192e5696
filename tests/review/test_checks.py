"""The review as a whole: what comes first, what is said once, what an author has accepted, and the academy's drills."""

import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from review.situations import AT, END, FEED, HOUSE, RALLY, REPLY, A, B, changes, drill, keys, only, run, spot

import designer
from designer.bundle import sample
from designer.drill.base import Place, place
from designer.drill.conditions import Event, In, Outcome
from designer.drill.drill import Accepted, Court, Drill, Progression, Variation
from designer.drill.edits import put
from designer.drill.items import Area, Barrier, Cone, Rectangle
from designer.drill.movement import Run, Shot
from designer.drill.people import Spot
from designer.drill.rules import Keep, Part, Points, Rule, Start
from designer.drill.setting import At, addresses
from designer.review.checks import NO_OTHER, accept, accepted_checks, checks, dangers
from designer.wording.card import card_words

CONE = Cone(kind="cone", id="cone", place=place(1.0, -12.4))
RUN = run("A", "feed", 2.0, -12.0)
ORDER = ["error", "caution", "suggestion"]
SAMPLES = sorted(path.name for path in sample().glob("*.drill.json"))


def test_a_drill_in_order_has_no_checks():
    assert checks(drill(*RALLY)) == ()
    assert NO_OTHER == "No other cautions from the drawing; inspect the court."


def test_errors_come_first_and_dangers_before_other_cautions():
    whole = drill(
        A, B, FEED, REPLY, END, CONE, RUN, CONE.changed(id="lost", place=Place(on="gone")), cues=("Look left.",)
    )
    found = checks(whole)
    assert [check.weight for check in found] == sorted((check.weight for check in found), key=ORDER.index)
    cautions = [check.danger for check in found if check.weight == "caution"]
    assert cautions == [True, False]


def test_dangers_looked_for_alone_are_those_of_the_whole_review():
    risky = drill(A, B, FEED, REPLY, END, CONE, RUN)
    assert [found.key for found in dangers(risky, AT)] == ["object-on-run"]
    assert dangers(accept(risky, dangers(risky, AT)[0], "a flat one"), AT) == ()
    for name in SAMPLES[:4]:
        whole = Drill.model_validate_json(sample(name).read_bytes())
        for at in addresses(whole):
            assert dangers(whole, at) == tuple(found for found in checks(whole, at) if found.danger)


def test_every_module_that_tells_of_a_danger_is_looked_through_for_dangers_alone():
    import inspect
    import re

    from designer import review

    folder = Path(review.__path__[0])
    tell = {path.stem for path in folder.glob("*.py") if "danger=True" in path.read_text(encoding="utf-8")}
    looked = set(re.findall(r"(\w+)\((?:told|drill)", inspect.getsource(dangers)))
    parts = {path.stem: path.read_text(encoding="utf-8") for path in folder.glob("*.py") if path.stem != "checks"}
    assert tell == {stem for stem, text in parts.items() if looked & set(re.findall(r"^def (\w+)", text, re.MULTILINE))}


def test_a_setting_is_checked_by_itself_with_the_drill_as_a_whole():
    base = drill(*RALLY, court=Court(standard="moon"))
    second = Progression(id="q", changes=changes(CONE, RUN))
    whole = base.changed(progressions=(*base.progressions, second))
    assert "object-on-run" not in keys(checks(whole, AT))
    assert "object-on-run" in keys(checks(whole, At("q")))
    assert all("no-court" in keys(checks(whole, at)) for at in addresses(whole))
    with pytest.raises(KeyError):
        checks(whole, At("gone"))


def test_what_all_settings_share_is_said_once_where_it_first_appears():
    base = drill(*RALLY, CONE, RUN)
    whole = base.changed(progressions=(*base.progressions, Progression(id="q"), Progression(id="r")))
    assert only(checks(whole), "object-on-run").at == AT


def test_what_an_author_accepts_is_left_out_and_still_there_with_its_reason():
    whole = drill(*RALLY, CONE, RUN)
    caution = only(checks(whole), "object-on-run")
    accepted = accept(whole, caution, "The cone is soft and flat.")
    assert checks(accepted) == ()
    ((found, acceptance),) = accepted_checks(accepted)
    assert (found.key, acceptance.reason) == ("object-on-run", "The cone is soft and flat.")
    # The card prints what was accepted, not the reason alone.
    care = card_words(accepted, AT, "coach").section("care")
    assert any(f"{caution.sentence.text} Accepted by the author: The cone is" in each.text for each in care.sentences)
    # Another cone on the run is another caution.
    another = drill(*RALLY, CONE, RUN, CONE.changed(id="cone-2")).changed(accepted=accepted.accepted)
    assert only(checks(another), "object-on-run").about == ("run", "cone-2")


@pytest.mark.parametrize(
    "change",
    [
        lambda whole: put(whole, AT, CONE.changed(place=place(1.0, -12.41))),  # the thing itself
        lambda whole: put(whole, AT, A.changed(place=place(0.1, -12.8))),  # who runs starts elsewhere
        lambda whole: whole.changed(court=whole.court.changed(wet=True)),
        lambda whole: whole.changed(age=(11, 14)),
        lambda whole: whole.changed(turned=("mirrored",)),
        lambda whole: whole.changed(jobs=(whole.jobs[0].changed(hand="left"), *whole.jobs[1:])),
    ],
    ids=["thing", "start", "wet", "age", "version", "hand"],
)
def test_an_acceptance_lapses_when_what_it_rests_on_changes(change):
    whole = drill(*RALLY, CONE, RUN)
    accepted = accept(whole, only(checks(whole), "object-on-run"), "Soft and flat.")
    changed = change(accepted)
    assert "object-on-run" in keys(checks(changed))
    assert not any(acceptance.reason == "Soft and flat." for _, acceptance in accepted_checks(changed))
    again = accept(changed, only(checks(changed), "object-on-run"), "Still soft.")
    assert [each.reason for each in again.accepted] == ["Still soft."]
    assert "object-on-run" not in keys(checks(again))


def test_an_acceptance_about_where_somebody_is_lapses_with_the_run_that_takes_them_there():
    near = spot("C", 3.0, -12.2)
    there = run("A", "feed", 2.4, -12.2, purpose="reach")
    whole = drill(*RALLY, near, there, jobs="ABC")
    accepted = accept(whole, only(checks(whole), "too-close"), "Both hold their rackets low.")
    assert "too-close" not in keys(checks(accepted))
    assert "too-close" in keys(checks(put(accepted, AT, there.changed(to=place(2.5, -12.2)))))


def test_an_acceptance_outlives_what_it_does_not_rest_on():
    whole = drill(*RALLY, CONE, RUN)
    accepted = accept(whole, only(checks(whole), "object-on-run"), "Soft and flat.")
    other = put(accepted, AT, CONE.changed(id="cone-2", place=place(5.0, 9.0))).changed(title="Another title")
    assert "object-on-run" not in keys(checks(other))


def test_an_acceptance_does_not_reach_into_a_variation():
    base = drill(*RALLY, CONE, RUN)
    rung = base.progressions[0].changed(harder=(Variation(id="fast", name="Faster"),))
    whole = base.changed(progressions=(rung,))
    accepted = accept(whole, only(checks(whole, AT), "object-on-run"), "Soft and flat.")
    assert "object-on-run" not in keys(checks(accepted, AT))
    harder = At("p", "fast")
    both = accept(accepted, only(checks(accepted, harder), "object-on-run"), "Soft there too.")
    assert "object-on-run" not in keys(checks(both))
    assert len(both.accepted) == 2


def test_a_caution_from_numbers_is_accepted_too():
    far = Shot(id="third", by="B", after="reply", contact=place(6.0, 9.0), to=place(0.0, -9.0))
    whole = drill(*RALLY, far)
    late = only(checks(whole, AT, players="club"), "out-of-reach")
    accepted = accept(whole, late, "They know what is coming.")
    assert "out-of-reach" not in keys(checks(accepted, AT, players="club"))
    assert [found.key for found, _ in accepted_checks(accepted, AT, players="club")] == ["out-of-reach"]


def test_an_acceptance_that_names_nothing_covers_its_kind():
    whole = drill(*RALLY, CONE, RUN, accepted=(Accepted(check="object-on-run", reason="Soft ones."),))
    assert checks(whole) == ()


def test_only_cautions_are_accepted_and_only_with_a_reason():
    broken = drill(
        *RALLY, CONE.changed(place=Place(on="gone")), accepted=(Accepted(check="points-nowhere", reason="x"),)
    )
    error = only(checks(broken), "points-nowhere")
    with pytest.raises(ValueError, match="only cautions can"):
        accept(broken, error, "It is fine.")
    whole = drill(*RALLY, CONE, RUN)
    with pytest.raises(ValueError, match="say why"):
        accept(whole, only(checks(whole), "object-on-run"), "  ")


def test_every_mend_puts_its_own_check_right():
    whole = drill(
        A,
        FEED,
        REPLY.changed(after="fed"),
        CONE.changed(place=Place(on="repy"), note="Keep left."),
        house=HOUSE.changed(stopped=None),
        court=Court(standard="tenis"),
        main="gone",
    )
    found = checks(whole)
    mends = [check for check in found if check.mend is not None]
    assert len(mends) >= 7
    for check in mends:
        left = {(other.key, other.sentence.text) for other in checks(check.mend(whole))}
        assert (check.key, check.sentence.text) not in left, check.sentence.text


def test_mends_one_after_another_end():
    whole = drill(
        A, FEED, REPLY.changed(after="fed"), CONE.changed(note="Keep left."), house=HOUSE.changed(stopped=None)
    )
    for _ in range(30):
        mend = next((check.mend for check in checks(whole) if check.mend is not None), None)
        if mend is None:
            break
        whole = mend(whole)
    assert not [check for check in checks(whole) if check.mend is not None]


@pytest.mark.parametrize("name", SAMPLES)
def test_the_academy_s_drills_have_no_errors(name):
    whole = Drill.model_validate_json(sample(name).read_bytes())
    assert [check.sentence.text for check in checks(whole) if check.weight == "error"] == []


@pytest.mark.parametrize("name", SAMPLES)
def test_no_sentence_has_a_loose_end(name):
    whole = Drill.model_validate_json(sample(name).read_bytes())
    for check in checks(whole):
        text = check.sentence.text
        assert text[0] == text[0].upper()
        assert text.endswith((".", "?", "!", '."'))
        assert "None" not in text


NAMES = ("feed", "reply", "cone", "zone", "part", "gone")
names = st.sampled_from(NAMES)
letters = st.sampled_from(("A", "B", "Z"))
maybe = st.none() | names
corners = st.tuples(st.floats(-9, 9), st.floats(-17, 17))
places = st.builds(Place, on=st.none() | names | letters, at=corners)
areas = st.sampled_from(("zone", "gone", "right half", "the baseline", "the moon"))
ins = st.builds(In, area=areas, judged=st.sampled_from((None, "bounce", "one foot")))
events = st.builds(
    Event, what=st.sampled_from(("played", "landed", "won", "reached")), of=st.tuples(names), where=st.tuples(ins)
)
shapes = st.builds(Rectangle, form=st.just("rectangle"), corners=st.tuples(corners, corners))
records = st.one_of(
    st.builds(Spot, id=names, job=letters, place=places),
    st.builds(Cone, kind=st.just("cone"), id=names, place=places, both_ends=st.booleans()),
    st.builds(Barrier, kind=st.just("barrier"), id=names, corners=st.tuples(corners, corners)),
    st.builds(Area, kind=st.just("area"), id=names, shape=shapes, marked=st.sampled_from((None, "discs"))),
    st.builds(Shot, id=names, by=letters, after=maybe, to=st.none() | places, contact=st.none() | places),
    st.builds(Run, id=names, by=letters, during=maybe, to=places, via=st.tuples(corners)),
    st.builds(Part, id=names, kind=st.sampled_from(("forced", "open")), after=maybe, until=st.tuples(events)),
    st.builds(Rule, id=names, must=st.builds(Keep, do=st.just("keep"), where=st.tuples(ins)), of=st.tuples(names)),
    st.builds(Points, id=names, on=st.tuples(events), gives=st.just(Outcome(then="points", value=1))),
    st.builds(Start, id=names, shot=maybe, once=st.none() | events),
)


@given(st.lists(records, max_size=9, unique_by=lambda record: record.id), st.sampled_from(("tennis", "red", "moon")))
def test_whatever_opens_is_reviewed_and_mended(some, court):
    # What the records allow opens, however little sense it makes; the review never gives up on it.
    whole = drill(*some, court=Court(standard=court))
    for check in checks(whole):
        assert check.sentence.text
        if check.mend is not None:
            mended = check.mend(whole)
            assert mended != whole, check.sentence.text
            checks(mended)


def test_the_review_loads_nothing_heavy():
    # The window must take its first key at once; the review runs at the first pause after it.
    script = "import sys, designer.review.checks, designer.court.readings; print(*sys.modules)"
    root = Path(designer.__file__).parent.parent
    done = subprocess.run([sys.executable, "-c", script], cwd=root, capture_output=True, text=True, check=True)
    loaded = {name.partition(".")[0] for name in done.stdout.split()}
    assert "designer" in loaded
    assert not loaded & {"numpy", "scipy", "shapely", "reportlab", "pikepdf", "PySide6"}
