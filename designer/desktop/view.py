"""What one window looks at: the setting in view, what is picked, which tool is in hand, and how things are shown."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final, Literal, get_args

from PySide6.QtCore import QObject, Signal

from designer.desktop.document import Document
from designer.drill.drill import Drill
from designer.drill.setting import At, Setting, addresses, below, main_setting, setting_at

Units = Literal["rackets", "metres", "feet"]
ThemeName = Literal["light", "dark", "high contrast"]
Lie = Literal["fitting", "upright", "across"]
"""How the court lies on the screen; "fitting" is upright unless across is much larger."""

Tool = Literal[
    "select",
    "player",
    "coach",
    "ball",
    "feed",
    "run",
    "area",
    "round area",
    "polygon",
    "court area",
    "split area",
    "line",
    "cone",
    "disc",
    "hoop",
    "basket",
    "ball machine",
    "barrier",
    "obstacle",
    "note",
]
TOOLS: Final[tuple[Tool, ...]] = get_args(Tool)
UNITS: Final[tuple[Units, ...]] = get_args(Units)


class View(QObject):
    """State of a window that is no part of the drill. Ids that are no longer there leave the selection at once."""

    at_changed = Signal(object)
    selection_changed = Signal(object)
    tool_changed = Signal(str)
    snapping_changed = Signal(bool)
    units_changed = Signal(str)
    theme_changed = Signal(str)
    hovered_changed = Signal(object)
    lie_changed = Signal(str)
    turned_changed = Signal(bool)
    you_changed = Signal(object)
    marking_changed = Signal(bool)

    def __init__(self, document: Document, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.document = document
        self._at = main_setting(document.shown)
        self._selection: frozenset[str] = frozenset()
        self._tool: Tool = "select"
        self._snapping = True
        self._units: Units = "rackets"
        self._theme: ThemeName = "light"
        self._hovered: str | None = None
        self._lie: Lie = "fitting"
        self._turned = False
        self._you: str | None = None
        self._marking = False
        self._resolved: tuple[Drill, At, Setting] | None = None
        document.shown_changed.connect(self._follow)
        document.revisited.connect(self._go_to_what_changed)

    @property
    def at(self) -> At:
        """Return which setting is in view."""
        return self._at

    @property
    def setting(self) -> Setting:
        """Return the whole setting in view, as it is shown now."""
        drill = self.document.shown
        if self._resolved is None or self._resolved[0] is not drill or self._resolved[1] != self._at:
            self._resolved = (drill, self._at, setting_at(drill, self._at))
        return self._resolved[2]

    @property
    def selection(self) -> frozenset[str]:
        """Return the ids of what is picked; they need not be things on the court."""
        return self._selection

    @property
    def tool(self) -> Tool:
        """Return the tool in hand."""
        return self._tool

    @property
    def snapping(self) -> bool:
        """Whether points jump to painted lines, half rackets and whole strides."""
        return self._snapping

    @property
    def units(self) -> Units:
        """Return what distances are said in."""
        return self._units

    @property
    def theme(self) -> ThemeName:
        """Return the theme of the court on screen."""
        return self._theme

    @property
    def hovered(self) -> str | None:
        """Return the id under the pointer, on the court or in the card column."""
        return self._hovered

    @property
    def lie(self) -> Lie:
        """Return how the court is asked to lie on the screen."""
        return self._lie

    @property
    def turned(self) -> bool:
        """Whether the court is seen from the far end."""
        return self._turned

    @property
    def you(self) -> str | None:
        """Return the letter whose card is shown, drawn as YOU, or None."""
        return self._you

    @property
    def marking(self) -> bool:
        """Whether what the setting in view changes over the one below it is marked, and what it takes away shown."""
        return self._marking

    def go_to(self, at: At) -> None:
        """Look at another setting; ``KeyError`` where the drill has none of that name."""
        setting_at(self.document.shown, at)
        if at != self._at:
            self._at = at
            self.at_changed.emit(at)
            self._prune()

    def select(self, ids: Iterable[str]) -> None:
        """Pick ``ids`` and nothing else; ids that are not there are passed over."""
        picked = frozenset(ids) & self.setting.ids()
        if picked != self._selection:
            self._selection = picked
            self.selection_changed.emit(picked)

    def set_tool(self, tool: Tool) -> None:
        """Take another tool in hand; ``ValueError`` for a name that is none of ``TOOLS``."""
        if tool not in TOOLS:
            raise ValueError(f"there is no tool {tool!r}; there are {', '.join(TOOLS)}")
        if tool != self._tool:
            self._tool = tool
            self.tool_changed.emit(tool)

    def set_snapping(self, on: bool) -> None:  # noqa: FBT001 - it is a slot of a checkable action
        """Turn snapping on or off."""
        if on != self._snapping:
            self._snapping = on
            self.snapping_changed.emit(on)

    def set_units(self, units: Units) -> None:
        """Say distances in other units."""
        if units != self._units:
            self._units = units
            self.units_changed.emit(units)

    def set_theme(self, theme: ThemeName) -> None:
        """Show the court in another theme."""
        if theme != self._theme:
            self._theme = theme
            self.theme_changed.emit(theme)

    def set_hovered(self, id: str | None) -> None:
        """Say what the pointer is over."""
        if id != self._hovered:
            self._hovered = id
            self.hovered_changed.emit(id)

    def set_lie(self, lie: Lie) -> None:
        """Lay the court upright or across, or let the window decide."""
        if lie != self._lie:
            self._lie = lie
            self.lie_changed.emit(lie)

    def set_turned(self, turned: bool) -> None:  # noqa: FBT001 - it is a slot of a checkable action
        """Look from the far end, or from the near one."""
        if turned != self._turned:
            self._turned = turned
            self.turned_changed.emit(turned)

    def set_you(self, letter: str | None) -> None:
        """Draw the person in this job as the reader of the card."""
        if letter != self._you:
            self._you = letter
            self.you_changed.emit(letter)

    def set_marking(self, on: bool) -> None:  # noqa: FBT001 - it is a slot of a checkable action
        """Mark what the setting in view changes, or only what a variation has of its own."""
        if on != self._marking:
            self._marking = on
            self.marking_changed.emit(on)

    def changed_ids(self) -> frozenset[str]:
        """Return the ids of what is marked as the own of the setting in view.

        A variation always marks its own. A progression does where it is asked to: what it changes is said on its tab, and
        nearly all of it may be new; the first has nothing below it.
        """
        first = self.document.shown.progressions[0].id
        if self._at.variation is None and (not self._marking or self._at.progression == first):
            return frozenset()
        parent = below(self.document.shown, self._at)
        return frozenset(record.id for _, record in self.setting.records() if parent.find(record.id) != record)

    def _follow(self, _before: Drill, after: Drill) -> None:
        if self._at not in set(addresses(after)):
            self._at = self._nearest(after)
            self.at_changed.emit(self._at)
        self._prune()

    def _nearest(self, drill: Drill) -> At:
        """Return the progression of a variation that has gone, else the main setting."""
        own = At(self._at.progression)
        return own if own in set(addresses(drill)) else main_setting(drill)

    def _prune(self) -> None:
        there = self.setting.ids()
        if not self._selection <= there:
            self._selection &= there
            self.selection_changed.emit(self._selection)
        if self._hovered is not None and self._hovered not in there:
            self.set_hovered(None)

    def _go_to_what_changed(self, before: Drill, after: Drill) -> None:
        """After undo or redo: look at a setting in which something changed, where the one in view did not."""
        old = set(addresses(before))
        if self._at in old and setting_at(before, self._at) == setting_at(after, self._at):
            changed = (
                at for at in addresses(after) if at not in old or setting_at(before, at) != setting_at(after, at)
            )
            self.go_to(next(changed, self._at))
