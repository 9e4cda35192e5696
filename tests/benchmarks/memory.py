"""Opening and closing a drill 1,000 times: ``python -m tests.benchmarks.memory [CYCLES]`` prints how memory grew.

A cycle makes the whole window with its document, shows it, picks and moves everything, waits for the card, and closes it. The first
cycles fill caches; from then on memory may grow by 5 %, the project's own aim. Memory is what the process holds (Linux,
proc(5)).
"""

from __future__ import annotations

import gc
import os
import random
import sys
import tempfile
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QApplication
from shiboken6 import isValid

from designer.bundle import sample
from designer.desktop.canvas import deeds
from designer.desktop.document import Document
from designer.desktop.prompts import Prompts
from designer.desktop.window import MainWindow
from designer.drawing.qt import load_fonts
from designer.drill.drill import Drill

WARM_UP, CYCLES = 100, 1000
MAY_GROW = 0.05


def held() -> float:
    """Return the megabytes that this process holds in memory."""
    pages = int(Path("/proc/self/statm").read_text(encoding="ascii").split()[1])
    return pages * os.sysconf("SC_PAGE_SIZE") / 1e6


def cycle(source: bytes) -> None:
    """Open a drill in a window of its own, change it, close it."""
    document = Document(Drill.model_validate_json(source), source=random.Random(1))
    window = MainWindow(document, Prompts())
    window.resize(1000, 700)
    window.show()
    QApplication.processEvents()
    deeds.pick_all(window.canvas.bench)
    deeds.nudge_picked(window.canvas.bench, (0.0, 0.1))
    window.column.refresh()
    QApplication.processEvents()
    document.stack.setClean()
    window.close()  # which deletes it, and its document with it
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    assert not isValid(window), "it was closed"


def main() -> int:
    """Print memory after the warm-up and after the cycles; return 1 where it grew by more than it may."""
    cycles = int(sys.argv[1]) if len(sys.argv) > 1 else CYCLES
    _application = QApplication.instance() or QApplication(sys.argv)
    load_fonts()
    source = sample("wide-start.drill.json").read_bytes()
    with tempfile.TemporaryDirectory() as folder:
        os.environ["XDG_CONFIG_HOME"] = os.environ["XDG_STATE_HOME"] = folder  # the settings of the user stay untouched
        for _ in range(WARM_UP):
            cycle(source)
        gc.collect()
        before = held()
        for _ in range(cycles):
            cycle(source)
        gc.collect()
        after = held()
    grown = after / before - 1
    print(f"{cycles} cycles: {before:.1f} MB, then {after:.1f} MB, {grown:+.1%}, at most {MAY_GROW:+.0%}")
    return int(grown > MAY_GROW)


if __name__ == "__main__":
    sys.exit(main())
