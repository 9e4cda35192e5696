"""What is no longer so is shown pale, under everything that is."""

from desktop import hand

from designer.desktop.ghosts import PALE, Ghosts
from designer.drawing.primitives import Layer
from designer.drill.setting import At


def test_ghosts_lie_pale_under_the_marks_and_are_no_target(wide_kept):
    ghosts = Ghosts(wide_kept.canvas)
    assert ghosts.marks() == ()
    wide_kept.view.go_to(At("p-points"))
    wide_kept.view.set_marking(True)
    hand.settle()
    assert ghosts.marks()
    assert all(item.opacity() == PALE and item.zValue() < Layer.HALO for item in ghosts._items)
    gone = next(mark.id for mark in ghosts.marks() if mark.id not in wide_kept.view.setting.ids())
    assert gone not in {key[0] for key in wide_kept.canvas.court_scene.marks()}
    wide_kept.view.set_marking(False)
    assert ghosts.marks() == ()
