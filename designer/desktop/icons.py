"""The window's own outline icons, painted in whatever colour the look asks for."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

from PySide6.QtCore import QByteArray, QRectF, QSize, Qt
from PySide6.QtGui import QPainter
from PySide6.QtSvg import QSvgRenderer

from designer.bundle import resource

if TYPE_CHECKING:
    from PySide6.QtGui import QIcon


@cache
def _renderer(name: str, colour: str) -> QSvgRenderer:
    drawn = resource("icons", f"{name}.svg").read_text(encoding="utf-8").replace("#000000", colour)
    return QSvgRenderer(QByteArray(drawn.encode()))


def paint_icon(painter: QPainter, name: str, box: QRectF, colour: str) -> None:
    """Paint the icon of ``resources/icons/<name>.svg`` into ``box`` in ``colour`` (``#RRGGBB``)."""
    _renderer(name, colour).render(painter, box)


def icon(name: str, colour: str, size: int = 16) -> QIcon:
    """Return the icon as Qt's controls want it, sharp on screens of up to three pixels a point."""
    from PySide6.QtGui import QIcon, QPixmap

    made = QIcon()
    for scale in (1, 2, 3):
        pixmap = QPixmap(QSize(size * scale, size * scale))
        pixmap.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixmap)
        paint_icon(painter, name, QRectF(0, 0, size * scale, size * scale), colour)
        painter.end()
        pixmap.setDevicePixelRatio(scale)
        made.addPixmap(pixmap)
    return made


def program_icon() -> QIcon:
    """Return the icon of the program."""
    from PySide6.QtGui import QIcon

    return QIcon(str(resource("icons", "drill-designer.svg")))
