"""Where things are on the screen, written down for a pointer that is not a person's."""

import json

import pytest
from desktop import hand
from PySide6.QtCore import QPoint

from designer.desktop.positions import ASKED, positions


def test_the_file_follows_the_window(make_window, document, monkeypatch, tmp_path, qtbot):
    file = tmp_path / "positions.json"
    monkeypatch.setenv(ASKED, str(file))
    window = make_window(document)
    qtbot.waitUntil(file.exists)
    before = json.loads(file.read_text("utf-8"))
    assert before["document"]["items"] == 0
    hand.drop(window.canvas, "cone", (1.5, -3.0))
    qtbot.waitUntil(lambda: json.loads(file.read_text("utf-8"))["document"]["items"] == 1)


def test_the_places_are_those_a_pointer_would_hit(window):
    found = positions(window)
    button = window.strip.button("cone")
    assert button.rect().contains(button.mapFromGlobal(QPoint(*found["strip"]["cone"])))
    centre = window.canvas.viewport().mapFromGlobal(QPoint(*found["court"]["centre"]))
    x, y = window.canvas.to_court(centre.toPointF())
    assert (x, y) == pytest.approx((0, 0), abs=1 / found["court"]["pixels_per_metre"])
    assert "basket" not in found["strip"]


def test_nothing_is_written_without_being_asked(make_window, document, monkeypatch, tmp_path):
    monkeypatch.delenv(ASKED, raising=False)
    monkeypatch.chdir(tmp_path)
    make_window(document)
    hand.settle()
    assert list(tmp_path.iterdir()) == []
