"""Prints a handbook off the window's thread, and tells how far it is; stopped, it leaves no file behind."""

from __future__ import annotations

import logging
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QRunnable, QThreadPool, Signal

from designer.desktop.handbook.looking import leaf_of
from designer.drill.handbook import Handbook
from designer.storage.parsing import Unreadable
from designer.storage.writing import Unwritable

if TYPE_CHECKING:
    from designer.cards.handbook import Book
    from designer.storage.brand import Branded

log = logging.getLogger(__name__)


class _Stopped(Exception):
    """The user has stopped the printing."""


@dataclass(frozen=True, slots=True)
class Order:
    """What is printed: the handbook that is kept at ``path``, to the PDF at ``output``."""

    book: Handbook
    path: Path
    output: Path


class Printing(QObject):
    """One handbook being printed. ``told`` carries (done, of, what is being set), ``ended`` the book or a problem.

    Neither is given where the printing was stopped: ``ended`` then carries (None, "").
    """

    told = Signal(int, int, str)
    ended = Signal(object, str)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._stopped = False
        self._pool = QThreadPool(self)

    def begin(self, order: Order) -> None:
        """Begin; the signals come on the window's thread."""
        self._pool.start(_Job(self, order))

    def stop(self) -> None:
        """Give up at the next drill."""
        self._stopped = True

    def wait(self) -> None:
        """Wait until it has ended."""
        self._pool.waitForDone()

    def step(self, done: int, whole: int, words: str) -> None:
        """Tell how far it is. Raises where it was stopped; called on the thread that prints."""
        if self._stopped:
            raise _Stopped
        self.told.emit(done, whole, words)


class _Job(QRunnable):
    def __init__(self, printing: Printing, order: Order) -> None:
        super().__init__()
        self._printing, self._order = printing, order

    def run(self) -> None:
        made: Book | None = None
        from designer.cards.text import Unprintable

        problem = ""
        try:
            made = printed(self._order, self._printing)
        except _Stopped:
            pass
        except (Unwritable, Unreadable, Unprintable) as reason:
            problem = str(reason)
        except Exception:
            log.exception("printing a handbook failed")
            problem = "Something went wrong in the program."
        self._printing.ended.emit(made, problem)


def printed(order: Order, printing: Printing) -> Book:
    """Make the handbook, write it and the record of its edition, and return it."""
    from designer.cards.handbook import make_handbook
    from designer.storage.handbook import edition_before, write_printed

    book, path = order.book, order.path
    before = edition_before(path, book.edition)
    found, sorry = _found_brand(path, book)
    entries = book.entries()
    leaves = []
    for number, entry in enumerate(entries):
        printing.step(0, len(entries), f"reading {number + 1} of {len(entries)}: {entry.file}")
        leaves.append(leaf_of(path, book, entry))
    made = make_handbook(
        book,
        leaves,
        before=before,
        brand=found.brand,
        logo=found.logo,
        typeface=found.typeface,
        progress=printing.step,
    )
    printing.step(len(entries), len(entries), "writing the file")
    write_printed(path, book, made.remembered, order.output, made.pdf)
    return replace(made, notices=(*sorry, *made.notices))


def _found_brand(path: Path, book: Handbook) -> tuple[Branded, tuple[str, ...]]:
    """Return the brand of the handbook, and what is wrong with it: then the book is made without one."""
    from designer.storage.brand import Branded, branded

    try:
        own = branded(path, book.brand)
    except Unreadable as reason:
        return Branded(), (f"{reason} The handbook is made without it.",)
    return own, own.faults
