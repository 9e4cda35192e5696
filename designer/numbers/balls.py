"""Balls, the air they fly through and how they take spin: parameters read from ``resources/balls``, each with its source."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, field, replace
from functools import cache
from typing import Final

from designer.numbers.problems import NoSuch, within
from designer.numbers.values import Value, names, read, value

GRAVITY: Final = 9.80665
"""Standard gravity, m/s²: the third General Conference on Weights and Measures, 1901. From memory."""

AIR_DENSITY: Final = 1.204
"""Dry air at 20 °C and sea level, kg/m³: p/(287.058 T)."""

_GAS_OF_DRY_AIR: Final = 287.058
_SEA_LEVEL_PRESSURE: Final = 101_325.0
_ZERO_CELSIUS: Final = 273.15

DROP: Final = 2.54
"""The height that balls are dropped from for their rebound, 100 in: ITF Rules of Tennis, Appendix I."""


@dataclass(frozen=True, slots=True)
class AirLaw:
    """How much lift spin gives: ``C_L = 1/(a + b/S)``, and how drag grows with it where it does.

    ``lift`` is (a, b). ``drag`` is (c, d, e, p, q) of ``C_D = c + (d + e S^-p)^q``, None where the ball's own constant
    holds. S is the surface speed of the spinning ball over its speed through the air.
    """

    lift: tuple[float, float]
    drag: tuple[float, float, float, float, float] | None
    source: str


@dataclass(frozen=True, slots=True)
class Ball:
    """A ball: kilograms, metres; ``drag`` and ``inertia`` (moment of inertia over m R²) have no unit.

    ``rebound``: how high its bottom comes back from a drop of 2.54 m onto concrete.
    """

    name: str
    title: str
    mass: float
    diameter: float
    drag: float
    inertia: float
    rebound: tuple[float, float]
    law: AirLaw
    values: tuple[tuple[str, Value], ...] = field(repr=False, compare=False, default=())

    @property
    def radius(self) -> float:
        """Half its diameter, metres."""
        return self.diameter / 2

    @property
    def drop_restitution(self) -> float:
        """Speed after over speed before in the rebound test, at the middle of what is allowed; air left out."""
        return math.sqrt(sum(self.rebound) / 2 / DROP)

    def with_drag(self, drag: float) -> Ball:
        """Return this ball with another drag coefficient; the literature gives 0.50 to 0.65."""
        return replace(self, drag=within(drag, "A drag coefficient", 0.0, 2.0, "(no unit)"))


@cache
def ball_names() -> tuple[str, ...]:
    """Return the names of the balls there are."""
    return tuple(name for name in names("balls") if name != "air")


@cache
def air_laws() -> dict[str, AirLaw]:
    """Return the laws of lift and drag there are, by name; "constant drag" is the one used unless another is chosen."""
    laws = read("balls", "air", names("balls"))["laws"]
    return {
        name: AirLaw(tuple(law["lift"]), tuple(law["drag"]) if "drag" in law else None, law["source"])
        for name, law in laws.items()
    }


@cache
def ball(name: str = "yellow") -> Ball:
    """Return the ball called ``name``; raise ``NoSuch`` with a sentence that lists the balls there are."""
    data = read("balls", name, ball_names())
    values = {key: value(data[key]) for key in ("mass_kg", "diameter_m", "rebound_m", "drag", "inertia")}
    rebound = values["rebound_m"]
    return Ball(
        name=data["name"],
        title=data["title"],
        mass=values["mass_kg"].number,
        diameter=values["diameter_m"].number,
        drag=values["drag"].number,
        inertia=values["inertia"].number,
        rebound=(rebound.least or rebound.number, rebound.most or rebound.number),
        law=air_laws()["constant drag"],
        values=tuple(values.items()),
    )


def ball_in_words(words: str | None) -> tuple[Ball, bool]:
    """Return the ball that a drill's own words mean ("red foam", "a green ball"), and whether they were understood.

    Nothing said means yellow, and is understood; words that name no ball mean yellow, and are not.
    """
    if words is None or not words.strip():
        return ball("yellow"), True
    found = re.findall("|".join(sorted(ball_names(), key=len, reverse=True)), words.lower())
    return (ball(found[0]), True) if len(set(found)) == 1 else (ball("yellow"), False)


def air_density(altitude: float = 0.0, temperature: float = 20.0) -> float:
    """Return the density of dry air, kg/m³, ``altitude`` metres above the sea at ``temperature`` °C.

    Pressure falls with height as in the International Standard Atmosphere (ISO 2533). Raises ``Impossible`` outside
    -500 to 6000 m and -40 to 60 °C.
    """
    within(altitude, "An altitude", -500.0, 6000.0, "m")
    within(temperature, "A temperature", -40.0, 60.0, "°C")
    pressure: float = _SEA_LEVEL_PRESSURE * (1 - 2.25577e-5 * altitude) ** 5.25588
    return pressure / (_GAS_OF_DRY_AIR * (_ZERO_CELSIUS + temperature))


def law(name: str) -> AirLaw:
    """Return the law of lift and drag called ``name``; raise ``NoSuch`` with a sentence that lists what there is."""
    if name not in air_laws():
        raise NoSuch(f"There is no law of the air called {name!r}; there are {', '.join(air_laws())}.")
    return air_laws()[name]
