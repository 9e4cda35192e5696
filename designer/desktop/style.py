"""The style of every control: Fusion and our palette, with sheets for what is typed into, all made from a look."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QApplication

from designer.desktop import settings
from designer.desktop.fonts import CONTROL, font
from designer.desktop.look import LIGHT, Choice, Look, look_for, mixed

FORM_TINT: Final = 0.38
"""How much of the highlighter a form that is open takes, over the panel."""


def form_ground(look: Look) -> str:
    """Return the colour behind a form that is open in the card column."""
    return mixed(look.highlighter, look.panel, FORM_TINT)


def palette(look: Look) -> QPalette:
    """Return Qt's palette in the colours of ``look``."""
    made = QPalette()
    roles = {
        QPalette.ColorRole.Window: look.window,
        QPalette.ColorRole.WindowText: look.ink,
        QPalette.ColorRole.Base: look.panel,
        QPalette.ColorRole.AlternateBase: look.hover,
        QPalette.ColorRole.Text: look.ink,
        QPalette.ColorRole.Button: look.panel,
        QPalette.ColorRole.ButtonText: look.ink,
        QPalette.ColorRole.BrightText: look.ink,
        QPalette.ColorRole.ToolTipBase: look.panel,
        QPalette.ColorRole.ToolTipText: look.ink,
        QPalette.ColorRole.PlaceholderText: look.soft,
        QPalette.ColorRole.Highlight: look.chosen,
        QPalette.ColorRole.HighlightedText: look.chosen_word,
        QPalette.ColorRole.Accent: look.chosen,
        QPalette.ColorRole.Link: look.ink,
        QPalette.ColorRole.Mid: look.hairline,
        QPalette.ColorRole.Light: look.panel,
        QPalette.ColorRole.Dark: look.edge,
        QPalette.ColorRole.Shadow: look.edge,
    }
    for role, colour in roles.items():
        made.setColor(role, QColor(colour))
    for role in (QPalette.ColorRole.WindowText, QPalette.ColorRole.Text, QPalette.ColorRole.ButtonText):
        made.setColor(QPalette.ColorGroup.Disabled, role, QColor(look.faint))
    return made


_FIELDS: Final = """
QLineEdit, QPlainTextEdit {{ background: {panel}; color: {ink}; border: 1px solid {edge}; border-radius: 4px;
    padding: 2px 7px; selection-background-color: {chosen}; selection-color: {chosen_word}; }}
QLineEdit {{ min-height: 20px; }}
QLineEdit:focus, QPlainTextEdit:focus {{ border: 2px solid {ink}; padding: 1px 6px; }}
QLineEdit:disabled, QPlainTextEdit:disabled {{ color: {faint}; border-color: {hairline}; }}
"""

_SCROLL_BAR: Final = """
QScrollBar:vertical {{ background: transparent; width: 12px; margin: 0; }}
QScrollBar::handle:vertical {{ background: {edge}; border-radius: 3px; min-height: 32px; margin: 0 3px; }}
QScrollBar::add-line, QScrollBar::sub-line, QScrollBar::add-page, QScrollBar::sub-page
    {{ background: none; border: none; width: 0; height: 0; }}
"""


def _in_colours(sheet: str, look: Look) -> str:
    return sheet.format(**{name: getattr(look, name) for name in look.__slots__})


MENU_BAR: Final = """
QMenuBar { padding: 0 4px; }
QMenuBar::item { padding: 5px 10px; border-radius: 4px; background: transparent; }
QMenuBar::item:selected, QMenuBar::item:pressed { background: palette(alternate-base); }
"""
"""The style sheet of the menu bar: Qt's own is too low for a row of 28 pixels."""


def field_sheet(look: Look) -> str:
    """Return the style sheet of boxes that are typed into. One for all widgets would cost each of them at start."""
    return _in_colours(_FIELDS, look)


def scroll_bar_sheet(look: Look) -> str:
    """Return the style sheet of a column's scroll bar."""
    return _in_colours(_SCROLL_BAR, look)


class Style(QObject):
    """The look in force in the whole program. ``changed`` carries the new ``Look``."""

    changed = Signal(object)

    def __init__(self, application: QApplication) -> None:
        super().__init__(application)
        application.setStyle("Fusion")
        self._application = application
        self._system = QPalette(application.palette())
        self.look: Look | None = None
        hints = application.styleHints()
        hints.colorSchemeChanged.connect(self.follow)
        hints.accessibility().contrastPreferenceChanged.connect(self.follow)
        application.setFont(font(CONTROL))
        self.follow()

    def choose(self, choice: Choice) -> None:
        """Take a look and remember it."""
        settings.set_theme(choice)
        self.follow()

    def follow(self, *_: object) -> None:
        """Take the look of the user's choice, or the system's where they left it to that."""
        now = look_for(settings.theme(), self._system)
        if now == self.look:
            return
        self.look = now
        self._application.setPalette(palette(now))
        self.changed.emit(now)


_style: list[Style] = []


def style() -> Style:
    """Return the one style of the running program, made when first asked for."""
    if not _style:
        application = QApplication.instance()
        if not isinstance(application, QApplication):
            raise RuntimeError("there is no application to style yet")
        _style.append(Style(application))
    return _style[0]


def look() -> Look:
    """Return the look in force."""
    return style().look or LIGHT
