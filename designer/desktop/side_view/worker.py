"""Work off the window's thread, one piece at a time: what was asked for last is what is shown."""

from __future__ import annotations

from collections.abc import Callable
from threading import Lock
from typing import Any

from PySide6.QtCore import QCoreApplication, QObject, QRunnable, QThreadPool, Signal


class _Done(QObject):
    told = Signal(int, object, object)
    """The generation, the result, and the sentence where there is none."""
    so_far = Signal(int, object)
    """The generation, and what is known before it is finished."""


class _Line:
    """What work speaks through. Once it is closed nothing gets to the window, which may be gone by then."""

    def __init__(self, done: _Done) -> None:
        self._lock = Lock()
        self._done: _Done | None = done
        self.newest = 0

    @property
    def closed(self) -> bool:
        """Whether nobody listens any more."""
        return self._done is None

    def tell(self, generation: int, result: Any, problem: str) -> None:
        """Tell what came out."""
        with self._lock:
            if self._done is not None:
                self._done.told.emit(generation, result, problem)

    def tell_so_far(self, generation: int, result: Any) -> None:
        """Tell what is known so far."""
        with self._lock:
            if self._done is not None:
                self._done.so_far.emit(generation, result)

    def close(self) -> None:
        """Let nothing through any more."""
        with self._lock:
            self._done = None


class Job:
    """What a piece of long work holds on to: it tells figures on the way, and learns that nobody waits for it."""

    def __init__(self, generation: int, line: _Line) -> None:
        self._generation, self._line = generation, line

    @property
    def cancelled(self) -> bool:
        """Whether something newer was asked for, all was forgotten, or the window is gone."""
        return self._line.closed or self._line.newest != self._generation

    def tell(self, result: Any) -> None:
        """Tell what is known so far."""
        self._line.tell_so_far(self._generation, result)


Work = Callable[[Job], Any]


class _Piece(QRunnable):
    def __init__(self, generation: int, work: Work, line: _Line) -> None:
        super().__init__()
        self._generation, self._work, self._line = generation, work, line

    def run(self) -> None:
        if self._line.closed:
            return
        try:
            result, problem = self._work(Job(self._generation, self._line)), ""
        except (ValueError, KeyError) as error:
            result, problem = None, str(error)
        self._line.tell(self._generation, result, problem)


class Worker(QObject):
    """Runs the newest piece of work there is; pieces that were overtaken while they waited are never begun.

    ``finished`` carries (about, result, problem): what the work was about, what it returned or None, and a sentence on why
    there is nothing. While the newest is still about the same thing, what an older piece found is shown meanwhile.
    ``so_far`` carries (about, result) of the newest piece on the way. When the worker or the program goes, what still runs
    is cut off: it ends in its own time and tells nobody.
    """

    finished = Signal(object, object, str)
    so_far = Signal(object, object)

    def __init__(self, parent: QObject | None = None, pool: QThreadPool | None = None) -> None:
        super().__init__(parent)
        self._pool = QThreadPool.globalInstance() if pool is None else pool
        done = _Done(self)
        done.told.connect(self._take)
        done.so_far.connect(self._take_so_far)
        self._line = line = _Line(done)
        self.destroyed.connect(lambda: line.close())
        application = QCoreApplication.instance()
        if application is not None:
            application.aboutToQuit.connect(self.stop)
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
        self._line.newest = self._generation
        self._about[self._generation] = about
        self._waiting = (self._generation, work)
        self._next()

    def forget(self) -> None:
        """Let nothing that was asked for so far be shown any more."""
        self._generation += 1
        self._line.newest = self._generation
        self._about.clear()
        self._waiting = None

    def stop(self) -> None:
        """Forget all, for good: nothing that still runs is listened to."""
        self.forget()
        self._line.close()
        self._running = False

    def _next(self) -> None:
        if self._running or self._waiting is None or self._line.closed:
            return
        (generation, work), self._waiting = self._waiting, None
        self._running = True
        self._pool.start(_Piece(generation, work, self._line))

    def _take(self, generation: int, result: Any, problem: str) -> None:
        self._running = False
        newest = self._about.get(self._generation)
        about = self._about.pop(generation, None) if generation != self._generation else newest
        for old in [each for each in self._about if each < generation]:
            del self._about[old]
        if about is not None and about == newest:
            self.finished.emit(about, result, problem)
        self._next()

    def _take_so_far(self, generation: int, result: Any) -> None:
        about = self._about.get(generation)
        if generation == self._generation and about is not None:
            self.so_far.emit(about, result)
