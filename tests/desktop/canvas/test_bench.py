import pytest

from designer.desktop.canvas.bench import NO_GUIDE


def test_a_snap_shows_where_it_is_and_leaving_shows_nothing(hand):
    hand.view.set_snapping(True)
    shown = []
    hand.bench.guide_changed.connect(shown.append)
    assert hand.bench.snap((4.05, 11.8), hand.pointer((4.05, 11.8))) == (4.1148, 11.8872)
    assert hand.bench.guide.snapped
    assert hand.bench.guide.words.splitlines() == ["the left singles corner", "Where lines cross"]
    hand.bench.abandon()
    assert shown[-1] == NO_GUIDE


def test_without_snapping_a_point_stays_and_is_still_read(hand):
    assert hand.bench.snap((4.05, 11.8), hand.pointer((4.05, 11.8))) == (4.05, 11.8)
    assert not hand.bench.guide.snapped
    assert hand.bench.guide.words


def test_the_reading_is_in_the_units_of_the_view(hand):
    assert "racket" in hand.bench.reading((2.7432, -10.9728))
    hand.view.set_units("metres")
    assert "1.37 m" in hand.bench.reading((2.7432, -10.9728))


@pytest.mark.parametrize("point", [(1e9, 0.0), (0.0, -1e9), (-1e9, 1e9)])
def test_a_pointer_beyond_the_world_is_kept_at_its_edge(hand, point):
    x, y = hand.bench.snap(point, hand.pointer(point, under=()))
    assert abs(x) <= 50
    assert abs(y) <= 50


def test_the_court_is_read_once_and_again_when_it_changes(hand):
    first = hand.bench.ground
    assert hand.bench.ground is first
    court = hand.document.drill.court.changed(standard="red")
    hand.document.perform("Court", hand.document.drill.changed(court=court))
    assert hand.bench.ground.baseline < first.baseline


def test_a_read_only_drill_says_why_nothing_happens(hand):
    hand.document.read_only = True
    hand.bench.perform("Name", hand.document.drill.changed(title="Other"))
    assert hand.said == ["This drill was opened read-only and cannot be changed here."]
    assert hand.document.drill.title == ""
