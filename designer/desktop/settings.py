"""What the program remembers of its user: one file, read and written only here.

Values of an INI file come back as text in a new process, so every value is read with its type; lists are JSON text.
"""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Final, Literal, cast

from PySide6.QtCore import QByteArray, QSettings, QStandardPaths

from designer.desktop.look import CHOICES, Choice
from designer.desktop.papers import NAMES

RECENT: Final = 12
UNITS: Final = ("rackets", "metres", "feet")
LEVELS: Final = ("starter", "social", "club", "tournament", "tour")
"""Those of ``designer.numbers.levels``, which is not loaded for them."""
DRAG: Final = (0.5, 0.65)
"""Between what drag coefficients the literature disagrees."""
HANDS: Final = ("right", "left")


def settings_path() -> Path:
    """Return the file that holds the settings."""
    folder = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.GenericConfigLocation)
    return Path(folder) / "drill-designer" / "settings.ini"


def settings() -> QSettings:
    """Return the settings. The one place that opens them."""
    return QSettings(str(settings_path()), QSettings.Format.IniFormat)


def _text(key: str, default: str, allowed: tuple[str, ...] = ()) -> str:
    value = str(settings().value(key, default, type=str))
    return value if not allowed or value in allowed else default


def theme() -> Choice:
    """Return the look the user chose, "system" where none was chosen."""
    return cast("Choice", _text("window/theme", "system", CHOICES))


def set_theme(choice: Choice) -> None:
    """Remember the look."""
    settings().setValue("window/theme", choice)


def units() -> str:
    """Return the units that distances are given in: "rackets", "metres" or "feet"."""
    return _text("window/units", "rackets", UNITS)


def set_units(name: str) -> None:
    """Remember the units."""
    settings().setValue("window/units", name)


def level() -> str:
    """Return the level of play that numbers are worked out for."""
    return _text("numbers/level", "club", LEVELS)


def set_level(name: str) -> None:
    """Remember the level of play."""
    settings().setValue("numbers/level", name)


def group(name: str) -> tuple[float, str] | None:
    """Return one's own group at a level: how many times as wide its balls spread, and the count behind that ("4 of 10")."""
    try:
        factor, words = json.loads(_text(f"numbers/group {name}", "null"))
        return (float(factor), str(words)) if 0 < float(factor) < 1000 else None
    except (TypeError, ValueError):
        return None


def set_group(name: str, factor: float, words: str) -> None:
    """Keep one's own group with a level."""
    settings().setValue(f"numbers/group {name}", json.dumps([factor, words]))


def forget_group(name: str) -> None:
    """Go back to the usual players of a level."""
    settings().remove(f"numbers/group {name}")


def drag() -> float | None:
    """Return the drag coefficient that the user has chosen, None for the ball's own."""
    value = float(settings().value("numbers/drag", 0.0, type=float))  # type: ignore[arg-type]
    return value if DRAG[0] <= value <= DRAG[1] else None


def set_drag(value: float | None) -> None:
    """Remember a drag coefficient."""
    settings().setValue("numbers/drag", 0.0 if value is None else value)


def hand() -> Literal["right", "left"]:
    """Return the hand of players that are put on a new court."""
    return cast("Literal['right', 'left']", _text("drill/hand", "right", HANDS))


def set_hand(name: str) -> None:
    """Remember the usual hand."""
    settings().setValue("drill/hand", name)


def court() -> str:
    """Return the court of a new drill. It need not be a known one: a later program may have written it."""
    return _text("drill/court", "tennis") or "tennis"


def set_court(name: str) -> None:
    """Remember the court of a new drill."""
    settings().setValue("drill/court", name)


def language() -> str:
    """Return the language that texts of a new drill are written in, as "en" or "pt-BR"."""
    value = _text("drill/language", "en")
    return value if re.fullmatch(r"[a-z]{2,3}(-[A-Za-z0-9]{2,8})*", value) else "en"


def set_language(tag: str) -> None:
    """Remember the language that texts are written in."""
    settings().setValue("drill/language", tag)


def author() -> str:
    """Return the name that a new drill carries as its author, "" for none."""
    return _text("drill/author", "")


def set_author(name: str) -> None:
    """Remember the author of new drills."""
    settings().setValue("drill/author", name)


def paper() -> str:
    """Return what cards are made on, one of `papers.NAMES`."""
    return _text("card/paper", "a5", NAMES)


def set_paper(name: str) -> None:
    """Remember the paper."""
    settings().setValue("card/paper", name)


def strip_open() -> bool:
    """Return whether the strip of things stands open."""
    return bool(settings().value("window/strip_open", True, type=bool))


def set_strip_open(*, shown: bool) -> None:
    """Remember whether the strip of things stands open."""
    settings().setValue("window/strip_open", shown)


def geometry() -> QByteArray:
    """Return where the last window stood, empty at first."""
    return cast("QByteArray", settings().value("window/geometry", QByteArray(), type=QByteArray))


def set_geometry(value: QByteArray) -> None:
    """Remember where the window stands."""
    settings().setValue("window/geometry", value)


def splitter() -> QByteArray:
    """Return how wide the card column was, empty at first."""
    return cast("QByteArray", settings().value("window/splitter", QByteArray(), type=QByteArray))


def set_splitter(value: QByteArray) -> None:
    """Remember how wide the card column is."""
    settings().setValue("window/splitter", value)


def recent_files() -> tuple[Path, ...]:
    """Return the drills last opened or saved, newest first. Files that are gone are left out."""
    try:
        names = json.loads(_text("files/recent", "[]"))
    except json.JSONDecodeError:
        return ()
    if not isinstance(names, list):
        return ()
    return tuple(path for name in names if isinstance(name, str) and (path := Path(name)).is_file())


def add_recent(path: Path) -> None:
    """Put ``path`` first among the recent files."""
    paths = [path.resolve(), *(other for other in recent_files() if other != path.resolve())]
    settings().setValue("files/recent", json.dumps([str(each) for each in paths[:RECENT]]))


def forget_recent() -> None:
    """Empty the list of recent files."""
    settings().setValue("files/recent", "[]")


def last_folder() -> Path:
    """Return the folder that a file was last opened from or saved in."""
    folder = Path(_text("files/folder", ""))
    return folder if str(folder) != "." and folder.is_dir() else Path.home()


def set_last_folder(folder: Path) -> None:
    """Remember the folder for the next file dialog."""
    settings().setValue("files/folder", str(folder))
