"""Edits that fit a drill to the numbers: after each, the check that offered it has gone."""

from review.situations import AT, END, FEED, RALLY, REPLY, START, WON, A, B, drill, only

from designer.drill.base import place
from designer.drill.conditions import Outcome
from designer.drill.items import Area, Rectangle
from designer.drill.rules import Keep, Part, Rule
from designer.drill.setting import setting_at
from designer.numbers.accuracy import PURPOSES
from designer.numbers.shots import shot_numbers
from designer.review.numbers import number_checks

TINY = Area(kind="area", id="tiny", name="box", shape=Rectangle(form="rectangle", corners=((-2.5, 8.0), (-1.5, 9.0))))
AIM = Rule(id="aim", of=("reply",), must=Keep(do="keep", where=({"area": "tiny"},)))
FORCED = Part(id="forced", kind="forced", shots=("reply",), failed=Outcome(then="lose the point"))
HARD = (FORCED, Part(id="open", after="forced", kind="open"))


def found(whole, key):
    return [check for check in number_checks(whole, AT, "club") if check.key == key]


def test_a_target_is_made_as_large_as_its_purpose_wishes():
    whole = drill(A, B, FEED, REPLY.changed(to=place(-2.0, 8.5)), TINY, AIM.changed(purpose="normal aim"))
    (asked,) = found(whole, "target-rate")
    mended = asked.mend(whole)
    assert found(mended, "target-rate") == []
    (target,) = shot_numbers(mended, AT, "club").shot("reply").targets
    # The spread decides the size; the sideline and the net take a little off.
    assert PURPOSES["normal aim"][0] - 0.12 < target.chance < PURPOSES["normal aim"][0] + 0.02
    (x0, y0), (x1, y1) = setting_at(mended, AT).items["tiny"].shape.corners
    assert -4.1149 <= min(x0, x1) < -2.5
    assert 0 <= min(y0, y1) < 8.0


def test_a_finish_is_shortened_to_the_minutes():
    whole = drill(A, B, FEED, REPLY, START, WON, END.changed(to=60), minutes=10)
    (long,) = found(whole, "finish-too-long")
    mended = long.mend(whole)
    assert 5 < setting_at(mended, AT).finish.to < 60
    assert found(mended, "finish-too-long") == []


def test_a_start_score_evens_what_favours_one_side():
    hard = Rule(id="aim", of=("reply",), parts=("forced",), must=Keep(do="keep", where=({"area": "tiny"},)))
    whole = drill(A, B, FEED, REPLY.changed(to=place(-2.0, 8.5)), START, WON, END, TINY, hard, *HARD)
    favoured = only(number_checks(whole, AT, "club"), "side-favoured")
    mended = favoured.mend(whole)
    assert set(setting_at(mended, AT).starts["start"].score) == {"A"}
    assert found(mended, "side-favoured") == []


def test_without_a_start_there_is_no_start_score_to_give():
    hard = Rule(id="aim", of=("reply",), parts=("forced",), must=Keep(do="keep", where=({"area": "tiny"},)))
    whole = drill(A, B, FEED, REPLY.changed(to=place(-2.0, 8.5)), WON, END, TINY, hard, *HARD)
    assert only(number_checks(whole, AT, "club"), "side-favoured").mend is None
    assert RALLY
