"""Reconciling one changed thing of 1,000 against rebuilding the scene: ``python -m tests.benchmarks.scene``.

Both are given the finished picture; what is compared is what each does to the scene. Five interleaved runs; the ratio
of medians is printed and the process ends with 1 where it is over a tenth, the project's own aim.
"""

from __future__ import annotations

import os
import sys
import time
from statistics import median

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtWidgets import QApplication

from designer.desktop.canvas.scene import CourtScene
from designer.drawing.picture import picture
from designer.drawing.themes import theme
from designer.drill.edits import move
from designer.drill.setting import main_setting
from tests.benchmarks.drag import RUNS, crowded

AT_MOST = 0.1


def main() -> int:
    """Print how long one changed thing takes, how long the whole scene does, and the ratio."""
    _application = QApplication.instance() or QApplication(sys.argv)
    light, drill = theme("light"), crowded(1000)
    at = main_setting(drill)
    pictures = [
        picture(shown, at, unit=0.06, theme=light, words=False)
        for shown in (drill, move(drill, at, ("cone-7",), (0.5, 0.5)))
    ]
    kept = CourtScene()
    kept.reconcile(pictures[0], light)
    rounds = []
    for run in range(RUNS):
        begin = time.perf_counter()
        touched = kept.reconcile(pictures[(run + 1) % 2], light)
        middle = time.perf_counter()
        rebuilt = CourtScene()
        rebuilt.reconcile(pictures[(run + 1) % 2], light)
        rounds.append((middle - begin, time.perf_counter() - middle))
        assert {id for id, _, _ in touched} == {"cone-7"}, "one thing has changed"
        assert rebuilt.marks() == kept.marks(), "both show the same"
    one, whole = (median(column) for column in zip(*rounds, strict=True))
    ratio = one / whole
    print(f"one of 1,000: {one * 1000:.2f} ms, rebuilt {whole * 1000:.1f} ms, ratio {ratio:.3f}, at most {AT_MOST}")
    return int(ratio > AT_MOST)


if __name__ == "__main__":
    sys.exit(main())
