"""Court surfaces: how a ball leaves them, read from ``resources/surfaces``, each value with its source."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cache

from designer.numbers.balls import Ball, ball
from designer.numbers.values import Value, names, read, value


@dataclass(frozen=True, slots=True)
class Surface:
    """What a bounce needs; no units.

    ``restitution``: vertical speed after over before, of a yellow ball that comes in at a slant, as a shot does. It is
    higher than in the rebound test. ``grip_restitution``: the same along the ground when the ball grips.
    """

    name: str
    title: str
    friction: float
    restitution: float
    grip_restitution: float
    values: tuple[tuple[str, Value], ...] = field(repr=False, compare=False, default=())

    def restitution_of(self, bouncing: Ball) -> float:
        """Return the restitution of this ball here: less lively balls lose as much more as in the rebound test."""
        return self.restitution * bouncing.drop_restitution / ball("yellow").drop_restitution


@cache
def surface_names() -> tuple[str, ...]:
    """Return the names of the surfaces there are."""
    return names("surfaces")


@cache
def surface(name: str = "hard") -> Surface:
    """Return the surface called ``name``; raise ``NoSuch`` with a sentence that lists the surfaces there are."""
    data = read("surfaces", name, surface_names())
    values = {key: value(data[key]) for key in ("friction", "restitution", "grip_restitution")}
    return Surface(
        name=data["name"],
        title=data["title"],
        friction=values["friction"].number,
        restitution=values["restitution"].number,
        grip_restitution=values["grip_restitution"].number,
        values=tuple(values.items()),
    )
