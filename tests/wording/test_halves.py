"""The parts of the court that a coach's card names are said once in its layout list."""

from wording.making import DOUBLES, FEED, HERE, REPLY, SINGLES, drill_of

from designer.drill.rules import Keep, Rule
from designer.wording.card import card_words


def laid_out(*areas, people=SINGLES, reader="coach", **values):
    where = [{"area": area, "judged": "bounce"} for area in areas]
    rules = [
        Rule(id=f"r{number}", must=Keep(do="keep", where=(place,)), breach={"then": "replay"})
        for number, place in enumerate(where)
    ]
    section = card_words(drill_of(*people, FEED, REPLY, *rules, **values), HERE, reader).section("layout")
    return [] if section is None else [found.text for found in section.sentences]


def test_a_half_is_said_as_its_player_sees_it():
    assert (
        "Right half: right of the centre line extended, as far as the singles line, as its player faces the net."
        in (laid_out("right half"))
    )
    doubles = laid_out("left doubles half", people=DOUBLES, jobs="ABCD")
    assert "Left doubles half: left of the centre line extended, the alley included, as its player faces the net." in (
        doubles
    )


def test_both_halves_are_one_line():
    assert "Halves: either side of the centre line extended, as far as the singles line." in (
        laid_out("right half", "left half")
    )


def test_the_middle_lane_has_its_width():
    lane = "Middle four rackets: 2 rackets either side of the middle, from the net to the baseline."
    assert lane in laid_out("middle four rackets")
    assert lane not in laid_out("past the service line")


def test_it_stands_before_what_a_stride_is_and_not_on_a_players_card():
    found = laid_out("right half")
    assert found[-2].startswith("Right half:")
    assert laid_out("right half", reader="player") == []
