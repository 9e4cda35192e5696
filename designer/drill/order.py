"""The order that shots and parts name by what they come ``after``."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Protocol

from designer.drill.setting import Setting


class _Ordered(Protocol):
    @property
    def after(self) -> str | None: ...


def circles(setting: Setting) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Yield ("shots" | "parts", ids) for each circle: records that come after one another without a first."""
    for kind in ("shots", "parts"):
        for circle in _circles(getattr(setting, kind)):
            yield kind, circle


def _circles(records: Mapping[str, _Ordered]) -> Iterator[tuple[str, ...]]:
    done: set[str] = set()
    for start in records:
        trail: dict[str, None] = {}
        id: str | None = start
        while id is not None and id in records and id not in done and id not in trail:
            trail[id] = None
            id = records[id].after
        if id is not None and id in trail:
            ids = list(trail)
            yield tuple(ids[ids.index(id) :])
        done.update(trail)
