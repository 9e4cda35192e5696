"""The row under the objective: how many, on which court, how long, with what. Each fact opens the form it came from."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from designer.desktop.controls import frame
from designer.desktop.flow import Flow
from designer.desktop.fonts import BODY, font, scaled
from designer.desktop.icons import paint_icon
from designer.desktop.style import look

if TYPE_CHECKING:
    from designer.wording.card import Fact

ICON: Final = 16
WORDS: Final = {"people": "players", "court": "court", "clock": "time", "ball": "balls", "kit": "kit"}
OPENS: Final = {
    "people": "drill:facts",
    "court": "drill:court",
    "clock": "drill:facts",
    "ball": "drill:facts",
    "kit": "drill:facts",
}
FIELDS: Final = {"people": "players", "clock": "minutes", "ball": "balls", "kit": "kit"}


class FactButton(QAbstractButton):
    """One fact: its icon and its words. Without words it asks for them."""

    def __init__(self, fact: Fact, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.fact = fact
        self.setFont(font(BODY))
        self.setAccessibleName(f"{WORDS[fact.icon]}: {fact.text}")
        self.setToolTip(f"{WORDS[fact.icon]}: {fact.text}")
        self.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)  # long words give way to the column
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def sizeHint(self) -> QSize:
        return QSize(QFontMetrics(self.font()).horizontalAdvance(self.fact.text) + scaled(ICON) + 20, scaled(26))

    def minimumSizeHint(self) -> QSize:
        return QSize(60, scaled(26))

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        if self.underMouse():
            frame(painter, self.rect(), edge=now.hover, fill=now.hover)
        if self.hasFocus():
            frame(painter, self.rect(), edge=now.ink, fill=None, width=2)
        side = scaled(ICON)
        paint_icon(painter, self.fact.icon, QRectF(6, (self.height() - side) / 2, side, side), now.soft)
        painter.setFont(self.font())
        painter.setPen(QColor(now.ink))
        box = self.rect().adjusted(side + 12, 0, -4, 0)
        text = QFontMetrics(self.font()).elidedText(self.fact.text, Qt.TextElideMode.ElideRight, box.width() + 2)
        painter.drawText(box, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, text)


class FactsRow(QWidget):
    """All facts in a line. ``opens`` carries the key of the form for the one pressed, and the field in it."""

    opens = Signal(str, str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._facts: tuple[Fact, ...] = ()
        flow = Flow(self, gap=6)
        flow.setContentsMargins(8, 0, 8, 0)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        row = self.layout()
        if row is not None:
            self.setFixedHeight(max(scaled(26), row.heightForWidth(self.width())))

    def show_facts(self, facts: Sequence[Fact]) -> None:
        """Show ``facts``."""
        if tuple(facts) == self._facts:
            return
        self._facts = tuple(facts)
        row = self.layout()
        if row is None:
            return
        while (item := row.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        for fact in self._facts:
            button = FactButton(fact, self)
            button.clicked.connect(lambda _=False, icon=fact.icon: self.opens.emit(OPENS[icon], FIELDS.get(icon, "")))
            row.addWidget(button)
            button.show()
        self._fit()
