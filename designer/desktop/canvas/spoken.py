"""The court in the tree that a screen reader walks. Nothing of it is built before something asks for the court there."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject
from PySide6.QtGui import QAccessible, QAccessibleEvent, QAccessibleInterface

if TYPE_CHECKING:
    from designer.desktop.canvas.spoken_court import SpokenCourt

_installed: list[Any] = []


def put_courts_in_the_tree() -> None:
    """See to it that every court made from now on is found with its things; it is done once a process."""
    if not _installed:
        _installed.append(_interface)
        QAccessible.installFactory(_interface)


def _interface(_class: str, asked: QObject) -> QAccessibleInterface | None:
    """Return what stands for ``asked`` in the tree where that is a court; None leaves it to Qt."""
    from designer.desktop.canvas.court_canvas import CourtCanvas

    if not isinstance(asked, CourtCanvas):
        return None
    from designer.desktop.canvas.spoken_court import SpokenCourt

    return SpokenCourt(asked)


def spoken_court(canvas: QObject) -> SpokenCourt:
    """Return what stands for ``canvas`` in the tree, made where nothing has asked for it yet."""
    return QAccessible.queryAccessibleInterface(canvas)  # type: ignore[return-value]


def go_to(canvas: QObject, id: str) -> bool:
    """Tell who listens that the keyboard is at the thing called ``id``; return False where nobody listens."""
    if not QAccessible.isActive():
        return False
    thing = spoken_court(canvas).thing(id)
    if thing is None:
        return False
    QAccessible.updateAccessibility(QAccessibleEvent(thing, QAccessible.Event.Focus))
    return True
