"""One card against reportlab alone: ``python -m tests.benchmarks.card`` prints the ratio of medians.

The peer makes the very same calls on a bare canvas and saves it: no drill, no words, no layout, no attachment.
"""

from __future__ import annotations

import io
import time
from statistics import median
from typing import Any, ClassVar

from reportlab.pdfgen import canvas as reportlab_canvas

from designer.bundle import sample
from designer.cards.card import make_card
from designer.drawing.pdf import REGULAR
from designer.drill.drill import Drill
from designer.drill.setting import main_setting

RUNS = 5
REPEATS = 20


class Recorder:
    """Stands for a canvas: passes every call on and remembers it."""

    calls: ClassVar[list[tuple[str, tuple, dict]]] = []
    real = reportlab_canvas.Canvas

    def __init__(self, *args: Any, **values: Any) -> None:
        self._canvas = Recorder.real(*args, **values)
        self._made = (args[1:], values)
        Recorder.calls.clear()
        Recorder.made = values

    def __getattr__(self, name: str) -> Any:
        found = getattr(self._canvas, name)
        if not callable(found):
            return found

        def call(*args: Any, **values: Any) -> Any:
            Recorder.calls.append((name, args, values))
            return found(*args, **values)

        return call


def timed(work: Any) -> float:
    """Return the seconds that ``work`` takes, the mean of a few calls."""
    begin = time.perf_counter()
    for _ in range(REPEATS):
        work()
    return (time.perf_counter() - begin) / REPEATS


def main() -> None:
    """Print, for each kind of card, its time, the peer's and the ratio."""
    drill = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes())
    at = main_setting(drill)
    source = sample("wide-start.drill.json").read_bytes()
    for paper, reader in (("a5", "player"), ("a5", "coach"), ("a4", "coach")):

        def ours(paper: str = paper, reader: Any = reader) -> None:
            make_card(drill, at, paper=paper, reader=reader, source=source if reader == "coach" else None)

        reportlab_canvas.Canvas = Recorder  # type: ignore[misc]
        ours()
        reportlab_canvas.Canvas = Recorder.real  # type: ignore[misc]
        calls, values = list(Recorder.calls), dict(Recorder.made)

        def peer(calls: list = calls, values: dict = values) -> None:
            bare = Recorder.real(io.BytesIO(), **(values | {"initialFontName": REGULAR}))
            for name, args, named in calls:
                if name == "beginPath":
                    continue
                getattr(bare, name)(*args, **named)

        peer()
        rounds = [(timed(ours), timed(peer)) for _ in range(RUNS)]
        mine, theirs = (median(column) for column in zip(*rounds, strict=True))
        print(f"{paper} {reader}: {mine * 1000:.1f} ms, bare canvas {theirs * 1000:.1f} ms, ratio {mine / theirs:.2f}")


if __name__ == "__main__":
    main()
