"""What the window does while a thing is dragged: ``python -m tests.benchmarks.trace``.

A hand drags a player in the whole window, one step every 16 ms, rests once on the way, goes on and lets go. Everything that the card
column, the tabs, the row of degrees and the bottom line do is written down with its time. Printed are the trace of one drag, how
much of that work fell into a step (none may), and the ratio of a step's median with the column listening to one with it deaf, over
five interleaved runs; of a step the time is that which this process worked, since others may work beside it.
"""

from __future__ import annotations

import os
import random
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import dataclass
from functools import wraps
from statistics import median
from typing import Any

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtWidgets import QApplication

from designer.bundle import sample
from designer.desktop.bottom_line import BottomLine
from designer.desktop.column.column import CardColumn
from designer.desktop.degrees import DegreeRow
from designer.desktop.document import Document
from designer.desktop.prompts import Prompts
from designer.desktop.tabs import ProgressionTabs
from designer.desktop.window import MainWindow
from designer.drawing.qt import load_fonts
from designer.drill.drill import Drill
from designer.drill.places import anchor
from tests.benchmarks.drag import send

RUNS, STEPS, BEAT = 5, 40, 0.016
REST = 0.35
AT_MOST = 1.1
"""A step with the column listening may take so much of one with it deaf: the project's own aim, and a small machine's noise."""


WATCHED = (
    (CardColumn, "refresh", "card"),
    (ProgressionTabs, "refresh", "tabs"),
    (DegreeRow, "refresh", "easier and harder"),
    (BottomLine, "review", "checks"),
)


@dataclass(frozen=True)
class Span:
    """Something that was done, from ``start`` to ``end`` in seconds."""

    what: str
    start: float
    end: float
    worked: float = 0.0
    """Of that, the seconds in which this process worked."""


class Trace:
    """Writes down what is done."""

    def __init__(self) -> None:
        self.spans: list[Span] = []

    def watch(self, holder: Any, name: str, what: str) -> None:
        """Write down each call of the method ``name`` of the class ``holder``, of which there is no instance yet."""
        done: Callable[..., Any] = getattr(holder, name)

        @wraps(done)
        def watched(*arguments: Any) -> Any:
            start = time.perf_counter()
            try:
                return done(*arguments)
            finally:
                self.spans.append(Span(what, start, time.perf_counter()))

        setattr(holder, name, watched)

    def inside(self, step: Span) -> list[Span]:
        """Return what else was done between the start and the end of ``step``."""
        return [span for span in self.spans if span.what != step.what and step.start < span.start < step.end]


def wait(seconds: float) -> None:
    """Let the window do what it wants for a while."""
    end = time.perf_counter() + seconds
    while time.perf_counter() < end:
        QApplication.processEvents()


def drag(window: MainWindow, trace: Trace) -> list[Span]:
    """Drag the player A there and back with one rest on the way; return the steps."""
    canvas, steps = window.canvas, []
    at = anchor(window.view.setting, "A")
    assert at is not None
    start = canvas.to_pixel(at)
    send(canvas, QEvent.Type.MouseButtonPress, start, Qt.MouseButton.LeftButton)
    way = 0.0
    for number in range(1, STEPS + 1):
        way = 2.0 * min(number, STEPS + 2 - number)
        begin, worked = time.perf_counter(), time.process_time()
        send(canvas, QEvent.Type.MouseMove, start + QPointF(way, -way), Qt.MouseButton.LeftButton)
        step = Span("step", begin, time.perf_counter(), time.process_time() - worked)
        steps.append(step)
        trace.spans.append(step)
        wait(REST if number == STEPS // 2 else max(0.0, BEAT - (step.end - step.start)))
    send(canvas, QEvent.Type.MouseButtonRelease, start + QPointF(way, -way), Qt.MouseButton.NoButton)
    wait(1.0)
    window.document.undo()
    wait(0.5)
    return steps


def show(trace: Trace, begin: float) -> None:
    """Print what was done from ``begin`` on, steps in one line as long as nothing else comes between."""
    row: list[Span] = []
    for span in [*sorted(trace.spans, key=lambda span: span.start), None]:
        if span is not None and span.start < begin:
            continue
        if span is not None and span.what == "step":
            row.append(span)
            continue
        if row:
            longest = max(step.end - step.start for step in row)
            print(f"  {row[0].start - begin:6.3f} s  {len(row)} steps, the longest {longest * 1000:.1f} ms")
            row = []
        if span is not None:
            print(f"  {span.start - begin:6.3f} s  {span.what}, {(span.end - span.start) * 1000:.1f} ms")


def main() -> int:
    """Print the trace, how much fell into a step, and the ratio; return 1 where either is more than it may be."""
    _application = QApplication.instance() or QApplication(sys.argv)
    with tempfile.TemporaryDirectory() as folder:
        os.environ["XDG_CONFIG_HOME"] = os.environ["XDG_STATE_HOME"] = folder  # the settings of the user stay untouched
        load_fonts()
        drill = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes())
        trace = Trace()
        for holder, name, what in WATCHED:
            trace.watch(holder, name, what)
        window = MainWindow(Document(drill, source=random.Random(1)), Prompts())
        window.resize(1366, 768)
        window.show()
        wait(1.5)
        medians: dict[bool, list[float]] = {True: [], False: []}
        disturbed: list[Span] = []
        for _ in range(RUNS):
            for shown in (True, False):
                if not shown:
                    window.document.shown_changed.disconnect(window.column._soon)
                begin = time.perf_counter()
                steps = drag(window, trace)
                disturbed += [span for step in steps for span in trace.inside(step)]
                medians[shown].append(median(step.worked for step in steps))
                if not shown:
                    window.document.shown_changed.connect(window.column._soon)
                if shown and len(medians[True]) == 1:
                    show(trace, begin)
        window.document.stack.setClean()
        window.close()
    mine, theirs = median(medians[True]), median(medians[False])
    for span in disturbed:
        print(f"  inside a step: {span.what}, {(span.end - span.start) * 1000:.1f} ms")
    print(f"work of card, tabs and checks inside {2 * RUNS * STEPS} steps: {len(disturbed)} times, at most 0")
    print(
        f"a step: {mine * 1000:.1f} ms, with the column deaf {theirs * 1000:.1f} ms, ratio {mine / theirs:.2f}, at most {AT_MOST}"
    )
    return int(bool(disturbed) or mine / theirs > AT_MOST)


if __name__ == "__main__":
    sys.exit(main())
