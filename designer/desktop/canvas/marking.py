"""What one press does to lines and areas that are picked: what marks them, whether they run on, which form they have."""

from __future__ import annotations

from typing import Any, Final

from designer.desktop.canvas.bench import Bench
from designer.desktop.canvas.measures import pieces_needed
from designer.desktop.canvas.names import called
from designer.desktop.canvas.shaping import Form, as_form
from designer.drill.edits import put
from designer.drill.items import Area, Line, Marked, UnknownShape

MARKS: Final[tuple[tuple[str, Marked, str], ...]] = (
    ("D", "discs", "Discs"),
    ("L", "throw-down", "Throw-down lines"),
    ("C", "chalk", "Chalk"),
    ("T", "tape", "Tape"),
    ("P", "painted", "Painted lines"),
    ("N", "in thought", "Nothing: an imagined line"),
)
"""With Shift, this letter marks what is picked by that; and the words for a menu."""

RUNS_ON_KEY: Final = "R"

FORMS: Final[tuple[tuple[Form, str], ...]] = (
    ("rectangle", "A rectangle"),
    ("ellipse", "Round"),
    ("polygon", "Corners of its own"),
)


def marked_things(bench: Bench) -> tuple[Line | Area, ...]:
    """Return the lines and areas that are picked."""
    items = (bench.setting.items.get(id) for id in sorted(bench.view.selection))
    return tuple(item for item in items if isinstance(item, Line | Area))


def mark_picked(bench: Bench, marked: Marked) -> bool:
    """Mark the picked lines and areas by ``marked``, lines with the pieces that takes; return False where none is picked."""
    things = marked_things(bench)
    if not things:
        return False
    changed = [_marked(thing, marked) for thing in things]
    words = next(words for _, mark, words in MARKS if mark == marked)
    ids = [thing.id for thing in things]
    bench.perform(f"Mark {called(bench.setting, ids)}: {words.lower()}", put(bench.drill, bench.at, *changed))
    return True


def _marked(thing: Line | Area, marked: Marked) -> Line | Area:
    if isinstance(thing, Area):
        return thing.changed(marked=marked)
    return thing.changed(marked=marked, pieces=pieces_needed(thing.corners, marked))


def run_on_picked(bench: Bench) -> bool:
    """Imagine the picked lines longer at both ends, or stop where all of them are; return False where none is picked."""
    lines = [thing for thing in marked_things(bench) if isinstance(thing, Line)]
    if not lines:
        return False
    on = not all(line.runs_on for line in lines)
    what = called(bench.setting, [line.id for line in lines])
    label = f"Imagine {what} longer at both ends" if on else f"End {what} where it ends"
    bench.perform(label, put(bench.drill, bench.at, *(line.changed(runs_on=on) for line in lines)))
    return True


def form_picked(bench: Bench, form: Form) -> bool:
    """Give the picked areas another form in the same box; return False where none is picked."""
    areas: list[Any] = [
        thing for thing in marked_things(bench) if isinstance(thing, Area) and not isinstance(thing.shape, UnknownShape)
    ]
    if not areas:
        return False
    what = called(bench.setting, [area.id for area in areas])
    words = {"rectangle": "a rectangle", "ellipse": "round", "polygon": "one with corners of its own"}[form]
    bench.perform(f"Make {what} {words}", put(bench.drill, bench.at, *(as_form(area, form) for area in areas)))
    return True


def key_picked(bench: Bench, letter: str) -> bool:
    """Do what ``letter`` with Shift does to what is picked; return False where that is nothing."""
    if letter == RUNS_ON_KEY:
        return run_on_picked(bench)
    marked = next((mark for key, mark, _ in MARKS if key == letter), None)
    return marked is not None and mark_picked(bench, marked)
