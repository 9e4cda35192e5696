"""Handbooks in files, the drills they name, and the record of each printed edition."""

from __future__ import annotations

import hashlib
import json
import os
import re
from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Any, Final

from pydantic import ValidationError

from designer.drill.drill import Drill
from designer.drill.handbook import Edition, Entry, Handbook, Remembered
from designer.storage.faults import faults
from designer.storage.parsing import LARGEST, Unreadable, parse
from designer.storage.reading import Opened, file_bytes, open_drill, open_record, read_drill
from designer.storage.writing import Unwritable, record_bytes, write_file, write_files

ENDING = ".handbook.json"

_RECORD: Final = "the record of an edition"


@dataclass(frozen=True, slots=True)
class Found:
    """An entry with its drill, or with the sentence that says why there is none."""

    entry: Entry
    opened: Opened | None
    reason: str = ""

    @property
    def digest(self) -> str:
        """SHA-256 of the drill's bytes, "" without a drill."""
        return hashlib.sha256(self.opened.source).hexdigest() if self.opened else ""

    def reader(self) -> Callable[[], Drill]:
        """Return what reads the drill again from its bytes, without holding the drill itself."""
        assert self.opened is not None
        return partial(_read_again, self.opened.source, self.entry.file)


def _read_again(source: bytes, name: str) -> Drill:
    return read_drill(source, name).drill


def open_handbook(path: str | os.PathLike[str]) -> Handbook:
    """Return the handbook in the file at ``path``; raise ``Unreadable`` with a sentence."""
    book = open_record(Handbook, path, LARGEST, "a handbook")
    twice = [number for number, count in Counter(entry.number for entry in book.entries()).items() if count > 1]
    if twice:
        raise Unreadable(f"{os.fspath(path)}: the number {twice[0]} stands twice; expected each once.")
    return book


def find_drill(path: str | os.PathLike[str], entry: Entry) -> Found:
    """Return the drill that ``entry`` of the handbook at ``path`` names, or why it cannot be had.

    Only files in the handbook's own folder and below are opened.
    """
    folder = Path(os.path.realpath(Path(path).parent))
    try:
        file = Path(os.path.realpath(folder / entry.file))
        if Path(entry.file).is_absolute() or not file.is_relative_to(folder):
            return Found(entry, None, f"{entry.file}: leads out of the handbook's folder; expected a file in it.")
        opened = open_drill(file)
    except Unreadable as error:
        return Found(entry, None, str(error).replace(f"{folder}{os.sep}", ""))
    except ValueError:
        return Found(entry, None, f"{entry.file!r}: cannot be the name of a file.")
    if opened.read_only:
        return Found(entry, None, f"{entry.file}: {opened.notices[0]}")
    return Found(entry, opened)


def handbook_bytes(book: Handbook) -> bytes:
    """Return ``book`` as the bytes of a file: keys in the order of the records, defaults left out."""
    return record_bytes(book)


def save_handbook(path: str | os.PathLike[str], book: Handbook) -> bytes:
    """Write ``book`` to ``path`` and return the bytes written; raise ``Unwritable`` with a sentence."""
    data = handbook_bytes(book)
    write_file(path, data)
    return data


def edition_path(path: str | os.PathLike[str], edition: int) -> Path:
    """Return where the record of an edition lies: beside the handbook."""
    file = Path(path)
    return file.with_name(f"{_stem(file)}.edition-{edition}.json")


def _stem(file: Path) -> str:
    return file.name[: -len(ENDING)] if file.name.endswith(ENDING) else file.stem


def edition_before(path: str | os.PathLike[str], edition: int) -> dict[str, Remembered]:
    """Return {number: drill} of the newest edition before ``edition`` that is recorded, {} where none is.

    Raises ``Unreadable``.
    """
    return newest_edition(path, edition - 1)[1]


def newest_edition(path: str | os.PathLike[str], most: int) -> tuple[int, dict[str, Remembered]]:
    """Return the newest recorded edition up to ``most`` and its drills, (0, {}) where none is. Raises ``Unreadable``."""
    file = Path(path)
    pattern = re.compile(rf"{re.escape(_stem(file))}\.edition-([1-9][0-9]{{0,5}})\.json")
    found = (pattern.fullmatch(one.name) for one in file.parent.iterdir()) if file.parent.is_dir() else ()
    editions = [int(one[1]) for one in found if one and int(one[1]) <= most]
    return (max(editions), edition_recorded(path, max(editions))) if editions else (0, {})


def edition_recorded(path: str | os.PathLike[str], edition: int) -> dict[str, Remembered]:
    """Return {number: drill} of a printed edition, {} where it is not recorded. Raises ``Unreadable``."""
    file = edition_path(path, edition)
    if not file.is_file():
        return {}
    raw: Any = parse(file_bytes(file, LARGEST, _RECORD), str(file), _RECORD)
    if not isinstance(raw, dict) or not isinstance(raw.get("drills"), dict):
        raise Unreadable(f"{file}: has no drills under “drills”; expected {_RECORD}.")
    # The first records held no more than the digest.
    drills = {number: {"digest": one} if isinstance(one, str) else one for number, one in raw["drills"].items()}
    try:
        return dict(Edition.model_validate_json(json.dumps(raw | {"drills": drills, "edition": edition})).drills)
    except ValidationError as error:
        raise Unreadable(f"{file}: {'; '.join(faults(raw, error))}.") from error


def edition_record(book: Handbook, drills: Mapping[str, Remembered]) -> bytes:
    """Return the record of this edition as the bytes of a file."""
    return record_bytes(Edition(title=book.title, edition=book.edition, dated=book.dated, drills=dict(drills)))


def write_printed(
    path: str | os.PathLike[str],
    book: Handbook,
    drills: Mapping[str, Remembered],
    output: str | os.PathLike[str],
    pdf: bytes,
) -> None:
    """Write the PDF to ``output`` and the record of its edition beside the handbook at ``path``: both, or neither.

    Raises ``Unwritable`` with a sentence.
    """
    record = edition_path(path, book.edition)
    try:
        write_files(((record, edition_record(book, drills)), (output, pdf)))
    except Unwritable as reason:
        if str(record) not in str(reason):
            raise
        raise Unwritable(
            f"{reason} The handbook is not printed: without the record of this edition the next one could not say what has changed."
        ) from reason
