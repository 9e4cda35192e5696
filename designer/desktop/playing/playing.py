"""A sequence playing on the court of a window: it takes the keys and presses of the court until it is left."""

from __future__ import annotations

import time
from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QEvent, QObject, QPointF, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent
from shiboken6 import isValid

from designer.desktop.playing.bar import PlayBar
from designer.desktop.playing.clockwork import Clockwork
from designer.desktop.playing.course import Course
from designer.desktop.playing.layer import PlayLayer
from designer.desktop.side_view.basis import chosen
from designer.play.sequence import Step

if TYPE_CHECKING:
    from designer.desktop.canvas.court_canvas import CourtCanvas

FRAME: Final = 16
"""Milliseconds from picture to picture."""

REACH: Final = 10.0
"""A press so many pixels from a ball's arrow chooses it."""

_MOUSE: Final = (
    QEvent.Type.MouseButtonPress,
    QEvent.Type.MouseButtonRelease,
    QEvent.Type.MouseButtonDblClick,
    QEvent.Type.MouseMove,
)


class Playing(QObject):
    """Plays the setting in view from the ball ``first`` on, or from its first ball.

    ``clock`` returns seconds. ``left`` comes once, when it is over for whatever reason. Raises ``ValueError`` with a
    sentence where there is nothing to play.
    """

    left = Signal()

    def __init__(
        self,
        canvas: CourtCanvas,
        bar: PlayBar,
        first: str | None = None,
        clock: Callable[[], float] = time.monotonic,
    ) -> None:
        super().__init__(canvas)
        self._canvas, self._port, self._bar, self._clock = canvas, canvas.viewport(), bar, clock
        view = canvas.view
        self.clockwork = Clockwork(Course(chosen().situation(view.document.shown, view.at), first))
        self.layer = PlayLayer(canvas)
        self._offered: tuple[str, ...] | None = None
        self._timer = QTimer(self)
        self._timer.setTimerType(Qt.TimerType.PreciseTimer)
        self._timer.setInterval(FRAME)
        self._timer.timeout.connect(self.tick)
        view.set_tool("select")
        view.select(())
        canvas.installEventFilter(self)
        self._port.installEventFilter(self)
        for signal in (view.document.shown_changed, view.at_changed, view.tool_changed):
            signal.connect(self.leave)
        canvas.sight_changed.connect(self._show)
        bar.chosen.connect(self.choose)
        bar.pause_wanted.connect(self.pause)
        bar.slower_wanted.connect(self.slower)
        bar.faster_wanted.connect(self.faster)
        bar.leave_wanted.connect(self.leave)
        self._gone = False
        canvas.setFocus()
        self.clockwork.tick(clock())
        self._show()
        self._timer.start()

    def tick(self) -> None:
        """Let the time go by that has gone by, and show the court as it is then."""
        if self.clockwork.tick(self._clock()) or self.clockwork.waits:
            self._show()

    def pause(self) -> None:
        """Rest or go on."""
        self._do(self.clockwork.pause)

    def slower(self) -> None:
        """Go slower."""
        self._do(self.clockwork.slower)

    def faster(self) -> None:
        """Go faster."""
        self._do(self.clockwork.faster)

    def choose(self, shot: str) -> None:
        """Go on with this ball, where it is one of those that may follow."""
        self._do(lambda: self.clockwork.choose(shot))

    def leave(self, *_: object) -> None:
        """Put the court back as it was and end."""
        if self._gone:
            return
        self._gone = True
        self._timer.stop()
        if isValid(self._canvas):
            self._canvas.removeEventFilter(self)
            self._port.removeEventFilter(self)
            self.layer.remove()
        self.left.emit()
        self.deleteLater()

    def _do(self, deed: Callable[[], object]) -> None:
        if self._gone:
            return
        self.clockwork.tick(self._clock())
        deed()
        self._show()

    def _show(self) -> None:
        if self._gone:
            return
        clockwork = self.clockwork
        choices = clockwork.course.choices if clockwork.waits else ()
        self.layer.show_moment(clockwork.course.at(clockwork.seconds), (step.shot.id for step in choices))
        self._bar.show_state(self._words(), paused=clockwork.paused, over=clockwork.over)
        offered = tuple(step.shot.id for step in choices)
        if offered != self._offered:
            self._offered = offered
            self._bar.show_choices(list(zip(offered, choice_words(choices), strict=True)))

    def _words(self) -> str:
        clockwork = self.clockwork
        pace = "" if clockwork.pace == 1 else f"  ·  {clockwork.pace:g} × true time"
        if not clockwork.course.legs:
            return f"Which ball first?{pace}"
        leg = clockwork.course.legs[clockwork.number]
        if clockwork.waits:
            return f"What follows ball {leg.step.digit}?{pace}"
        seconds = max(0.0, clockwork.seconds - leg.starts)
        stroke = leg.step.shot.stroke or "drive"
        nothing = "" if leg.strike is not None else ", no landing place is drawn"
        return f"{leg.step.digit}  {leg.step.hitter}: {stroke}{nothing}  ·  {seconds:.1f} s{pace}"

    # keys and presses

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Take keys and presses that would otherwise change the drill."""
        if self._gone:
            return False
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent) and self._deed(event.key()):
            event.accept()
            return True
        if watched is self._canvas and event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            deed = self._deed(event.key())
            if deed is not None:
                deed()
            return deed is not None or bool(event.text())
        if watched is self._canvas and event.type() == QEvent.Type.KeyRelease:
            return True
        if watched is self._port and event.type() in _MOUSE and isinstance(event, QMouseEvent):
            if event.type() == QEvent.Type.MouseButtonPress:
                self._pressed(event.position())
            return True
        return watched is self._port and event.type() in (QEvent.Type.DragEnter, QEvent.Type.ContextMenu)

    def _deed(self, key: int) -> Callable[[], None] | None:
        clockwork = self.clockwork
        deeds: dict[int, Callable[[], object]] = {
            Qt.Key.Key_Space: clockwork.pause,
            Qt.Key.Key_Right: clockwork.next_shot,
            Qt.Key.Key_Left: clockwork.previous_shot,
            Qt.Key.Key_Up: clockwork.faster,
            Qt.Key.Key_Down: clockwork.slower,
            Qt.Key.Key_Plus: clockwork.faster,
            Qt.Key.Key_Minus: clockwork.slower,
        }
        if key == Qt.Key.Key_Escape:
            return self.leave
        if key in deeds:
            return lambda: self._do(deeds[key])
        number = key - Qt.Key.Key_1
        choices = clockwork.course.choices if clockwork.waits else ()
        if 0 <= number < len(choices):
            return lambda: self.choose(choices[number].shot.id)
        return None

    def _pressed(self, pixel: QPointF) -> None:
        """Choose the ball whose arrow is pressed; anywhere else a press rests or goes on."""
        if not self.clockwork.waits:
            self.pause()
            return
        at = self._canvas.mapToScene(pixel.toPoint())
        under = self._canvas.court_scene.ids_at(at, REACH / self._canvas.pixels_per_metre)
        offered = {step.shot.id for step in self.clockwork.course.choices}
        found = next((id for id in under if id in offered), None)
        if found is not None:
            self.choose(found)


def choice_words(steps: Sequence[Step]) -> tuple[str, ...]:
    """Return what each of several balls is called: who hits it and its label, else its stroke; the side where two are alike."""
    words = [f"{step.hitter}: {step.shot.label or step.shot.stroke or 'drive'}" for step in steps]
    return tuple(
        f"{own} {_side(step)}".strip() if words.count(own) > 1 else own for own, step in zip(words, steps, strict=True)
    )


def _side(step: Step) -> str:
    """Return the side of the middle that a ball lands on, as its hitter faces the net."""
    if step.landing is None:
        return ""
    return "to the right" if (step.landing[0] > 0) == (step.end == "near") else "to the left"
