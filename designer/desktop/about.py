"""Which program this is, and what it stands on: what one is asked for when something goes wrong."""

from __future__ import annotations

import platform
import sys
from importlib.metadata import PackageNotFoundError, version
from typing import Final

from designer import __version__

PACKAGES: Final = ("PySide6-Essentials", "pydantic", "reportlab", "pikepdf", "pypdfium2", "numpy", "shapely")


def versions() -> tuple[tuple[str, str], ...]:
    """Return each part with its version; a package that is not installed as one says so."""
    from PySide6.QtCore import QSysInfo, qVersion

    found = [("Drill Designer", __version__), ("Python", platform.python_version()), ("Qt", qVersion())]
    for name in PACKAGES:
        try:
            found.append((name, version(name)))
        except PackageNotFoundError:
            found.append((name, "not installed"))
    found.append(("System", f"{QSysInfo.prettyProductName()}, {platform.machine()}, {sys.platform}"))
    return tuple(found)


def versions_text() -> str:
    """Return all versions, a line each, as one pastes them into a message."""
    return "\n".join(f"{name} {number}" for name, number in versions())
