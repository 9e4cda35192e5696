"""One style for the whole program, in every look; and the bundled letters in it."""

import pytest
from PySide6.QtGui import QFont, QPalette
from PySide6.QtWidgets import QLabel, QPushButton

from designer.desktop import settings
from designer.desktop.fonts import family, font
from designer.desktop.look import BLACK, DARK, LIGHT
from designer.desktop.style import field_sheet, form_ground, look, palette, scroll_bar_sheet, style


@pytest.mark.parametrize("chosen", [LIGHT, DARK, BLACK], ids=lambda look: look.name)
def test_a_look_is_taken_and_remembered(qtbot, styled, chosen):
    told = []
    styled.changed.connect(told.append)
    styled.choose(chosen.name)
    assert look() == chosen
    assert settings.theme() == chosen.name
    label = QLabel("words")
    qtbot.addWidget(label)
    assert label.palette().color(QPalette.ColorRole.WindowText).name() == chosen.ink.lower()
    assert told == ([] if chosen == LIGHT else [chosen])
    styled.choose("light")


def test_nothing_is_styled_again_where_the_look_stays(styled):
    told = []
    styled.changed.connect(told.append)
    styled.follow()
    assert told == []


def test_there_is_one_style(styled):
    assert style() is styled


@pytest.mark.parametrize("sheet", [field_sheet, scroll_bar_sheet])
def test_a_sheet_is_made_of_the_looks_own_colours(sheet):
    assert DARK.edge in sheet(DARK)
    assert LIGHT.edge not in sheet(DARK)
    assert sheet(DARK).count("{") == sheet(DARK).count("}") > 0


def test_disabled_words_are_faint(qapp):
    made = palette(LIGHT)
    assert made.color(QPalette.ColorGroup.Disabled, QPalette.ColorRole.Text).name() == LIGHT.faint.lower()


def test_the_form_lies_between_panel_and_highlighter():
    assert form_ground(LIGHT) not in (LIGHT.panel.lower(), LIGHT.highlighter.lower())


def test_letters_are_the_bundled_ones_without_hinting(qtbot, styled):
    button = QPushButton("Print")
    qtbot.addWidget(button)
    button.ensurePolished()
    for face in (font(14), font(20, bold=True), button.font()):
        assert face.family() == family() == "Noto Sans"
        assert face.hintingPreference() == QFont.HintingPreference.PreferNoHinting
    assert font(20, bold=True).pixelSize() == 20
