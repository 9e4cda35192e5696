"""Controls in a line that breaks where the width is used up."""

from __future__ import annotations

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtWidgets import QHBoxLayout, QLayout, QLayoutItem, QWidget


class Flow(QLayout):
    """Lays controls in a line and begins another where the width is used up."""

    def __init__(self, parent: QWidget | None = None, gap: int = 8) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []
        self._gap = gap
        self.setContentsMargins(0, 0, 0, 0)

    def addItem(self, item: QLayoutItem) -> None:
        self._items.append(item)

    def count(self) -> int:
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def expandingDirections(self) -> Qt.Orientation:
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return self._place(QRect(0, 0, width, 0), move=False)

    def sizeHint(self) -> QSize:
        widths = [item.sizeHint().width() for item in self._items if not item.isEmpty()]
        heights = [item.sizeHint().height() for item in self._items if not item.isEmpty()]
        return self._with_margins(sum(widths) + self._gap * max(0, len(widths) - 1), max(heights, default=0))

    def minimumSize(self) -> QSize:
        sizes = [item.minimumSize() for item in self._items if not item.isEmpty()]
        wide, high = max((s.width() for s in sizes), default=0), max((s.height() for s in sizes), default=0)
        return self._with_margins(wide, high)

    def _with_margins(self, width: int, height: int) -> QSize:
        around = self.contentsMargins()
        return QSize(width + around.left() + around.right(), height + around.top() + around.bottom())

    def setGeometry(self, rect: QRect) -> None:
        super().setGeometry(rect)
        self._place(rect, move=True)

    def lines(self) -> list[QRect]:
        """Return the box round each line of controls as they now stand."""
        boxes: list[QRect] = []
        for item in self._items:
            if item.isEmpty():
                continue
            box = item.geometry()
            if boxes and boxes[-1].top() == box.top():
                boxes[-1] = boxes[-1].united(box)
            else:
                boxes.append(box)
        return boxes

    def _place(self, whole: QRect, *, move: bool) -> int:
        around = self.contentsMargins()
        rect = whole.marginsRemoved(around)
        x, y, line = rect.x(), rect.y(), 0
        for item in self._items:
            if item.isEmpty():
                continue
            size = item.sizeHint()
            if x > rect.x() and x + size.width() > rect.right() + 1:
                x, y, line = rect.x(), y + line + max(self._gap, 4), 0
            if move:
                item.setGeometry(QRect(x, y, min(size.width(), max(rect.width(), 1)), size.height()))
            x += size.width() + self._gap
            line = max(line, size.height())
        return y + line - rect.y() + around.top() + around.bottom()


def together(*widgets: QWidget) -> QWidget:
    """Return ``widgets`` side by side as one, which no line breaks."""
    whole = QWidget()
    row = QHBoxLayout(whole)
    row.setContentsMargins(0, 0, 0, 0)
    row.setSpacing(6)
    for widget in widgets:
        row.addWidget(widget)
    return whole
