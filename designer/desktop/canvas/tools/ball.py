"""Balls: press on the hitter and let go where the ball lands; or click hitter, landing, next contact, landing, and so on."""

from __future__ import annotations

from dataclasses import dataclass

from designer.desktop.canvas.arrows import (
    Flight,
    distance,
    feeds,
    last_shot,
    nearest_person,
    next_letter,
    person_under,
    with_ball,
    with_machine_job,
)
from designer.desktop.canvas.bench import Bench
from designer.desktop.canvas.handles import STEP
from designer.desktop.canvas.placing import NoLetterLeft, fresh_id
from designer.desktop.canvas.pointer import Pointer
from designer.desktop.canvas.tools.base import ToolBase, has_moved
from designer.drill.base import Place, Point
from designer.drill.drill import Drill
from designer.drill.edits import delete
from designer.drill.items import BallMachine
from designer.drill.places import anchor

NOWHERE = "A ball has to go somewhere: click where it lands, away from where it is hit."
NOBODY = "Put a player on the court first: a ball needs someone to hit it."


@dataclass(frozen=True, slots=True)
class Hit:
    """A ball that has been met and not yet landed. ``drill`` may have gained a machine's job."""

    drill: Drill
    id: str
    by: str
    contact: Place | None
    start: Point


@dataclass(frozen=True, slots=True)
class Leg:
    """A ball that this chain has drawn, and the drill as it was then."""

    id: str
    drill: Drill


class BallTool(ToolBase):
    """Draws shots, each after the one before it; ``fed`` makes the next one a fed ball."""

    def __init__(self, bench: Bench, *, fed: bool = False) -> None:
        super().__init__(bench)
        self._fed = fed
        self._hit: Hit | None = None
        self._pressed_at: Point | None = None
        self._last: str | None = None
        self._legs: list[Leg] = []
        self._just_met = False

    @property
    def prompt(self) -> str:
        if self._hit is not None:
            does = "feeds" if self._fed else "hits"
            return f"{self._hit.by} {does}: click where the ball lands. X: someone else. W turns it: shot, feed, run."
        if self._last is not None:
            return "Click where this ball is met. Enter ends, Backspace takes back the last one."
        return "Press on the hitter and let go where the ball lands, or click both."

    @property
    def busy(self) -> bool:
        return self._hit is not None

    def press(self, pointer: Pointer) -> None:
        self._pressed_at = pointer.at
        if self._hit is None:
            self._meet(pointer)
        self._draw(pointer)

    def move(self, pointer: Pointer) -> None:
        self._draw(pointer)

    def hover(self, pointer: Pointer) -> None:
        if self._hit is None:
            self.bench.snap(pointer.at, pointer)
        else:
            self._draw(pointer)

    def release(self, pointer: Pointer) -> None:
        hit, pressed = self._hit, self._pressed_at
        self._pressed_at = None
        if hit is None or pressed is None:
            return
        # The press that met the ball ends it only after a drag; a press that came later is where it lands.
        if self._just_met and not has_moved(pressed, pointer):
            self._just_met = False
            return
        self._land(hit, pointer)

    def turn_hitter(self) -> None:
        """Make the ball that is in the air somebody else's."""
        hit = self._hit
        if hit is None:
            return
        by = next_letter(self.bench.setting, hit.by)
        self._hit = Hit(hit.drill, hit.id, by, hit.contact, hit.start)

    def turn_kind(self) -> str | None:
        """Make a shot in the air a feed, and a feed a run; return the letter of whoever is to make that run."""
        hit = self._hit
        if hit is None:
            return None
        if self._fed:
            self.cancel()
            return hit.by
        self._fed = True
        return None

    def begin(self, by: str) -> None:
        """Meet the next ball with the person ``by``, as a click on that person does."""
        id = fresh_id(self.bench.drill, "shot", self.bench.source)
        self._hit = Hit(self.bench.drill, id, by, None, anchor(self.bench.setting, by) or (0.0, 0.0))
        self._just_met = False

    @property
    def last(self) -> str | None:
        """Return the id of the ball that this chain has drawn last."""
        return self._last

    def finish(self) -> None:
        self.cancel()
        self._last = None
        self._legs.clear()

    def take_back(self) -> bool:
        """Take back the ball in the air, else the last one that has landed."""
        if self.cancel():
            return True
        if not self._legs:
            return False
        gone = self._legs.pop()
        self._last = self._legs[-1].id if self._legs else None
        bench = self.bench
        if bench.drill is gone.drill:
            bench.document.undo()
        elif gone.id in bench.setting.shots:
            bench.perform("Take back a ball", delete(bench.drill, bench.at, (gone.id,)))
        bench.view.select([leg.id for leg in self._legs[-1:]])
        return True

    def cancel(self) -> bool:
        was_busy = super().cancel()
        self._hit = self._pressed_at = None
        self._just_met = False
        return was_busy

    def _meet(self, pointer: Pointer) -> None:
        """Find who hits and from where."""
        bench, setting = self.bench, self.bench.setting
        drill, contact = bench.drill, None
        machine = next((id for id in pointer.under if isinstance(setting.items.get(id), BallMachine)), None)
        by = person_under(setting, pointer.under)
        if by is None and machine is not None:
            try:
                drill, by = with_machine_job(drill)
            except NoLetterLeft as reason:
                bench.said.emit(f"No more players: {reason}.")
                return
            contact, start = Place(on=machine), anchor(setting, machine) or pointer.at
        elif by is None:
            start = bench.snap(pointer.at, pointer)
            contact = Place(at=start)
            last = setting.shots.get(self._last or "")
            by = nearest_person(setting, start, None if last is None else last.by)
        else:
            start = anchor(setting, by) or pointer.at
        if by is None:
            bench.said.emit(NOBODY)
            return
        fed = self._fed or (not setting.shots and feeds(bench.drill, setting, by))
        id = fresh_id(bench.drill, "feed" if fed else "shot", bench.source)
        self._hit = Hit(drill, id, by, contact, start)
        self._just_met = True

    def _draw(self, pointer: Pointer) -> None:
        hit = self._hit
        if hit is None:
            return
        if self._just_met and self._pressed_at is not None and not has_moved(self._pressed_at, pointer):
            return
        landing = self.bench.snap(pointer.at, pointer)
        if distance(hit.start, landing) >= STEP:
            self.bench.preview(self._with(hit, landing, pointer))

    def _land(self, hit: Hit, pointer: Pointer) -> None:
        landing = self.bench.snap(pointer.at, pointer)
        if distance(hit.start, landing) < STEP:
            self.bench.said.emit(NOWHERE)
            return
        drill = self._with(hit, landing, pointer)
        self._hit, self._just_met = None, False
        self._last = hit.id
        self.bench.perform("Add a feed" if self._fed else "Add a ball", drill, (hit.id,))
        self._legs.append(Leg(hit.id, self.bench.drill))
        if self._fed:
            self._fed = False  # the ball is in play: what follows is hit, not fed

    def _with(self, hit: Hit, landing: Point, pointer: Pointer) -> Drill:
        return with_ball(
            hit.drill,
            self.bench.at,
            hit.by,
            Flight(hit.contact, landing, pointer.under),
            id=hit.id,
            follows=self._follows(),
            feed=self._fed,
        )

    def _follows(self) -> str | None:
        """Return the shot that the next one comes after: the chain's last, the picked one, else the last drawn."""
        shots = self.bench.setting.shots
        if self._last in shots:
            return self._last
        last = last_shot(self.bench.setting, self.bench.view.selection)
        return None if last is None else last.id
