"""Everything that can be done by a menu or a key, in one table, and the menus made from it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QAction, QActionGroup, QKeySequence
from PySide6.QtWidgets import QMenu, QMenuBar

from designer.desktop.canvas.keys import LETTERS
from designer.desktop.forms.kinds_of_rule import KINDS_OF_RULE
from designer.desktop.look import CHOICES

Keys = QKeySequence.StandardKey | str | tuple[str, ...] | None
LINE: Final = "-"


@dataclass(frozen=True, slots=True)
class Deed:
    """One entry of a menu. ``name`` is what the window connects; ``hint`` is a key that the canvas itself takes."""

    name: str
    words: str
    keys: Keys = None
    hint: str = ""
    ticked: bool = False


@dataclass(frozen=True, slots=True)
class Sub:
    """A menu inside a menu. ``one_of`` lets one of its entries be ticked."""

    name: str
    words: str
    entries: tuple[Deed | Sub | str, ...] = ()
    one_of: bool = False


Entry = Deed | Sub | str
Std = QKeySequence.StandardKey
REDO: Final = ("Ctrl+Y", "Ctrl+Shift+Z")
"""Each system has one of the two as its usual one; hands know both."""

FILE: Final[tuple[Entry, ...]] = (
    Deed("new", "New drill", Std.New),
    Deed("open", "Open …", Std.Open),
    Sub("recent", "Open recent"),
    LINE,
    Deed("save", "Save", Std.Save),
    Deed("save as", "Save as …", Std.SaveAs),
    Deed("save copy", "Save a copy …", "Ctrl+Alt+S"),
    Deed("revert", "Go back to what was saved"),
    LINE,
    Deed("handbook", "Handbook …"),
    LINE,
    Deed("print", "Print the card …", Std.Print),
    Deed("export", "Export the picture …", "Ctrl+E"),
    LINE,
    Deed("preferences", "Preferences …", "Ctrl+,"),
    LINE,
    Deed("close", "Close", Std.Close),
    Deed("quit", "Quit", Std.Quit),
)
EDIT: Final[tuple[Entry, ...]] = (
    Deed("undo", "Undo", Std.Undo),
    Deed("redo", "Redo", REDO),
    LINE,
    Deed("cut", "Cut", Std.Cut),
    Deed("copy", "Copy", Std.Copy),
    Deed("paste", "Paste", Std.Paste),
    Deed("delete", "Delete", hint="Del"),
    Deed("duplicate", "Duplicate", hint="Ctrl+D"),
    Sub(
        "arrange",
        "Arrange what is picked",
        (
            Deed("align across", "In a line across the court", "Ctrl+Shift+H"),
            Deed("align along", "In a line along the court", "Ctrl+Shift+V"),
            Deed("spread", "Spread evenly", "Ctrl+Shift+E"),
            LINE,
            Deed("copy to half", "Copy to the other half", "Ctrl+Shift+M"),
            Deed("copy to end", "Copy to the other end", "Ctrl+Shift+O"),
            Deed("row", "Make a row …", "Ctrl+Shift+R"),
        ),
    ),
    Deed("select kind", "Select all of this kind", "Ctrl+Shift+A"),
    Deed("select all", "Select all", Std.SelectAll),
    Deed("select none", "Select nothing", hint="Esc"),
    LINE,
    Deed("open form", "Open what is picked", hint="Enter"),
    Deed("type place", "Type where it stands …", "Ctrl+G"),
    Deed("follow", "Follow the setting below again"),
)
VIEW: Final[tuple[Entry, ...]] = (
    Deed("zoom in", "Larger", Std.ZoomIn),
    Deed("zoom out", "Smaller", Std.ZoomOut),
    Deed("fit", "The whole court", "Ctrl+0"),
    Deed("half near", "The near half", "Ctrl+Alt+N"),
    Deed("half far", "The far half", "Ctrl+Alt+F"),
    Deed("zoom picked", "What is picked", "Ctrl+Alt+P"),
    LINE,
    Sub(
        "lie",
        "The court lies",
        (
            Deed("lie fitting", "As it is larger", ticked=True),
            Deed("lie upright", "Upright", ticked=True),
            Deed("lie across", "Across", ticked=True),
        ),
        one_of=True,
    ),
    Deed("turned", "From the far end", ticked=True),
    Deed("snapping", "Snap to lines, rackets and strides", ticked=True),
    Deed("mark changes", "Mark what is changed here", "Ctrl+Shift+K", ticked=True),
    LINE,
    Deed("strip", "The strip of things", "F9", ticked=True),
    Deed("card", "The card", "F10", ticked=True),
    Deed("full screen", "Full screen", Std.FullScreen, ticked=True),
    Deed("next part", "The next part of the window", "F6"),
    Deed("part before", "The part before", "Shift+F6"),
    Deed("show", "Show the players", "Shift+F5"),
    LINE,
    Sub(
        "units",
        "Distances in",
        (
            Deed("units rackets", "Rackets and strides", ticked=True),
            Deed("units metres", "Metres", ticked=True),
            Deed("units feet", "Feet and inches", ticked=True),
        ),
        one_of=True,
    ),
    Sub(
        "theme",
        "Colours",
        tuple(
            Deed(f"theme {choice}", "As the system" if choice == "system" else choice.capitalize(), ticked=True)
            for choice in CHOICES
        ),
        one_of=True,
    ),
)
INSERT: Final[tuple[Entry, ...]] = (
    *(Deed(f"tool {use.tool}", use.name, hint=use.letter) for use in LETTERS if use.tool != "select"),
    Deed("height cord", "Height cord over the net"),
    LINE,
    Deed("tool select", "Pick and move", hint="V"),
)
DRILL: Final[tuple[Entry, ...]] = (
    Deed("sheet drill:facts", "Players, time and kit"),
    Deed("sheet drill:court", "Court"),
    Deed("sheet drill:in play", "Court in play and ball"),
    Deed("sheet drill:house", "House answers"),
    Deed("sheet drill:words", "Title, objective and cues"),
    Deed("sheet drill:papers", "Author, edition and tags"),
    Sub("jobs", "Who"),
    LINE,
    Deed("play", "Play it", "F5"),
    Deed("who wins", "Who wins, how long, how hard", "Ctrl+F5"),
    LINE,
    Deed("add start", "Say how it starts"),
    Deed("add part", "Add a part of the rally"),
    Sub("rules", "Add a rule about", tuple(Deed(f"rule {name}", words) for name, words in KINDS_OF_RULE)),
    Deed("add points", "Add points"),
    Deed("add finish", "Say where it ends"),
    Deed("add swap", "Add a swap"),
    LINE,
    Sub(
        "progression",
        "Progression",
        (
            Deed("progression add", "Add one after this", "Ctrl+Shift+N"),
            Sub("usual way", "Add one of the usual way"),
            Deed("progression copy", "Duplicate"),
            Deed("progression rename", "Rename", "F2"),
            Deed("progression form", "Name, aim and minutes"),
            LINE,
            Deed("progression earlier", "Earlier in the order", "Ctrl+Shift+PgUp"),
            Deed("progression later", "Later in the order", "Ctrl+Shift+PgDown"),
            LINE,
            Deed("progression remove", "Remove"),
            LINE,
            Deed("progression previous", "Go to the one before", "Ctrl+PgUp"),
            Deed("progression next", "Go to the next", "Ctrl+PgDown"),
        ),
    ),
    Sub(
        "variation",
        "Easier and harder",
        (
            Deed("variation easier", "Add an easier one"),
            Deed("variation harder", "Add a harder one"),
            Deed("variation others", "Add another one"),
            Sub("dials easier", "Turn a dial: easier"),
            Sub("dials harder", "Turn a dial: harder"),
            LINE,
            Deed("variation form", "Name it"),
            Deed("variation remove", "Remove"),
            LINE,
            Deed("go easier", "Go to easier", "Ctrl+Alt+1"),
            Deed("go as set", "Go to as set", "Ctrl+Alt+2"),
            Deed("go harder", "Go to harder", "Ctrl+Alt+3"),
        ),
    ),
    Sub("versions", "Versions"),
)
CARD: Final[tuple[Entry, ...]] = (
    Sub(
        "reader",
        "For",
        (
            Deed("reader player", "The player", "Ctrl+1", ticked=True),
            Deed("reader coach", "The coach", "Ctrl+2", ticked=True),
            Deed("reader stand-in", "A stand-in", "Ctrl+3", ticked=True),
        ),
        one_of=True,
    ),
    Sub("you", "The player is"),
    Deed("ask all", "Ask every open question", ticked=True),
    LINE,
    Sub(
        "paper",
        "Paper",
        (Deed("paper a5", "A5", ticked=True), Deed("paper a4", "A4", ticked=True)),
        one_of=True,
    ),
    Deed("grey", "For a photocopier", ticked=True),
    Deed("today", "Today …"),
    Deed("make card", "Make the card", "Ctrl+Shift+P"),
    Deed("make card as", "Make the card elsewhere …"),
    LINE,
    Deed("copy text", "Copy the card as text"),
    Deed("copy picture", "Copy the picture", "Ctrl+Shift+C"),
)
WINDOW: Final[tuple[Entry, ...]] = (
    Deed("next window", "The next drill", "Ctrl+F6"),
    LINE,
)
HELP: Final[tuple[Entry, ...]] = (
    Deed("keys", "Keys", Std.HelpContents),
    Deed("first drill", "Open a sample drill"),
    LINE,
    Deed("about", "About Drill Designer"),
)
MENUS: Final = (
    ("File", FILE),
    ("Edit", EDIT),
    ("View", VIEW),
    ("Insert", INSERT),
    ("Drill", DRILL),
    ("Card", CARD),
    ("Window", WINDOW),
    ("Help", HELP),
)


class Actions(QObject):
    """The actions by name, and the menus whose entries the window fills in as they open."""

    triggered = Signal(QAction)
    """Some action was triggered, by menu or by key; comes after its own signal."""

    def __init__(self, bar: QMenuBar, parent: QObject) -> None:
        super().__init__(parent)
        self._actions: dict[str, QAction] = {}
        self.menus: dict[str, QMenu] = {}
        for words, entries in MENUS:
            menu = bar.addMenu(f"&{words}")
            self.menus[words] = menu
            self._fill(menu, entries)

    def __getitem__(self, name: str) -> QAction:
        """Return the action of this name."""
        return self._actions[name]

    def names(self) -> tuple[str, ...]:
        """Return the names of all actions."""
        return tuple(self._actions)

    def tick(self, name: str, *, on: bool = True) -> None:
        """Tick an entry, or with ``on`` False take its tick away, without doing what it does."""
        self._actions[name].setChecked(on)

    def _fill(self, menu: QMenu, entries: tuple[Entry, ...], group: QActionGroup | None = None) -> None:
        menu.triggered.connect(self.triggered)
        for entry in entries:
            if isinstance(entry, Sub):
                inner = menu.addMenu(entry.words)
                self.menus[entry.name] = inner
                self._fill(inner, entry.entries, QActionGroup(self) if entry.one_of else None)
            elif isinstance(entry, Deed):
                action = self._action(entry)
                menu.addAction(action)
                if group is not None:
                    group.addAction(action)
            else:
                menu.addSeparator()

    def _action(self, deed: Deed) -> QAction:
        # A tab sets what follows it where a shortcut stands, without binding the key: the canvas takes that itself.
        action = QAction(f"{deed.words}\t{deed.hint}" if deed.hint else deed.words, self)
        action.setObjectName(deed.name)
        action.setCheckable(deed.ticked)
        if isinstance(deed.keys, str | tuple):
            keys = (deed.keys,) if isinstance(deed.keys, str) else deed.keys
            action.setShortcuts([QKeySequence(each) for each in keys])
        elif deed.keys is not None:
            action.setShortcuts(deed.keys)
        action.setShortcutContext(Qt.ShortcutContext.WindowShortcut)
        if deed.name == "quit":
            action.setMenuRole(QAction.MenuRole.QuitRole)
        elif deed.name == "preferences":
            action.setMenuRole(QAction.MenuRole.PreferencesRole)
        elif deed.name == "about":
            action.setMenuRole(QAction.MenuRole.AboutRole)
        else:
            action.setMenuRole(QAction.MenuRole.NoRole)
        self._actions[deed.name] = action
        return action
