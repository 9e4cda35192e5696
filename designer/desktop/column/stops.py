"""Where the Tab key stops in the column, in the order in which it is seen, and what Enter does there."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import pairwise

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QComboBox, QLayout, QToolButton, QWidget

from designer.desktop.column.sentence import SentenceRow


def stops(widget: QWidget) -> Iterator[QWidget]:
    """Yield what takes the keyboard in ``widget``, itself first, then in the order of its layouts; nothing hidden."""
    if widget.isHidden():
        return
    if widget.focusPolicy() & Qt.FocusPolicy.TabFocus and widget.focusProxy() is None:
        yield widget
    if isinstance(widget, SentenceRow) and widget.usual is not None:
        yield from stops(widget.usual)
    layout = widget.layout()
    if layout is not None:
        yield from _in_layout(layout)


def _in_layout(layout: QLayout) -> Iterator[QWidget]:
    for number in range(layout.count()):
        item = layout.itemAt(number)
        inner = None if item is None else item.widget()
        within = None if item is None else item.layout()
        if inner is not None:
            yield from stops(inner)
        elif within is not None:
            yield from _in_layout(within)


def work(widget: QWidget) -> bool:
    """Do what a press on ``widget`` does; return whether it is something to press."""
    if isinstance(widget, QToolButton):
        widget.showMenu()
    elif isinstance(widget, QAbstractButton):
        widget.click()
    elif isinstance(widget, QComboBox):
        widget.showPopup()
    else:
        return False
    return True


def chain(found: Iterable[QWidget]) -> None:
    """Let the Tab key go from each of ``found`` to the next."""
    for before, after in pairwise(found):
        QWidget.setTabOrder(before, after)
