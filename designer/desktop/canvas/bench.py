"""What every tool works on: the drill as a gesture found it, previews, steps, snapping, and what the guide shows."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QObject, Signal

from designer.court.standards import Ground, ground
from designer.desktop.canvas.pointer import Pointer
from designer.desktop.document import Document
from designer.desktop.view import View
from designer.drill.base import FARTHEST, Point
from designer.drill.drill import Court, Drill
from designer.drill.ids import Chooser
from designer.drill.setting import At, Setting, setting_at
from designer.play.sequence import Sequence, sequence
from designer.wording.places import place_words

if TYPE_CHECKING:
    from designer.desktop.canvas.snapping import Neighbours


@dataclass(frozen=True, slots=True)
class Guide:
    """What is shown while a gesture goes on, in court metres: a point and its reading, a band, a leg to come.

    ``lines`` show why the point has jumped. ``outline`` is a part of the court that a press would take, ``tags`` are words that
    stand in the middle of something.
    """

    at: Point | None = None
    words: str = ""
    snapped: bool = False
    band: tuple[Point, Point] | None = None
    leg: tuple[Point, ...] = ()
    lines: tuple[tuple[Point, Point], ...] = ()
    outline: tuple[Point, ...] = ()
    tags: tuple[tuple[Point, str], ...] = ()


SHORT: Final = 44
"""Two reasons together are no longer than this many letters; the lines on the court show the rest."""

NO_GUIDE = Guide()


class Bench(QObject):
    """The hands of the tools. Nothing here needs a window."""

    guide_changed = Signal(object)
    said = Signal(str)
    """One sentence for the user: why something was not done."""

    def __init__(self, document: Document, view: View, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.document = document
        self.view = view
        self._guide = NO_GUIDE
        self._ground: tuple[Court, Ground] | None = None
        self._play: tuple[Setting, Sequence | None] | None = None
        self._settled: tuple[Drill, At, Setting] | None = None
        self._neighbours: tuple[frozenset[str], Neighbours] | None = None

    @property
    def drill(self) -> Drill:
        """Return the settled drill: what a gesture starts from."""
        return self.document.drill

    @property
    def at(self) -> At:
        """Return which setting is worked on."""
        return self.view.at

    @property
    def setting(self) -> Setting:
        """Return the settled setting that is worked on."""
        drill, at, known = self.document.drill, self.view.at, self._settled
        if known is None or known[0] is not drill or known[1] != at:
            known = self._settled = (drill, at, setting_at(drill, at))
        return known[2]

    @property
    def source(self) -> Chooser:
        """Return where the random part of new ids comes from."""
        return self.document.source

    @property
    def ground(self) -> Ground:
        """Return the court with its lines."""
        court = self.document.drill.court
        if self._ground is None or self._ground[0] is not court:
            self._ground = (court, ground(court))
        return self._ground[1]

    def play(self, setting: Setting) -> Sequence | None:
        """Return ``setting`` read as play, None where its shots come after one another in a circle."""
        if self._play is None or self._play[0] is not setting:
            try:
                read: Sequence | None = sequence(setting, self.ground, self.document.shown.jobs)
            except ValueError:
                read = None
            self._play = (setting, read)
        return self._play[1]

    @property
    def guide(self) -> Guide:
        """Return what the guide shows now."""
        return self._guide

    def show(self, guide: Guide = NO_GUIDE) -> None:
        """Show ``guide``, or nothing."""
        if guide != self._guide:
            self._guide = guide
            self.guide_changed.emit(guide)

    def preview(self, drill: Drill) -> None:
        """Show ``drill`` while the gesture goes on."""
        self.document.preview(drill)

    def perform(self, label: str, drill: Drill, ids: Iterable[str] | None = None, *, merge: object = None) -> None:
        """Settle ``drill`` as one step and pick ``ids`` (what is picked stays where None)."""
        if self.document.read_only:
            self.abandon()
            self.said.emit("This drill was opened read-only and cannot be changed here.")
            return
        self.document.perform(label, drill, merge=merge)
        self.show()
        if ids is not None:
            self.view.select(ids)

    def abandon(self) -> None:
        """Leave the gesture without trace."""
        self.document.end_preview()
        self.show()

    def snap(self, point: Point, pointer: Pointer, *, but: Collection[str] = (), also: Iterable[Point] = ()) -> Point:
        """Return ``point`` where it jumps to, and show the guide with its reading there and the reasons.

        ``but`` are the ids of what is being moved; ``also`` are points to which it may lie straight.
        """
        point = self.within(point)
        if pointer.free or not self.view.snapping:
            self.show(Guide(at=point, words=self.reading(point)))
            return point
        from designer.desktop.canvas.snapping import jump

        jumped = jump(self.ground, point, pointer.reach, self._others(frozenset(but)), also)
        words = self.reading(jumped.point)
        if jumped.reasons:
            words = f"{words}\n{sentence_of(jumped.reasons)}"
        self.show(Guide(at=jumped.point, words=words, snapped=bool(jumped.reasons), lines=jumped.lines))
        return jumped.point

    def _others(self, but: frozenset[str]) -> Neighbours:
        """Return what a point can be in line with; found once for a gesture."""
        from designer.desktop.canvas.snapping import neighbours

        known = self._neighbours
        setting = self.setting
        if known is None or known[0] != but or known[1].setting is not setting:
            known = self._neighbours = (but, neighbours(setting, but))
        return known[1]

    def add_size(self, id: str) -> None:
        """Add to what the guide says how large the thing called ``id`` is now."""
        from designer.desktop.canvas.measures import size_words

        words = size_words(self.ground, self.view.setting.find(id), self.view.units)
        if words and self._guide.words:
            self.show(replace(self._guide, words=f"{self._guide.words}\n{words}"))

    def lead(self, leg: tuple[Point, ...]) -> None:
        """Show the legs so far beside what the guide says."""
        self.show(replace(self._guide, leg=leg))

    def tell(self, at: Point, words: str) -> None:
        """Show ``words`` at a point that does not jump."""
        self.show(Guide(at=at, words=words))

    def reading(self, point: Point) -> str:
        """Return ``point`` in words, from the nearest painted lines."""
        return place_words(self.ground, point, self.view.units)

    def within(self, point: Point) -> Point:
        """Return the nearest point to ``point`` that can be drawn at: round the court, not across town."""
        far = FARTHEST / 2
        return (min(max(point[0], -far), far), min(max(point[1], -far), far))


def sentence_of(reasons: Collection[str]) -> str:
    """Return the first reasons as one short line: "In line with cone 2; on the baseline"."""
    first, *more = reasons
    text = f"{first}; {more[0]}" if more and len(first) + len(more[0]) < SHORT else first
    return text[:1].upper() + text[1:]
