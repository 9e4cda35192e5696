"""The drills that come with the program stand where their text says.

Everything here is invented but the court: ITF Rules of Tennis, Rule 1, in feet (net to baseline 39, net to service line
21, singles 27 wide, doubles 36); the red court is 36 by 18 ft, inside the ranges of the ITF's page on smaller courts.
A racket is 27 in and a stride is a yard, so that places are counted here in feet and never taken from the program.
"""

import itertools
from collections import Counter
from functools import cache

import pytest

from designer.bundle import sample
from designer.drill.places import locate
from designer.drill.setting import At, setting_at
from designer.storage.reading import open_drill

FOOT = 0.3048
RACKET, STRIDE = 27 / 12, 3
BASELINE, SERVICE, SINGLES, DOUBLES = 39, 21, 13.5, 18
RED_BASELINE, RED_SIDE = 18, 9


@cache
def drill_of(code):
    return open_drill(sample(f"{code}.drill.json")).drill


def feet(point):
    return tuple(round(value / FOOT, 3) + 0.0 for value in point)


HALF_BACK = (SERVICE + BASELINE) / 2
SPOTS = {
    ("shared-target", "p-together", "A"): (3 * RACKET, -BASELINE - STRIDE),
    ("shared-target", "p-together", "B"): (-3 * RACKET, BASELINE + STRIDE),
    ("one-lands-short", "p-points", "A"): (0, -BASELINE - STRIDE),
    ("one-lands-short", "p-points", "B"): (0, BASELINE + STRIDE),
    ("forehand-on-eight", "p-points", "A"): (0, -BASELINE - STRIDE),
    ("chalk-line", "p-points", "A"): (0, -BASELINE),
    ("chalk-line", "p-points", "B"): (0, BASELINE + STRIDE),
    ("wide-start", "p-fed", "A"): (0, -BASELINE - STRIDE),
    ("wide-start", "p-fed", "B"): (0, BASELINE + STRIDE),
    ("a-chooses", "p-change", "A"): (3 * RACKET, -BASELINE - STRIDE),
    ("a-chooses", "p-change", "B"): (-3 * RACKET, BASELINE + STRIDE),
    ("short-approach", "p-points", "A"): (0, -BASELINE - STRIDE),
    ("short-approach", "p-points", "B"): (0, BASELINE),
    ("volley-four", "p-four", "A"): (-4 * RACKET, -SERVICE + STRIDE),
    ("volley-four", "p-four", "B"): (4 * RACKET, -SERVICE + STRIDE),
    ("volley-four", "p-four", "C"): (4 * RACKET, SERVICE - STRIDE),
    ("volley-four", "p-four", "D"): (-4 * RACKET, SERVICE - STRIDE),
    ("hoop-red", "p-hand", "F"): (-2 * RACKET, -RED_BASELINE / 2),
    ("hoop-red", "p-hand", "A"): (0, -RED_BASELINE - RACKET),
    ("hoop-red", "p-hand", "B"): (-2 * RACKET, RED_BASELINE + 3 * STRIDE),
    ("hoop-red", "p-hand", "C"): (-RED_SIDE - 2 * STRIDE, -RED_BASELINE / 2),
    ("hoop-red", "p-hand", "D"): (-RED_SIDE - 2 * STRIDE, -RED_BASELINE / 2 - 2 * RACKET),
    ("doubles-six", "p-two", "A"): (4 * RACKET, -BASELINE - STRIDE),
    ("doubles-six", "p-two", "B"): (-4 * RACKET, -SERVICE / 2),
    ("doubles-six", "p-two", "C"): (-4 * RACKET, BASELINE + STRIDE),
    ("doubles-six", "p-two", "D"): (4 * RACKET, SERVICE / 2),
    ("return-past", "p-together", "B"): (-RACKET, BASELINE - 3 * STRIDE),
}


@pytest.mark.parametrize(("code", "progression", "letter"), SPOTS)
def test_people_stand_where_the_text_says(code, progression, letter):
    setting = setting_at(drill_of(code), At(progression))
    assert feet(locate(setting, setting.spot_of(letter).place)) == SPOTS[code, progression, letter]


CORNERS = {
    # 5 rackets by 4 strides, 1 racket in from the right singles line, 1 stride behind and inside.
    ("shared-target", "p-together", None, "target"): (0, -BASELINE + STRIDE, SINGLES - RACKET, -SERVICE - STRIDE),
    ("shared-target", "p-together", "v-baseline", "target"): (0, -BASELINE, SINGLES - RACKET, -SERVICE - STRIDE),
    ("shared-target", "p-together", "v-deeper", "target"): (
        0,
        -BASELINE + STRIDE,
        SINGLES - RACKET,
        -SERVICE - 2 * STRIDE,
    ),
    ("one-lands-short", "p-points", None, "depth"): (-SINGLES, -SERVICE - 2 * STRIDE, SINGLES, -BASELINE + 4 * STRIDE),
    ("one-lands-short", "p-points", "v-nearer", "depth"): (
        -SINGLES,
        -SERVICE - STRIDE,
        SINGLES,
        -SERVICE - STRIDE,
    ),
    ("one-lands-short", "p-points", "v-half-way", "depth"): (-SINGLES, -HALF_BACK, SINGLES, -HALF_BACK),
    # 4 rackets in from A's left singles line, and from the right one of left-handed B: on one line.
    ("forehand-on-eight", "p-points", None, "lane-a"): (
        -SINGLES + 4 * RACKET,
        -BASELINE + STRIDE,
        -SINGLES + 4 * RACKET,
        -SERVICE - STRIDE,
    ),
    ("forehand-on-eight", "p-points", None, "lane-b"): (
        -SINGLES + 4 * RACKET,
        SERVICE + STRIDE,
        -SINGLES + 4 * RACKET,
        BASELINE - STRIDE,
    ),
    ("forehand-on-eight", "p-points", None, "big-a"): (-SINGLES + 4 * RACKET, -BASELINE, SINGLES, -SERVICE),
    ("forehand-on-eight", "p-points", "v-seven", "lane-a"): (
        -RACKET,
        -BASELINE + STRIDE,
        -RACKET,
        -SERVICE - STRIDE,
    ),
    ("forehand-on-eight", "p-points", "v-nine", "lane-b"): (
        -3 * RACKET,
        SERVICE + STRIDE,
        -3 * RACKET,
        BASELINE - STRIDE,
    ),
    ("forehand-on-eight", "p-points", "v-one-hand", "lane-b"): (
        SINGLES - 4 * RACKET,
        SERVICE + STRIDE,
        SINGLES - 4 * RACKET,
        BASELINE - STRIDE,
    ),
    ("chalk-line", "p-points", None, "chalk"): (-SINGLES, -BASELINE - STRIDE, SINGLES, -BASELINE - STRIDE),
    ("chalk-line", "p-points", "v-two-strides", "chalk"): (
        -SINGLES,
        -BASELINE - 2 * STRIDE,
        SINGLES,
        -BASELINE - 2 * STRIDE,
    ),
    ("chalk-line", "p-points", "v-baseline", "chalk"): (-SINGLES, -BASELINE, SINGLES, -BASELINE),
    ("wide-start", "p-fed", None, "feed-zone"): (SINGLES - 2 * RACKET, -SERVICE - 3 * STRIDE, SINGLES, -SERVICE),
    ("wide-start", "p-fed", None, "reply-zone"): (-SINGLES, SERVICE, 0, BASELINE),
    ("wide-start", "p-fed", None, "tick"): (RACKET, -BASELINE - STRIDE / 2, RACKET, -BASELINE),
    ("wide-start", "p-fed", "v-four-rackets", "feed-zone"): (
        SINGLES - 4 * RACKET,
        -SERVICE - 3 * STRIDE,
        SINGLES,
        -SERVICE,
    ),
    ("wide-start", "p-fed", "v-tick", "tick"): (3 * RACKET, -BASELINE - STRIDE / 2, 3 * RACKET, -BASELINE),
    ("wide-start", "p-fed", "v-deeper", "reply-zone"): (-SINGLES, SERVICE + 2 * STRIDE, 0, BASELINE),
    ("wide-start", "p-fed", "v-one-racket", "feed-zone"): (SINGLES - RACKET, -SERVICE - 3 * STRIDE, SINGLES, -SERVICE),
    ("a-chooses", "p-change", "v-short-only", "front"): (
        -SINGLES,
        -SERVICE - 2 * STRIDE,
        SINGLES,
        -SERVICE - 2 * STRIDE,
    ),
    ("short-approach", "p-points", None, "zone"): (0, SERVICE + 2 * STRIDE, SINGLES, BASELINE),
    ("short-approach", "p-points", None, "feed-place"): (0, -SERVICE, SINGLES - RACKET, -SERVICE / 2),
    ("short-approach", "p-points", "v-whole", "zone"): (0, SERVICE, SINGLES, BASELINE),
    ("short-approach", "p-points", "v-three", "zone"): (SINGLES - 3 * RACKET, SERVICE + 2 * STRIDE, SINGLES, BASELINE),
    ("serve-open", "p-points", None, "wide"): (-SINGLES, 0, -3 * RACKET, SERVICE),
    ("serve-open", "p-points", None, "centre"): (-3 * RACKET, 0, 0, SERVICE),
    ("serve-open", "p-points", None, "open-half"): (0, 0, SINGLES, BASELINE),
    ("serve-open", "p-points", "v-past", "open-half"): (0, SERVICE, SINGLES, BASELINE),
    ("volley-four", "p-four", None, "near-net"): (-DOUBLES, -SERVICE, DOUBLES, 0),
    ("volley-four", "p-four", None, "keep-off"): (-DOUBLES, -2 * STRIDE, DOUBLES, 0),
    ("hoop-red", "p-hand", "v-half", "half"): (0, 0, RED_SIDE, RED_BASELINE),
    ("return-past", "p-points", None, "depth"): (-SINGLES, SERVICE + 2 * STRIDE, SINGLES, SERVICE + 2 * STRIDE),
    ("return-past", "p-points", "v-service-line", "depth"): (-SINGLES, SERVICE, SINGLES, SERVICE),
    ("return-past", "p-points", "v-half-way", "depth"): (-SINGLES, HALF_BACK, SINGLES, HALF_BACK),
}


@pytest.mark.parametrize(("code", "progression", "variation", "id"), CORNERS)
def test_lines_and_areas_lie_where_the_text_says(code, progression, variation, id):
    item = setting_at(drill_of(code), At(progression, variation)).items[id]
    corners = [feet(corner) for corner in (getattr(item, "shape", None) or item).corners]
    across, along = sorted(x for x, _ in corners), sorted(y for _, y in corners)
    assert (across[0], along[0], across[-1], along[-1]) == CORNERS[code, progression, variation, id]


PLACES = {
    ("a-chooses", "p-change", "half-way"): (0, -HALF_BACK),
    ("volley-four", "p-four", "disc-2"): (DOUBLES + RACKET / 2, -2 * STRIDE),
    ("hoop-red", "p-hand", "hoop-hand"): (2 * RACKET, RED_BASELINE / 2),
    ("hoop-red", "p-hand", "hoop-other"): (-2 * RACKET, RED_BASELINE / 2),
}


@pytest.mark.parametrize(("code", "progression", "id"), PLACES)
def test_kit_stands_where_the_text_says(code, progression, id):
    setting = setting_at(drill_of(code), At(progression))
    assert feet(locate(setting, setting.items[id].place)) == PLACES[code, progression, id]


def test_the_discs_of_the_serve_split_each_box_in_two():
    setting = setting_at(drill_of("serve-open"), At("p-points"))
    places = sorted(feet(setting.items[id].place.at) for id in ("disc-deuce", "disc-ad"))
    assert [x for x, _ in places] == [-3 * RACKET, 3 * RACKET]
    assert [y for _, y in places] == [SERVICE, SERVICE]


def test_the_thrown_ball_bounces_one_racket_to_the_hand_side_and_two_strides_inside_the_baseline():
    setting = setting_at(drill_of("hoop-red"), At("p-hand"))
    assert feet(locate(setting, setting.shots["throw"].to)) == (RACKET, -RED_BASELINE + 2 * STRIDE)


def test_the_feed_at_the_net_is_hit_from_the_service_line():
    setting = setting_at(drill_of("volley-four"), At("p-four"))
    assert feet(setting.shots["feed"].contact.at) == (-4 * RACKET, -SERVICE)


def test_six_rounds_of_doubles_give_everyone_each_partner_twice_and_each_place_three_times():
    table = setting_at(drill_of("doubles-six"), At("p-two")).swaps["partners"].table
    pairs = Counter(
        frozenset(pair)
        for near_back, near_net, far_back, far_net in table
        for pair in ((near_back, near_net), (far_back, far_net))
    )
    assert pairs == {frozenset(pair): 2 for pair in itertools.combinations("ABCD", 2)}
    assert Counter(letter for row in table for letter in (row[0], row[2])) == dict.fromkeys("ABCD", 3)
    assert Counter(letter for row in table for letter in (row[1], row[3])) == dict.fromkeys("ABCD", 3)


def test_after_two_rounds_of_doubles_a_stays_and_the_others_move_one_place():
    table = setting_at(drill_of("doubles-six"), At("p-two")).swaps["partners"].table
    for before, after in itertools.pairwise(table[:3]):
        near_back, near_net, far_back, far_net = before
        assert after == (near_back, far_net, near_net, far_back)


def test_three_rounds_at_the_net_give_everyone_each_partner_once():
    table = setting_at(drill_of("volley-four"), At("p-four")).swaps["partners"].table
    pairs = Counter(frozenset(row[side : side + 2]) for row in table for side in (0, 2))
    assert pairs == {frozenset(pair): 1 for pair in itertools.combinations("ABCD", 2)}


def discs(setting):
    """How many flat discs a setting needs: at each piece of a line, at corners that no painted lines cross, and alone."""
    crossings = {(x, y) for x in (-SINGLES, SINGLES, -DOUBLES, DOUBLES) for y in (-BASELINE, BASELINE)}
    crossings |= {(x, y) for x in (-SINGLES, 0, SINGLES) for y in (-SERVICE, SERVICE)}
    crossings |= {(0, -BASELINE), (0, BASELINE)}
    count = 0
    for item in setting.items.values():
        copies = 2 if item.both_ends else 1
        if item.kind == "disc":
            count += copies
        elif getattr(item, "marked", None) == "discs":
            corners = [feet(corner) for corner in getattr(item, "shape", item).corners]
            if item.kind == "line":
                count += copies * item.pieces
            else:
                places = set(itertools.product({x for x, _ in corners}, {y for _, y in corners}))
                count += copies * len(places - crossings)
    return count


@pytest.mark.parametrize(
    ("code", "progression", "count"),
    [
        ("shared-target", "p-together", 8),
        ("one-lands-short", "p-points", 10),
        ("forehand-on-eight", "p-points", 10),
        ("chalk-line", "p-points", 0),
        ("a-chooses", "p-change", 2),
        ("short-approach", "p-points", 2),
        ("serve-open", "p-points", 2),
        ("volley-four", "p-four", 4),
        ("hoop-red", "p-hand", 3),
        ("doubles-six", "p-two", 0),
        ("return-past", "p-points", 5),
    ],
)
def test_the_layout_needs_as_many_discs_as_the_text_asks_for(code, progression, count):
    assert discs(setting_at(drill_of(code), At(progression))) == count
