"""Play it: the sequence on the court in true time, from the Drill menu, the strip of numbers or a step's digit.

And who wins it, how long it takes and how hard it is, from the Drill menu or the bottom line.
"""

from __future__ import annotations

import re
import time
from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QPoint, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import QHBoxLayout

from designer.court.standards import ground
from designer.desktop.controls import Link
from designer.drill.movement import Shot
from designer.play.sequence import sequence

if TYPE_CHECKING:
    from designer.desktop.playing.bar import PlayBar
    from designer.desktop.playing.playing import Playing
    from designer.desktop.window import MainWindow
    from designer.wording.sentence import Sentence


DIGITS = ("step digit", "feed digit")
"""The kinds of mark that carry a step's digit."""


class PlayDeeds(QObject):
    """Starts and ends playing. ``clock`` returns seconds."""

    def __init__(self, window: MainWindow, clock: Callable[[], float] = time.monotonic) -> None:
        super().__init__(window)
        self._window = window
        self.clock = clock
        self.playing: Playing | None = None
        self.bar: PlayBar | None = None
        window.actions_by_name["play"].triggered.connect(lambda _=False: self.play(self._picked()))
        window.actions_by_name["who wins"].triggered.connect(lambda _=False: window.numbers.show_odds())
        window.numbers.play_wanted.connect(self.play)
        self.who = self._in_the_bottom_line()
        window.canvas.viewport().installEventFilter(self)

    def _in_the_bottom_line(self) -> Link:
        """Return a quiet word, at the right end of the bottom line, for who wins: there whatever is picked."""
        window = self._window
        who = Link("Who wins?", window.bottom)
        who.setToolTip("Play the drill out: who is favoured, how long it takes, and how hard everybody works (Ctrl+F5)")
        who.clicked.connect(window.numbers.show_odds)
        line = window.bottom.layout()
        if isinstance(line, QHBoxLayout):
            line.addWidget(who)

        def show(*_: object) -> None:
            who.setVisible(bool(window.view.setting.shots))

        for signal in (window.document.changed, window.view.at_changed):
            signal.connect(show)
        show()
        return who

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Play from a step's digit on the court that is pressed twice."""
        if isinstance(event, QMouseEvent) and event.type() == QEvent.Type.MouseButtonDblClick:
            idle = self.playing is None and self._window.view.tool == "select"
            shot = self.digit_at(event.position().toPoint()) if idle else None
            if shot is not None and event.button() == Qt.MouseButton.LeftButton:
                self.play(shot)
                return True
        return super().eventFilter(watched, event)

    def digit_at(self, pixel: QPoint) -> str | None:
        """Return the id of the ball whose digit is at a pixel of the court, None where there is none."""
        canvas = self._window.canvas
        at = canvas.mapToScene(pixel)
        for item in canvas.court_scene.marks_of(self._window.view.setting.shots):
            if item.mark.kind in DIGITS and item.sceneBoundingRect().contains(at):
                return item.mark.id
        return None

    def play(self, first: str | None = None) -> None:
        """Play the setting in view from the ball ``first`` on; None for its first. While it is played: leave."""
        if self.playing is not None:
            self.playing.leave()
            return
        # The numbers are loaded for the first ball that is played, not for the window's first key.
        from designer.desktop.playing.bar import PlayBar
        from designer.desktop.playing.playing import Playing

        if self.bar is None:
            self.bar = PlayBar()
            self._window.court.addWidget(self.bar)
        try:
            self.playing = Playing(self._window.canvas, self.bar, first, self.clock)
        except ValueError as problem:
            self._window.bottom.say(str(problem))
            return
        self._window.numbers.step_back(back=True)
        self.bar.show()
        self.playing.left.connect(self._ended)

    def play_step(self, step: Sentence) -> None:
        """Play from the ball whose digit stands before ``step``."""
        view = self._window.view
        play = sequence(view.setting, ground(view.document.shown.court), view.document.shown.jobs)
        own = [each for each in play.steps if each.shot.id in step.about]
        digits = re.findall(r"\d+", "" if step.lead is None else step.lead.text)
        named = [each for each in own if digits and each.digit == int(digits[0])] or own[:1]
        if named:
            # Of alternatives none is played yet: the ball before them comes first, then the choice.
            before = play.before[named[0].shot.id] if len(named) > 1 else None
            self.play(before or named[0].shot.id)

    def _ended(self) -> None:
        self.playing = None
        if self.bar is not None:
            self.bar.hide()
        self._window.numbers.step_back(back=False)

    def _picked(self) -> str | None:
        view = self._window.view
        shots = [id for id in view.selection if isinstance(view.setting.find(id), Shot)]
        return shots[0] if len(shots) == 1 else None
