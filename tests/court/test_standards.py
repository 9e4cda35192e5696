"""Courts against the rules of the game and the tables of its federation.

Sources: ITF Rules of Tennis, Rule 1; ITF Technical Booklet 2015, table 5, page 53 ("table 5" below); ITF Tennis10s page
"about smaller courts" and ITF Rules of Tennis, Appendix VI (early Spanish edition) for the small courts.
"""

import json
import math

import pytest
from shapely.geometry import Polygon

from designer.bundle import resource
from designer.court.standards import court_names, court_standard, ground, known_court, to_metres
from designer.drill.drill import Court

FOOT = 0.3048  # international foot, exact


@pytest.fixture
def tennis():
    return ground(Court(standard="tennis"))


def line(ground, name):
    return next(line for line in ground.lines if line.name == name)


def test_all_courts_are_read():
    assert {"tennis", "red", "orange", "green"} <= set(court_names())
    for name in court_names():
        assert court_standard(name).name == name


@pytest.mark.parametrize("name", ["tennis", "red", "orange"])
def test_every_length_stands_beside_its_source(name):
    def lengths(value):
        if isinstance(value, dict):
            if {"feet", "inches", "metres"} & value.keys():
                yield value
            else:
                for inner in value.values():
                    yield from lengths(inner)

    data = json.loads(resource("courts", f"{name}.json").read_text("utf-8"))
    found = list(lengths(data))
    assert len(found) >= 10
    assert all(len(value["source"]) > 10 for value in found)


def test_the_tennis_court_is_exact_feet(tennis):
    # ITF Rules of Tennis, Rule 1: 78 ft long, 27 and 36 ft wide, service lines 21 ft from the net.
    assert tennis.baseline == 11.8872  # 39 ft of 0.3048 m, exact
    assert tennis.service_line == 6.4008  # 21 ft
    assert tennis.singles == 4.1148  # 13.5 ft
    assert tennis.doubles == 5.4864  # 18 ft


@pytest.mark.parametrize(
    ("measured", "criterion", "tolerance"),
    [
        # Table 5, "criterion" and "tolerance".
        (lambda g: 2 * g.baseline, 23.774, 0.024),
        (lambda g: 2 * g.doubles, 10.973, 0.011),
        (lambda g: g.doubles - g.singles, 1.372, 0.005),
        (lambda g: g.singles, 4.115, 0.005),
        (lambda g: 2 * g.singles, 8.233, 0.008),
        (lambda g: g.baseline, 11.887, 0.022),
        (lambda g: g.service_line, 6.401, 0.016),
        (lambda g: 2 * g.service_line, 12.802, 0.013),
        (lambda g: 2 * g.net.ends_x, 12.802, 0.023),
        (lambda g: g.net.ends_x, 6.401, 0.016),
        (lambda g: math.hypot(2 * g.doubles, 2 * g.baseline), 26.184, 0.026),
    ],
)
def test_the_tennis_court_is_within_the_tolerances_of_table_5(tennis, measured, criterion, tolerance):
    assert measured(tennis) == pytest.approx(criterion, abs=tolerance)


@pytest.mark.parametrize(
    ("across", "along", "printed"),
    # A line-marking guide prints the half diagonals, net and sideline to the far corner, as 16.18 and 14.46 m.
    [("doubles", "baseline", 16.18), ("singles", "baseline", 14.46)],
)
def test_half_diagonals_are_those_of_a_line_marking_guide(tennis, across, along, printed):
    assert math.hypot(2 * getattr(tennis, across), getattr(tennis, along)) == pytest.approx(printed, abs=0.005)


def test_areas_are_those_of_the_feet(tennis):
    # Oracle: shapely's polygons of the painted lines against products of the rules' feet.
    doubles = [*line(tennis, "left doubles line").as_tuple(), *reversed(line(tennis, "right doubles line").as_tuple())]
    singles = [*line(tennis, "left singles line").as_tuple(), *reversed(line(tennis, "right singles line").as_tuple())]
    assert Polygon(doubles).area == pytest.approx(36 * 78 * FOOT**2, abs=1e-4)
    assert Polygon(singles).area == pytest.approx(27 * 78 * FOOT**2, abs=1e-4)


def test_the_painted_lines_meet_where_they_should(tennis):
    assert line(tennis, "far service line").as_tuple() == ((-4.1148, 6.4008), (4.1148, 6.4008))
    assert line(tennis, "near centre line").as_tuple() == ((0.0, 0.0), (0.0, -6.4008))
    # Rule 1: the centre mark is 4 in long, inside the baseline, 2 in wide.
    mark = line(tennis, "near centre mark")
    assert mark.as_tuple() == ((0.0, -11.7856), (0.0, -11.8872))
    assert mark.width == 0.0508


def test_lines_are_as_wide_as_the_rules_allow(tennis):
    # Rule 1: centre line 2 in, baseline up to 4 in, others 1 to 2 in.
    for painted in tennis.lines:
        if "centre" in painted.name:
            assert painted.width == pytest.approx(2 / 12 * FOOT)
        else:
            assert 1 / 12 * FOOT <= painted.width <= (4 if "baseline" in painted.name else 2) / 12 * FOOT + 1e-9


# Straight line from strap (3 ft) to support (3 ft 6 in), computed apart from the program with exact fractions.
POSTS = {
    0: 0.9144,
    1: 0.93821,
    2: 0.96202,
    3: 0.98583,
    4.1148: 1.01237,
    5.0292: 1.03414,
    5.4864: 1.04503,
    6.4008: 1.0668,
}
STICKS = {0: 0.9144, 1: 0.9447, 2: 0.97501, 3: 1.00531, 4.1148: 1.03909, 5.0292: 1.0668}


@pytest.mark.parametrize(("supports", "table"), [("posts", POSTS), ("sticks", STICKS)])
def test_the_net_rises_from_the_strap_to_its_supports(supports, table):
    tennis = ground(Court(standard="tennis", supports=supports))
    for x, height in table.items():
        assert tennis.net_height(x) == pytest.approx(height, abs=1e-5)
        assert tennis.net_height(-x) == tennis.net_height(x)


def test_sticks_stand_inside_the_posts():
    # Rule 1: posts 3 ft outside the doubles court, sticks 3 ft outside the singles court; the net still ends at the posts.
    posts, sticks = (ground(Court(supports=supports)).net for supports in ("posts", "sticks"))
    assert (posts.support_x, posts.ends_x) == (21 * FOOT, 21 * FOOT)
    assert (sticks.support_x, sticks.ends_x) == (16.5 * FOOT, 21 * FOOT)


def test_run_off_is_that_of_table_5(tennis):
    # Table 5, notes d and e: 5.48 and 3.05 m for recreational and club play, 6.40 and 3.66 m internationally.
    standard = tennis.standard
    assert standard.run_back["club"].metres == pytest.approx(5.48, abs=0.01)
    assert standard.side_run["club"].metres == pytest.approx(3.05, abs=0.01)
    assert standard.run_back["international"].metres == pytest.approx(6.40, abs=0.01)
    assert standard.side_run["international"].metres == pytest.approx(3.66, abs=0.01)
    # Court builders print the enclosures these make: 34.75 by 17.07 m and 36.57 by 18.29 m.
    assert 2 * tennis.back_fence == pytest.approx(34.75, abs=0.005)
    assert 2 * tennis.side_fence == pytest.approx(17.07, abs=0.005)


def test_run_off_that_is_not_stated_is_the_club_minimum_and_said_to_be():
    stated = ground(Court(run_back=6.4008, side_run=3.6576))
    assert not stated.assumed
    assert 2 * stated.back_fence == pytest.approx(120 * FOOT)
    assert 2 * stated.side_fence == pytest.approx(60 * FOOT)
    half = ground(Court(run_back=6.4008))
    assert half.assumed
    assert (half.assumed_run_back, half.assumed_side_run) == (False, True)


@pytest.mark.parametrize(
    ("name", "length", "width", "net"),
    [
        # ITF Tennis10s page: least and most.
        ("red", (10.97, 12.80), (4.27, 6.10), (0.80, 0.838)),
        ("orange", (17.68, 18.29), (6.10, 8.23), (0.80, 0.914)),
        ("green", (23.77, 23.77), (8.23, 8.23), (0.914, 0.914)),
    ],
)
def test_small_courts_lie_inside_the_ranges_of_their_sources(name, length, width, net):
    def inside(value, bounds):
        least, most = bounds
        return least - 0.005 <= value <= most + 0.005  # the page prints centimetres

    small = ground(Court(standard=name))
    assert inside(2 * small.baseline, length)
    assert inside(2 * small.singles, width)
    assert inside(small.net.centre_height, net)
    if name != "green":
        standard = small.standard
        assert (2 * standard.net_to_baseline.least, 2 * standard.net_to_baseline.most) == pytest.approx(
            length, abs=0.005
        )
        assert (standard.singles_width.least, standard.singles_width.most) == pytest.approx(width, abs=0.005)
        assert (standard.net.centre_height.least, standard.net.centre_height.most) == pytest.approx(net, abs=0.001)


def test_half_the_red_court_is_four_rackets_by_six_strides():
    # Common practice of laying out by rackets (27 in) and strides (1 yd); 36 by 18 ft.
    red = ground(Court(standard="red"))
    assert red.singles == pytest.approx(4 * 27 / 12 * FOOT)
    assert red.baseline == pytest.approx(6 * 3 * FOOT)
    assert round(2 * red.singles, 1) == 5.5  # a general page prints 5.5 m (18 ft)
    assert red.service_line is None
    assert red.doubles is None
    assert not red.centre_line


def test_a_red_court_across_a_tennis_court_has_the_doubles_lines_for_baselines(tennis):
    red = ground(Court(standard="red", hosted_on="tennis"))
    doubles = [line for line in red.host_lines if line.name.endswith("doubles line")]
    assert {abs(y) for line in doubles for _, y in line.as_tuple()} == {red.baseline}
    # It lies between the host's net and service line and keeps a net of its own.
    net, service = (next(line for line in red.host_lines if line.name == name) for name in ("net", "far service line"))
    assert net.start[0] < -red.singles
    assert service.start[0] > red.singles
    assert red.net.centre_height == 0.8


def test_an_orange_court_on_a_tennis_court_shares_its_net(tennis):
    orange = ground(Court(standard="orange", hosted_on="tennis"))
    assert orange.net == tennis.net
    assert orange.host_lines == tennis.lines
    assert orange.baseline == pytest.approx(30 * FOOT)
    assert ground(Court(standard="orange")).net.centre_height == 0.8


@pytest.mark.parametrize(
    ("length", "metres"),
    [({"feet": 13, "inches": 6}, 4.1148), ({"inches": 27}, 0.6858), ({"metres": 5.5}, 5.5), ({"feet": 0.5}, 0.1524)],
)
def test_lengths_are_converted_exactly(length, metres):
    assert to_metres(length) == metres


def test_an_unknown_court_is_refused_by_name_and_drawn_as_tennis(tennis):
    assert not known_court("moon")
    with pytest.raises(KeyError, match=r"no court called 'moon'; there are .*tennis"):
        court_standard("moon")
    assert ground(Court(standard="moon")).lines == tennis.lines


def test_a_host_that_says_nothing_changes_nothing():
    assert ground(Court(standard="tennis", hosted_on="red")).host_lines == ()
