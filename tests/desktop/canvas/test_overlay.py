import pytest
from PySide6.QtCore import QRectF

from designer.desktop.canvas.bench import Guide
from designer.desktop.canvas.handles import Handle
from designer.desktop.canvas.overlay import Overlay, Sight
from designer.desktop.canvas.scene import CourtScene
from designer.drawing.page import Page
from designer.drawing.picture import picture
from designer.drawing.primitives import Layer
from designer.drawing.themes import theme
from designer.drill.drill import Variation
from designer.drill.edits import add_variation, put
from designer.drill.setting import At

SCALE, UNIT = 23.0, 1.42 / 23
SIGHT = Sight(SCALE, UNIT, Page(), QRectF(-20, -20, 40, 40))


@pytest.fixture
def overlay(hand):
    scene = CourtScene()
    made = Overlay(scene, hand.bench)
    made.scene = scene
    show(made, hand)
    return made


def show(overlay, hand):
    light = theme("light")
    overlay.scene.reconcile(picture(hand.document.shown, hand.view.setting, unit=UNIT, theme=light), light)
    overlay.show_states(SIGHT, focused=False)


def inked(overlay):
    """Whatever is drawn beside the marks: its height and its box."""
    marks = {overlay.scene.item_of(key) for key in overlay.scene.marks()}
    others = [item for item in overlay.scene.items() if item not in marks]
    return sorted((item.zValue(), item.boundingRect()) for item in others if not item.boundingRect().isEmpty())


def test_at_rest_there_is_nothing_but_the_marks(overlay):
    assert inked(overlay) == []


def test_what_is_picked_has_a_halo_under_it_and_its_handles_over_all(overlay, hand):
    hand.view.select(("line",))
    overlay.show_states(SIGHT, focused=False)
    (halo, box), (handles, _) = inked(overlay)
    assert Layer.HALO <= halo < Layer.RUNS
    assert handles > max(Layer)
    assert box.width() * SCALE == pytest.approx(13 + 1, abs=4), "13 pixels round a line of about a pixel"


def test_several_picked_have_halos_but_no_handles(overlay, hand):
    hand.view.select(("line", "zone"))
    overlay.show_states(SIGHT, focused=False)
    assert len(inked(overlay)) == 1


def test_hover_draws_an_edge_and_not_round_what_is_picked_anyway(overlay, hand):
    hand.view.set_hovered("cone")
    overlay.show_states(SIGHT, focused=False)
    assert len(inked(overlay)) == 1
    hand.view.select(("cone",))
    overlay.show_states(SIGHT, focused=False)
    (only,) = inked(overlay)
    assert only[0] < Layer.RUNS


def test_the_keyboards_ring_goes_round_what_is_picked(overlay, hand):
    hand.view.select(("cone",))
    overlay.show_states(SIGHT, focused=True)
    _, (ring, box) = inked(overlay)
    assert ring > max(Layer)
    assert box.contains(overlay.scene.item_of(("cone", "cone", "")).sceneBoundingRect())


def test_a_variation_outlines_what_it_changes(overlay, hand):
    drill = add_variation(hand.document.drill, "p", "harder", Variation(id="v", name="Harder"))
    wider = hand.setting.items["line"].changed(corners=((5.0, 2.0), (5.0, 5.0)))
    hand.document.perform("Harder", put(drill, At("p", "v"), wider))
    hand.view.go_to(At("p", "v"))
    show(overlay, hand)
    ((_, box),) = inked(overlay)
    assert box.center().x() == pytest.approx(5.0, abs=0.1)


def test_handles_of_a_small_shape_stand_outside_it(overlay, hand):
    small = hand.setting.items["zone"].shape.changed(corners=((0.0, 0.0), (0.6, 0.6)))
    changed = hand.setting.items["zone"].changed(shape=small)
    hand.document.perform("Small", put(hand.document.drill, hand.view.at, changed))
    hand.view.select(("zone",))
    corner = overlay.handle_point(Handle("zone", "corner", 2, (0.6, 0.6)), SIGHT)
    assert (corner.x() - 0.6) * SCALE == pytest.approx(6)
    assert (-corner.y() - 0.6) * SCALE == pytest.approx(6)


def test_while_another_tool_draws_nothing_else_is_marked(overlay, hand):
    hand.view.select(("line",))
    hand.view.set_tool("area")
    hand.pull((0.0, 0.0), (2.0, 2.0))
    overlay.show_states(SIGHT, focused=True)
    assert inked(overlay) == []


@pytest.mark.parametrize("index", range(4))
def test_what_a_gesture_says_stands_clear_of_the_handles_and_of_what_it_draws(overlay, hand, index):
    hand.view.select(("zone",))
    corner = next(h for h in overlay.handles(SIGHT) if (h.part, h.index) == ("corner", index))
    overlay.show_guide(Guide(at=corner.at, words="2 rackets from the net\n6 rackets wide, 5 strides deep"), SIGHT)
    (label,) = overlay.said
    assert label.text.startswith("2 rackets")
    for handle in overlay.handles(SIGHT):
        assert not label.box.contains(overlay.handle_point(handle, SIGHT)), handle
    zone = next(item for item in overlay.scene.marks_of(("zone",)) if item.mark.layer == Layer.AREAS)
    assert not label.box.intersects(zone.sceneBoundingRect().adjusted(0.3, 0.3, -0.3, -0.3))
