"""The colours of the window: light, dark, or the platform's own in high contrast."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QGuiApplication, QPalette

LookName = Literal["light", "dark", "high contrast"]
Choice = Literal["system", "light", "dark", "high contrast"]
CHOICES: Final[tuple[Choice, ...]] = ("system", "light", "dark", "high contrast")


@dataclass(frozen=True, slots=True)
class Look:
    """One set of colours, as ``#RRGGBB``; ``name`` is also the court's theme."""

    name: LookName
    window: str
    title: str
    panel: str
    canvas: str
    ink: str
    soft: str
    faint: str
    hairline: str
    edge: str
    chosen: str
    chosen_word: str
    highlighter: str
    highlighter_edge: str
    hover: str


LIGHT: Final = Look(
    name="light",
    window="#F4F5F3",
    title="#E7EAE7",
    panel="#FFFFFF",
    canvas="#FAFBF9",
    ink="#17202A",
    soft="#4A5660",
    faint="#636E77",
    hairline="#D3D9D6",
    edge="#7E8A92",
    chosen="#17202A",
    chosen_word="#FFFFFF",
    highlighter="#FFE9A8",
    highlighter_edge="#B27C00",
    hover="#EEF1EF",
)
DARK: Final = Look(
    name="dark",
    window="#12181D",
    title="#0D1216",
    panel="#1A232A",
    canvas="#141B20",
    ink="#F1F4F6",
    soft="#B3C0C9",
    faint="#93A1AB",
    hairline="#2C3841",
    edge="#6C7C87",
    chosen="#F1F4F6",
    chosen_word="#12181D",
    highlighter="#4A3C12",
    highlighter_edge="#FFD15C",
    hover="#232E36",
)


def high_contrast(system: QPalette) -> Look:
    """Return the look that takes the panels' colours from the platform's palette, the court's from its own theme."""

    def named(role: QPalette.ColorRole) -> str:
        return system.color(QPalette.ColorGroup.Active, role).name()

    window, text = named(QPalette.ColorRole.Window), named(QPalette.ColorRole.WindowText)
    dark = QColor(window).lightness() < 128
    return Look(
        name="high contrast",
        window=window,
        title=window,
        panel=named(QPalette.ColorRole.Base),
        canvas="#000000",
        ink=text,
        soft=text,
        faint=text,
        hairline=text,
        edge=text,
        chosen=named(QPalette.ColorRole.Highlight),
        chosen_word=named(QPalette.ColorRole.HighlightedText),
        highlighter="#4A3C12" if dark else "#FFE9A8",
        highlighter_edge="#FFD15C" if dark else "#7A5500",
        hover=named(QPalette.ColorRole.AlternateBase),
    )


BLACK: Final = Look(
    name="high contrast",
    window="#000000",
    title="#000000",
    panel="#000000",
    canvas="#000000",
    ink="#FFFFFF",
    soft="#FFFFFF",
    faint="#FFFFFF",
    hairline="#FFFFFF",
    edge="#FFFFFF",
    chosen="#FFFFFF",
    chosen_word="#000000",
    highlighter="#4A3C12",
    highlighter_edge="#FFD15C",
    hover="#2A2A2A",
)
"""High contrast where the user asks for it here and the platform has no such colours of its own."""


def look_for(choice: Choice, system: QPalette) -> Look:
    """Return the look of a user's ``choice``; ``system`` is the platform's palette before ours was laid over it."""
    hints = QGuiApplication.styleHints()
    asked = hints.accessibility().contrastPreference() == Qt.ContrastPreference.HighContrast
    if choice == "high contrast":
        return high_contrast(system) if asked else BLACK
    if choice == "system":
        if asked:
            return high_contrast(system)
        return DARK if hints.colorScheme() == Qt.ColorScheme.Dark else LIGHT
    return DARK if choice == "dark" else LIGHT


def mixed(over: str, under: str, share: float) -> str:
    """Return the colour of ``over`` at ``share`` (0 to 1) opacity on ``under``."""
    top, ground = QColor(over), QColor(under)
    parts = (
        round(share * a + (1 - share) * b)
        for a, b in zip(top.getRgb()[:3], ground.getRgb()[:3], strict=True)  # type: ignore[index]
    )
    return QColor(*parts).name()
