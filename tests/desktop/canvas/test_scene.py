import pytest
from PySide6.QtCore import QPointF

from designer.desktop.canvas.live import change, moves
from designer.desktop.canvas.mark_item import MarkItem
from designer.desktop.canvas.scene import CourtScene
from designer.drawing.part import part
from designer.drawing.picture import picture
from designer.drawing.themes import theme
from designer.drill.edits import delete, move, put
from designer.drill.setting import setting_at

UNIT = 1.42 / 23
LIGHT = theme("light")


@pytest.fixture
def scene(qapp):
    return CourtScene()


def show(scene, hand, drill, light=LIGHT):
    made = picture(drill, hand.view.at, unit=UNIT, theme=light)
    return scene.reconcile(made, light), made


def test_it_shows_one_item_for_each_mark_stacked_as_in_the_picture(scene, hand):
    _, made = show(scene, hand, hand.document.drill)
    assert scene.marks() == {mark.key: mark for mark in made.marks}
    assert sum(isinstance(item, MarkItem) for item in scene.items()) == len(made.marks)
    heights = [scene.item_of(mark.key).zValue() for mark in made.marks]
    assert heights == sorted(heights)
    assert len(set(heights)) == len(heights)


def test_nothing_is_touched_where_nothing_differs(scene, hand):
    show(scene, hand, hand.document.drill)
    touched, _ = show(scene, hand, hand.document.drill.changed(title="Another title"))
    assert touched == frozenset()


def test_only_the_marks_that_differ_are_touched(scene, hand):
    show(scene, hand, hand.document.drill)
    before = {key: scene.item_of(key) for key in scene.marks()}
    touched, made = show(scene, hand, move(hand.document.drill, hand.view.at, ("cone",), (0.2, 0.2)))
    assert {id for id, _, _ in touched} == {"cone"}
    assert all(scene.item_of(mark.key) is before[mark.key] for mark in made.marks), "items stay, their marks change"


def test_what_is_deleted_leaves_the_scene_and_undo_brings_it_back(scene, hand):
    _, made = show(scene, hand, hand.document.drill)
    show(scene, hand, delete(hand.document.drill, hand.view.at, ("reply",)))
    assert "reply" not in {key[0] for key in scene.marks()}
    show(scene, hand, hand.document.drill)
    assert scene.marks() == {mark.key: mark for mark in made.marks}
    heights = [scene.item_of(mark.key).zValue() for mark in made.marks]
    assert heights == sorted(heights)


def test_another_theme_repaints_everything(scene, hand):
    show(scene, hand, hand.document.drill)
    touched, made = show(scene, hand, hand.document.drill, theme("dark"))
    assert touched == {mark.key for mark in made.marks}


def carry(scene, hand, drill):
    """Show a gesture's drill over the whole picture, as the canvas does."""
    after = setting_at(drill, hand.view.at)
    moved = moves(hand.setting, after)
    marks = part(drill, after, moved.redrawn, unit=UNIT, theme=LIGHT)
    return scene.show_change(change(scene.pictured, moved, moved.carried, marks))


def test_a_gesture_touches_only_what_it_concerns_and_all_is_as_before_when_it_is_left(scene, hand):
    _, made = show(scene, hand, hand.document.drill)
    concerned = carry(scene, hand, move(hand.document.drill, hand.view.at, ("cone", "spot-b"), (0.5, 0.25)))
    assert {id for id, _, _ in concerned} == {"cone", "spot-b", "feed", "reply"}
    assert scene.item_of(("cone", "cone", "")).pos() == QPointF(0.5, -0.25)
    carry(scene, hand, hand.document.drill)
    assert scene.marks() == {mark.key: mark for mark in made.marks}
    assert all(scene.item_of(mark.key).pos() == QPointF() for mark in made.marks)
    assert all(scene.item_of(mark.key).isVisible() for mark in made.marks)


def test_a_gesture_ends_in_the_whole_picture_whatever_it_showed_on_the_way(scene, hand):
    show(scene, hand, hand.document.drill)
    final = hand.document.drill
    for step in range(1, 4):
        final = move(hand.document.drill, hand.view.at, ("spot-a", "reply", "zone"), (0.3 * step, -0.2 * step))
        carry(scene, hand, final)
    _, made = show(scene, hand, final)
    fresh = CourtScene()
    fresh.reconcile(made, LIGHT)
    assert scene.marks() == fresh.marks()
    for mark in made.marks:
        mine, other = scene.item_of(mark.key), fresh.item_of(mark.key)
        assert (mine.pos(), mine.zValue(), mine.isVisible()) == (other.pos(), other.zValue(), True)
        assert mine.boundingRect() == other.boundingRect()


def test_a_new_thing_is_seen_while_it_is_held_and_gone_when_it_is_left(scene, hand):
    from designer.drill.base import place
    from designer.drill.items import Cone

    _, made = show(scene, hand, hand.document.drill)
    carry(scene, hand, put(hand.document.drill, hand.view.at, Cone(kind="cone", id="new", place=place(1.0, 1.0))))
    assert ("new", "cone", "") in scene.marks()
    carry(scene, hand, hand.document.drill)
    assert scene.marks() == {mark.key: mark for mark in made.marks}


def test_the_digit_of_a_ball_goes_along_with_its_path(scene, hand):
    show(scene, hand, hand.document.drill)
    digit = next(key for key in scene.marks() if key[0] == "reply" and "digit" in key[1])
    reply = hand.setting.shots["reply"]
    longer = reply.changed(to=reply.to.changed(at=(-2.0, 10.0)))
    carry(scene, hand, put(hand.document.drill, hand.view.at, longer))
    at = scene.item_of(digit).pos()
    assert (at.x(), at.y()) == pytest.approx((0.0, -1.0), abs=0.02), "half as far as the end: it stands near the middle"


def test_what_is_hit_is_named_the_thing_before_the_area_it_stands_in(scene, hand):
    drill = move(hand.document.drill, hand.view.at, ("cone",), (-4.0, 17.5))
    show(scene, hand, drill)
    assert scene.ids_at(QPointF(-2.0, -8.55), 0.1)[:1] == ("cone",)
    assert scene.ids_at(QPointF(-3.0, -7.0), 0.1) == ("zone",)
    assert scene.ids_at(QPointF(-6.0, 7.0), 0.1) == ()


def test_a_path_catches_within_reach_and_not_beyond(scene, hand):
    show(scene, hand, hand.document.drill)
    x = 3.0 + 0.3
    assert "line" in scene.ids_at(QPointF(x, -3.5), 0.35)
    assert "line" not in scene.ids_at(QPointF(x, -3.5), 0.2)
