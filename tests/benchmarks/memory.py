"""Opening and closing a document 1,000 times: ``python -m tests.benchmarks.memory`` prints how memory grew.

A cycle makes the document, its view and its canvas, shows them, picks and moves a thing, and closes. The first cycles fill
caches; from then on memory may grow by 5 %, the project's own aim. Memory is what the process holds (Linux, proc(5)).
"""

from __future__ import annotations

import gc
import os
import random
import sys
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QApplication
from shiboken6 import isValid

from designer.bundle import sample
from designer.desktop.canvas import deeds
from designer.desktop.canvas.court_canvas import CourtCanvas
from designer.desktop.document import Document
from designer.desktop.view import View
from designer.drill.drill import Drill

WARM_UP, CYCLES = 100, 1000
MAY_GROW = 0.05


def held() -> float:
    """Return the megabytes that this process holds in memory."""
    pages = int(Path("/proc/self/statm").read_text(encoding="ascii").split()[1])
    return pages * os.sysconf("SC_PAGE_SIZE") / 1e6


def cycle(source: bytes) -> None:
    """Open a drill, change it, close it."""
    document = Document(Drill.model_validate_json(source), source=random.Random(1))
    canvas = CourtCanvas(document, View(document, document))
    canvas.resize(700, 500)
    canvas.show()
    QApplication.processEvents()
    deeds.pick_all(canvas.bench)
    deeds.nudge_picked(canvas.bench, (0.0, 0.1))
    QApplication.processEvents()
    canvas.close()
    canvas.deleteLater()
    document.deleteLater()
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    assert not isValid(canvas), "it was closed"


def main() -> int:
    """Print memory after the warm-up and after the cycles; return 1 where it grew by more than it may."""
    _application = QApplication.instance() or QApplication(sys.argv)
    source = sample("wide-start.drill.json").read_bytes()
    for _ in range(WARM_UP):
        cycle(source)
    gc.collect()
    before = held()
    for _ in range(CYCLES):
        cycle(source)
    gc.collect()
    after = held()
    grown = after / before - 1
    print(f"{CYCLES} cycles: {before:.1f} MB, then {after:.1f} MB, {grown:+.1%}, at most {MAY_GROW:+.0%}")
    return int(grown > MAY_GROW)


if __name__ == "__main__":
    sys.exit(main())
