"""The part of the menu on the court that belongs to lines and areas, and to the part of the court that was pressed."""

from __future__ import annotations

from functools import partial

from PySide6.QtWidgets import QMenu

from designer.desktop.canvas import marking
from designer.desktop.canvas.bench import Bench
from designer.desktop.canvas.parts_of_court import add_part, parts_at
from designer.drill.base import Point
from designer.drill.items import Area, Line


def add_shape_entries(menu: QMenu, bench: Bench, at: Point) -> None:
    """Add to ``menu`` what can be done to the lines and areas that are picked.

    With nothing picked, add the parts of the court round ``at`` as areas to be.
    """
    things = marking.marked_things(bench)
    if things:
        _add_marks(menu, bench, {thing.marked for thing in things})
    lines = [thing for thing in things if isinstance(thing, Line)]
    if lines:
        runs_on = menu.addAction(f"Imagined longer at both ends\tShift+{marking.RUNS_ON_KEY}")
        runs_on.setCheckable(True)
        runs_on.setChecked(all(line.runs_on for line in lines))
        runs_on.triggered.connect(lambda: marking.run_on_picked(bench))
    areas = [thing for thing in things if isinstance(thing, Area)]
    if areas:
        _add_forms(menu, bench, {getattr(area.shape, "form", "") for area in areas})
    if not bench.view.selection:
        _add_parts(menu, bench, at)


def _add_marks(menu: QMenu, bench: Bench, now: set[object]) -> None:
    inner = menu.addMenu("Marked by")
    for letter, marked, words in marking.MARKS:
        action = inner.addAction(f"{words}\tShift+{letter}")
        action.setCheckable(True)
        action.setChecked(now == {marked})
        action.triggered.connect(lambda _=False, marked=marked: marking.mark_picked(bench, marked))


def _add_forms(menu: QMenu, bench: Bench, now: set[str]) -> None:
    inner = menu.addMenu("Form")
    for form, words in marking.FORMS:
        action = inner.addAction(words)
        action.setCheckable(True)
        action.setChecked(now == {form})
        action.triggered.connect(lambda _=False, form=form: marking.form_picked(bench, form))
    split = menu.addAction("Split by a line …\tS")
    split.triggered.connect(lambda: bench.view.set_tool("split area"))


def _add_parts(menu: QMenu, bench: Bench, at: Point) -> None:
    parts = parts_at(bench.ground, at)
    if not parts:
        return
    inner = menu.addMenu("Make an area of")
    for part in parts:
        inner.addAction(f"The {part.words}").triggered.connect(partial(add_part, bench, part))
