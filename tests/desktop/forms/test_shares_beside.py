"""An area's share is told in its form, and follows what is pulled."""

import pytest
from desktop import hand

from designer.court.standards import ground
from designer.desktop.forms.shares_beside import share_words
from designer.drill.drill import Court
from designer.drill.items import Area, Line, Rectangle

TENNIS = ground(Court(standard="tennis"))
RACKET = 0.6858  # 27 in


def area(*corners):
    return Area(kind="area", id="zone", shape=Rectangle(form="rectangle", corners=corners))


def test_two_rackets_off_the_centre_leave_two_thirds():
    # A check of the trade, common practice with no source: a line two rackets off the centre gives 8 of 12 rackets.
    line = Line(kind="line", id="tick", corners=((-2 * RACKET, -3.0), (-2 * RACKET, -8.0)))
    words = share_words(TENNIS, line).replace("\N{NO-BREAK SPACE}", " ")
    assert "33.3 % (32.6 m²) of the half on the left of it and 66.7 % (65.2 m²) on the right" in words


def test_an_area_is_told_in_square_metres_and_three_shares():
    # Half the width of the back court: 13 ft 6 in by 18 ft (ITF Rules of Tennis 2025, rule 1), 4.1148 by 5.4864 m.
    words = share_words(TENNIS, area((-4.1148, 6.4008), (0.0, 11.8872))).replace("\N{NO-BREAK SPACE}", " ")
    assert words == "22.6 m²: 11.5 % of the singles court, 23.1 % of its half, 50 % of the width."


@pytest.mark.parametrize(
    ("item", "words"),
    [
        (area((6.0, 0.0), (7.0, 2.0)), "2.0 m², none of it in the singles court."),
        (Line(kind="line", id="tick", corners=((-3.0, -8.0), (3.0, -8.0))), ""),
    ],
)
def test_what_takes_no_part_of_the_court_says_so_or_nothing(item, words):
    assert share_words(TENNIS, item) == words


def test_the_form_follows_what_is_pulled(wide_kept, qtbot):
    wide_kept.column.open("reply-zone")
    hand.settle()
    beside = wide_kept.column.form.beside
    assert "50\N{NO-BREAK SPACE}% of the width" in beside.words
    hand.drag(wide_kept.canvas, (0.0, 6.4008), (-2.0574, 6.4008))
    qtbot.waitUntil(lambda: "25\N{NO-BREAK SPACE}% of the width" in beside.words)
