"""The flight of one ball from the command line, against values solved with scipy outside the program."""

import json

import pytest

from designer.commands import main


@pytest.fixture
def flown(capsys):
    def fly(*words):
        status = main(["flight", *map(str, words)])
        out, err = capsys.readouterr()
        return status, out, err

    return fly


CANONICAL = ("--speed", 30, "--angle", 12, "--height", 1, "--spin", 2000)


def test_the_canonical_drive_in_json(flown):
    # Solved with scipy (DOP853, rtol 1e-11): flight; worked by hand: bounce on hard court, grip restitution 0.1.
    status, out, err = flown(*CANONICAL, "--json")
    found = json.loads(out)
    assert (status, err) == (0, "")
    assert found["format"] == 1
    for name, value in {
        "landing_m": 22.70120,
        "lateral_m": 0.0,
        "time_s": 0.98116,
        "net_height_m": 2.12767,
        "net_clearance_m": 1.17977,
        "landing_speed_mps": 19.48137,
        "bounce_vx_mps": 13.86359,
        "bounce_vz_mps": 5.52689,
    }.items():
        assert found[name] == pytest.approx(value, abs=6e-6), name
    assert found["landing_angle_deg"] == pytest.approx(20.5025, abs=6e-5)
    assert found["bounce_spin_rpm"] == pytest.approx(4272.01, abs=0.02)


def test_sidespin_curves_to_the_right(flown):
    # Solved with scipy: 45 m/s, -3.5°, 2.7 m, 2500 rpm about the vertical: 1.22271 m aside.
    _, out, _ = flown("--speed", 45, "--angle", -3.5, "--height", 2.7, "--spin", 0, "--sidespin", 2500, "--json")
    assert json.loads(out)["lateral_m"] == pytest.approx(1.22271, abs=6e-6)


@pytest.mark.parametrize(("surface", "up"), [("hard", 5.52689), ("clay", 6.14099), ("grass", 5.11749)])
def test_surfaces(flown, surface, up):
    _, out, _ = flown(*CANONICAL, "--surface", surface, "--json")
    assert json.loads(out)["bounce_vz_mps"] == pytest.approx(up, abs=6e-6)


def test_drag_and_air(flown):
    # Solved with scipy: C_D 0.507 lands at 23.0556 m; at 1600 m and 4.6 °C the air is 1.0476 kg/m³: 23.9574 m.
    _, out, _ = flown(*CANONICAL, "--drag", 0.507, "--json")
    assert json.loads(out)["landing_m"] == pytest.approx(23.0556, abs=6e-5)
    _, out, _ = flown(*CANONICAL, "--altitude", 1600, "--temperature", 4.6, "--json")
    assert json.loads(out)["landing_m"] == pytest.approx(23.9574, abs=2e-3)


def test_a_ball_into_the_net_is_computed_and_said(flown):
    # Solved with scipy: 6° is 0.8910 m high at the net and would land at 16.2506 m.
    status, out, err = flown("--speed", 30, "--angle", 6, "--height", 1, "--spin", 2000, "--json")
    found = json.loads(out)
    assert status == 0
    assert found["landing_m"] == pytest.approx(16.2506, abs=6e-5)
    assert found["net_clearance_m"] == pytest.approx(0.8910 - 0.0335 - 0.9144, abs=6e-5)
    assert "hits the net" in err
    assert found["notices"] == [
        "The ball hits the net, 0.06 m below its top; the numbers are as if the net were not there."
    ]


def test_a_ball_at_the_own_end_is_computed_and_said(flown):
    # Solved with scipy: an underarm feed of 8 m/s at 25° lands at 6.1274 m.
    status, out, err = flown("--speed", 8, "--angle", 25, "--height", 1, "--spin", 0, "--json")
    found = json.loads(out)
    assert status == 1
    assert found["landing_m"] == pytest.approx(6.1274, abs=6e-5)
    assert (found["net_height_m"], found["net_clearance_m"]) == (None, None)
    assert "The ball lands on the hitter's own side, 5.76 m before the net." in err


def test_a_spin_below_nothing_can_be_written_in_any_way(flown):
    words = ("--speed", "30", "--angle", "7", "--height", "1", "--spin")
    assert flown(*words, "-1.5e3") == flown(*words, "-1500")


def test_plain_words(flown):
    status, out, _ = flown(*CANONICAL)
    assert status == 0
    assert "lands 22.70 m away after 0.98 s" in out
    assert "its bottom 1.18 m over the top" in out


def test_a_ball_that_is_out_says_so(flown):
    assert "out, " in flown("--speed", 40, "--angle", 20, "--height", 1, "--spin", 0)[2]


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"--speed": "0"}, "A speed of 0 m/s cannot be computed; expected 0.1 to 100 m/s."),
        ({"--speed": "1e12"}, "A speed of 1e+12 m/s cannot be computed"),
        ({"--speed": "-30"}, "A speed of -30 m/s"),
        ({"--speed": "nan"}, "A speed must be a number, not nan."),
        ({"--angle": "90"}, "A launch angle of 90 degrees cannot be computed"),
        ({"--angle": "180"}, "A launch angle of 180 degrees cannot be computed"),
        ({"--height": "-0.5"}, "A contact height of -0.5 m cannot be computed"),
        ({"--height": "0.01"}, "cannot be lower than its radius, 0.0335 m"),
        ({"--spin": "inf"}, "A spin must be a number, not inf."),
        ({"--drag": "-1"}, "A drag coefficient of -1"),
        ({"--altitude": "20000"}, "An altitude of 20000 m"),
        ({"--surface": "ice"}, "invalid choice"),
    ],
)
def test_what_cannot_be_is_one_sentence_and_wrong_usage(flown, change, says):
    words = {"--speed": "30", "--angle": "12", "--height": "1", "--spin": "2000"} | change
    status, out, err = flown(*(word for pair in words.items() for word in pair))
    assert (status, out) == (64, "")
    assert says in err
    assert len(err.strip().splitlines()) == 1
