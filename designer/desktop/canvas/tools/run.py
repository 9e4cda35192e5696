"""Runs: press on a person and let go where the run ends, or click both; Shift and a click adds a place on the way."""

from __future__ import annotations

from designer.desktop.canvas.arrows import (
    distance,
    met_at,
    nearest_person,
    next_letter,
    person_under,
    run_during,
    with_run,
    with_way_to,
)
from designer.desktop.canvas.bench import Bench
from designer.desktop.canvas.handles import STEP
from designer.desktop.canvas.placing import fresh_id
from designer.desktop.canvas.pointer import Pointer
from designer.desktop.canvas.tools.base import ToolBase, has_moved
from designer.drill.base import Point
from designer.drill.drill import Drill
from designer.drill.setting import setting_at

NOWHERE = "A run has to go somewhere: click where it ends, away from where it begins."
NOBODY = "Put a player on the court first: a run needs someone to make it."


class RunTool(ToolBase):
    """Draws one run after another; each is made while the last ball, or the picked one, is in the air."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench)
        self._by: str | None = None
        self._id = ""
        self._drill = bench.drill
        self._via: tuple[Point, ...] = ()
        self._picked: frozenset[str] = frozenset()
        self._pressed_at: Point | None = None
        self._just_begun = False

    @property
    def prompt(self) -> str:
        if self._by is None:
            return "Press on a person and let go where the run ends, or click both."
        return f"Click where {self._by}'s run ends. Shift and a click: a place on the way. W: a ball."

    @property
    def busy(self) -> bool:
        return self._by is not None

    def press(self, pointer: Pointer) -> None:
        self._pressed_at = pointer.at
        if self._by is None:
            self._begin(pointer)
        self._draw(pointer)

    def move(self, pointer: Pointer) -> None:
        self._draw(pointer)

    def hover(self, pointer: Pointer) -> None:
        if self._by is None:
            self.bench.snap(pointer.at, pointer)
        else:
            self._draw(pointer)

    def release(self, pointer: Pointer) -> None:
        by, pressed = self._by, self._pressed_at
        self._pressed_at = None
        if by is None or pressed is None:
            return
        if self._just_begun and not has_moved(pressed, pointer):
            self._just_begun = False
            return
        end = self._snapped(pointer)
        drill = self._with(by, end, pointer)
        if self._goes_nowhere(drill):
            self.bench.said.emit(NOWHERE)
            return
        if pointer.shift:
            self._just_begun = False
            self._via = (*self._via, end)
            return
        self.cancel()
        self.bench.perform("Add a run", drill, (self._id,))

    def begin(self, by: str) -> None:
        """Start a run of the person ``by``, as a click on that person does."""
        self._by, self._via, self._just_begun = by, (), False
        self._picked = self.bench.view.selection
        self._drill = self.bench.drill
        self._id = fresh_id(self._drill, "run", self.bench.source)

    def turn_runner(self) -> None:
        """Make the run that is being drawn somebody else's."""
        if self._by is not None:
            self._by = next_letter(self.bench.setting, self._by)

    def turn_kind(self) -> str | None:
        """Make the run that is being drawn a ball; return the letter of whoever is to hit it."""
        by = self._by
        self.cancel()
        return by

    def take_back(self) -> bool:
        if self._via:
            self._via = self._via[:-1]
            return True
        return self.cancel()

    def cancel(self) -> bool:
        was_busy = super().cancel()
        self._by, self._via, self._pressed_at, self._just_begun = None, (), None, False
        return was_busy

    def _begin(self, pointer: Pointer) -> None:
        bench, setting = self.bench, self.bench.setting
        person = person_under(setting, pointer.under)
        met = None if person else met_at(setting, pointer.at, 2 * pointer.reach)
        by = person or (met.by if met is not None else nearest_person(setting, pointer.at))
        if by is None:
            bench.said.emit(NOBODY)
            return
        self.begin(by)
        if met is not None:
            # It begins where a ball is met: whoever meets it there has run there, while the ball before was coming.
            self._drill = with_way_to(bench.drill, bench.at, met, fresh_id(bench.drill, "run", bench.source))
            self._id = fresh_id(self._drill, "run", bench.source)
        self._just_begun = True

    def _draw(self, pointer: Pointer) -> None:
        if self._by is None:
            return
        if self._just_begun and self._pressed_at is not None and not has_moved(self._pressed_at, pointer):
            return
        self.bench.preview(self._with(self._by, self._snapped(pointer), pointer))

    def _snapped(self, pointer: Pointer) -> Point:
        return self.bench.snap(pointer.at, pointer, also=self._via[-1:])

    def _goes_nowhere(self, drill: Drill) -> bool:
        """Whether the run of ``drill`` that is being drawn ends where it begins, or where its last way-point is."""
        play = self.bench.play(setting_at(drill, self.bench.at))
        path = () if play is None else play.run_paths.get(self._id, ())
        return len(path) > 1 and distance(path[-2], path[-1]) < STEP

    def _with(self, by: str, end: Point, pointer: Pointer) -> Drill:
        return with_run(
            self._drill,
            self.bench.at,
            by,
            end,
            id=self._id,
            under=pointer.under,
            via=self._via,
            during=run_during(setting_at(self._drill, self.bench.at), by, end, self._picked),
        )
