"""The rounds of a swap as small courts: everybody is drawn once a round, and nobody walks over the court's net."""

import itertools
from collections import Counter

import pytest
from wording.making import DOUBLES, HERE, SINGLES, drill_of, spot

from designer.bundle import sample
from designer.court.standards import ground
from designer.drawing.primitives import Path, Words
from designer.drawing.rotation import rotation_picture, rotation_strip
from designer.drawing.svg import svg
from designer.drawing.themes import theme
from designer.drill.drill import Court, Drill
from designer.drill.rules import Finish, Swap
from designer.drill.setting import main_setting

PAPER = theme("paper")
UNIT = 0.24
AFTER_FIVE = ({"what": "starts", "count": 5},)
THIRD = spot("C", -8.0, 0.0, task="waits")
RING = Swap(id="s", on=AFTER_FIVE, moves={"A": "B", "B": "C", "C": "A"})


def drawn(*records, columns=4, **values):
    return rotation_picture(drill_of(*records, **values), HERE, unit=UNIT, theme=PAPER, columns=columns)


def letters(mark):
    return [shape.text for shape in mark.primitives if isinstance(shape, Words)]


def ways(mark):
    return [shape for shape in mark.primitives if isinstance(shape, Path) and shape.style.dash]


def where(mark):
    """Each letter's place from the middle of its own court; the court is the first shape."""
    corners = mark.primitives[0].points
    x0, y0 = (sum(axis) / len(corners) for axis in zip(*corners, strict=True))
    words = [shape for shape in mark.primitives if isinstance(shape, Words)]
    return {shape.text: (round(shape.at[0] - x0, 2), round(shape.at[1] - y0, 1)) for shape in words}


def test_a_ring_of_three():
    picture = drawn(*SINGLES, THIRD, RING, jobs="ABC")
    assert [sorted(letters(mark)) for mark in picture.marks] == [[n, "A", "B", "C"] for n in "123"]
    first, second, third = map(where, picture.marks)
    # Whoever was A stands where B stood, B waits where C did, C plays as A.
    assert second["A"] == first["B"]
    assert second["B"] == first["C"]
    assert third["A"] == first["C"]
    assert [len(ways(mark)) for mark in picture.marks] == [3, 3, 3]
    # Where play ends with the third nobody walks back to the first.
    over = Finish(id="end", kind="race", to=5, rounds=3)
    by_rounds = RING.changed(on=({"what": "round"},))
    assert [len(ways(mark)) for mark in drawn(*SINGLES, THIRD, by_rounds, over, jobs="ABC").marks] == [3, 3, 0]
    assert [len(ways(mark)) for mark in drawn(*SINGLES, THIRD, RING, over, jobs="ABC").marks] == [3, 3, 3]


def test_who_goes_to_the_other_end_goes_round_the_net():
    outer = ground(Court()).outer
    (first, _) = drawn(*SINGLES, RING.changed(moves={"A": "B", "B": "A"}, ends=True)).marks
    x0 = sum(x for x, _ in first.primitives[0].points) / 4
    assert len(ways(first)) == 2
    for way in ways(first):
        assert abs(way.points[len(way.points) // 2][0] - x0) > outer


def test_who_changes_jobs_and_stays_is_told_the_job_and_walks_nowhere():
    (first, second) = drawn(*SINGLES, RING.changed(moves={"A": "B", "B": "A"})).marks
    assert ways(first) == ways(second) == []
    assert sorted(letters(second)) == ["2", "A", "B", "as A", "as B"]
    assert where(second)["A"] == where(first)["A"]


def test_sides_change_with_the_places():
    sides = Swap(id="m", on=({"what": "starts", "count": 10},), mirrored=True)
    swap = RING.changed(moves={"A": "B", "B": "A"}, ends=True)
    first, second = (where(mark) for mark in drawn(spot("A", 3.0, -12.8), spot("B", -3.0, 12.8), swap, sides).marks)
    assert first["A"][0] == pytest.approx(3.0)
    assert second["A"][0] == pytest.approx(-3.0)


def test_two_in_one_place_are_drawn_beside_each_other():
    # Both letters can be read: their rings, 6.2 u each, do not lie on one another.
    picture = drawn(*SINGLES, THIRD, spot("D", -8.0, 0.2, task="waits"), RING, jobs="ABCD")
    places = where(picture.marks[0])
    assert abs(places["C"][0] - places["D"][0]) >= 2 * 6.2 * UNIT - 0.01


def test_where_nobody_moves_or_it_cannot_be_told_nothing_is_drawn():
    assert drawn(*SINGLES) is None
    assert drawn(*SINGLES, THIRD, RING.changed(moves={"A": "C"}), jobs="ABC") is None  # loses somebody
    table = (("A", "B", "C", "D"), ("A", "D", "C", "B"))
    partners = Swap(id="s", on=({"what": "round"},), table=table)
    made = drill_of(*DOUBLES, partners, jobs="ABCD")
    assert rotation_picture(made, HERE, unit=UNIT, theme=PAPER, people=3) is None


def test_who_wins_is_not_guessed():
    stays = Swap(id="s", on=({"what": "finished"},), moves={"loser": "C", "C": "loser"})
    picture = drawn(*SINGLES, THIRD, stays, jobs="ABC")
    assert len(picture.marks) == 1
    assert ways(picture.marks[0]) == []


def test_the_academy_s_six_rounds_stand_in_rows_on_one_picture():
    drill = Drill.model_validate_json(sample("doubles-six.drill.json").read_bytes())
    picture = rotation_picture(drill, main_setting(drill), unit=UNIT, theme=PAPER, people=4, columns=3)
    assert len(picture.marks) == 6
    left, low, right, high = picture.extent
    for mark in picture.marks:
        assert left <= mark.bounds[0] < mark.bounds[2] <= right
        assert low <= mark.bounds[1] < mark.bounds[3] <= high
    for row in (picture.marks[:3], picture.marks[3:]):
        for one, other in itertools.pairwise(row):
            assert one.bounds[2] < other.bounds[0]
    assert svg(picture, PAPER, 400).count('class="round"') == 6


def test_a_card_s_strip_is_no_wider_than_its_room_and_for_three_or_more():
    def strip(name, width):
        drill = Drill.model_validate_json(sample(f"{name}.drill.json").read_bytes())
        return rotation_strip(drill, main_setting(drill), width=width, theme=PAPER)

    for width in (120.0, 183.0, 400.0):
        shown = strip("doubles-six", width)
        assert len(shown.marks) == 6
        assert shown.extent[2] - shown.extent[0] <= width * shown.unit
        in_each_row = Counter(round(mark.bounds[3] / shown.unit / 10) for mark in shown.marks).values()
        assert len(set(in_each_row)) == 1, "none stands alone in the last row"
        # The fifth comes in by a rule in words: drawn, that person would wait in all six.
        assert all("E" not in letters(mark) for mark in shown.marks)
    assert strip("a-chooses", 400.0) is None  # two
    assert strip("one-lands-short", 400.0) is None  # it depends on who wins
