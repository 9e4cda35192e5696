"""Barriers: coaches' practice with no source, but for the age, which is that of ITF Rules of Tennis, Appendix VI."""

import pytest
from review.situations import AT, FEED, RALLY, REPLY, A, B, drill, keys, only, told

from designer.drill.items import Barrier, Line
from designer.drill.rules import Rule, UseStroke
from designer.drill.setting import setting_at
from designer.review.barriers import barrier_cautions
from designer.review.checks import accept, checks

NO_LOBS = Rule(id="no-lobs", never=True, must=UseStroke(do="use stroke", strokes=("lob",)))


def found(*records, **values):
    return list(barrier_cautions(told(*records, **values)))


def barrier(y=-14.5, **values):
    return Barrier(kind="barrier", id="barrier", corners=((-4.0, y), (4.0, y)), **values)


def test_a_barrier_is_told_of_and_worse_with_high_balls():
    assert keys(found(*RALLY, barrier(), NO_LOBS)) == ["barrier"]
    assert keys(found(*RALLY, barrier())) == ["barrier", "barrier-no-rule"]
    lob = REPLY.changed(stroke="lob")
    high = only(found(A, B, FEED, lob, barrier(), NO_LOBS), "barrier-high-ball")
    assert high.about == ("barrier", "reply")
    smash = REPLY.changed(stroke="smash")
    assert "barrier-high-ball" in keys(found(A, B, FEED, smash, barrier(), NO_LOBS))


def test_a_low_barrier_and_one_too_near():
    low = only(found(*RALLY, barrier(height=0.2), NO_LOBS), "barrier")
    assert "lower than a knee" in low.sentence.text
    # A hits from 12.80 m; a long stride is a yard.
    assert "barrier-near" in keys(found(*RALLY, barrier(-13.6), NO_LOBS))
    assert "barrier-near" not in keys(found(*RALLY, barrier(-13.8), NO_LOBS))


@pytest.mark.parametrize(("y", "expected"), [(-16.0, []), (-16.5, ["barrier-fence"])])
def test_a_barrier_stands_two_metres_clear_of_the_fence(y, expected):
    # The fence is 6.40 m behind the baseline, 18.29 m from the net: two metres before it is 16.29.
    near = [key for key in keys(found(*RALLY, barrier(y))) if key == "barrier-fence"]
    assert near == expected


def test_a_flat_line_mends_a_barrier():
    whole = drill(*RALLY, barrier(height=0.6, note="Soft."), NO_LOBS)
    mended = only(checks(whole), "barrier").mend(whole)
    flat = setting_at(mended, AT).items["barrier"]
    assert isinstance(flat, Line)
    assert (flat.corners, flat.marked, flat.note) == (barrier().corners, "throw-down", "Soft.")
    assert "barrier" not in keys(checks(mended))


def test_a_barrier_is_refused_for_under_tens():
    whole = drill(*RALLY, barrier(), NO_LOBS, age=(8, 12))
    refused = only(checks(whole), "barrier-young")
    assert refused.weight == "error"
    with pytest.raises(ValueError, match="only cautions can"):
        accept(whole, refused, "They are careful.")
    assert "barrier-young" not in keys(checks(refused.mend(whole)))
    assert "barrier-young" not in keys(checks(whole.changed(age=(10, 12))))


def test_no_barrier_for_beginners():
    whole = drill(*RALLY, barrier(), NO_LOBS)
    told_off = only(checks(whole, players="starter"), "barrier-beginners")
    assert told_off.danger
    assert isinstance(setting_at(told_off.mend(whole), AT).items["barrier"], Line)
    assert "barrier-beginners" not in keys(checks(whole, players="club"))
