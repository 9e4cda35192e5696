"""Numbers that come from outside, each with what it rests on, read from ``resources``."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any, Literal

from designer.bundle import resource
from designer.numbers.problems import NoSuch

Basis = Literal["sourced", "second hand", "memory", "common practice", "fitted"]
"""Read at its source; read in a text that quotes the source; a source remembered and not seen; what coaches take, no
source; fitted to one's own group."""


@dataclass(frozen=True, slots=True)
class Value:
    """A number, what it rests on in words, and the least and most that sources or makers allow."""

    number: float
    basis: Basis
    source: str
    least: float | None = None
    most: float | None = None

    @property
    def sourced(self) -> bool:
        """Whether a source was read for it, its own text or one that quotes it."""
        return self.basis in ("sourced", "second hand")


def value(data: Mapping[str, Any]) -> Value:
    """Return the value that a file writes as ``{"value": …, "basis": …, "source": …}``."""
    least, most = data.get("range", (None, None))
    return Value(data["value"], data["basis"], data["source"], least, most)


@cache
def names(folder: str) -> tuple[str, ...]:
    """Return the names that the files of ``resources/folder`` go by, in alphabetical order."""
    return tuple(sorted(path.stem.replace("-", " ") for path in resource(folder).glob("*.json")))


def read(folder: str, name: str, known: tuple[str, ...]) -> dict[str, Any]:
    """Return the data of the file for ``name``; raise ``NoSuch`` with a sentence where it is not one of ``known``."""
    if name not in known:
        raise NoSuch(f"There is no {folder.removesuffix('s')} called {name!r}; there are {', '.join(known)}.")
    data: dict[str, Any] = json.loads(resource(folder, f"{name.replace(' ', '-')}.json").read_text("utf-8"))
    return data
