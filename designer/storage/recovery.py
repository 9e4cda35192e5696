"""Copies of drills and handbooks that are open and not saved, to be found again after the program or the machine has stopped."""

from __future__ import annotations

import os
import secrets
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from types import TracebackType
from typing import IO, Final, Self

from designer.drill.base import Record
from designer.drill.drill import Drill
from designer.storage.parsing import Unreadable, parse
from designer.storage.reading import Opened, file_bytes, open_drill
from designer.storage.writing import Unwritable, drill_bytes, json_bytes, record_bytes, write_file

ENDING: Final = ".drill.json"
BOOK_ENDING: Final = ".handbook.json"
_ORIGIN: Final = ".origin.json"
_LOCK: Final = ".lock"


def recovery_folder() -> Path:
    """Return the folder of this user's recovery copies; it need not be there."""
    from platformdirs import user_state_path

    return user_state_path("drill-designer", appauthor=False) / "recovery"


class Keeper:
    """Keeps the recovery copy of one open drill or handbook; held by the running program, so that no other one offers it.

    A context manager: leaving it lets the copy go, and discards it where no fault is on its way.
    """

    def __init__(self, folder: Path | None = None, ending: str = ENDING) -> None:
        self._folder = recovery_folder() if folder is None else folder
        self._ending = ending
        self._name = f"{datetime.now(UTC):%Y%m%d-%H%M%S}-{secrets.token_hex(4)}"
        self._lock: IO[bytes] | None = None

    def keep(self, record: Record, path: str | os.PathLike[str] | None = None) -> Path:
        """Write ``record``, which belongs to the file at ``path``, over the last copy; return the copy's path.

        Raises ``Unwritable`` with a sentence.
        """
        copy = self._folder / f"{self._name}{self._ending}"
        try:
            self._folder.mkdir(parents=True, exist_ok=True, mode=0o700)
            if self._lock is None:
                self._lock = _locked(self._folder / f"{self._name}{_LOCK}")
        except OSError as error:
            raise Unwritable(f"{copy}: no recovery copy is kept, because {_reason(error)}.") from error
        origin = None if path is None else os.fspath(Path(path).absolute())
        write_file(self._folder / f"{self._name}{_ORIGIN}", json_bytes({"format": 1, "path": origin}))
        write_file(copy, drill_bytes(record) if isinstance(record, Drill) else record_bytes(record))
        return copy

    def discard(self) -> None:
        """Remove the copy: what it copies is saved, or given up on purpose. A later ``keep`` makes a new one."""
        _remove(self._folder, self._name)
        self.release()

    def release(self) -> None:
        """Let the copy go, so that it is offered at the next start."""
        if self._lock is not None:
            self._lock.close()
            self._lock = None

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, fault: BaseException | None, trace: TracebackType | None
    ) -> None:
        if kind is None:
            self.discard()
        else:
            self.release()


@dataclass(frozen=True, slots=True)
class Copy:
    """A recovery copy that no running program holds: its file, the file it belongs to if there is one, when it was kept."""

    file: Path
    path: Path | None
    kept: datetime

    def read(self) -> Opened:
        """Return the drill that is copied; raise ``Unreadable`` with a sentence."""
        return open_drill(self.file)

    def discard(self) -> None:
        """Remove the copy for ever."""
        _remove(self.file.parent, self.file.name.removesuffix(ENDING).removesuffix(BOOK_ENDING))


def copies(folder: Path | None = None, ending: str = ENDING) -> tuple[Copy, ...]:
    """Return the copies left behind by programs that have stopped, the newest first: of drills, or by their ``ending``."""
    found = _found(recovery_folder() if folder is None else folder, ending)
    return tuple(sorted(found, key=lambda copy: copy.kept, reverse=True))


def _found(folder: Path, ending: str) -> Iterator[Copy]:
    try:
        files = [file for file in folder.iterdir() if file.name.endswith(ending)]
    except OSError:
        return
    for file in files:
        name = file.name.removesuffix(ending)
        if _is_held(folder / f"{name}{_LOCK}"):
            continue
        try:
            kept = datetime.fromtimestamp(file.stat().st_mtime, UTC)
        except OSError:
            continue  # discarded by another program in this moment
        yield Copy(file, _origin(folder / f"{name}{_ORIGIN}"), kept)


def _origin(file: Path) -> Path | None:
    try:
        raw = parse(file_bytes(file, 100_000), str(file))
    except Unreadable:
        return None
    path = raw.get("path") if isinstance(raw, dict) else None
    return Path(path) if isinstance(path, str) else None


def _remove(folder: Path, name: str) -> None:
    for ending in (ENDING, BOOK_ENDING, _ORIGIN, _LOCK):
        try:
            (folder / f"{name}{ending}").unlink(missing_ok=True)
        except OSError:
            continue  # held by another program on a system that does not let it go; it is found again later


def _locked(file: Path) -> IO[bytes]:
    """Return ``file`` opened and locked until it is closed or this process ends; raise ``OSError`` where another has it."""
    opened = file.open("ab")
    try:
        if os.name == "nt":
            import msvcrt

            msvcrt.locking(opened.fileno(), msvcrt.LK_NBLCK, 1)  # type: ignore[attr-defined]
        else:
            import fcntl

            fcntl.flock(opened, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BaseException:
        opened.close()
        raise
    return opened


def _is_held(lock: Path) -> bool:
    if not lock.exists():
        return False
    try:
        _locked(lock).close()
    except OSError:
        return True
    return False


def _reason(error: OSError) -> str:
    return (error.strerror or "the system refused").lower()
