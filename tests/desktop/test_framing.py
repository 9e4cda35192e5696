"""Half the court, or what is picked, as large as it fits, whichever way the court lies."""

import pytest

from designer.court.standards import ground
from designer.desktop.canvas.court_view import CourtView
from designer.desktop.document import Document
from designer.desktop.framing import frame_half, frame_picked
from designer.desktop.situations import SITUATIONS, with_situation
from designer.desktop.view import View
from designer.drill.setting import main_setting


@pytest.fixture
def seen(qtbot, styled, document, source):
    drill = with_situation(document.drill, main_setting(document.drill), SITUATIONS[1], source)
    document = Document(drill, source=source)
    made = CourtView(document, View(document))
    qtbot.addWidget(made)
    made.resize(800, 600)
    made.show()
    return made


@pytest.mark.parametrize("lie", ["upright", "across"])
@pytest.mark.parametrize("end", ["near", "far"])
@pytest.mark.parametrize("turned", [False, True])
def test_half_the_court_is_seen_whole_and_larger(seen, lie, end, turned):
    seen.view.set_lie(lie)
    seen.view.set_turned(turned)
    fitted = seen.pixels_per_metre
    frame_half(seen, end)
    court = ground(seen.document.drill.court)
    sign = -1 if end == "near" else 1
    room = seen.viewport().rect()
    for point in ((-court.side_fence, sign * court.back_fence), (court.side_fence, 0.0)):
        assert room.contains(seen.to_pixel(point).toPoint())
    assert not room.contains(seen.to_pixel((0.0, -sign * court.back_fence)).toPoint())
    assert seen.pixels_per_metre > fitted


def test_what_is_picked_is_in_the_middle_and_larger_but_not_beyond_sense(seen):
    fitted = seen.pixels_per_metre
    spot = next(iter(seen.view.setting.spots.values()))
    assert frame_picked(seen, {spot.id})
    at, middle = seen.to_pixel(spot.place.at), seen.viewport().rect().center()
    # A person's mark reaches farther to the hand that holds the racket than to the other.
    assert abs(at.x() - middle.x()) < 80
    assert abs(at.y() - middle.y()) < 80
    assert fitted < seen.pixels_per_metre < 100
    assert not frame_picked(seen, ())
