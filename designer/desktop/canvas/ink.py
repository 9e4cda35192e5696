"""What is drawn over and under the marks on screen only: halo, handles, rings, guide and band, in the highlighter's style."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFont, QFontMetricsF, QPainter, QPainterPath, QPen
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from designer.desktop.look import Look

HALO: Final = 13.0
CHANGED: Final = 7.0
HANDLE: Final = 8.0
BETWEEN_HANDLE: Final = 6.5
RING: Final = 2.0
LABEL: Final = 13
WIDEST: Final = 300.0
NEAR: Final = 26.0
FAR: Final = 72.0
"""How far from its point a label stands, and how far where it would hide something there, in pixels."""
"""Sizes in device-independent pixels; lines of the guide's label are no wider than the last."""


@dataclass(frozen=True, slots=True)
class Stroke:
    """A path in scene coordinates with its pen (None: only filled) and fill (None: only stroked)."""

    path: QPainterPath
    pen: QPen | None
    fill: QBrush | None = None


@dataclass(frozen=True, slots=True)
class Label:
    """A few words in a box of the highlighter, its leader going from ``at``; ``box`` in scene coordinates.

    Without a leader the box stands on ``at``.
    """

    text: str
    at: QPointF
    box: QRectF
    leads: bool = True


class InkItem(QGraphicsItem):
    """A few strokes and labels, made ready by the canvas."""

    def __init__(self, height: float) -> None:
        super().__init__()
        self.setZValue(height)
        self._strokes: tuple[Stroke, ...] = ()
        self._labels: tuple[Label, ...] = ()
        self._font = QFont()
        self._look: Look | None = None
        self._scale = 1.0
        self._bounds = QRectF()

    def draw(self, strokes: tuple[Stroke, ...] = (), margin: float = 0.0) -> None:
        """Show ``strokes``, which reach at most ``margin`` metres beyond their paths."""
        if not (strokes or self._strokes or self._labels):
            return
        self.prepareGeometryChange()
        self._strokes, self._labels = strokes, ()
        self._bounds = QRectF()
        for stroke in strokes:
            self._bounds = self._bounds.united(
                stroke.path.controlPointRect().adjusted(-margin, -margin, margin, margin)
            )
        self.update()

    def say(self, labels: tuple[Label, ...], look: Look, font: QFont, scale: float) -> None:
        """Show ``labels`` beside the strokes; ``scale`` is pixels a metre."""
        if not labels and not self._labels:
            return
        self.prepareGeometryChange()
        self._labels, self._look, self._font, self._scale = labels, look, font, scale
        edge = 2 / scale
        for label in labels:
            box = label.box.adjusted(-edge, -edge, edge, edge)
            self._bounds = self._bounds.united(box).united(QRectF(label.at, label.box.center()).normalized())
        self.update()

    @property
    def labels(self) -> tuple[Label, ...]:
        """Return the labels that are shown."""
        return self._labels

    def boundingRect(self) -> QRectF:
        return self._bounds

    def paint(self, painter: QPainter, _option: QStyleOptionGraphicsItem, _widget: QWidget | None = None) -> None:
        """Paint the strokes, then the labels."""
        for stroke in self._strokes:
            painter.setPen(stroke.pen if stroke.pen is not None else Qt.PenStyle.NoPen)
            painter.setBrush(stroke.fill if stroke.fill is not None else Qt.BrushStyle.NoBrush)
            painter.drawPath(stroke.path)
        for label in self._labels:
            if self._look is not None:
                self._paint_label(painter, label, self._look)

    def _paint_label(self, painter: QPainter, label: Label, look: Look) -> None:
        painter.setPen(pen(look.highlighter_edge, 1, self._scale))
        near = QPointF(
            min(max(label.at.x(), label.box.left()), label.box.right()),
            min(max(label.at.y(), label.box.top()), label.box.bottom()),
        )
        if label.leads:
            painter.drawLine(label.at, near)
        painter.setBrush(QColor(look.highlighter))
        painter.drawRoundedRect(label.box, 4 / self._scale, 4 / self._scale)
        painter.save()
        painter.translate(label.box.topLeft())
        painter.scale(1 / self._scale, 1 / self._scale)
        painter.setFont(self._font)
        painter.setPen(QColor(look.ink))
        size = QRectF(0, 0, label.box.width() * self._scale, label.box.height() * self._scale)
        painter.drawText(size, Qt.AlignmentFlag.AlignCenter, label.text)
        painter.restore()


def pen(colour: str, width: float, scale: float, *, opacity: float = 1.0, dash: tuple[float, ...] = ()) -> QPen:
    """Return a pen ``width`` pixels wide in a scene of ``scale`` pixels a metre."""
    made = QPen(tint(colour, opacity), width / scale)
    made.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    made.setCapStyle(Qt.PenCapStyle.FlatCap if dash else Qt.PenCapStyle.RoundCap)
    if dash:
        made.setDashPattern([length / width for length in dash])
    return made


def tint(colour: str, opacity: float) -> QColor:
    """Return ``colour`` at ``opacity``, 0 to 1."""
    made = QColor(colour)
    made.setAlphaF(opacity)
    return made


def label_at(
    text: str,
    at: QPointF,
    seen: QRectF,
    font: QFont,
    scale: float,
    hidden_by: Callable[[Sequence[QRectF]], Sequence[int]] | None = None,
) -> Label:
    """Return a label for ``at`` that stands inside ``seen``: above it where nothing speaks against that.

    ``hidden_by`` says how much each of some boxes would hide; the one that hides least is taken, the first among equals.
    """
    metrics = QFontMetricsF(font)
    lines = [part for line in text.splitlines() for part in wrapped(line, metrics, WIDEST)]
    width = (max(metrics.horizontalAdvance(line) for line in lines) + 20) / scale
    height = (metrics.lineSpacing() * len(lines) + 10) / scale
    boxes = _boxes_round(at, width, height, seen.adjusted(4 / scale, 4 / scale, -4 / scale, -4 / scale), scale)
    hides = [0] * len(boxes) if hidden_by is None else hidden_by(boxes)
    return Label("\n".join(lines), at, boxes[hides.index(min(hides))])


def _boxes_round(at: QPointF, width: float, height: float, seen: QRectF, scale: float) -> list[QRectF]:
    """Return where a label may stand: over its point, under it, beside it, then the same farther off; inside ``seen``."""
    boxes = []
    for gap in (NEAR / scale, FAR / scale):
        places = [
            (left, top)
            for top in (at.y() - gap - height, at.y() + gap)
            for left in (at.x() - width / 4, at.x() + gap, at.x() - gap - width)
        ]
        places += [(left, at.y() - height / 2) for left in (at.x() + gap, at.x() - gap - width)]
        for left, top in places:
            box = QRectF(min(max(left, seen.left()), seen.right() - width), top, width, height)
            if seen.top() <= top <= seen.bottom() - height and not box.contains(at):
                boxes.append(box)
    return boxes or [QRectF(seen.left(), at.y() + NEAR / scale, width, height)]


def wrapped(line: str, metrics: QFontMetricsF, width: float) -> list[str]:
    """Return ``line`` as lines of at most ``width`` pixels: broken after a comma where that will do, else between words."""

    def fits(text: str) -> bool:
        return metrics.horizontalAdvance(text) <= width

    if fits(line):
        return [line]
    commas = [index + 1 for index, letter in enumerate(line[:-1]) if letter == "," and line[index + 1] == " "]
    for at in sorted(commas, key=lambda index: abs(index - len(line) / 2)):
        if fits(line[:at]) and fits(line[at + 1 :]):
            return [line[:at], line[at + 1 :]]
    lines = [""]
    for word in line.split(" "):
        longer = f"{lines[-1]} {word}".strip()
        if lines[-1] and not fits(longer):
            lines.append(word)
        else:
            lines[-1] = longer
    return lines


def tag_at(text: str, at: QPointF, font: QFont, scale: float) -> Label:
    """Return a label that stands on ``at``."""
    metrics = QFontMetricsF(font)
    lines = text.splitlines()
    width = (max(metrics.horizontalAdvance(line) for line in lines) + 14) / scale
    height = (metrics.lineSpacing() * len(lines) + 6) / scale
    return Label(text, at, QRectF(at.x() - width / 2, at.y() - height / 2, width, height), leads=False)


def parted(one: Label, other: Label, gap: float) -> tuple[Label, Label]:
    """Return two labels moved apart where they overlap, the way in which their points are farther apart."""
    if not one.box.adjusted(-gap, -gap, gap, gap).intersects(other.box):
        return one, other
    across, down = other.at.x() - one.at.x(), other.at.y() - one.at.y()
    if abs(across) >= abs(down):
        by = QPointF(((one.box.width() + other.box.width()) / 2 + gap - abs(across)) / 2, 0)
        by = by if across >= 0 else -by
    else:
        by = QPointF(0, ((one.box.height() + other.box.height()) / 2 + gap - abs(down)) / 2)
        by = by if down >= 0 else -by
    return replace(one, box=one.box.translated(-by)), replace(other, box=other.box.translated(by))


def handle_box(at: QPointF, scale: float, *, between: bool = False) -> QPainterPath:
    """Return the square of one handle; of one ``between`` two others, a smaller round."""
    half = (HANDLE if not between else BETWEEN_HANDLE) / 2 / scale
    box = QRectF(at.x() - half, at.y() - half, 2 * half, 2 * half)
    path = QPainterPath()
    if between:
        path.addEllipse(box)
    else:
        path.addRect(box)
    return path
