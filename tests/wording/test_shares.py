"""What share of the court an area is, as the coach's card prints it.

The court is in feet (ITF Rules of Tennis, Rule 1: singles 27 wide, net to baseline 39, net to service line 21); the shares are
worked out from those by hand, and for an outline by shapely.
"""

import pytest
from shapely.geometry import Polygon as Outline
from shapely.geometry import box
from wording.making import HERE, SINGLES, area, drill_of, told

from designer.bundle import sample
from designer.drill.drill import Drill
from designer.drill.items import Area, Polygon
from designer.drill.setting import main_setting
from designer.wording.card import card_words
from designer.wording.shares import share_line

FOOT = 0.3048


def said(*records, **values):
    return [s.text.replace("\N{NO-BREAK SPACE}", " ") for s in share_line(told(*SINGLES, *records, **values))]


def test_the_back_court_on_one_side():
    # 13.5 by 18 ft is 243 sq ft, of 2106 and of 1053.
    zone = area("z", "reply zone", (-13.5 * FOOT, 21 * FOOT), (0.0, 39 * FOOT))
    shares = "11.5 % of the singles court, 23.1 % of its half and 50 % of its width."
    assert said(zone) == [f"The reply zone takes 22.6 m²: {shares}"]
    assert said(zone, units="feet") == [f"The reply zone takes 243 ft²: {shares}"]
    box = area("b", "box", (-13.5 * FOOT, 0.0), (0.0, 21 * FOOT))
    assert said(zone, box) == [
        (
            "The box takes 26.3 m²: 13.5 % of the singles court, 26.9 % of its half and 50 % of its width. "
            "The reply zone takes 22.6 m²: 11.5 %, 23.1 % and 50 %."
        )
    ]


def test_two_rackets_off_the_centre_leave_two_thirds_of_the_width():
    """Common practice, no source: 65 to 70 per cent of the width; 8 of 12 rackets are 66.7 per cent."""
    drill = Drill.model_validate_json(sample("forehand-on-eight.drill.json").read_bytes())
    section = card_words(drill, main_setting(drill), "coach").section("layout")
    (line,) = [s.text.replace("\N{NO-BREAK SPACE}", " ") for s in section.sentences if s.key == "shares"]
    sides = line.removesuffix(".").split(". ")
    assert len(sides) == 2  # both players' are alike
    assert [side.split(" and ")[-1].removesuffix(" of its width") for side in sides] == ["66.7 %", "33.3 %"]
    assert "eight-racket side takes" in sides[0]


def test_an_odd_outline_against_shapely():
    corners = ((-5.0, 2.0), (3.0, 4.0), (1.0, 14.0), (-2.0, 9.0))
    zone = Area(kind="area", id="z", name="kite", shape=Polygon(form="polygon", corners=corners))
    court, outline = box(-13.5 * FOOT, 0, 13.5 * FOOT, 39 * FOOT), Outline(corners)
    inside = outline.intersection(court)
    left, _, right, _ = inside.bounds
    parts = (inside.area / (2 * court.area), inside.area / court.area, (right - left) / (27 * FOOT))
    size, _, rest = said(zone)[0].removeprefix("The kite takes ").partition(": ")
    shares = rest.replace(" and ", ", ").split(", ")
    assert float(size.split()[0]) == pytest.approx(outline.area, abs=0.05)
    assert [float(each.split()[0]) for each in shares] == pytest.approx([100 * part for part in parts], abs=0.051)


def test_what_is_no_part_of_the_court_all_of_a_half_or_a_mere_spot_has_no_share():
    beside = area("z", "rest", (6.0, 1.0), (8.0, 3.0))
    half = area("h", "half", (-13.5 * FOOT, 0.0), (13.5 * FOOT, 39 * FOOT))
    spot = area("s", "spot", (0.0, 7.0), (0.7, 7.7))
    assert said(beside, half, spot) == []
    assert said(area("z", "zone", (0.0, 7.0), (4.0, 11.0)), reader="player") == []


def test_it_stands_in_the_layout_before_what_a_stride_is():
    zone = area("z", "zone", (0.0, 7.0), (4.0, 11.0))
    section = card_words(drill_of(*SINGLES, zone), HERE, "coach").section("layout")
    keys = [s.key for s in section.sentences]
    assert keys.index("shares") == keys.index("layout:key") - 1
    assert section.sentences[keys.index("shares")].about == ("z",)
