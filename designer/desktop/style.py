"""The style of every control: Fusion, our palette and one stylesheet, all made from a look."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QApplication, QStyleFactory

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
    }
    for role, colour in roles.items():
        made.setColor(role, QColor(colour))
    for role in (QPalette.ColorRole.WindowText, QPalette.ColorRole.Text, QPalette.ColorRole.ButtonText):
        made.setColor(QPalette.ColorGroup.Disabled, role, QColor(look.faint))
    return made


_SHEET: Final = """
QToolTip {{ color: {ink}; background: {panel}; border: 1px solid {edge}; padding: 4px 6px; }}
QMenuBar {{ background: {window}; padding: 1px 4px; }}
QMenuBar::item {{ padding: 4px 10px; background: transparent; border-radius: 4px; }}
QMenuBar::item:selected, QMenuBar::item:pressed {{ background: {hover}; }}
QMenu {{ background: {panel}; border: 1px solid {edge}; padding: 4px; }}
QMenu::item {{ padding: 6px 28px 6px 24px; border-radius: 4px; color: {ink}; }}
QMenu::item:selected {{ background: {chosen}; color: {chosen_word}; }}
QMenu::item:disabled {{ color: {faint}; }}
QMenu::separator {{ height: 1px; background: {hairline}; margin: 4px 8px; }}
QMenu::indicator {{ width: 12px; height: 12px; left: 6px; }}
QScrollArea, QScrollArea > QWidget > QWidget#page {{ background: transparent; border: none; }}
QScrollBar:vertical {{ background: transparent; width: 12px; margin: 0; }}
QScrollBar::handle:vertical {{ background: {edge}; border-radius: 3px; min-height: 32px; margin: 0 3px; }}
QScrollBar:horizontal {{ background: transparent; height: 12px; margin: 0; }}
QScrollBar::handle:horizontal {{ background: {edge}; border-radius: 3px; min-width: 32px; margin: 3px 0; }}
QScrollBar::add-line, QScrollBar::sub-line, QScrollBar::add-page, QScrollBar::sub-page
    {{ background: none; border: none; width: 0; height: 0; }}
QSplitter::handle {{ background: {hairline}; }}
QLineEdit, QPlainTextEdit#lines {{ background: {panel}; color: {ink}; border: 1px solid {edge}; border-radius: 4px;
    padding: 2px 7px; selection-background-color: {chosen}; selection-color: {chosen_word}; }}
QLineEdit {{ min-height: 20px; }}
QLineEdit:focus, QPlainTextEdit#lines:focus {{ border: 2px solid {ink}; padding: 1px 6px; }}
QLineEdit:disabled {{ color: {faint}; border-color: {hairline}; }}
QComboBox QAbstractItemView {{ background: {panel}; color: {ink}; border: 1px solid {edge}; outline: none;
    selection-background-color: {chosen}; selection-color: {chosen_word}; }}
QPushButton {{ background: {panel}; color: {ink}; border: 1px solid {edge}; border-radius: 5px; padding: 4px 14px;
    min-height: 20px; }}
QPushButton:hover {{ background: {hover}; }}
QPushButton:focus {{ border: 2px solid {ink}; padding: 3px 13px; }}
QPushButton:disabled {{ color: {faint}; border-color: {hairline}; }}
QPushButton#filled {{ background: {chosen}; color: {chosen_word}; border: 1px solid {chosen}; font-weight: bold;
    padding: 4px 16px; }}
QPushButton#filled:hover {{ background: {soft}; border-color: {soft}; }}
QPushButton#filled:focus {{ border: 2px solid {highlighter_edge}; }}
QToolButton {{ background: transparent; color: {ink}; border: 1px solid transparent; border-radius: 4px;
    padding: 3px 6px; }}
QToolButton:hover {{ background: {hover}; }}
QToolButton:focus {{ border: 2px solid {ink}; padding: 2px 5px; }}
QToolButton:disabled {{ color: {faint}; }}
QToolButton::menu-indicator {{ image: none; }}
QToolButton#quiet {{ color: {soft}; padding: 2px 6px; }}
QLabel {{ background: transparent; }}
QMessageBox, QDialog, QInputDialog {{ background: {window}; }}
"""


def stylesheet(look: Look) -> str:
    """Return Qt's stylesheet in the colours of ``look``."""
    colours = {name: getattr(look, name) for name in look.__slots__ if name != "name"}
    return _SHEET.format(**colours)


class Style(QObject):
    """The look in force in the whole program. ``changed`` carries the new ``Look``."""

    changed = Signal(object)

    def __init__(self, application: QApplication) -> None:
        super().__init__(application)
        application.setStyle(QStyleFactory.create("Fusion"))
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
        self._application.setStyleSheet(stylesheet(now))
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
