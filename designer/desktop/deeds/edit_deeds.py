"""The Edit and Insert menus."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QPoint, QTimer
from PySide6.QtWidgets import QMenu

from designer.desktop.canvas import deeds
from designer.desktop.canvas.keys import LETTERS
from designer.desktop.deeds.arrange_deeds import ArrangeDeeds
from designer.drill import edits
from designer.drill.drill import Drill
from designer.drill.ids import new_id
from designer.drill.items import HeightCord, Note
from designer.drill.setting import below, setting_at

if TYPE_CHECKING:
    from designer.desktop.canvas.note_editor import NoteEditor
    from designer.desktop.place_entry import PlaceEntry
    from designer.desktop.window import MainWindow

CORD = 1.8288
"""How high a height cord hangs at first, in metres: 6 ft, twice the net's middle. Common practice, no source."""


class EditDeeds(QObject):
    """Undo and redo with their names, and what is done to what is picked."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        self._arrange = ArrangeDeeds(window)
        actions, document = window.actions_by_name, window.document
        actions["undo"].triggered.connect(self.undo)
        actions["redo"].triggered.connect(self.redo)
        actions["delete"].triggered.connect(self.delete)
        actions["duplicate"].triggered.connect(lambda: deeds.duplicate_picked(window.canvas.bench))
        actions["select all"].triggered.connect(lambda: deeds.pick_all(window.canvas.bench))
        actions["select none"].triggered.connect(lambda: window.view.select(()))
        actions["open form"].triggered.connect(self._open)
        actions["type place"].triggered.connect(self.type_place)
        actions["follow"].triggered.connect(self._follow)
        self.entry: PlaceEntry | None = None
        self.note: NoteEditor | None = None
        for use in LETTERS:
            actions[f"tool {use.tool}"].triggered.connect(lambda _=False, tool=use.tool: self._take(tool))
        actions["height cord"].triggered.connect(self._hang_cord)
        window.canvas.menu_wanted.connect(self._pop)
        document.changed.connect(self._write_new_note)
        document.stack.canUndoChanged.connect(self._show_steps)
        document.stack.canRedoChanged.connect(self._show_steps)
        document.stack.undoTextChanged.connect(self._show_steps)
        document.stack.redoTextChanged.connect(self._show_steps)
        document.stack.indexChanged.connect(self._show_steps)
        window.view.selection_changed.connect(self._show_selection)
        self._show_steps()
        self._show_selection()

    def undo(self) -> None:
        """Take back the last step; typing that goes on ends with it."""
        self._window.bursts.end()
        self._window.document.undo()

    def redo(self) -> None:
        """Do the step again that was taken back last."""
        self._window.bursts.end()
        self._window.document.redo()

    def delete(self) -> None:
        """Delete what is picked, on the court or not."""
        window = self._window
        if not deeds.delete_picked(window.canvas.bench) and window.view.selection:
            drill = edits.delete(window.document.drill, window.view.at, window.view.selection)
            window.perform("Delete what was picked", drill)

    def menu(self) -> QMenu:
        """Return the menu of what can be done to what is picked."""
        from designer.desktop.canvas.past_menu import add_past_entries
        from designer.desktop.canvas.shape_menu import add_shape_entries
        from designer.desktop.canvas.stroke_menu import add_stroke_entries

        menu = QMenu(self._window)
        actions = self._window.actions_by_name
        for name in ("open form", "type place", "duplicate", "delete", "follow"):
            if actions[name].isEnabled():
                menu.addAction(actions[name])
        canvas = self._window.canvas
        add_stroke_entries(menu, canvas.toolbox)
        add_past_entries(menu, canvas)
        add_shape_entries(menu, canvas.bench, canvas.to_court(canvas.pointer_place()))
        menu.addSeparator()
        for name in ("cut", "copy", "paste"):
            menu.addAction(actions[name])
        menu.addMenu(actions.menus["arrange"])
        menu.addSeparator()
        for name in ("select all", "fit"):
            menu.addAction(actions[name])
        return menu

    def _pop(self, spot: QPoint) -> None:
        self.menu().popup(spot)

    def _open(self) -> None:
        window, picked = self._window, self._window.view.selection
        if len(picked) != 1:
            return
        id = next(iter(picked))
        if isinstance(window.view.setting.items.get(id), Note) and window.column.isVisible():
            window.column.open(id)  # a press on the court writes it; here all that can be said of it is asked for
        else:
            window.canvas.opened.emit(id)

    def type_place(self) -> None:
        """Show a box beside what is picked in which its place is typed."""
        from designer.desktop.measured import stands
        from designer.desktop.place_entry import PlaceEntry

        window = self._window
        bench, picked = window.canvas.bench, window.view.selection
        if len(picked) != 1 or window.document.read_only or window.document.previewing:
            return
        id = next(iter(picked))
        if stands(bench.drill, bench.at, id) is None:
            window.bottom.say("That has no place of its own.")
            return
        self.entry = PlaceEntry(bench, id, window.canvas)
        self.entry.stand_beside(window.canvas.rectangle_of(picked))

    def write_note(self, id: str) -> bool:
        """Put the caret into the words of a note where they stand on the court; return whether ``id`` is a note's."""
        window = self._window
        if not isinstance(window.view.setting.items.get(id), Note) or window.document.read_only:
            return False
        from designer.desktop.canvas.note_editor import NoteEditor

        if self.note is not None:
            self.note.finish()
        self.note = NoteEditor(window.canvas.bench, window.bursts, id, window.canvas.viewport())
        self.note.closed.connect(self._leave_note)
        self.note.stand_at(window.canvas.rectangle_of([id]))
        return True

    def _leave_note(self, held: object) -> None:
        self.note = None
        if held:
            self._window.canvas.setFocus()

    def _write_new_note(self, before: Drill, _: Drill) -> None:
        """Let a note be written as soon as it is put down."""
        window = self._window
        if window.view.tool != "note" or window.document.stack.canRedo():
            return
        try:
            there = setting_at(before, window.view.at).items
        except KeyError:
            return
        new = [id for id, item in window.view.setting.items.items() if isinstance(item, Note) and id not in there]
        if len(new) == 1:
            QTimer.singleShot(0, self, lambda: self.write_note(new[0]))

    def _follow(self) -> None:
        window = self._window
        drill = edits.follow_again(window.document.drill, window.view.at, window.view.selection)
        window.perform("Follow again", drill)

    def _take(self, tool: str) -> None:
        self._window.view.set_tool(tool)  # type: ignore[arg-type]
        self._window.canvas.setFocus()

    def _hang_cord(self) -> None:
        window = self._window
        cord = HeightCord(
            kind="height cord", id=new_id("cord", window.document.source, window.view.setting.ids()), height=CORD
        )
        window.perform("Add a height cord", edits.put(window.document.drill, window.view.at, cord))
        window.column.open(cord.id)

    def _show_steps(self, *_: object) -> None:
        stack, actions = self._window.document.stack, self._window.actions_by_name
        for name, words, able, said in (
            ("undo", "Undo", stack.canUndo(), stack.undoText()),
            ("redo", "Redo", stack.canRedo(), stack.redoText()),
        ):
            step = f"{said[:1].lower()}{said[1:]}".replace("&", "&&")
            actions[name].setText(f"{words} {step}" if able and said else words)
            actions[name].setEnabled(able)

    def _show_selection(self, *_: object) -> None:
        window = self._window
        picked, actions = window.view.selection, window.actions_by_name
        for name in ("delete", "duplicate", "select none"):
            actions[name].setEnabled(bool(picked))
        actions["open form"].setEnabled(len(picked) == 1)
        actions["type place"].setEnabled(len(picked & deeds.on_court(window.view.setting)) == 1 == len(picked))
        parent = below(window.document.shown, window.view.at)
        own = [id for id in picked if parent.find(id) not in (None, window.view.setting.find(id))]
        actions["follow"].setEnabled(bool(own))
