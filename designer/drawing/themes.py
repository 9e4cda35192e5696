"""Themes: which colour each role has on paper and on screen, and which of ball and run is the broken line."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from types import MappingProxyType
from typing import Any, Final

from designer.bundle import resource

THEMES: Final = ("paper", "photocopy", "light", "dark", "high contrast")

ROLES: Final = (
    "paper",
    "court",
    "run-off",
    "court line",
    "net",
    "fence",
    "ink",
    "soft",
    "ball",
    "feet",
    "target",
    "obstacle",
    "casing",
    "casing outside",
    "target tint",
    "feed tint",
    "keep out tint",
    "rule tint",
)
"""What a style may name as a colour. "casing" is the court's colour that cuts a mark free from what lies below it."""

CASING_OPACITY: Final = 0.85
_TINTS: Final = {"target": "target", "feed": "ball", "keep out": "ink", "rule": "ink"}
_FILL_OF_SURFACE: Final = {"clay": "clay", "grass": "grass", "artificial grass": "grass"}


@dataclass(frozen=True, slots=True)
class Colour:
    """A colour as "#RRGGBB" and how much it covers, 0 to 1."""

    hex: str
    opacity: float = 1.0

    @property
    def rgb(self) -> tuple[float, float, float]:
        """Return red, green and blue from 0 to 1."""
        red, green, blue = (int(self.hex[start : start + 2], 16) / 255 for start in (1, 3, 5))
        return (red, green, blue)

    def over(self, ground: Colour) -> Colour:
        """Return the opaque colour that is seen where this one lies over ``ground``."""
        parts = zip(self.rgb, ground.rgb, strict=True)
        mixed = [round(255 * (top * self.opacity + below * (1 - self.opacity))) for top, below in parts]
        return Colour("#{:02X}{:02X}{:02X}".format(*mixed))


@dataclass(frozen=True, slots=True)
class Theme:
    """Colours by role; None is a role that is not painted. ``switched`` makes the ball broken and the run solid."""

    name: str
    colours: Mapping[str, Colour | None]
    dark: bool = False
    switched: bool = False

    def colour(self, role: str) -> Colour | None:
        """Return the colour of ``role``, None where the theme leaves it unpainted; ``KeyError`` for an unknown role."""
        return self.colours[role]

    @property
    def ground(self) -> Colour:
        """Return the colour of the sheet or screen round the court."""
        return self.colours["run-off"] or self.colours["paper"] or Colour("#FFFFFF")


def theme(name: str, *, surface: str | None = None, switched: bool = False) -> Theme:
    """Return the theme called ``name`` for a court of ``surface``; ``KeyError`` with a sentence for an unknown name."""
    fill = _FILL_OF_SURFACE.get(surface or "hard", "hard")
    return _theme(name, fill, switched=switched)


@lru_cache(maxsize=64)
def _theme(name: str, fill: str, *, switched: bool) -> Theme:
    if name not in THEMES:
        raise KeyError(f"there is no theme {name!r}; there are {', '.join(THEMES)}")
    data: dict[str, Any] = json.loads(resource("themes", f"{name.replace(' ', '-')}.json").read_text(encoding="utf-8"))
    colours: dict[str, Colour | None] = {role: Colour(value) for role, value in data["colours"].items()}
    court, run_off = data["court"], data["run-off"]
    colours["court"] = Colour(court[fill]) if court else None
    colours["run-off"] = Colour(run_off) if run_off else None
    sheet = Colour(data["colours"]["paper"])
    for role, ground in (("casing", colours["court"]), ("casing outside", colours["run-off"])):
        colours[role] = Colour((ground or sheet).hex, CASING_OPACITY)
    for area, role in _TINTS.items():
        share = data["tints"].get(area, 0)
        colours[f"{area} tint"] = Colour(data["colours"][role], share / 100) if share else None
    return Theme(name, MappingProxyType(colours), data["dark"], switched)
