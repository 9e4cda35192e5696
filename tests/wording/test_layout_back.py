"""Laid out from the list's words alone, everything stands where it was drawn, as nearly as a racket and strides go.

Within a quarter racket across and a quarter stride along: half of the half counts that are given. In metres and in feet and
inches, and where a rule depends on it, within the last figure that is printed.
"""

import re

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from wording.making import DOUBLES as FOUR
from wording.making import SINGLES as TWO
from wording.making import spot, told
from wording.places_read import BASELINE, DOUBLES, FOOT, RACKET, SERVICE, SINGLES, STRIDE, Court, metres, unfolded

from designer.bundle import sample
from designer.drill.base import place
from designer.drill.drill import Drill
from designer.drill.items import Area, Barrier, Cone, Disc, Ellipse, Hoop, Line, Obstacle, Polygon, Rectangle
from designer.drill.places import locate
from designer.drill.setting import At, addresses, setting_at
from designer.wording.layout import layout_of
from designer.wording.telling import telling

UNITS = ("rackets", "metres", "feet")
CLOSE = {"rackets": (RACKET / 4, STRIDE / 4), "metres": (0.0051, 0.0051), "feet": (0.0128, 0.0128)}
"""How near in each unit: a quarter of the count, half a centimetre, half an inch; and a tenth of a millimetre."""
EXACT = 0.0301
"""A distance nearer than 3 cm to a count is that count."""
SLACK = 0.0052
"""Within 5 mm of a line is on the line."""

painted_across = st.sampled_from((0.0, SINGLES, -SINGLES, DOUBLES, -DOUBLES))
painted_along = st.sampled_from((0.0, SERVICE, BASELINE))
across = painted_across | st.integers(-24, 24).map(lambda n: n * RACKET / 2) | st.floats(-8.9, 8.9)
along = painted_along | st.integers(0, 19).map(lambda n: n * STRIDE) | st.floats(0.0, 18.0)
far = st.booleans()
units = st.sampled_from(UNITS)
cares = st.sampled_from((None, "about", "exact"))
courts = st.sampled_from(((None, None), (6.4008, 3.6576)))
SMALL = {
    # In feet: ITF's page on smaller courts (red 36 by 18, orange 60 by 21 with the tennis court's service lines).
    "red": Court(singles=9 * FOOT, doubles=None, service=None, baseline=18 * FOOT),
    "orange": Court(singles=10.5 * FOOT, doubles=None, service=21 * FOOT, baseline=30 * FOOT),
}


def stands(right, away, is_far):
    """The point that lies so for the player at that end."""
    return (-right, away) if is_far else (right, -away)


def lines(*records, units="rackets", run_off=(None, None), **values):
    court = {} if run_off[0] is None else {"run_back": run_off[0], "side_run": run_off[1]}
    return [sentence.text for sentence in layout_of(told(*records, units=units, court=court, **values))]


def where(line):
    """What a line of the list says after the name of the thing."""
    return line.partition(": ")[2].removesuffix(".").split(". ")[0]


def near(units, care):
    return (EXACT, EXACT) if care == "exact" and units == "rackets" else CLOSE[units]


def head(line):
    """What a line of the list says before the colon."""
    return line.partition(": ")[0]


def says_measure(line, unit):
    """Whether rackets and strides do not do: the line gives metres and says "measure", never one without the other."""
    metres = unit == "rackets" and re.search(r"\d m\b", line.partition(": ")[2]) is not None
    assert ("measure" in head(line)) == metres, line
    return metres


def assert_near(read, drawn, units, care, words):
    slacks = (RACKET / 4, RACKET / 4) if "against" in words else near(units, care)
    for got, meant, slack in zip(read, drawn, slacks, strict=True):
        assert abs(got - meant) <= slack + SLACK, f"{words!r} is {read}, drawn at {drawn}"


@given(across, along, far, units, cares, courts)
@example(8.2, 5.0, True, "rackets", None, (6.4008, 3.6576))
@example(2.0, 0.0, False, "rackets", "exact", (None, None))
def test_a_thing(right, away, is_far, unit, care, run_off):
    cone = Cone(kind="cone", id="cone", care=care, place=place(*stands(right, away, is_far)))
    line = lines(*TWO, cone, units=unit, run_off=run_off)[0]
    assert care == "exact" or not says_measure(
        line, unit
    )  # a quarter of a count is near enough where no rule depends on it
    # Whose end it is stands in the words; the net's own line is seen by A, at the near end.
    x, y = cone.place.at
    owner = "B" if y > 0.005 else "A"
    seen = (-x, y) if owner == "B" else (x, -y)
    if "’s" in line:
        assert f"{owner}’s" in line
    else:
        assert abs(x) <= 0.005, line  # it has neither side nor end: the middle of the net
    assert_near(Court(*run_off).place(where(line)), seen, unit, care, line)


@given(st.sampled_from(sorted(SMALL)), across, st.floats(0.0, 12.0), far, units, cares)
def test_a_thing_on_a_small_court(standard, right, away, is_far, unit, care):
    disc = Disc(kind="disc", id="disc", care=care, place=place(*stands(right, away, is_far)))
    court = {"standard": standard}
    line = next(s.text for s in layout_of(told(*TWO, disc, units=unit, court=court)) if s.key == "item:disc")
    says_measure(line, unit)
    x, y = disc.place.at
    assert_near(SMALL[standard].place(where(line)), (-x, y) if y > 0.005 else (x, -y), unit, care, line)


@given(across, along, far, units)
def test_where_two_share_an_end_the_end_is_said(right, away, is_far, unit):
    disc = Disc(kind="disc", id="disc", place=place(*stands(right, away, is_far)))
    line = lines(*FOUR, disc, units=unit, jobs="ABCD")[0]
    x, y = disc.place.at
    words, _, end = where(line).rpartition(", ")
    if abs(y) <= 0.005:
        assert end == "seen from the near end" or abs(x) <= 0.005
        words = where(line).removesuffix(", seen from the near end")
    else:
        assert end == f"at the {'far' if y > 0 else 'near'} end"
    assert_near(Court().place(words), (-x, y) if y > 0.005 else (x, -y), unit, None, line)


@given(across, st.floats(0.3, 18.0) | st.sampled_from((SERVICE, BASELINE)), far, units)
def test_a_person(right, away, is_far, unit):
    x, y = stands(right, away, is_far)
    who = "B" if is_far else "A"
    others = [each for each in TWO if each.job != who]
    said = lines(*others, spot(who, x, y), units=unit)
    (line,) = [line for line in said if line.startswith((f"{who}:", "A and B:"))]
    assert_near(Court().place(where(line)), (right, away), unit, None, line)


@given(across, across, along, along, far, units, cares)
@example(0.0, SINGLES, SERVICE, BASELINE, True, "rackets", "exact")
@example(-1.0, 1.0, 0.0, 18.0, False, "feet", None)
def test_a_rectangle(x0, x1, y0, y1, is_far, unit, care):
    if abs(x1 - x0) < 0.35 or abs(y1 - y0) < 0.35:
        return  # no target is so small
    corners = (stands(x0, y0, is_far), stands(x1, y1, is_far))
    area = Area(kind="area", id="zone", care=care, shape=Rectangle(form="rectangle", corners=corners))
    line = lines(*TWO, area, units=unit)[0]
    says_measure(line, unit)
    left, right, front, back = Court().rectangle(where(line))
    wide, deep = near(unit, care)
    drawn = (*sorted((x0, x1)), *sorted((y0, y1)))
    for got, meant, slack in zip((left, right, front, back), drawn, (wide, wide, deep, deep), strict=True):
        assert abs(got - meant) <= slack + SLACK, f"{line!r}: {(left, right, front, back)}, drawn {drawn}"


@given(across, across, along, far, units, cares)
def test_a_line_across(x0, x1, away, is_far, unit, care):
    if abs(x1 - x0) < 0.35:
        return
    corners = (stands(x0, away, is_far), stands(x1, away, is_far))
    line = lines(*TWO, Line(kind="line", id="line", care=care, corners=corners, marked="tape"), units=unit)[0]
    row, _, columns = where(line).removeprefix("tape, ").partition(", ")
    wide, deep = near(unit, care)
    if abs(away) <= 0.005:
        x0, x1 = (corner[0] for corner in corners)  # on the net's own line it is seen from the near end
    assert Court().along(row) == pytest.approx(away, abs=deep + SLACK), line
    assert sorted(Court().columns(columns)) == pytest.approx(sorted((x0, x1)), abs=wide + SLACK), line


@given(across, along, along, far, units, cares)
def test_a_line_along(right, y0, y1, is_far, unit, care):
    if abs(y1 - y0) < 1.05:
        return  # a tick: only where it begins matters
    corners = (stands(right, y0, is_far), stands(right, y1, is_far))
    line = lines(*TWO, Line(kind="line", id="line", care=care, corners=corners, marked="tape"), units=unit)[0]
    column, _, rows = where(line).removeprefix("tape, ").partition(", ")
    wide, deep = near(unit, care)
    assert Court().across(column) == pytest.approx(right, abs=wide + SLACK), line
    assert sorted(Court().rows(rows)) == pytest.approx(sorted((y0, y1)), abs=deep + SLACK), line


@given(across, st.floats(0.05, 0.99), far, units, cares)
def test_a_tick_begins_at_the_baseline_and_is_as_long_as_it_says(right, long, is_far, unit, care):
    corners = (stands(right, BASELINE, is_far), stands(right, BASELINE + long, is_far))
    line = lines(*TWO, Line(kind="line", id="tick", care=care, corners=corners, marked="tape"), units=unit)[0]
    says_measure(line, unit)
    length, row, column = where(line).removeprefix("tape, ").split(", ")
    assert row == f"behind {'B' if is_far else 'A'}’s baseline"
    wide, deep = near(unit, care)
    assert metres(length.removesuffix(" long")) == pytest.approx(long, abs=deep + SLACK), line
    assert Court().across(column) == pytest.approx(right, abs=wide + SLACK), line


@given(across, along, across, along, far, units, cares)
def test_a_line_or_a_barrier_that_runs_askew_by_its_ends(x0, y0, x1, y1, is_far, unit, care):
    if abs(x0 - x1) < 0.02 or abs(y0 - y1) < 0.02 or min(y0, y1) < 0.02:
        return  # along or across
    corners = (stands(x0, y0, is_far), stands(x1, y1, is_far))
    barrier = Barrier(kind="barrier", id="barrier", care=care, corners=corners)
    tape = Line(kind="line", id="tape", care=care, corners=corners, name="tape")
    for line in lines(*TWO, barrier, tape, units=unit)[:2]:
        says_measure(line, unit)
        said = where(line).removeprefix("from ").split(" to ")
        for words, drawn in zip(said, ((x0, y0), (x1, y1)), strict=True):
            assert_near(Court().place(words), drawn, unit, care, line)


@given(across, st.floats(1.0, 16.0), st.floats(0.4, 3.0), st.floats(0.4, 3.0), far, units, cares)
def test_a_round_area_by_its_middle_and_how_wide_and_deep(right, away, half_wide, half_deep, is_far, unit, care):
    if away < half_deep + 0.02:
        return  # over the net
    low, high = (right - half_wide, away - half_deep), (right + half_wide, away + half_deep)
    shape = Ellipse(form="ellipse", corners=(stands(*low, is_far), stands(*high, is_far)))
    line = lines(*TWO, Area(kind="area", id="zone", care=care, shape=shape), units=unit)[0]
    says_measure(line, unit)
    centre, _, size = where(line).removeprefix("round, centred ").partition("; ")
    assert_near(Court().place(centre), (right, away), unit, care, line)
    wide, deep = (metres(words.rsplit(" ", 1)[0]) for words in size.split(", "))
    assert (wide, deep) == (
        pytest.approx(2 * half_wide, abs=near(unit, care)[0] + SLACK),
        pytest.approx(2 * half_deep, abs=near(unit, care)[1] + SLACK),
    )


@given(st.lists(st.tuples(across, along, far), min_size=1, max_size=4), units, cares, st.sampled_from((TWO, FOUR)))
def test_things_of_a_kind_stand_in_one_line_and_every_one_is_found(drawn, unit, care, people):
    places = [stands(*point) for point in drawn]
    hoops = [Hoop(kind="hoop", id=f"h-{n}", care=care, place=place(*point)) for n, point in enumerate(places)]
    line = lines(*people, *hoops, units=unit, jobs="ABCD"[: len(people)])[0]
    says_measure(line, unit)
    said = [court_place(words, people is TWO) for words in where(line).split("; ") for words in unfolded(words)]
    wide, deep = near(unit, care)

    def close(one, other):
        return abs(one[0] - other[0]) <= wide + 2 * SLACK and abs(one[1] - other[1]) <= deep + 2 * SLACK

    for hoop in hoops:
        assert any(close(found, hoop.place.at) for found in said), f"{line}: {hoop.place.at} is not among {said}"
    for found in said:
        assert any(close(found, hoop.place.at) for hoop in hoops), f"{line}: nothing stands at {found}"


def court_place(words, one_an_end):
    """The court's own point that words say: whose end it is stands in them, or which end behind them."""
    if one_an_end:
        far = "B’s" in words
    else:
        words, _, end = words.rpartition(", ") if words.endswith((" end",)) else (words, "", "")
        far = "far" in end
    right, away = Court().place(words)
    return stands(right, away, far)


@given(st.lists(st.tuples(across, st.floats(0.3, 17.0)), min_size=3, max_size=4), far, units)
def test_an_obstacle_by_its_corners(corners, is_far, unit):
    post = Obstacle(kind="obstacle", id="post", corners=tuple(stands(x, y, is_far) for x, y in corners))
    line = lines(*TWO, post, units=unit)[0]
    for words, drawn in zip(where(line).removeprefix("corners ").split("; "), corners, strict=True):
        assert_near(Court().place(words), drawn, unit, None, line)


points = st.tuples(across, st.floats(0.3, 17.0) | st.sampled_from((SERVICE, BASELINE)), far)


@given(st.lists(points, min_size=3, max_size=5), units)
def test_a_shape_by_its_corners_at_one_end_or_both(corners, unit):
    drawn = tuple(stands(*corner) for corner in corners)
    area = Area(kind="area", id="zone", shape=Polygon(form="polygon", corners=drawn))
    line = lines(*TWO, area, units=unit)[0]
    said = where(line).removeprefix("corners ").split("; ")
    for words, (right, away, is_far) in zip(said, corners, strict=True):
        owner = "B" if is_far else "A"
        assert "’s" not in words or f"{owner}’s" in words
        assert_near(Court().place(words), (right, away), unit, None, line)
    if len({is_far for _, _, is_far in corners}) == 2:
        assert all("’s" in words for words in said)  # whose end it is stands with each


SAMPLES = sorted(path.name for path in sample().glob("*.drill.json"))


@pytest.mark.parametrize("unit", UNITS)
@pytest.mark.parametrize("name", SAMPLES)
def test_the_academy_s_people_stand_where_the_list_says(name, unit):
    drill = Drill.model_validate_json(sample(name).read_bytes())
    if drill.court.standard != "tennis":
        return
    court = Court(drill.court.run_back, drill.court.side_run)
    for at in addresses(drill):
        setting = setting_at(drill, At(at.progression, at.variation))
        said = layout_of(telling(drill, at, units=unit))
        for person in setting.spots.values():
            if person.task != "plays":
                continue
            lines_of = [s.text for s in said if s.key.startswith("spot:")]
            (line,) = [line for line in lines_of if person.job in line.partition(": ")[0].replace("(", " ").split()]
            x, y = locate(setting, person.place)
            words = where(line).split(", A at the")[0].split(", B at the")[0].split(", C at the")[0]
            words = words.removesuffix(", near end").removesuffix(", far end")
            assert_near(court.place(words), (-x, y) if y > 0 else (x, -y), unit, None, line)


def test_a_foot_is_a_foot():
    # The reader's own measures, so that nothing here leans on the program's.
    assert pytest.approx(8 * RACKET) == 6 * STRIDE  # eight rackets are six strides
    assert pytest.approx(12 * RACKET) == 27 * FOOT
