"""A hand in the window: it drags, drops, presses and types as a person does, in court metres and by words."""

from PySide6.QtCore import QEvent, QEventLoop, QPointF, Qt
from PySide6.QtGui import QDragEnterEvent, QDragMoveEvent, QDropEvent, QKeyEvent, QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from designer.desktop.canvas.drop import item_mime

LEFT, NONE = Qt.MouseButton.LeftButton, Qt.MouseButton.NoButton
PLAIN = Qt.KeyboardModifier.NoModifier


def settle():
    """Lets everything that waits for its turn have it."""
    for _ in range(3):
        QApplication.processEvents()


def bury():
    """Lets windows that are closed be deleted, which Qt does only when no event is under way."""
    settle()
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


def finish(window):
    """Lets what is being made be finished."""
    over = QEventLoop()
    window.work.finished.connect(over.quit)
    while window.work.busy:
        over.exec()
    settle()


def mouse(canvas, kind, point, button, held):
    spot = canvas.to_pixel(point)
    place = canvas.viewport().mapToGlobal(spot)
    QApplication.sendEvent(canvas.viewport(), QMouseEvent(kind, spot, QPointF(place), button, held, PLAIN))


def drag(canvas, start, end, steps=5):
    """Presses at one point of the court and lets go at another."""
    mouse(canvas, QEvent.Type.MouseButtonPress, start, LEFT, LEFT)
    for step in range(1, steps + 1):
        share = step / steps
        between = tuple(a + (b - a) * share for a, b in zip(start, end, strict=True))
        mouse(canvas, QEvent.Type.MouseMove, between, NONE, LEFT)
    mouse(canvas, QEvent.Type.MouseButtonRelease, end, LEFT, NONE)
    settle()


def press(canvas, point):
    """Presses and lets go at one point of the court."""
    mouse(canvas, QEvent.Type.MouseButtonPress, point, LEFT, LEFT)
    mouse(canvas, QEvent.Type.MouseButtonRelease, point, LEFT, NONE)
    settle()


def drop(canvas, kind, point):
    """Drops a thing from the strip; returns whether the court took it."""
    mime = item_mime(kind)
    spot = canvas.to_pixel(point)
    port = canvas.viewport()
    copy = Qt.DropAction.CopyAction
    enter = QDragEnterEvent(spot.toPoint(), copy, mime, LEFT, PLAIN)
    QApplication.sendEvent(port, enter)
    QApplication.sendEvent(port, QDragMoveEvent(spot.toPoint(), copy, mime, LEFT, PLAIN))
    event = QDropEvent(spot, copy, mime, LEFT, PLAIN)
    QApplication.sendEvent(port, event)
    settle()
    return event.isAccepted()


def key(widget, code, text=""):
    """Presses one key on a widget."""
    QApplication.sendEvent(widget, QKeyEvent(QEvent.Type.KeyPress, code, PLAIN, text))
    settle()


def click(widget):
    """Presses a button of the window."""
    QTest.mouseClick(widget, LEFT)
    settle()


def write(widget, text):
    """Types into a text on the page or a box of a form."""
    widget.setFocus(Qt.FocusReason.OtherFocusReason)
    QTest.keyClicks(widget, text)
    settle()


def sentence(window, *words):
    """The sentence of the card column that holds all of these words."""
    settle()
    found = [row for row in window.column.sentences() if all(word in row.sentence.text for word in words)]
    said = "\n".join(row.sentence.text for row in window.column.sentences())
    assert len(found) == 1, f"{words}: {len(found)} of\n{said}"
    return found[0]


def field(window, name):
    """The control of a field of the form that is open."""
    row = window.column.form.form.row(name)
    assert row is not None, f"no field {name}"
    return row.box


def choose(window, name, words):
    """Chooses one of the words of a field: a segment, or an entry of a drop-down."""
    from designer.desktop.controls import DropDown, Segment

    box = field(window, name)
    for segment in box.findChildren(Segment):
        if segment.text() == words:
            click(segment)
            return
    for drop_down in box.findChildren(DropDown):
        place = drop_down.findText(words)
        if place >= 0:
            drop_down.setCurrentIndex(place)
            drop_down.activated.emit(place)
            settle()
            return
    raise AssertionError(f"{name} has no {words!r}")
