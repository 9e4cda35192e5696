"""A drop on the tree means a place in the book: between two drills, at the end of a section, before or after one."""

from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDragMoveEvent, QDropEvent


def drag(outline, mime, item, share):
    """Drag over the row of ``item``, ``share`` of its height from its top, and drop there."""
    box = outline.visualItemRect(item)
    point = QPoint(box.left() + 20, box.top() + round(share * (box.height() - 1)))
    copy, button, key = (
        Qt.DropAction.CopyAction | Qt.DropAction.MoveAction,
        Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
    )
    outline.dragEnterEvent(QDragEnterEvent(point, copy, mime, button, key))
    outline.dragMoveEvent(QDragMoveEvent(point, copy, mime, button, key))
    event = QDropEvent(QPointF(point), copy, mime, button, key)
    outline.dropEvent(event)
    return event


def test_drills_drop_before_and_after_the_row_under_the_pointer(qtbot, window):
    outline = window.outline
    moves = []
    outline.drills_moved.disconnect()
    outline.drills_moved.connect(lambda *move: moves.append(move))
    outline.choose(("drill", "1.1"))
    first, second = outline.topLevelItem(0), outline.topLevelItem(1)
    mime = outline.mimeData(outline.selectedItems())
    for item, share, meant in (
        (first.child(1), 0.0, (0, 1)),
        (first.child(1), 1.0, (0, 2)),
        (second, 0.5, (1, 0)),
        (second, 0.0, (0, 2)),
        (second, 1.0, (1, 0)),
    ):
        event = drag(outline, mime, item, share)
        assert event.dropAction() == Qt.DropAction.CopyAction, "so that the view takes no row of its own away"
        assert moves.pop() == (("1.1",), *meant)


def test_a_section_drops_before_or_after_another(qtbot, window):
    outline = window.outline
    moves = []
    outline.section_moved.disconnect()
    outline.section_moved.connect(lambda *move: moves.append(move))
    outline.choose(("section", "1"))
    mime = outline.mimeData(outline.selectedItems())
    drag(outline, mime, outline.topLevelItem(0), 0.0)
    drag(outline, mime, outline.topLevelItem(1), 1.0)
    assert moves == [(1, 0), (1, 2)]


def test_files_dropped_from_outside_are_asked_for_where_they_fall(qtbot, window, tmp_path):
    outline = window.outline
    dropped = []
    outline.files_dropped.disconnect()
    outline.files_dropped.connect(lambda *drop: dropped.append(drop))
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(tmp_path / "a.drill.json")), QUrl.fromLocalFile(str(tmp_path / "b.txt"))])
    drag(outline, mime, outline.topLevelItem(0).child(1), 0.0)
    assert dropped == [((tmp_path / "a.drill.json",), 0, 1)]
