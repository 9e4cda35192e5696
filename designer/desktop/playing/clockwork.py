"""Time as it is played: it runs, rests, goes slower or faster, and from shot to shot. No Qt, no clock of its own."""

from __future__ import annotations

from typing import Final

from designer.desktop.playing.course import Course

PACES: Final = (0.125, 0.25, 0.5, 1.0, 2.0)
"""How many seconds of play go by in one second."""

TRUE: Final = PACES.index(1.0)
_JUST: Final = 0.25
"""A shot that began so few seconds ago is not gone back to, but the one before it."""


class Clockwork:
    """Where in a course one is. ``tick`` takes the time of whatever clock its owner has, in seconds."""

    def __init__(self, course: Course) -> None:
        self.course = course
        self.seconds = 0.0
        self.paused = False
        self._pace = TRUE
        self._last: float | None = None

    @property
    def pace(self) -> float:
        """Return how fast it goes, 1 for true time."""
        return PACES[self._pace]

    @property
    def waits(self) -> bool:
        """Whether it stands still until somebody chooses what follows."""
        return bool(self.course.choices) and self.seconds >= self.course.ends

    @property
    def over(self) -> bool:
        """Whether all has been played."""
        return not self.course.choices and self.seconds >= self.course.ends

    @property
    def number(self) -> int:
        """Return which ball is in play, counted from 0."""
        begun = [number for number, leg in enumerate(self.course.legs) if leg.starts <= self.seconds + 1e-9]
        return begun[-1] if begun else 0

    def tick(self, now: float) -> bool:
        """Let time go by; return whether anything has moved."""
        gone = 0.0 if self._last is None else max(0.0, now - self._last)
        self._last = now
        before = self.seconds
        if not self.paused:
            self.seconds = min(self.seconds + gone * self.pace, self.course.ends)
        return self.seconds != before

    def pause(self) -> None:
        """Rest, or go on; when all is over, from the beginning."""
        if self.over:
            self.seconds, self.paused = 0.0, False
        else:
            self.paused = not self.paused

    def faster(self) -> None:
        """Go faster."""
        self._pace = min(self._pace + 1, len(PACES) - 1)

    def slower(self) -> None:
        """Go slower."""
        self._pace = max(self._pace - 1, 0)

    def next_shot(self) -> None:
        """Go to the next hit; to the end, or the choice, after the last."""
        later = [leg.starts for leg in self.course.legs if leg.starts > self.seconds + 1e-6]
        self.seconds = later[0] if later else self.course.ends

    def previous_shot(self) -> None:
        """Go back to the hit of the ball in play, or to the one before where that has only just been hit."""
        number = self.number
        legs = self.course.legs
        if not legs:
            return
        if self.seconds - legs[number].starts < _JUST and number > 0:
            number -= 1
        self.course.back_to(number)
        self.seconds = self.course.legs[number].starts

    def choose(self, shot: str) -> bool:
        """Go on with this ball; return whether it may follow."""
        ended = self.course.ends
        if not self.course.choose(shot):
            return False
        self.seconds = min(self.seconds, ended)
        self.paused = False
        return True
