"""A record that names nothing opens and is told of, in words that say what and where."""

import pytest
from review.situations import AT, END, FEED, RALLY, REPLY, START, A, B, drill, keys, only, run, told

from designer.drill.base import Place, place
from designer.drill.conditions import Event, In, Outcome
from designer.drill.drill import Court
from designer.drill.items import Area, Cone, Rectangle
from designer.drill.movement import Shot
from designer.drill.people import Job
from designer.drill.rules import Keep, Part, Rule, Start, Swap
from designer.drill.setting import setting_at
from designer.review.references import drill_errors, reference_errors

ZONE = Area(kind="area", id="zone", shape=Rectangle(form="rectangle", corners=((0.0, 7.0), (4.0, 11.0))))
CONE = Cone(kind="cone", id="cone", place=place(1.0, 5.0))


def keep(area, **values):
    return Rule(id="rule", must=Keep(do="keep", where=(In(area=area, judged="bounce"),)), **values)


def errors(*records, **values):
    return list(reference_errors(told(*records, **values)))


def test_a_whole_drill_has_no_errors():
    assert errors(*RALLY, ZONE, keep("zone"), run("A", "feed", 2.0, -12.0)) == []


@pytest.mark.parametrize(
    "record",
    [
        CONE.changed(place=Place(on="gone")),
        REPLY.changed(to=Place(on="gone")),
        REPLY.changed(contact=Place(on="gone")),
        REPLY.changed(after="gone"),
        run("A", "gone", 0.0, -12.0),
        run("A", "feed", 0.0, 0.0).changed(to=Place(on="gone")),
        Part(id="part", kind="forced", shots=("gone",)),
        Part(id="part", kind="open", after="gone"),
        Part(id="part", kind="forced", until=(Event(what="played", of=("gone",)),)),
        keep("gone"),
        keep("right moon"),
        keep("zone", parts=("gone",)),
        keep("zone", of=("gone",)),
        keep("zone", when=(In(area="gone"),)),
        keep("zone", when=(Event(what="played", and_=(Event(what="landed", where=(In(area="gone"),)),)),)),
        Start(id="again", shot="gone"),
        START.changed(good=(In(area="gone"),)),
        START.changed(once=Event(what="reached", of=("gone",))),
        Swap(id="swap", on=(Event(what="played", of=("gone",)),)),
    ],
)
def test_every_name_that_names_nothing_is_told_of(record):
    found = errors(*RALLY, ZONE, record)
    assert keys(found) == ["points-nowhere"]
    assert found[0].weight == "error"
    assert found[0].about[0] == record.id
    assert "gone" in found[0].sentence.text or "right moon" in found[0].sentence.text
    assert found[0].at == AT


@pytest.mark.parametrize(
    "record",
    [
        REPLY.changed(called_by="Z"),
        CONE.changed(hand_of="Z"),
        keep("zone", who=("Z",)),
        keep("zone", called_by=("Z", "other")),
        START.changed(by=("Z",)),
        START.changed(serves={"Z": 2}),
        START.changed(score={"Z": 1}),
        Swap(id="swap", on=(Event(what="finished"),), moves={"A": "Z"}),
        Swap(id="swap", on=(Event(what="finished"),), moves={"Z": "winner"}),
        Swap(id="swap", on=(Event(what="finished"),), table=(("A", "B"), ("Z", "A"))),
    ],
)
def test_every_letter_without_a_job_is_told_of_and_can_be_given_one(record):
    whole = drill(*RALLY, ZONE, record)
    found = errors(*RALLY, ZONE, record)
    assert keys(found) == ["no-job"]
    assert "the drill has no job Z" in found[0].sentence.text
    assert found[0].mend(whole).jobs[-1] == Job(letter="Z")


def test_people_of_the_game_need_no_job():
    assert errors(*RALLY, ZONE, keep("zone", who=("server", "winner", "far"))) == []


def test_a_thing_of_the_wrong_kind_is_told_of():
    found = errors(*RALLY, CONE, keep("cone"))
    assert keys(found) == ["wrong-kind"]
    assert found[0].about == ("rule", "cone")


def test_a_name_that_is_nearly_right_is_offered_and_written():
    found = only(errors(*RALLY, ZONE.changed(id="reply-zone"), keep("reply-zon")), "points-nowhere")
    assert "did you mean “reply-zone”?" in found.sentence.text
    mended = found.mend(drill(*RALLY, ZONE.changed(id="reply-zone"), keep("reply-zon")))
    assert setting_at(mended, AT).rules["rule"].must.where[0].area == "reply-zone"


def test_a_name_that_means_nothing_is_taken_out_of_a_list():
    part = Part(id="part", kind="forced", shots=("reply", "xyz"))
    whole = drill(*RALLY, part)
    mended = only(errors(*RALLY, part), "points-nowhere").mend(whole)
    assert setting_at(mended, AT).parts["part"].shots == ("reply",)


def test_a_place_that_leads_nowhere_is_told_of():
    ring = (CONE.changed(place=Place(on="other")), CONE.changed(id="other", place=Place(on="cone")))
    assert keys(errors(*RALLY, *ring)) == ["points-nowhere", "points-nowhere"]
    to_nothing = (REPLY.changed(to=None), CONE.changed(place=Place(on="reply")))
    found = only(errors(*RALLY, *to_nothing), "points-nowhere")
    assert "lands, but that is not drawn" in found.sentence.text


def test_somebody_without_a_place_is_told_of_once_and_can_be_given_one():
    whole = drill(A, FEED, REPLY, START, END)
    found = only(errors(A, FEED, REPLY, START, END), "no-place")
    assert "B has no place on the court" in found.sentence.text
    given = setting_at(found.mend(whole), AT).spot_of("B")
    assert given.place.at == (0.0, 12.8016)  # a stride behind the baseline across the net: 39 ft and 1 yd


def test_what_is_in_play_must_be_a_part_of_this_court():
    assert errors(*RALLY, in_play="right half") == []
    found = only(errors(*RALLY, in_play="rihgt half"), "points-nowhere")
    assert setting_at(found.mend(drill(*RALLY, in_play="rihgt half")), AT).in_play == "right half"
    red = errors(*RALLY, in_play="doubles court", court=Court(standard="red"))
    assert keys(red) == ["points-nowhere"]


def test_circles_are_told_of_with_every_shot_in_them():
    ring = [Shot(id=id, by="A", after=after) for id, after in (("one", "three"), ("two", "one"), ("three", "two"))]
    found = only(errors(A, B, *ring), "shot-circle")
    assert set(found.about) == {"one", "two", "three"}
    parts = [Part(id="x", kind="open", after="y"), Part(id="y", kind="forced", after="x")]
    assert only(errors(*RALLY, *parts), "part-circle").about == ("x", "y")


def test_a_start_without_a_shot_takes_the_first_one():
    found = only(errors(A, B, FEED, REPLY, START.changed(shot=None), END), "no-shot")
    mended = found.mend(drill(A, B, FEED, REPLY, START.changed(shot=None), END))
    assert setting_at(mended, AT).starts["start"].shot == "feed"
    nothing = only(errors(A, B, START.changed(shot=None)), "no-shot")
    assert nothing.sentence.text == "There is no shot to start with."
    assert nothing.mend is None


def test_a_rule_that_is_not_known_is_an_error():
    rule = Rule(id="rule", must={"do": "hop"}, breach=Outcome(then="lose the point"))
    found = only(errors(*RALLY, rule), "unknown-rule")
    assert "“hop”" in found.sentence.text
    assert found.weight == "error"


def test_a_court_that_is_not_known_is_an_error_and_the_drill_still_opens():
    found = only(drill_errors(drill(*RALLY, court=Court(standard="tenis"))), "no-court")
    assert "there are: green, orange, red, tennis" in found.sentence.text.lower()
    assert found.mend(drill(*RALLY, court=Court(standard="tenis"))).court.standard == "tennis"
    assert keys(drill_errors(drill(*RALLY, court=Court(standard="red", hosted_on="moon")))) == ["no-court"]
    assert keys(drill_errors(drill(*RALLY, court=Court(standard="tennis", hosted_on="red")))) == ["no-host"]
    assert keys(drill_errors(drill(*RALLY, court=Court(standard="red", hosted_on="tennis")))) == []


def test_a_main_progression_that_is_not_there():
    found = only(drill_errors(drill(*RALLY, main="p-gone")), "points-nowhere")
    assert found.mend(drill(*RALLY, main="p-gone")).main is None
