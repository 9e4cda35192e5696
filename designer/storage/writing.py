"""A drill as bytes, always the same ones, and a save that leaves either the old file or the new one."""

from __future__ import annotations

import contextlib
import errno
import json
import os
import secrets
import stat
from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any, Final

from pydantic.fields import FieldInfo

from designer.drill.base import Record
from designer.drill.drill import Drill
from designer.drill.items import Thing, Unknown

WIDTH: Final = 120
"""A value that fits in this many characters, with its key and the spaces before it, stands on one line."""

_ALWAYS_WRITTEN: Final = frozenset({"kind", "do", "form", "format"})

_REASONS: Final = {
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "the disk space allowed to you is used up",
    errno.EFBIG: "the disk takes no file of that size",
    errno.EROFS: "the disk is read-only",
    errno.EACCES: "you have no permission to write there",
    errno.EPERM: "you have no permission to write there",
    errno.ENOENT: "the folder is not there",
    errno.ENOTDIR: "the folder is not there",
    errno.EISDIR: "it is a folder",
    errno.ELOOP: "it is a link that leads back to itself",
    errno.ENAMETOOLONG: "its name is too long",
    errno.EIO: "the disk reports a fault",
}


class Unwritable(Exception):
    """A file could not be written; the text is one sentence for the user. What stood there stands there still."""


def drill_bytes(drill: Drill) -> bytes:
    """Return ``drill`` as the bytes of a file: UTF-8, keys in the order of the records, defaults left out.

    Equal drills give equal bytes, and reading the bytes gives an equal drill.
    """
    return record_bytes(drill)


def record_bytes(record: Record) -> bytes:
    """Return any record as the bytes of a file, laid out as a drill is."""
    return json_bytes(_raw(record))


def json_bytes(value: Any) -> bytes:
    """Return plain JSON data as UTF-8, laid out for people: what fits in a line stands on one, the rest is indented.

    Half a surrogate pair, which UTF-8 cannot hold, becomes U+FFFD. Raises ``ValueError`` for NaN and infinity.
    """
    text = _laid_out(value, 0, 0) + "\n"
    try:
        return text.encode()
    except UnicodeEncodeError:
        return text.encode("utf-16", "surrogatepass").decode("utf-16", "replace").encode()


def save(path: str | os.PathLike[str], drill: Drill) -> bytes:
    """Write ``drill`` to ``path`` and return the bytes written; raise ``Unwritable`` with a sentence."""
    data = drill_bytes(drill)
    write_file(path, data)
    return data


def write_file(path: str | os.PathLike[str], data: bytes) -> None:
    """Put ``data`` in the place of the file at ``path``, whole or not at all, even if the power fails.

    A link is followed and the file's permissions are kept. Raises ``Unwritable`` with a sentence that names the file.
    """
    write_files(((path, data),))


def write_files(files: Sequence[tuple[str | os.PathLike[str], bytes]]) -> None:
    """Put each of ``files``, (path, data), in its place as ``write_file`` does, or none of them.

    All are ready beside their places before the first is put there. Should one be refused its place even then, those
    before it are taken back; what stood there is held meanwhile, so the largest comes last.
    """
    ready: list[tuple[str | os.PathLike[str], Path, Path]] = []
    undo: list[tuple[Path, bytes | None]] = []
    try:
        for path, data in files:
            with _telling(path):
                ready.append((path, *_beside(path, data)))
        while ready:
            path, target, beside = ready[0]
            with _telling(path):
                old = target.read_bytes() if len(ready) > 1 and target.exists() else None
                os.replace(beside, target)
                undo.append((target, old))
                del ready[0]
                _flush_folder(target.parent)
    except BaseException:
        if ready:
            _take_back(undo)
        raise
    finally:
        for _, _, beside in ready:
            with contextlib.suppress(OSError):
                beside.unlink()


def _take_back(replaced: Sequence[tuple[Path, bytes | None]]) -> None:
    """Put what stood there before in the place of each file, nothing for None."""
    for target, old in replaced:
        with contextlib.suppress(OSError, Unwritable):
            if old is None:
                target.unlink()
            else:
                write_file(target, old)


@contextlib.contextmanager
def _telling(path: str | os.PathLike[str]) -> Iterator[None]:
    """Turn what the system refuses into ``Unwritable`` with a sentence about the file at ``path``."""
    try:
        yield
    except OSError as error:
        reason = _REASONS.get(error.errno or 0) or (error.strerror or "the system refused").lower()
        raise Unwritable(f"{path}: not saved, because {reason}.") from error
    except ValueError as error:
        raise Unwritable(f"{str(path)!r}: not saved, because that cannot be the name of a file.") from error


def _status(target: Path) -> os.stat_result | None:
    try:
        return target.stat()
    except FileNotFoundError:
        return None


def _beside(path: str | os.PathLike[str], data: bytes) -> tuple[Path, Path]:
    """Write ``data`` to a new file beside the place of the one at ``path``; return that place and the new file."""
    target = Path(os.path.realpath(path))
    before = _status(target)
    if before is not None and stat.S_ISDIR(before.st_mode):
        raise IsADirectoryError(errno.EISDIR, "is a folder")
    if before is not None and not os.access(target, os.W_OK, effective_ids=os.access in os.supports_effective_ids):
        raise Unwritable(f"{path}: not saved, because the file is write-protected.")
    # On the same disk, so that the replacing is one step; the name is short, for the longest are 255 bytes.
    beside = target.parent / f".{secrets.token_hex(8)}.tmp"
    try:
        descriptor = os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), 0o666)
        with open(descriptor, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        if before is not None:
            _keep_access(beside, before)
    except BaseException:
        with contextlib.suppress(OSError):
            beside.unlink()
        raise
    return target, beside


def _keep_access(file: Path, before: os.stat_result) -> None:
    if hasattr(os, "chown"):
        with contextlib.suppress(OSError):  # only root may give a file away
            os.chown(file, before.st_uid, before.st_gid)
    file.chmod(stat.S_IMODE(before.st_mode))


def _flush_folder(folder: Path) -> None:
    if os.name == "nt":
        return
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        with contextlib.suppress(OSError):  # some network disks cannot; the file itself is safe by then
            os.fsync(descriptor)
    finally:
        os.close(descriptor)


@cache
def _order(record: type[Record]) -> tuple[tuple[str, str, FieldInfo], ...]:
    """Return (name, key, field) of each field in the order of a file: an item's kind first, a note last."""
    fields = record.model_fields
    names = sorted(fields, key=lambda name: name == "note")
    if issubclass(record, Thing | Unknown):
        names.sort(key=lambda name: name != "kind")
    return tuple((name, fields[name].alias or name, fields[name]) for name in names)


def _raw(value: Any) -> Any:
    """Return a record or a field's value as plain JSON data, defaults left out."""
    if isinstance(value, Record):
        raw = {
            key: _raw(own)
            for name, key, field in _order(type(value))
            if (own := getattr(value, name)) != field.default or name in _ALWAYS_WRITTEN
        }
        return raw | {key: extra for key, extra in (value.model_extra or {}).items() if key not in raw}
    if isinstance(value, tuple):
        return [_raw(part) for part in value]
    if isinstance(value, Mapping):
        return {key: _raw(value[key]) for key in sorted(value)}
    if isinstance(value, date):
        return value.isoformat()
    return value


def _one_line(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, allow_nan=False)


def _laid_out(value: Any, indent: int, before: int) -> str:
    """Return ``value`` as text whose first line begins after ``before`` characters and whose others are indented."""
    flat = _one_line(value)
    if before + len(flat) < WIDTH or not value or not isinstance(value, dict | list):
        return flat
    inner = " " * (indent + 2)
    if isinstance(value, dict):
        heads = [f"{inner}{_one_line(key)}: " for key in value]
        parts = [
            head + _laid_out(part, indent + 2, len(head)) for head, part in zip(heads, value.values(), strict=True)
        ]
    else:
        parts = [inner + _laid_out(part, indent + 2, indent + 2) for part in value]
    opening, closing = "{}" if isinstance(value, dict) else "[]"
    return "\n".join((opening, ",\n".join(parts), " " * indent + closing))
