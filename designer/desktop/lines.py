"""Text broken into lines as a control of its own draws them."""

from __future__ import annotations

from PySide6.QtGui import QFont, QTextLayout, QTextOption


def broken(text: str, face: QFont, width: float, first: float = 0.0) -> tuple[str, ...]:
    """Return ``text`` broken into lines no wider than ``width``; the first is shorter by ``first`` pixels."""
    layout = QTextLayout(text, face)
    option = QTextOption()
    option.setWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
    layout.setTextOption(option)
    lines: list[str] = []
    layout.beginLayout()
    while (line := layout.createLine()).isValid():
        line.setLineWidth(max(1.0, width - (first if not lines else 0.0)))
        lines.append(text[line.textStart() : line.textStart() + line.textLength()].rstrip())
    layout.endLayout()
    return tuple(lines) or ("",)
