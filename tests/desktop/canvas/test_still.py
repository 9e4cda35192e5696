"""A crowded court is shown as one picture while something on it is dragged, and must look and catch as before."""

import pytest
from desktop.canvas.mouse import at, moves, press, release, same_as_pictured, shown
from PySide6.QtCore import QPointF

from designer.bundle import sample
from designer.desktop.canvas import scene
from designer.drill.drill import Drill


@pytest.fixture
def crowded(qtbot, monkeypatch):
    """The sample drill, its court taken for crowded."""
    monkeypatch.setattr(scene, "CROWDED", 10)
    made = shown(qtbot, Drill.model_validate_json(sample("wide-start.drill.json").read_bytes()))
    made.view.set_snapping(False)
    yield made
    made.hide()


def held(canvas, id):
    """Hold a thing in mid-drag."""
    by = QPointF(40, -30)
    canvas.view.select((id,))
    start = canvas.to_pixel(at(canvas, id))
    press(canvas, start)
    for share in (0.5, 1.0):
        moves(canvas, start + by * share)
    return start + by


def apart(one, other):
    """How far two colours are apart, in the channel where they differ most, of 255."""
    return max(abs(a - b) for a, b in zip(one.getRgb(), other.getRgb(), strict=True))


def test_what_does_not_move_is_one_picture_and_the_dragged_thing_is_not_in_it(crowded):
    end = held(crowded, "spot-b")
    still = crowded.court_scene.still
    assert still
    assert "spot-b" not in {id for id, _, _ in still}
    assert {item.mark.id for item in crowded.court_scene.marks_of(["spot-b"]) if item.isVisible()} == {"spot-b"}
    release(crowded, end)
    assert not crowded.court_scene.still
    assert same_as_pictured(crowded, crowded.document.drill)


def test_the_court_looks_the_same_with_and_without_the_picture(crowded, monkeypatch):
    held(crowded, "spot-b")
    with_picture = crowded.viewport().grab().toImage()
    crowded.document.undo()
    monkeypatch.setattr(scene, "CROWDED", 10**6)
    held(crowded, "spot-b")
    assert not crowded.court_scene.still
    without = crowded.viewport().grab().toImage()
    different = sum(
        apart(with_picture.pixelColor(x, y), without.pixelColor(x, y)) > 40
        for x in range(0, without.width(), 4)
        for y in range(0, without.height(), 4)
    )
    # Edges are mixed twice: what differs much is at most a few hairs of the dragged thing's own.
    assert different < 0.002 * without.width() * without.height() / 16


def test_what_is_in_the_picture_is_still_found_under_the_pointer(crowded):
    held(crowded, "spot-b")
    spot = crowded.sight.to_scene(at(crowded, "spot-a"))
    assert "spot-a" in crowded.court_scene.ids_at(spot, 0.1)


def test_leaving_the_drag_shows_each_mark_by_itself_again(crowded):
    held(crowded, "spot-b")
    crowded.document.undo()
    assert not crowded.court_scene.still
    assert same_as_pictured(crowded, crowded.document.drill)
