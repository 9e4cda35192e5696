"""The parts of a window that the keyboard goes through: the court, the card, the line at the foot, the tabs and the strip."""

from __future__ import annotations

from weakref import ref

from PySide6.QtCore import QObject, Qt
from PySide6.QtWidgets import QApplication, QWidget
from shiboken6 import isValid


class Parts(QObject):
    """Takes the keyboard from part to part, and in each to where it was last."""

    def __init__(self, parts: tuple[QWidget, ...], parent: QObject) -> None:
        super().__init__(parent)
        self._parts = parts
        self._last: dict[int, ref[QWidget]] = {}

    def go(self, *, back: bool = False) -> None:
        """Give the keyboard to the next part that is seen, or with ``back`` to the one before."""
        now, count = QApplication.focusWidget(), len(self._parts)
        here = next((place for place, part in enumerate(self._parts) if now and _holds(part, now)), None)
        if here is not None and now is not None:
            self._last[here] = ref(now)
        start = here if here is not None else (1 if back else count - 1)
        for step in range(1, count + 1):
            target = self._target((start - step if back else start + step) % count)
            if target is not None:
                target.setFocus(Qt.FocusReason.TabFocusReason)
                return

    def _target(self, place: int) -> QWidget | None:
        """Return what takes the keyboard in one part, None where nothing can."""
        part = self._parts[place]
        known = self._last[place]() if place in self._last else None
        if known is not None and isValid(known) and _takes(known):
            return known
        if _takes(part):
            return part
        each = part.nextInFocusChain()
        while each is not None and each is not part:
            if _takes(each) and _holds(part, each):
                return each
            each = each.nextInFocusChain()
        return None


def _holds(part: QWidget, widget: QWidget) -> bool:
    return part is widget or part.isAncestorOf(widget)


def _takes(widget: QWidget) -> bool:
    tab = widget.focusPolicy() & Qt.FocusPolicy.TabFocus
    return bool(tab) and widget.isVisible() and widget.isEnabled()
