"""The window's colours against what can be read."""

import pytest
from PySide6.QtGui import QColor, QPalette

from designer.desktop.look import BLACK, DARK, LIGHT, high_contrast, look_for, mixed


def luminance(colour):
    """Relative luminance: WCAG 2.1, definition of the term."""
    red, green, blue = (
        part / 12.92 if part <= 0.03928 else ((part + 0.055) / 1.055) ** 2.4 for part in QColor(colour).getRgbF()[:3]
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other):
    """Contrast ratio: WCAG 2.1, definition of the term."""
    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("look", [LIGHT, DARK, BLACK], ids=lambda look: look.name)
def test_words_can_be_read_on_every_ground(look):
    # WCAG 2.1, success criterion 1.4.3: 4.5:1 for text.
    for ground in (look.window, look.panel, look.canvas, look.hover):
        for word in (look.ink, look.soft, look.faint):
            assert contrast(word, ground) >= 4.5, (word, ground)
    assert contrast(look.ink, look.highlighter) >= 4.5
    assert contrast(look.chosen_word, look.chosen) >= 4.5
    assert contrast(look.ink, mixed(look.highlighter, look.panel, 0.38)) >= 4.5


@pytest.mark.parametrize("look", [LIGHT, DARK, BLACK], ids=lambda look: look.name)
def test_edges_of_controls_can_be_seen(look):
    # WCAG 2.1, success criterion 1.4.11: 3:1 for what shows a control.
    for ground in (look.window, look.panel):
        assert contrast(look.edge, ground) >= 3
    assert contrast(look.highlighter_edge, look.panel) >= 3


def test_high_contrast_takes_the_panels_from_the_platform():
    system = QPalette()
    system.setColor(QPalette.ColorRole.Window, QColor("#101000"))
    system.setColor(QPalette.ColorRole.WindowText, QColor("#FFFF00"))
    system.setColor(QPalette.ColorRole.Highlight, QColor("#00FFFF"))
    look = high_contrast(system)
    assert (look.window, look.ink, look.chosen) == ("#101000", "#ffff00", "#00ffff")
    assert contrast(look.ink, look.highlighter) >= 4.5


def test_the_users_choice_comes_before_the_system(qapp):
    assert look_for("dark", QPalette()) is DARK
    assert look_for("light", QPalette()) is LIGHT
    assert look_for("high contrast", QPalette()) is BLACK


def test_mixing_goes_from_one_colour_to_the_other():
    assert mixed("#FFFFFF", "#000000", 0) == "#000000"
    assert mixed("#FFFFFF", "#000000", 1) == "#ffffff"
    assert mixed("#FF0000", "#0000FF", 0.5) == "#800080"
