"""Work off the window's thread, one piece at a time: what was asked for last is what is shown."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, QRunnable, QThreadPool, Signal

Work = Callable[[], Any]


class _Done(QObject):
    told = Signal(int, object, object)
    """The generation, the result, and the sentence where there is none."""


class _Piece(QRunnable):
    def __init__(self, generation: int, work: Work, done: _Done) -> None:
        super().__init__()
        self._generation, self._work, self._done = generation, work, done

    def run(self) -> None:
        try:
            result, problem = self._work(), ""
        except (ValueError, KeyError) as error:
            result, problem = None, str(error)
        self._done.told.emit(self._generation, result, problem)


class Worker(QObject):
    """Runs the newest piece of work there is; pieces that were overtaken while they waited are never begun.

    ``finished`` carries (about, result, problem): what the work was about, what it returned or None, and a sentence on why
    there is nothing. While the newest is still about the same thing, what an older piece found is shown meanwhile.
    """

    finished = Signal(object, object, str)

    def __init__(self, parent: QObject | None = None, pool: QThreadPool | None = None) -> None:
        super().__init__(parent)
        self._pool = QThreadPool.globalInstance() if pool is None else pool
        self._done = _Done()
        self._done.told.connect(self._take)
        self._generation = 0
        self._about: dict[int, Any] = {}
        self._running = False
        self._waiting: tuple[int, Work] | None = None

    @property
    def busy(self) -> bool:
        """Whether something is being worked out."""
        return self._running

    def ask(self, about: Any, work: Work) -> None:
        """Have ``work`` done; it must touch nothing of the window, and may raise ``ValueError`` with a sentence."""
        self._generation += 1
        self._about[self._generation] = about
        self._waiting = (self._generation, work)
        self._next()

    def forget(self) -> None:
        """Let nothing that was asked for so far be shown any more."""
        self._generation += 1
        self._about.clear()
        self._waiting = None

    def _next(self) -> None:
        if self._running or self._waiting is None:
            return
        (generation, work), self._waiting = self._waiting, None
        self._running = True
        self._pool.start(_Piece(generation, work, self._done))

    def _take(self, generation: int, result: Any, problem: str) -> None:
        self._running = False
        newest = self._about.get(self._generation)
        about = self._about.pop(generation, None) if generation != self._generation else newest
        for old in [each for each in self._about if each < generation]:
            del self._about[old]
        if about is not None and about == newest:
            self.finished.emit(about, result, problem)
        self._next()
