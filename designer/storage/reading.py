"""A drill from a file of unknown origin: parse, migrate, validate, repair, report."""

from __future__ import annotations

import errno
import json
import os
import stat
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any, Final, TypeVar

from pydantic import BaseModel, ValidationError

from designer.drill.drill import FORMAT, Drill
from designer.drill.order import circles
from designer.drill.setting import all_settings
from designer.storage.attachment import extract, is_pdf
from designer.storage.faults import faults, shown
from designer.storage.migrations import Raw, migrated
from designer.storage.parsing import LARGEST, Unreadable, parse, too_large
from designer.storage.repair import repaired
from designer.storage.validation import as_far_as_known, validated

Made = TypeVar("Made", bound=BaseModel)

LARGEST_CARD: Final = 100_000_000
"""No card that a drill is taken out of is larger, in bytes."""

_REASONS: Final = {
    errno.ENOENT: "is not there",
    errno.ENOTDIR: "is not there",
    errno.EACCES: "cannot be read: you have no permission",
    errno.EPERM: "cannot be read: you have no permission",
    errno.EISDIR: "is a folder; expected {kind}",
    errno.ELOOP: "is a link that leads back to itself",
    errno.ENAMETOOLONG: "is not there: its name is too long",
    errno.EIO: "cannot be read: the disk reports a fault",
}


@dataclass(frozen=True, slots=True)
class Opened:
    """A drill that was read, with the bytes it was read from.

    ``notices`` are sentences on what was mended or left out; they do not name the file. ``read_only`` is a drill of a newer format that
    must not be written back. ``from_card`` is a drill that a card carried: ``path`` is then the card's.
    """

    drill: Drill
    source: bytes = field(repr=False)
    notices: tuple[str, ...] = ()
    read_only: bool = False
    path: Path | None = None
    from_card: bool = False


def open_drill(path: str | os.PathLike[str]) -> Opened:
    """Return the drill in the file at ``path``: a drill file, or a card that carries one.

    Raises ``Unreadable`` with a sentence that names the file.
    """
    name = os.fspath(path)
    data = file_bytes(name, LARGEST_CARD if _seems_card(name) else LARGEST)
    if not is_pdf(data):
        return replace(read_drill(data, name), path=Path(path))
    return replace(read_drill(extract(data, name), name), path=Path(path), from_card=True)


def read_drill(data: bytes, name: str) -> Opened:
    """Return the drill in ``data``; ``name`` is what sentences call the file.

    A drill of a newer format comes without the records that this program does not understand. Raises ``Unreadable``.
    """
    raw = parse(data, name)
    if not isinstance(raw, dict):
        raise Unreadable(f"{name}: holds {shown(raw)}; expected a drill, an object in braces.")
    format = _format(raw, name)
    notices: tuple[str, ...] = ()
    if format > FORMAT:
        drill, notices = as_far_as_known(raw, name)
    else:
        drill = validated(migrated(raw, format), name)
    drill, mended = repaired(drill)
    _refuse_circles(drill, name)
    return Opened(drill, data, notices + mended, read_only=format > FORMAT)


def _refuse_circles(drill: Drill, name: str) -> None:
    for at, setting in all_settings(drill):
        for kind, circle in circles(setting):
            number = [progression.id for progression in drill.progressions].index(at.progression) + 1
            where = f"progression {number}" + (f", {at.variation!r}" if at.variation else "")
            chain = ", ".join(repr(id) for id in circle[:10])
            raise Unreadable(
                f"{name}: {where}, {kind}: {chain} come after one another in a circle; expected a first one."
            )


def file_bytes(path: str | os.PathLike[str], limit: int, kind: str = "a drill file") -> bytes:
    """Return the bytes of an ordinary file of at most ``limit`` bytes; raise ``Unreadable``: ``kind`` was expected."""
    name = os.fspath(path)
    try:
        with open(path, "rb", opener=_opened_at_once) as file:
            status = os.fstat(file.fileno())
            if not stat.S_ISREG(status.st_mode):
                raise Unreadable(f"{name}: is no ordinary file; expected {kind}.")
            if status.st_size > limit:
                raise Unreadable(too_large(name, limit, kind))
            data = file.read(limit + 1)
    except OSError as error:
        known = _REASONS.get(error.errno or 0)
        reason = (
            known.format(kind=kind) if known else f"cannot be read: {(error.strerror or 'the system refused').lower()}"
        )
        raise Unreadable(f"{name}: {reason}.") from error
    except ValueError as error:
        raise Unreadable(f"{name!r}: cannot be the name of a file.") from error
    if len(data) > limit:
        raise Unreadable(too_large(name, limit, kind))
    return data


def _opened_at_once(path: str, flags: int) -> int:
    return os.open(path, flags | getattr(os, "O_NONBLOCK", 0))  # or a named pipe would be waited for


def _seems_card(path: str) -> bool:
    try:
        with open(path, "rb", opener=_opened_at_once) as file:
            return is_pdf(file.read(1024))
    except (OSError, ValueError):
        return False


def _format(raw: Raw, name: str) -> int:
    """Return the format of the file; without one it is taken for the first."""
    format: Any = raw.get("format", 1)
    if isinstance(format, bool) or not isinstance(format, int) or format < 1:
        raise Unreadable(f"{name}: format: {shown(format)}, expected a whole number from 1.")
    return format


def open_record(kind: type[Made], path: str | os.PathLike[str], limit: int, words: str) -> Made:
    """Return the record of ``kind`` in a file of at most ``limit`` bytes; raise ``Unreadable``: ``words`` were expected."""
    name = os.fspath(path)
    raw = parse(file_bytes(name, limit, words), name, words)
    if not isinstance(raw, dict):
        raise Unreadable(f"{name}: holds {shown(raw)}; expected {words}, an object in braces.")
    try:
        return kind.model_validate_json(json.dumps(raw))
    except ValidationError as error:
        raise Unreadable(f"{name}: {'; '.join(faults(raw, error))}.") from error
