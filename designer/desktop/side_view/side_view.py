"""The picked ball from the side, painted to scale."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QLineF, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from designer.desktop.fonts import NOTE, font
from designer.desktop.style import look

if TYPE_CHECKING:
    from designer.desktop.side_view.profile import Line, Profile

HEIGHT: Final = 96
SIDE: Final = 22
FOOT: Final = 20
"""Pixels below the ground, for the words of the lines."""
HEAD: Final = 8
LEAST_TOP: Final = 2.2
"""Metres that are shown above the ground at least."""


class SideView(QWidget):
    """Shows one ``Profile``; nothing while there is none."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._profile: Profile | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("The ball from the side")

    def sizeHint(self) -> QSize:
        return QSize(420, HEIGHT)

    def minimumSizeHint(self) -> QSize:
        return QSize(160, HEIGHT)

    @property
    def profile(self) -> Profile | None:
        """Return what is shown."""
        return self._profile

    def show_profile(self, profile: Profile | None, words: str = "") -> None:
        """Show another ball; ``words`` say the same to whoever listens."""
        self._profile = profile
        self.setAccessibleDescription(words)
        self.update()

    def place(self, along: float, height: float) -> QPointF:
        """Return the pixel of a point ``along`` metres on the ball's way and ``height`` above the ground."""
        assert self._profile is not None
        first, last = self._profile.ends
        across = (self.width() - 2 * SIDE) / max(last - first, 1.0)
        # True to scale where there is room; a lob is pressed down.
        up = min(across, (self.height() - HEAD - FOOT) / max(self._profile.top * 1.08, LEAST_TOP))
        return QPointF(SIDE + (along - first) * across, self.height() - FOOT - height * up)

    def paintEvent(self, _: QPaintEvent) -> None:
        shown = self._profile
        if shown is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(font(NOTE))
        self._paint_ground(painter, shown)
        painter.setClipRect(QRectF(0, 0, self.width(), self.height() - FOOT + 1))
        self._paint_window(painter, shown.edges)
        self._paint_ball(painter, shown)
        painter.setClipping(False)
        self._paint_people(painter, shown)

    def _paint_ground(self, painter: QPainter, shown: Profile) -> None:
        now = look()
        level = self.place(0, 0).y()
        painter.setPen(QPen(QColor(now.edge), 1))
        painter.drawLine(QPointF(SIDE / 2, level), QPointF(self.width() - SIDE / 2, level))
        if shown.inside is not None:
            start, end = (self.place(s, 0) for s in shown.inside)
            painter.setPen(QPen(QColor(now.ink), 3, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap))
            painter.drawLine(start, end)
            self._word(painter, start, end, "in")
        painter.setPen(QPen(QColor(now.soft), 1))
        for along in shown.lines:
            spot = self.place(along, 0)
            painter.drawLine(QLineF(spot.x(), spot.y() - 4, spot.x(), spot.y() + 4))
        if shown.net is not None:
            along, height = shown.net
            foot, top = self.place(along, 0), self.place(along, height)
            painter.setPen(QPen(QColor(now.ink), 2, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap))
            painter.drawLine(foot, top)
            painter.drawLine(QLineF(top.x() - 3, top.y(), top.x() + 3, top.y()))
            self._word(painter, foot, foot, "net")

    def _word(self, painter: QPainter, start: QPointF, end: QPointF, word: str) -> None:
        painter.setPen(QColor(look().soft))
        middle = (start.x() + end.x()) / 2
        box = QRectF(middle - 40, start.y() + 2, 80, FOOT - 2)
        painter.drawText(box, Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop, word)

    def _paint_window(self, painter: QPainter, edges: tuple[Line, ...]) -> None:
        """Paint the lowest and the highest ball that clear the net and land in, and all balls between two of them."""
        now = look()
        if len(edges) > 1:
            low, high = edges
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(now.highlighter))
            painter.drawPolygon(QPolygonF([self.place(*point) for point in (*low, *reversed(high))]))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(QColor(now.highlighter_edge), 1, Qt.PenStyle.DashLine))
        for line in edges:
            painter.drawPath(self._path(line))

    def _path(self, line: Line) -> QPainterPath:
        path = QPainterPath(self.place(*line[0]))
        for point in line[1:]:
            path.lineTo(self.place(*point))
        return path

    def _paint_ball(self, painter: QPainter, shown: Profile) -> None:
        now = look()
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(QColor(now.ink), 2))
        painter.drawPath(self._path(shown.flight))
        painter.setPen(QPen(QColor(now.ink), 1.6, Qt.PenStyle.DotLine))
        painter.drawPath(self._path(shown.after))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(now.ink))
        for point in (shown.flight[0], shown.flight[-1]):
            painter.drawEllipse(self.place(*point), 3, 3)

    def _paint_people(self, painter: QPainter, shown: Profile) -> None:
        now = look()
        painter.setFont(font(NOTE, bold=True))
        for one in shown.met:
            spot = self.place(*one.at)
            painter.setPen(QPen(QColor(now.ink), 1.4))
            painter.setBrush(QColor(now.panel))
            painter.drawEllipse(spot, 8, 8)
            painter.drawText(QRectF(spot.x() - 10, spot.y() - 10, 20, 20), Qt.AlignmentFlag.AlignCenter, one.letter)
