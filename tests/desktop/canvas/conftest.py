"""A hand that works the tools in court metres, without a window."""

import math
import random

import pytest
from desktop.canvas.mouse import shown
from PySide6.QtCore import Qt

from designer.bundle import sample
from designer.desktop.canvas.bench import Bench
from designer.desktop.canvas.handles import handles
from designer.desktop.canvas.pointer import Pointer
from designer.desktop.canvas.toolbox import Stroke, Toolbox
from designer.desktop.canvas.tools.select import drawn_points
from designer.desktop.document import Document
from designer.desktop.view import View
from designer.drill.base import place
from designer.drill.drill import Changes, Drill, Progression
from designer.drill.items import Area, Cone, Line, Rectangle
from designer.drill.movement import Run, Shot
from designer.drill.people import Job, Spot
from designer.drill.setting import At

HERE = At("p")
REACH = 0.3


def a_drill():
    """Two players, a cone, a zone and a line; B feeds, A replies into the zone and gets back."""
    return Drill(
        id="d-test",
        jobs=(Job(letter="A"), Job(letter="B", role="feeds")),
        progressions=(
            Progression(
                id="p",
                changes=Changes(
                    spots=(
                        Spot(id="spot-a", job="A", place=place(0.0, -12.0)),
                        Spot(id="spot-b", job="B", place=place(0.0, 12.0)),
                    ),
                    items=(
                        Cone(kind="cone", id="cone", place=place(2.0, -9.0)),
                        Area(
                            kind="area",
                            id="zone",
                            shape=Rectangle(form="rectangle", corners=((-4.0, 6.0), (0.0, 11.0))),
                        ),
                        Line(kind="line", id="line", corners=((3.0, 2.0), (3.0, 5.0))),
                    ),
                    shots=(
                        Shot(id="feed", by="B", stroke="racket feed", to=place(3.0, -8.0)),
                        Shot(id="reply", by="A", after="feed", contact=place(3.2, -11.0), to=place(-2.0, 8.0)),
                    ),
                    runs=(
                        Run(id="wide", by="A", during="feed", to=place(3.0, -11.2)),
                        Run(id="back", by="A", during="reply", to=place(0.0, -12.2), purpose="recover"),
                    ),
                ),
            ),
        ),
    )


class Hand:
    """Does what a coach does; everything in court metres. Snapping is off unless a test turns it on."""

    def __init__(self, drill):
        self.document = Document(drill, source=random.Random(7))
        self.view = View(self.document)
        self.view.set_snapping(False)
        self.bench = Bench(self.document, self.view)
        self.toolbox = Toolbox(self.bench)
        self.said = []
        self.bench.said.connect(self.said.append)
        self.place = (0.0, 0.0)

    @property
    def setting(self):
        return self.view.setting

    @property
    def undo_text(self):
        return self.document.stack.undoText()

    def under(self, at):
        """People and things whose points lie under the pointer, then areas round it."""
        near = [
            (min(math.dist(at, point) for point in points), id)
            for id, points in drawn_points(self.setting, None).items()
            if points and id not in self.setting.shots and id not in self.setting.runs
        ]
        touched = [id for apart, id in sorted(near) if apart <= REACH]
        round_it = [
            id
            for id, item in self.setting.items.items()
            if id not in touched and item.kind == "area" and inside(item.shape.corners, at)
        ]
        return (*touched, *round_it)

    def pointer(self, at, **held):
        self.place = at
        under = held.pop("under", None)
        return Pointer(at=at, under=self.under(at) if under is None else under, reach=REACH, **held)

    def press(self, at, **held):
        self.toolbox.press(self.pointer(at, **held))

    def release(self, at, **held):
        self.toolbox.release(self.pointer(at, **held))

    def hover(self, at, **held):
        self.toolbox.hover(self.pointer(at, **held))

    def click(self, at, **held):
        self.press(at, **held)
        self.release(at, **held)

    def pull(self, start, *ways, **held):
        """Press at ``start`` and move along ``ways`` without letting go."""
        self.press(start, **held)
        held.pop("handle", None)
        held.pop("under", None)
        for way in ways:
            self.toolbox.move(self.pointer(way, **held))

    def drag(self, start, end, **held):
        middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
        self.pull(start, middle, end, **held)
        held.pop("handle", None)
        held.pop("under", None)
        self.release(end, **held)

    def drag_handle(self, id, part, end, index=0, **held):
        found = next(
            handle
            for handle in handles(self.setting, id, 0.06, self.bench.play(self.setting))
            if (handle.part, handle.index) == (part, index)
        )
        self.drag(found.at, end, handle=found, **held)

    def key(self, key, text="", **held):
        stroke = Stroke(key=key, pointer=self.pointer(self.toolbox.cross or self.place), text=text, **held)
        return self.toolbox.key(stroke)

    def letter(self, letter, at=None):
        if at is not None:
            self.place = at
        return self.key(getattr(Qt.Key, f"Key_{letter}"), letter.lower())

    def escape(self):
        return self.key(Qt.Key.Key_Escape)


def inside(corners, at):
    xs, ys = zip(*corners, strict=True)
    return min(xs) <= at[0] <= max(xs) and min(ys) <= at[1] <= max(ys)


@pytest.fixture
def hand(qapp):
    return Hand(a_drill())


@pytest.fixture
def empty_hand(qapp):
    return Hand(Drill(id="d-test", progressions=(Progression(id="p"),)))


@pytest.fixture
def canvas(qtbot):
    drill = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes())
    made = shown(qtbot, drill)
    yield made
    made.hide()


@pytest.fixture
def blank(qtbot):
    made = shown(qtbot, Drill(id="d", progressions=(Progression(id="p"),)))
    yield made
    made.hide()
