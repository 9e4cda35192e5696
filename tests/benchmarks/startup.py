"""How long until the window takes its first key, beside a bare window with the same docks.

    python -m tests.benchmarks.startup

Five runs of each, interleaved, each in a process of its own; prints the medians in milliseconds and their ratio. A run
ends when the first key press has been handled by the court, or by the bare window's view.
"""

import os
import statistics
import subprocess
import sys
import tempfile
from pathlib import Path

RUNS = 5
BUDGET = 2.5
ROOT = Path(__file__).resolve().parent.parent.parent

BARE = """
import time
begun = time.perf_counter()
import sys
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication, QDockWidget, QGraphicsScene, QGraphicsView, QMainWindow, QToolBar, QTreeWidget

class View(QGraphicsView):
    def keyPressEvent(self, event):
        print((time.perf_counter() - begun) * 1000)

application = QApplication([])
window = QMainWindow()
window.resize(1366, 768)
scene = QGraphicsScene()
view = View(scene)
window.setCentralWidget(view)
for name in ("File", "Edit", "View", "Insert", "Drill", "Card", "Help"):
    window.menuBar().addMenu(name)
for number in range(4):
    dock = QDockWidget(str(number))
    dock.setWidget(QTreeWidget())
    window.addDockWidget(Qt.DockWidgetArea.RightDockWidgetArea, dock)
window.addToolBar(QToolBar())
for number in range(50):
    scene.addEllipse(number * 10, number * 5, 20, 20)
window.statusBar().showMessage("ready")
window.show()
while not window.windowHandle().isExposed():
    application.processEvents()
application.processEvents()
application.sendEvent(view, QKeyEvent(QEvent.Type.KeyPress, Qt.Key.Key_C, Qt.KeyboardModifier.NoModifier, "c"))
"""

OURS = """
import time
begun = time.perf_counter()
import sys
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from designer.desktop.application import Windows, prepare
from designer.desktop.prompts import Prompts

application = prepare()
windows = Windows(Prompts())
window = windows.new()
while not window.windowHandle().isExposed():
    application.processEvents()
application.processEvents()
application.sendEvent(window.canvas, QKeyEvent(QEvent.Type.KeyPress, Qt.Key.Key_C, Qt.KeyboardModifier.NoModifier, "c"))
assert window.view.setting.items, "the key put no cone on the court"
print((time.perf_counter() - begun) * 1000)
"""


def milliseconds(code: str, home: str) -> float:
    """Runs `code` in a fresh process and returns the number it prints."""
    homes = dict.fromkeys(("HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_STATE_HOME", "XDG_CACHE_HOME"), home)
    environment = os.environ | homes | {"QT_QPA_PLATFORM": "offscreen", "PYTHONPYCACHEPREFIX": f"{home}/compiled"}
    environment.pop("PYTHONDONTWRITEBYTECODE", None)  # an installed program is compiled once
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, env=environment, capture_output=True, text=True, check=True
    )
    return float(done.stdout.split()[0])


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
