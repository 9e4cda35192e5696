"""One's own group: "they hit this 4 of 10", and the drag of the air. Built when it is first asked for."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QDoubleSpinBox, QLabel, QSpinBox, QWidget

from designer.desktop import settings
from designer.desktop.controls import Link
from designer.desktop.flow import Flow, together
from designer.desktop.fonts import CONTROL, font
from designer.desktop.side_view.basis import Basis

MOST: Final = 200
"""Balls that anybody counts."""

USUAL_DRAG: Final = 0.55


class GroupRow(QWidget):
    """``counted`` carries (hits, tries); ``forgotten`` and ``drag_chosen`` (None for the ball's own) what they say."""

    counted = Signal(int, int)
    forgotten = Signal()
    drag_chosen = Signal(object)

    def __init__(self, basis: Basis, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.hits, self.tries = self._count(0), self._count(1)
        self.hits.setAccessibleName("Balls that hit")
        self.tries.setAccessibleName("Balls that were tried")
        self.tries.setValue(10)
        self.hits.setValue(4)
        self.keep, self.forget = Link("Keep"), Link("Usual players")
        self.keep.setToolTip("Fit the spread of their balls to that, and keep it with the level")
        self.forget.setToolTip("Forget the count: the numbers are those of the level again")
        self.keep.clicked.connect(lambda: self.counted.emit(self.hits.value(), self.tries.value()))
        self.forget.clicked.connect(self.forgotten)
        self.drag = QDoubleSpinBox(self)
        self.drag.setRange(*settings.DRAG)
        self.drag.setSingleStep(0.01)
        self.drag.setAccessibleName("Drag coefficient of the ball")
        self.drag.setToolTip("Measured in flight 0.51, in wind tunnels 0.55 to 0.65: choose what suits your balls")
        self.drag.setValue(USUAL_DRAG if basis.drag is None else basis.drag)
        self.drag.valueChanged.connect(self._took_drag)
        self._lay()
        self.show_basis(basis)

    def show_basis(self, basis: Basis) -> None:
        """Show whether a count is kept with the level."""
        self.forget.setVisible(basis.group is not None)

    def _count(self, least: int) -> QSpinBox:
        box = QSpinBox(self)
        box.setRange(least, MOST)
        box.setFont(font(CONTROL))
        return box

    def _lay(self) -> None:
        row = Flow(self, gap=6)
        counted = together(self._label("They hit this"), self.hits, self._label("of"), self.tries)
        for widget in (counted, self.keep, self.forget, together(self._label("Drag of the air"), self.drag)):
            row.addWidget(widget)

    def _label(self, words: str) -> QLabel:
        label = QLabel(words, self)
        label.setFont(font(CONTROL))
        return label

    def _took_drag(self, value: float) -> None:
        self.drag_chosen.emit(None if abs(value - USUAL_DRAG) < 1e-6 else round(value, 3))
