"""Looks at the drills of a handbook off the window's thread: which are missing, which have changed, how long each is."""

from __future__ import annotations

import logging
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QRunnable, QThreadPool, Signal

from designer.drill.handbook import Entry, Handbook, Remembered

if TYPE_CHECKING:
    from designer.cards.book.leaf import Leaf
    from designer.cards.book.survey import Surveyed
    from designer.storage.brand import Branded

log = logging.getLogger(__name__)

_NOT_THERE = "is not there."
"""What the reading says of a file that is missing."""


@dataclass(frozen=True, slots=True)
class Seen:
    """What is seen of one drill: its leaf, and what has become of it since the last edition: "new", "changed" or ""."""

    leaf: Leaf
    since: str = ""
    edition: int = 0

    @property
    def words(self) -> str:
        """Return what a coach should know of the drill, "" for nothing."""
        if self.leaf.summary is None:
            reason = self.leaf.reason.removeprefix(f"{self.leaf.entry.file}: ")
            return "missing" if reason == _NOT_THERE else f"left out: {reason}"
        if self.leaf.is_stale:
            return f"changed since it was {self.leaf.entry.state}"
        return f"{self.since} since edition {self.edition}" if self.since else ""


def leaf_of(path: Path, book: Handbook, entry: Entry) -> Leaf:
    """Return the leaf of an entry of the handbook at ``path``."""
    from designer.cards.book.leaf import leaf, without
    from designer.storage.handbook import find_drill

    found = find_drill(path, entry)
    if found.opened is None:
        return without(entry, found.reason)
    return leaf(book, entry, found.opened.drill, found.opened.source, found.digest, found.reader())


@dataclass
class _Kept:
    """What was found of each file, by what it depends on; it outlives one look, so that only what changed is done again."""

    leaves: dict[object, Leaf] = field(default_factory=dict)
    surveys: dict[object, Surveyed] = field(default_factory=dict)


class _Look(QRunnable):
    def __init__(self, looking: Looking, turn: int, path: Path, book: Handbook, kept: _Kept) -> None:
        super().__init__()
        self._looking, self._turn, self._path, self._book, self._kept = looking, turn, path, book, kept

    def run(self) -> None:
        try:
            self._look()
        except Exception:
            log.exception("looking at a handbook's drills failed")

    def _look(self) -> None:
        edition, before = self._recorded()
        leaves: list[Leaf] = []
        for entry, key, _ in self._keyed():
            if self._is_over():
                return
            if key not in self._kept.leaves:
                self._kept.leaves[key] = leaf_of(self._path, self._book, entry)
            leaf = self._kept.leaves[key]
            leaves.append(leaf)
            old = before.get(entry.number)
            since = "" if not edition or not leaf.summary else "new" if old is None else ""
            if old is not None and leaf.digest and old.digest != leaf.digest:
                since = "changed"
            self._looking.seen.emit(self._turn, entry.number, Seen(leaf, since, edition))
        self._measure(leaves)

    def _measure(self, leaves: Sequence[Leaf]) -> None:
        """Lay each drill out and count the pages, as the academy's brand has them."""
        from designer.cards.book.leaf import without
        from designer.cards.book.survey import page_count, surveyed
        from designer.cards.card import usable_logo
        from designer.cards.typeface import own_faces
        from designer.drawing.words import set_in

        own = self._branded()
        (logo, _), (faces, _) = usable_logo(own.logo), own_faces(own.typeface)
        brand = own.brand.model_dump_json() if own.brand else ""
        looks = (brand, hash(own.logo), hash(own.typeface))
        found: dict[str, Surveyed] = {}
        whole = sum(leaf.summary is not None for leaf in leaves)
        with set_in(faces):
            for (_, _, key), leaf in zip(self._keyed(), leaves, strict=True):
                if self._is_over():
                    return
                if leaf.summary is None:
                    continue
                self._looking.counting.emit(self._turn, len(found), whole)
                if (key, looks) not in self._kept.surveys:
                    self._kept.surveys[key, looks] = surveyed(self._book, leaf, own.brand, logo)
                one = found[leaf.entry.number] = self._kept.surveys[key, looks]
                self._looking.measured.emit(self._turn, leaf.entry.number, one)
                if one.problem:
                    self._looking.seen.emit(self._turn, leaf.entry.number, Seen(without(leaf.entry, one.problem)))
            pages = page_count(self._book, leaves, found, self._edition_before(), own.brand)
        self._looking.counted.emit(self._turn, pages)

    def _branded(self) -> Branded:
        """Return the handbook's brand; printing tells what is wrong with it."""
        from designer.storage.brand import Branded, branded
        from designer.storage.parsing import Unreadable

        try:
            return branded(self._path, self._book.brand)
        except Unreadable as reason:
            log.info("%s", reason)
            return Branded()

    def _recorded(self) -> tuple[int, dict[str, Remembered]]:
        from designer.storage.handbook import newest_edition
        from designer.storage.parsing import Unreadable

        try:
            return newest_edition(self._path, self._book.edition)
        except Unreadable as reason:
            log.info("%s", reason)
            return 0, {}

    def _edition_before(self) -> dict[str, Remembered]:
        from designer.storage.handbook import edition_before
        from designer.storage.parsing import Unreadable

        try:
            return edition_before(self._path, self._book.edition)
        except Unreadable:
            return {}

    def _keyed(self) -> Iterator[tuple[Entry, object, object]]:
        """Yield each entry with all that its leaf depends on, and all that its length does."""
        book = self._book
        common = (
            tuple(sorted(book.vocabulary.items())),
            book.house.model_dump_json(),
            book.house_rules,
            book.paper,
        )
        for entry in book.entries():
            try:
                status = (self._path.parent / entry.file).stat()
                stamp: object = (status.st_mtime_ns, status.st_size)
            except (OSError, ValueError):
                stamp = None
            yield entry, (entry.model_dump_json(), stamp, common), (entry.file, entry.prints, stamp, common)

    def _is_over(self) -> bool:
        return self._looking.turn != self._turn


class Looking(QObject):
    """Looks again each time it is asked to; what an earlier look still finds is left aside.

    ``seen`` carries (turn, number, ``Seen``), ``measured`` (turn, number, ``Surveyed``), ``counting`` (turn, done, of),
    ``counted`` (turn, pages).
    """

    seen = Signal(int, str, object)
    measured = Signal(int, str, object)
    counting = Signal(int, int, int)
    counted = Signal(int, int)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.turn = 0
        self._kept = _Kept()
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)

    def look(self, path: Path, book: Handbook) -> int:
        """Look at the drills of ``book`` at ``path``; return the turn that the signals carry."""
        self.turn += 1
        self._pool.start(_Look(self, self.turn, path, book, self._kept))
        return self.turn

    def stop(self) -> None:
        """Give up, and wait until nothing is looked at any more."""
        self.turn += 1
        self._pool.waitForDone()
