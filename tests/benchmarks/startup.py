"""How long until the window takes its first key, beside a bare window with the same docks.

    python -m tests.benchmarks.startup

The peer has the same menus, strip, tabs, court, card and bottom line, of Qt's own widgets with nothing behind them. Five
runs of each, interleaved, each from the launch of its process until the first key has been handled ("b" takes the ball in
hand); prints the medians in milliseconds and their ratio.
"""

import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

RUNS = 5
BUDGET = 2.5
MENUS = (
    ("File", 12),
    ("Edit", 20),
    ("View", 25),
    ("Insert", 21),
    ("Drill", 43),
    ("Card", 14),
    ("Window", 1),
    ("Help", 3),
)
MARKS = 40  # as many as an empty court has
ROOT = Path(__file__).resolve().parent.parent.parent

BARE = """
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent, QPainterPath
from PySide6.QtWidgets import (
    QApplication, QGraphicsScene, QGraphicsView, QHBoxLayout, QLabel, QMainWindow, QPlainTextEdit, QPushButton,
    QRadioButton, QScrollArea, QSplitter, QTabBar, QToolButton, QVBoxLayout, QWidget,
)

class View(QGraphicsView):
    def keyPressEvent(self, event):
        self.taken = True

def column(*widgets):
    holder = QWidget()
    layout = QVBoxLayout(holder)
    for widget in widgets:
        layout.addWidget(widget)
    return holder

def row(*widgets):
    holder = QWidget()
    layout = QHBoxLayout(holder)
    for widget in widgets:
        layout.addWidget(widget)
    return holder

application = QApplication([])
application.setStyle("Fusion")
window = QMainWindow()
window.resize(1366, 768)
for name, entries in MENUS:
    menu = window.menuBar().addMenu(name)
    for entry in range(entries):
        menu.addAction(f"Entry {entry}")
scene = QGraphicsScene()
view = View(scene)
for number in range(MARKS):
    path = QPainterPath()
    path.moveTo(number, 0)
    path.lineTo(number, 300)
    scene.addPath(path)
tabs = QTabBar()
tabs.addTab("1")
strip = column(*(QToolButton(text=f"Thing {number}") for number in range(6)))
court = column(tabs, row(*(QRadioButton(word) for word in ("Easier", "As set", "Harder"))), row(strip, view))
scroll = QScrollArea()
scroll.setWidget(column(QPlainTextEdit("Title"), QPlainTextEdit("Objective"), *(QPushButton(f"Sentence {n}") for n in range(8))))
card = column(row(*(QPushButton(word) for word in ("Player", "Coach", "Stand-in", "Print"))), scroll)
splitter = QSplitter()
splitter.addWidget(court)
splitter.addWidget(card)
window.setCentralWidget(column(splitter, row(QLabel("Checks"), QLabel("Kit"), QLabel("Numbers"))))
window.show()
while not window.windowHandle().isExposed():
    application.processEvents()
application.processEvents()
application.sendEvent(view, QKeyEvent(QEvent.Type.KeyPress, Qt.Key.Key_B, Qt.KeyboardModifier.NoModifier, "b"))
assert view.taken
print("taken", flush=True)
"""

OURS = """
from designer.desktop.application import Windows, prepare  # first, as the program's entrance does
from designer.desktop.prompts import Prompts
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent

application = prepare()
windows = Windows(Prompts())
window = windows.new()
while not window.windowHandle().isExposed():
    application.processEvents()
application.processEvents()
application.sendEvent(window.canvas, QKeyEvent(QEvent.Type.KeyPress, Qt.Key.Key_B, Qt.KeyboardModifier.NoModifier, "b"))
assert window.view.tool == "ball", "the key took no ball in hand"
print("taken", flush=True)
"""


def milliseconds(code: str, home: str) -> float:
    """Runs `code` in a fresh process and returns how long it takes from the launch until it says that the key is taken."""
    code = code.replace("MENUS", repr(MENUS)).replace("MARKS", str(MARKS))
    homes = dict.fromkeys(("HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_STATE_HOME", "XDG_CACHE_HOME"), home)
    environment = os.environ | homes | {"QT_QPA_PLATFORM": "offscreen", "PYTHONPYCACHEPREFIX": f"{home}/compiled"}
    environment.pop("PYTHONDONTWRITEBYTECODE", None)  # an installed program is compiled once
    begun = time.perf_counter()
    with subprocess.Popen(
        [sys.executable, "-c", code], cwd=ROOT, env=environment, stdout=subprocess.PIPE, text=True
    ) as run:
        said = run.stdout.readline()
        took = (time.perf_counter() - begun) * 1000
    if said != "taken\n":
        raise SystemExit(f"the key was not taken: {said!r}")
    return took


def main() -> int:
    with tempfile.TemporaryDirectory() as home:
        for code in (BARE, OURS):
            milliseconds(code, home)  # compiled modules and a warm disk for both
        bare, ours = [], []
        for _ in range(RUNS):
            bare.append(milliseconds(BARE, home))
            ours.append(milliseconds(OURS, home))
    peer, own = statistics.median(bare), statistics.median(ours)
    print(f"bare window {peer:.0f} ms, ours {own:.0f} ms, ratio {own / peer:.2f} (at most {BUDGET})")
    return 0 if own <= BUDGET * peer else 1


if __name__ == "__main__":
    sys.exit(main())
