"""Long work of a window, off its thread: it says how far it is and can be stopped, and the window goes on meanwhile."""

from __future__ import annotations

import logging
from collections.abc import Callable
from typing import Any, Final

from PySide6.QtCore import QObject, QRunnable, QThreadPool, QTimer, Signal

from designer.desktop.notice import NoticeBar
from designer.storage.writing import Unwritable

NOTICED_AFTER: Final = 400
"""Milliseconds after which work is spoken of: what is done sooner needs no notice."""

log = logging.getLogger(__name__)


class Stopped(Exception):
    """The user has stopped the work."""


class Progress(QObject):
    """What the work holds on to: it tells how far it is, and learns here that it was stopped."""

    told = Signal(int, int)
    ended = Signal(object, str)
    """The result and a sentence on why there is none; neither where the work was stopped."""

    def __init__(self) -> None:
        super().__init__()
        self.stopped = False

    def step(self, number: int, count: int) -> None:
        """Tell that piece ``number`` (from 1) of ``count`` begins. Raises ``Stopped``."""
        if self.stopped:
            raise Stopped
        self.told.emit(number, count)


Do = Callable[[Progress], Any]


class _Piece(QRunnable):
    def __init__(self, do: Do, progress: Progress) -> None:
        super().__init__()
        self._do, self._progress = do, progress

    def run(self) -> None:
        result, problem = None, ""
        try:
            result = self._do(self._progress)
        except Stopped:
            pass
        except (Unwritable, ValueError, KeyError) as reason:
            problem = str(reason) or "It did not work."
        except Exception:
            log.exception("work off the window's thread failed")
            problem = "Something went wrong in the program."
        self._progress.ended.emit(result, problem)


class Work(QObject):
    """The one long work of a window. ``finished`` comes when it is over, however it ended."""

    finished = Signal()

    def __init__(self, notice: NoticeBar, parent: QObject) -> None:
        super().__init__(parent)
        self._notice = notice
        self._words = ""
        self._said = ""
        self._progress: Progress | None = None
        self._done: Callable[[Any], None] | None = None
        self._failed: Callable[[str], None] | None = None
        self._late = QTimer(self)
        self._late.setSingleShot(True)
        self._late.setInterval(NOTICED_AFTER)
        self._late.timeout.connect(self._show)

    @property
    def busy(self) -> str:
        """Return what is being done, "" for nothing."""
        return self._words if self._progress is not None else ""

    def begin(self, words: str, do: Do, done: Callable[[Any], None], failed: Callable[[str], None]) -> bool:
        """Begin ``do``, which must touch nothing of the window; return False while other work goes on.

        ``words`` say what is done: "Making the card". ``done`` gets what ``do`` returned, ``failed`` a sentence; both are called on
        the window's thread, and neither where the work was stopped.
        """
        if self._progress is not None:
            return False
        self._words = self._said = words
        self._done, self._failed = done, failed
        self._progress = Progress()
        self._progress.told.connect(self._tell)
        self._progress.ended.connect(self._end)
        QThreadPool.globalInstance().start(_Piece(do, self._progress))
        self._late.start()
        return True

    def stop(self) -> None:
        """Give the work up: it ends at its next step, and nothing comes of it."""
        if self._progress is None:
            return
        self._progress.stopped = True
        self._progress.told.disconnect(self._tell)
        self._progress.ended.disconnect(self._end)
        self._over()

    def _tell(self, number: int, count: int) -> None:
        self._said = f"{self._words}: {number} of {count}" if count > 1 else self._words
        self._notice.reword("work", f"{self._said} …")

    def _show(self) -> None:
        self._notice.say("work", f"{self._said} …", ("Stop", self.stop), keep=True)

    def _end(self, result: Any, problem: str) -> None:
        done, failed = self._done, self._failed
        self._over()
        if problem and failed is not None:
            failed(problem)
        elif not problem and done is not None:
            done(result)

    def _over(self) -> None:
        self._late.stop()
        self._progress = self._done = self._failed = None
        self._notice.clear("work")
        self.finished.emit()
