"""Handbooks in files, the drills they name, and the record of each printed edition."""

from __future__ import annotations

import hashlib
import json
import os
from collections import Counter
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from designer.drill.handbook import Entry, Handbook
from designer.storage.faults import faults, shown
from designer.storage.parsing import LARGEST, Unreadable, parse
from designer.storage.reading import Opened, file_bytes, open_drill
from designer.storage.writing import json_bytes, write_file

ENDING = ".handbook.json"


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


def open_handbook(path: str | os.PathLike[str]) -> Handbook:
    """Return the handbook in the file at ``path``; raise ``Unreadable`` with a sentence."""
    name = os.fspath(path)
    raw = parse(file_bytes(name, LARGEST), name)
    if not isinstance(raw, dict):
        raise Unreadable(f"{name}: holds {shown(raw)}; expected a handbook, an object in braces.")
    try:
        book = Handbook.model_validate_json(json.dumps(raw))
    except ValidationError as error:
        raise Unreadable(f"{name}: {'; '.join(faults(raw, error))}.") from error
    twice = [number for number, count in Counter(entry.number for entry in book.entries()).items() if count > 1]
    if twice:
        raise Unreadable(f"{name}: the number {twice[0]} stands twice; expected each once.")
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


def edition_path(path: str | os.PathLike[str], edition: int) -> Path:
    """Return where the record of an edition lies: beside the handbook."""
    file = Path(path)
    stem = file.name[: -len(ENDING)] if file.name.endswith(ENDING) else file.stem
    return file.with_name(f"{stem}.edition-{edition}.json")


def edition_before(path: str | os.PathLike[str], edition: int) -> dict[str, str]:
    """Return {number: digest} of the edition before this one, {} where none was printed. Raises ``Unreadable``."""
    file = edition_path(path, edition - 1)
    if edition < 2 or not file.is_file():
        return {}
    raw: Any = parse(file_bytes(file, LARGEST), str(file))
    drills = raw.get("drills") if isinstance(raw, dict) else None
    if not isinstance(drills, dict) or not all(isinstance(value, str) for value in drills.values()):
        raise Unreadable(f"{file}: has no digests under “drills”; expected the record of an edition.")
    return dict(drills)


def write_edition(path: str | os.PathLike[str], book: Handbook, found: tuple[Found, ...]) -> None:
    """Write the record of this edition beside the handbook; raise ``Unwritable`` with a sentence."""
    drills = {one.entry.number: one.digest for one in found if one.opened}
    raw = {"title": book.title, "edition": book.edition, "dated": str(book.dated or ""), "drills": drills}
    write_file(edition_path(path, book.edition), json_bytes(raw))
