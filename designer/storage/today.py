"""Who plays today, in files: one that a coach names, or the one this machine keeps until the day is over."""

from __future__ import annotations

import os
from datetime import date, datetime
from pathlib import Path
from typing import Final

from designer.drill.today import Today
from designer.storage.parsing import Unreadable
from designer.storage.reading import open_record
from designer.storage.writing import Unwritable, record_bytes, write_file

ENDING: Final = ".today.json"
_LARGEST: Final = 100_000


def open_today(path: str | os.PathLike[str]) -> Today:
    """Return the record in the file at ``path``; raise ``Unreadable`` with a sentence."""
    return open_record(Today, path, _LARGEST, "who plays today")


def today_folder() -> Path:
    """Return the folder of this user's records; it need not be there."""
    from platformdirs import user_state_path

    return user_state_path("drill-designer", appauthor=False) / "today"


def kept_today(drill: str, day: date | None = None, folder: Path | None = None) -> Today | None:
    """Return what is kept for the drill of this id on ``day``, this day without one; None where nothing is.

    Records of another day are removed, all of them: names of players are not kept longer than they are needed.
    """
    found, day = None, day or _this_day()
    where = today_folder() if folder is None else folder
    for file in sorted(where.glob(f"*{ENDING}")) if where.is_dir() else ():
        try:
            one = open_today(file)
        except Unreadable:
            one = None
        if one is None or one.dated != day:
            file.unlink(missing_ok=True)
        elif one.drill == drill:
            found = one
    return found


def keep_today(today: Today, day: date | None = None, folder: Path | None = None) -> Path:
    """Keep ``today`` until ``day``, this one without it, is over, readable by this user alone; return its file. Raises ``Unwritable``."""
    where = today_folder() if folder is None else folder
    file = where / f"{today.drill}{ENDING}"
    try:
        where.mkdir(parents=True, exist_ok=True, mode=0o700)
        write_file(file, record_bytes(today.changed(dated=day or _this_day())))
        file.chmod(0o600)
    except OSError as error:
        raise Unwritable(f"{file}: the names are not kept, because {(error.strerror or 'refused').lower()}.") from error
    return file


def _this_day() -> date:
    return datetime.now().astimezone().date()


def forget_today(drill: str, folder: Path | None = None) -> None:
    """Remove what is kept for the drill of this id."""
    where = today_folder() if folder is None else folder
    (where / f"{drill}{ENDING}").unlink(missing_ok=True)
