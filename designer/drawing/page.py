"""How the court lies on the page: upright or across, and from whose end it is seen."""

from __future__ import annotations

import math
from dataclasses import dataclass

from designer.drawing.primitives import Point


@dataclass(frozen=True, slots=True)
class Page:
    """Upright shows the near end at the foot, ``across`` at the left; ``turned`` shows the far end there."""

    across: bool = False
    turned: bool = False

    def to_page(self, point: Point) -> Point:
        """Return where ``point`` of the court lies on the page, both in metres."""
        x, y = (-point[0], -point[1]) if self.turned else point
        return (y + 0.0, -x + 0.0) if self.across else (x + 0.0, y + 0.0)

    def to_court(self, point: Point) -> Point:
        """Return the point of the court that lies at ``point`` of the page, both in metres."""
        x, y = (-point[1], point[0]) if self.across else point
        return (-x + 0.0, -y + 0.0) if self.turned else (x + 0.0, y + 0.0)

    def direction(self, degrees: float) -> Point:
        """Return the page's unit vector for ``degrees`` clockwise from the direction of the far end."""
        angle = math.radians(degrees)
        return self.to_page((math.sin(angle), math.cos(angle)))
