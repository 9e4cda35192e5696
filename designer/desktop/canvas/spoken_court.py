"""What a screen reader finds of the court: a list with an entry for each thing on it, in the order of play."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, Final
from weakref import ref

from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QAccessible, QAccessibleActionInterface, QAccessibleEvent, QAccessibleInterface
from PySide6.QtWidgets import QAccessibleWidget, QWidget

from designer.desktop.canvas import deeds
from designer.desktop.canvas.names import words_of

if TYPE_CHECKING:
    from designer.desktop.canvas.court_canvas import CourtCanvas
    from designer.drill.setting import Setting

HELP: Final = "Enter opens it. Arrow keys move it. The menu key shows what else can be done."
NEAR: Final = 8.0
"""Pixels within which a place of the screen is that of a thing."""
Relation = QAccessible.RelationFlag
MOST_FOLLOWED: Final = 300
"""Of more things than this it is not told that their words have changed: they are read anew when asked for."""
MENU: Final = "ShowMenu"
"""The action by this name is Qt's own; the others come from it by a function."""


class SpokenThing(QAccessibleWidget):
    """One thing on the court. Qt needs a widget to give it actions; it never shows that it is the court's."""

    def __init__(self, court: SpokenCourt, canvas: CourtCanvas, id: str) -> None:
        super().__init__(canvas, QAccessible.Role.ListItem)
        self._court = ref(court)
        self._canvas = ref(canvas)
        self.id = id
        self.said = ""
        """What was last told of it, "" before anybody has asked."""
        self.number = QAccessible.registerAccessibleInterface(self)
        """What Qt knows it by."""

    def object(self) -> None:  # type: ignore[override]  # Qt's own takes None: else it would stand for the court
        return None

    def isValid(self) -> bool:
        return self._canvas() is not None

    def parent(self) -> QAccessibleInterface:
        return self._court()  # type: ignore[return-value]

    def child(self, _index: int) -> QAccessibleInterface:
        return None  # type: ignore[return-value]

    def childAt(self, _x: int, _y: int) -> QAccessibleInterface:
        return None  # type: ignore[return-value]

    def childCount(self) -> int:
        return 0

    def indexOfChild(self, _child: QAccessibleInterface) -> int:
        return -1

    def focusChild(self) -> QAccessibleInterface:
        return None  # type: ignore[return-value]

    def relations(self, _match: Relation = Relation.AllRelations) -> list[tuple[QAccessibleInterface, Relation]]:
        return []

    def text(self, t: QAccessible.Text) -> str:
        """Return its name with where it is; how it is used as help."""
        canvas = self._canvas()
        if t == QAccessible.Text.Help:
            return HELP
        if t != QAccessible.Text.Name or canvas is None:
            return ""
        self.said = words_of(canvas.bench.setting, canvas.bench.ground, self.id, canvas.view.units)
        return self.said

    def rect(self) -> QRect:
        """Return where it is on the screen."""
        canvas = self._canvas()
        if canvas is None:
            return QRect()
        box = canvas.rectangle_of((self.id,)).toAlignedRect()
        return QRect(canvas.viewport().mapToGlobal(box.topLeft()), box.size()) if not box.isNull() else QRect()

    def state(self) -> QAccessible.State:
        """Return whether it is picked, has the keyboard and can be seen."""
        state, canvas = QAccessible.State(), self._canvas()
        if canvas is None:
            return state
        picked = canvas.view.selection
        state.focusable = state.selectable = state.multiSelectable = True
        state.selected = self.id in picked
        state.focused = canvas.hasFocus() and picked == {self.id}
        seen = canvas.viewport().rect().intersects(canvas.rectangle_of((self.id,)).toAlignedRect())
        state.offscreen = not seen
        return state

    def actionNames(self) -> list[str]:
        return [QAccessibleActionInterface.setFocusAction(), QAccessibleActionInterface.pressAction(), MENU]

    def doAction(self, actionName: str) -> None:  # noqa: N803 - Qt's own name
        """Pick it; open its form, or its menu, where that is asked."""
        canvas = self._canvas()
        if canvas is None or canvas.bench.setting.find(self.id) is None:
            return
        canvas.setFocus(Qt.FocusReason.OtherFocusReason)
        canvas.view.select((self.id,))
        if actionName == QAccessibleActionInterface.pressAction():
            canvas.opened.emit(self.id)
        elif actionName == MENU:
            canvas.menu_wanted.emit(self.rect().center())


Things = dict[str, SpokenThing]


class SpokenCourt(QAccessibleWidget):
    """The court: its things, then what lies over it, such as the box in which a place is typed."""

    def __init__(self, canvas: CourtCanvas) -> None:
        super().__init__(canvas, QAccessible.Role.List)
        self._canvas = ref(canvas)
        self._things: Things = {}
        self._order: list[tuple[Setting, tuple[str, ...]]] = []
        canvas.destroyed.connect(partial(_forget, self._things, self._order))
        canvas.document.changed.connect(self._follow)
        canvas.view.at_changed.connect(self._follow)
        canvas.view.units_changed.connect(self._follow)

    @property
    def ids(self) -> tuple[str, ...]:
        """Return the ids of the things, in the order in which Tab walks them."""
        canvas = self._canvas()
        if canvas is None:
            return ()
        setting = canvas.bench.setting
        if not self._order or self._order[0][0] is not setting:
            self._order[:] = [(setting, deeds.step_order(setting))]
        return self._order[0][1]

    def thing(self, id: str) -> SpokenThing | None:
        """Return what stands for the thing called ``id``, None where it is not on the court."""
        canvas = self._canvas()
        if canvas is None or not any(id in getattr(canvas.bench.setting, kind) for kind in deeds.ON_COURT):
            return None
        if id not in self._things:
            self._things[id] = SpokenThing(self, canvas, id)
        return self._things[id]

    def _over(self) -> list[QWidget]:
        """Return what lies over the court."""
        canvas = self._canvas()
        if canvas is None:
            return []
        found = canvas.findChildren(QWidget, options=Qt.FindChildOption.FindDirectChildrenOnly)
        return [each for each in found if each.isVisible() and not each.isWindow() and each is not canvas.viewport()]

    def childCount(self) -> int:
        return len(self.ids) + len(self._over())

    def child(self, index: int) -> QAccessibleInterface:
        """Return the entry at ``index``, None past the last."""
        ids = self.ids
        if 0 <= index < len(ids):
            return self.thing(ids[index])  # type: ignore[return-value]
        over = self._over()
        if 0 <= index - len(ids) < len(over):
            return QAccessible.queryAccessibleInterface(over[index - len(ids)])
        return None  # type: ignore[return-value]

    def childAt(self, x: int, y: int) -> QAccessibleInterface:
        """Return the uppermost thing at a place of the screen, None where there is none."""
        canvas = self._canvas()
        if canvas is None:
            return None  # type: ignore[return-value]
        at = canvas.mapToScene(canvas.viewport().mapFromGlobal(QPoint(x, y)))
        found = canvas.court_scene.ids_at(at, NEAR / canvas.pixels_per_metre)
        return self.thing(found[0]) if found else None  # type: ignore[return-value]

    def indexOfChild(self, child: QAccessibleInterface) -> int:
        ids = self.ids
        if isinstance(child, SpokenThing):
            return ids.index(child.id) if child.id in ids else -1
        over, found = self._over(), child.object()
        return len(ids) + over.index(found) if found in over else -1

    def focusChild(self) -> QAccessibleInterface:
        """Return the thing that is picked alone while the court has the keyboard."""
        canvas = self._canvas()
        if canvas is None or not canvas.hasFocus() or len(canvas.view.selection) != 1:
            return super().focusChild()
        return self.thing(next(iter(canvas.view.selection)))  # type: ignore[return-value]

    def _follow(self, *_: object) -> None:
        """Tell what has come, gone or changed its words; nothing is told of what was never asked for."""
        if self._canvas() is None:
            return
        ids = self.ids
        for id in self._things.keys() - set(ids):
            QAccessible.updateAccessibility(QAccessibleEvent(self._things[id], QAccessible.Event.ObjectDestroyed))
            gone = self._things.pop(id)  # held until Qt has deleted it: Python must not do so first
            QAccessible.deleteAccessibleInterface(gone.number)
        told = [thing for thing in self._things.values() if thing.said]
        for thing in told if len(told) <= MOST_FOLLOWED else ():
            said = thing.said
            if thing.text(QAccessible.Text.Name) != said:
                QAccessible.updateAccessibility(QAccessibleEvent(thing, QAccessible.Event.NameChanged))
        if self._things:
            for id in [id for id in ids if id not in self._things]:
                made = self.thing(id)
                if made is not None:
                    QAccessible.updateAccessibility(QAccessibleEvent(made, QAccessible.Event.ObjectCreated))


def _forget(things: Things, order: list[tuple[Setting, tuple[str, ...]]], *_: object) -> None:
    """Take all out of Qt's table once their court is gone; Qt's binding keeps the court's own empty shell for ever."""
    order.clear()
    for thing in things.values():
        QAccessible.deleteAccessibleInterface(thing.number)
    things.clear()
