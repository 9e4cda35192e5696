"""One sentence of the card as a control: press it and what it was made from opens under it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QEvent, QPointF, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QEnterEvent,
    QFontMetricsF,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from designer.desktop.controls import frame
from designer.desktop.fonts import BODY, font, scaled
from designer.desktop.icons import paint_icon
from designer.desktop.lines import broken
from designer.desktop.look import Look
from designer.desktop.marks import paint_mark
from designer.desktop.style import look
from designer.wording.sentence import Lead, Sentence

if TYPE_CHECKING:
    from designer.desktop.usual import UsualButton

LEADING: Final = 20
AROUND: Final = 5
SIDE: Final = 14
"""How far the ground of a picked sentence reaches beyond its text, left and right."""
HANG: Final = 24
"""How far a sentence with a bullet stands in."""
VALUE: Final = 28
PERSON: Final = 32
BAR: Final = 4

DIGITS: Final = ("hit", "feed", "choice")
"""Bullets that carry the digit of a ball: a press on one plays the sequence from there."""

_MARKS: Final = {
    "hit": "step digit",
    "feed": "feed digit",
    "choice": "choice",
    "run": "bullet run",
    "recover": "bullet recover",
    "open": "open flag",
}


class SentenceRow(QAbstractButton):
    """A sentence with its bullet. ``opens`` is emitted with the key when it is pressed."""

    opens = Signal(str)
    pointed = Signal(object)
    played = Signal(str)
    """The digit of a step was pressed; carries the key."""

    confirmed = Signal(str)
    """The usual answer to a question was confirmed; carries the key."""

    def __init__(self, key: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.key = key
        self.sentence: Sentence = Sentence(key, ("",))
        self.picked = False
        self.open = False
        self.changed = False
        self.usual: UsualButton | None = None
        self._broken: dict[tuple[int, int], tuple[str, ...]] = {}
        self.setFont(font(BODY))
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.clicked.connect(lambda: self.opens.emit(self.key))

    def show_sentence(self, sentence: Sentence) -> None:
        """Show other words, of the same key."""
        if sentence == self.sentence:
            return
        self.sentence = sentence
        self._broken.clear()
        self.setAccessibleName(self.spoken)
        self.setAccessibleDescription("a question that is still open" if sentence.missing else "opens in place")
        self.updateGeometry()
        self.update()

    def offer(self, usual: str) -> None:
        """Offer the usual answer to the question that this is, "" for none."""
        if not usual:
            if self.usual is not None:
                self.usual.hide()
            return
        if self.usual is None:
            from designer.desktop.usual import UsualButton

            self.usual = UsualButton(self)
            self.usual.clicked.connect(lambda: self.confirmed.emit(self.key))
        self.usual.offer(usual, self.sentence.text)
        self.usual.show()
        self._broken.clear()
        self.updateGeometry()
        self._place_usual()

    @property
    def _offered(self) -> int:
        """Return how wide the usual answer stands beside the last line, 0 where none is offered."""
        return self.usual.sizeHint().width() + 8 if self.usual is not None and not self.usual.isHidden() else 0

    def _place_usual(self) -> None:
        if self.usual is not None and self._offered:
            size = self.usual.sizeHint()
            top = self.height() - size.height() - (AROUND - 2) // 2
            self.usual.setGeometry(self.width() - SIDE - size.width(), top, size.width(), size.height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._place_usual()

    @property
    def spoken(self) -> str:
        """Return the sentence with the words of its bullet."""
        lead = self.sentence.lead
        said = lead.text if lead is not None and lead.kind in ("value", "number", "hit", "feed", "person") else ""
        return f"{said} {self.sentence.text}".strip()

    def show_state(self, *, picked: bool, open: bool, changed: bool) -> None:
        """Show whether it is picked, open, or changed from the setting below."""
        if (picked, open, changed) != (self.picked, self.open, self.changed):
            self.picked, self.open, self.changed = picked, open, changed
            self.update()

    def sizeHint(self) -> QSize:
        return QSize(280, self.heightForWidth(280))

    def minimumSizeHint(self) -> QSize:
        return QSize(120, scaled(LEADING) + AROUND)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        lines = self._lines(width)
        beside = width - 2 * SIDE - self._indent() - QFontMetricsF(self.font()).horizontalAdvance(lines[-1])
        under = self._offered > 0 and beside < self._offered + 24
        return scaled(LEADING) * (len(lines) + under) + AROUND

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
            return
        super().keyPressEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        lead = self.sentence.lead
        on_digit = lead is not None and lead.kind in DIGITS and event.position().x() < SIDE + scaled(HANG) - 6
        if on_digit and self.isDown() and event.button() == Qt.MouseButton.LeftButton:
            self.setDown(False)
            self.played.emit(self.key)
            return
        super().mouseReleaseEvent(event)

    def enterEvent(self, event: QEnterEvent) -> None:
        super().enterEvent(event)
        self.pointed.emit(self.sentence.about[0] if self.sentence.about else None)

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self.pointed.emit(None)

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint_ground(painter, now)
        lines = self._lines(self.width())
        left, first = SIDE + self._indent(), self._first()
        metrics = QFontMetricsF(self.font())
        painter.setFont(self.font())
        painter.setPen(QColor(now.soft if self.sentence.missing else now.ink))
        drop = (scaled(LEADING) - metrics.height()) / 2 + metrics.ascent() + AROUND / 2
        for number, line in enumerate(lines):
            painter.drawText(QPointF(left + (first if number == 0 else 0), number * scaled(LEADING) + drop), line)
        if self.sentence.missing:
            self._paint_rule(painter, now, lines, metrics)
        if self.sentence.lead is not None:
            self._paint_lead(painter, self.sentence.lead, now)

    def _paint_ground(self, painter: QPainter, now: Look) -> None:
        if self.picked or self.open:
            painter.fillRect(self.rect(), QColor(now.highlighter))
            painter.fillRect(QRect(0, 0, BAR, self.height()), QColor(now.highlighter_edge))
        elif self.underMouse():
            frame(painter, self.rect().adjusted(6, 0, -6, 0), edge=now.hover, fill=now.hover)
        if self.changed and not (self.picked or self.open):
            painter.fillRect(QRect(0, 0, BAR - 1, self.height()), QColor(now.highlighter_edge))
        if self.hasFocus():
            frame(painter, self.rect().adjusted(6, 0, -6, 0), edge=now.ink, fill=None, width=2)

    def _paint_rule(self, painter: QPainter, now: Look, lines: tuple[str, ...], metrics: QFontMetricsF) -> None:
        """Draw the line to be answered on: dotted, solid under the pointer."""
        start = SIDE + self._indent() + metrics.horizontalAdvance(lines[-1]) + 8
        level = (len(lines) - 1) * scaled(LEADING) + AROUND / 2 + scaled(LEADING) / 2 + 5
        pen = QPen(QColor(now.soft), 1.4)
        if not self.underMouse():
            pen.setCapStyle(Qt.PenCapStyle.RoundCap)
            pen.setDashPattern([0.01, 2.6])
        painter.setPen(pen)
        beside = self.heightForWidth(self.width()) == scaled(LEADING) * len(lines) + AROUND
        end = self.width() - SIDE - (self._offered if beside else 0)
        if start < end:
            painter.drawLine(QPointF(start, level), QPointF(end, level))

    def _paint_lead(self, painter: QPainter, lead: Lead, now: Look) -> None:
        box = QRectF(SIDE - 2, AROUND / 2, scaled(HANG) - 6, scaled(LEADING))
        if lead.kind in _MARKS:
            wide = QRectF(SIDE, AROUND / 2, self._first() - 8, scaled(LEADING)) if lead.kind == "open" else box
            paint_mark(painter, _MARKS[lead.kind], wide, now, text=lead.text)
        elif lead.kind == "caution":
            paint_icon(painter, "caution", QRectF(SIDE, AROUND / 2 + 3, 14, 14), now.ink)
        elif lead.kind == "bullet":
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(now.soft))
            painter.drawEllipse(QPointF(SIDE + 4, AROUND / 2 + scaled(LEADING) / 2), 1.8, 1.8)
        elif lead.kind == "bound":
            _paint_cross(painter, QPointF(SIDE + 5, AROUND / 2 + scaled(LEADING) / 2), 4.0, now)
        elif lead.kind == "person":
            paint_mark(
                painter, "you", QRectF(SIDE - 1, 0, scaled(PERSON) - 4, scaled(LEADING) + AROUND), now, text=lead.text
            )
        else:
            painter.setFont(font(BODY, bold=True))
            painter.setPen(QColor(now.ink))
            painter.drawText(
                QRectF(SIDE, AROUND / 2, scaled(HANG) + 4, scaled(LEADING)), Qt.AlignmentFlag.AlignVCenter, lead.text
            )

    def _indent(self) -> int:
        lead = self.sentence.lead
        if lead is None or lead.kind == "open":
            return 0
        if lead.kind == "value":
            return scaled(VALUE)
        if lead.kind == "person":
            return scaled(PERSON)
        if lead.kind in ("bullet", "bound"):
            return {"bullet": 14, "bound": 20}[lead.kind]
        return scaled(HANG)

    def _first(self) -> float:
        """Return how far the first line stands in beyond the others: behind the flag that says "open"."""
        lead = self.sentence.lead
        if lead is None or lead.kind != "open":
            return 0.0
        return QFontMetricsF(font(13, bold=True)).horizontalAdvance(lead.text or "open") + 20

    def _lines(self, width: int) -> tuple[str, ...]:
        key = (width, self.font().pixelSize())
        if key not in self._broken:
            room = width - 2 * SIDE - self._indent()
            self._broken[key] = broken(self.sentence.text, self.font(), room, self._first())
        return self._broken[key]


def _paint_cross(painter: QPainter, middle: QPointF, reach: float, now: Look) -> None:
    """Paint the cross of what is not allowed round ``middle``, as a card prints it."""
    pen = QPen(QColor(now.ink), 1.8)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    painter.setPen(pen)
    for rise in (reach, -reach):
        painter.drawLine(middle + QPointF(-reach, rise), middle + QPointF(reach, -rise))
