"""What is the same for every ball of a drill: the ground and its net, the ball, the surface, the air."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Final

from designer.court.standards import Ground
from designer.drill.base import Point
from designer.numbers.balls import AIR_DENSITY, Ball
from designer.numbers.flight import Flight, State
from designer.numbers.surfaces import Surface

_BEYOND: Final = 0.3
"""A contact may lie so far behind the fence, in metres, before it is refused: a racket reaches through no fence."""


@dataclass(frozen=True, slots=True)
class Surroundings:
    """Where a ball flies. ``density`` is the air's, kg/m³."""

    ground: Ground = field(hash=False)
    ball: Ball
    surface: Surface
    density: float = AIR_DENSITY

    def clearance(self, at_net: State) -> float:
        """Return how far, in metres, the bottom of the ball is above the net; negative where it hits the net.

        Beyond the ends of the net there is nothing to clear: the height above the ground is returned.
        """
        bottom = at_net.z - self.ball.radius
        if abs(at_net.x) > self.ground.net.ends_x:
            return bottom
        return bottom - self.ground.net_height(at_net.x)

    def clears(self, flown: Flight) -> float | None:
        """Return the clearance of a flight, None where it does not get to the net."""
        return None if flown.net is None else self.clearance(flown.net)

    def behind_the_fence(self, place: Point) -> bool:
        """Whether ``place`` lies beyond the fences, as entered or as the club minimum has them."""
        return abs(place[0]) > self.ground.side_fence + _BEYOND or abs(place[1]) > self.ground.back_fence + _BEYOND
