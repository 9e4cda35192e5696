"""What a tool is told about the pointer: where on the court, over what, with which keys held."""

from __future__ import annotations

from dataclasses import dataclass

from designer.desktop.canvas.handles import Handle
from designer.drill.base import Point


@dataclass(frozen=True, slots=True)
class Pointer:
    """One press, move or release in court metres. ``under`` are the ids at that place, the uppermost first.

    ``reach`` is how many metres a pointer's own size covers on screen now: nearer than that counts as on it.
    """

    at: Point
    under: tuple[str, ...] = ()
    handle: Handle | None = None
    reach: float = 0.35
    shift: bool = False
    control: bool = False
    alt: bool = False

    @property
    def adding(self) -> bool:
        """Whether a click adds to what is picked, or takes away from it."""
        return self.shift or self.control

    @property
    def copying(self) -> bool:
        """Whether a drag that begins now moves a copy."""
        return self.alt or self.control

    @property
    def free(self) -> bool:
        """Whether snapping is held off."""
        return self.alt
