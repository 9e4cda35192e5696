"""How often a target is hit: landings are a bivariate normal round the place aimed at, their spread set by the level.

The chance to hit an area is a line integral round its edge (Green's theorem), exact for any polygon and any ellipse. The
net is not looked at here: real success is lower where balls that fall short are balls in the net.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Final

from designer.drill.base import Point
from designer.numbers.levels import Spread
from designer.numbers.problems import Impossible
from designer.numbers.roots import root

_FAR: Final = 9.0
"""Standard deviations beyond which nothing lands."""

_ROOT_TWO: Final = math.sqrt(2)
_DENSITY: Final = 1 / math.sqrt(2 * math.pi)


@dataclass(frozen=True, slots=True)
class Landing:
    """Where balls come down: the place aimed at, where they are hit from, and their spread there."""

    aim: Point
    contact: Point
    spread: Spread

    def standard(self, place: Point) -> Point:
        """Return ``place`` in standard deviations (across, along) from the aim, as the hitter sees it."""
        right, ahead = self._heading
        dx, dy = place[0] - self.aim[0], place[1] - self.aim[1]
        return (
            (dx * ahead - dy * right) / self.spread.across,
            (dx * right + dy * ahead) / self.spread.along,
        )

    @property
    def _heading(self) -> tuple[float, float]:
        dx, dy = self.aim[0] - self.contact[0], self.aim[1] - self.contact[1]
        size = math.hypot(dx, dy)
        return (0.0, 1.0) if size < 1e-9 else (dx / size, dy / size)

    def times(self, factor: float) -> Landing:
        """Return landings spread ``factor`` times as wide."""
        return Landing(self.aim, self.contact, self.spread.times(factor))


def _below(value: float) -> float:
    """Return the chance that a standard normal is below ``value``."""
    return 0.5 * math.erfc(-value / _ROOT_TWO)


@cache
def _gauss(count: int) -> tuple[tuple[float, float], ...]:
    """Return (place, weight) of Gauss and Legendre's rule on -1 to 1, by Newton's method on the polynomial."""
    found = []
    for number in range(count):
        place = math.cos(math.pi * (number + 0.75) / (count + 0.5))
        slope = 1.0
        for _ in range(50):
            before, now = 1.0, place
            for degree in range(2, count + 1):
                before, now = now, ((2 * degree - 1) * place * now - (degree - 1) * before) / degree
            slope = count * (place * now - before) / (place * place - 1)
            step = now / slope
            place -= step
            if abs(step) < 1e-15:
                break
        found.append((place, 2 / ((1 - place * place) * slope * slope)))
    return tuple(found)


def chance_in(polygon: Sequence[Point], landing: Landing) -> float:
    """Return the chance that a ball comes down inside ``polygon``, which may go round either way.

    Raises ``Impossible`` where it has fewer than three corners.
    """
    if len(polygon) < 3:
        raise Impossible(f"An area with {len(polygon)} corners cannot be hit; expected three or more.")
    corners = [landing.standard(corner) for corner in polygon]
    whole = math.fsum(_edge(start, end) for start, end in zip(corners, (*corners[1:], corners[0]), strict=True))
    return min(abs(whole), 1.0)


def _edge(start: Point, end: Point) -> float:
    """Return the integral of (chance below x) d(chance below y) along one edge, in standard deviations."""
    (x0, y0), (x1, y1) = start, end
    low, high = max(min(y0, y1), -_FAR), min(max(y0, y1), _FAR)
    if low >= high:
        return 0.0
    lean = (x1 - x0) / (y1 - y0)
    sign = 1.0 if y1 > y0 else -1.0
    # Pieces so short that nothing inside changes faster than the rule can follow.
    pieces = max(1, math.ceil((high - low) * max(1.0, min(abs(lean), 12.0)) / 1.5))
    half = (high - low) / pieces / 2
    total = 0.0
    for piece in range(pieces):
        middle = low + (2 * piece + 1) * half
        for place, weight in _gauss(12):
            y = middle + half * place
            total += weight * _below(x0 + lean * (y - y0)) * math.exp(-y * y / 2)
    return sign * half * _DENSITY * total


def chance_in_ellipse(corners: tuple[Point, Point], landing: Landing) -> float:
    """Return the chance that a ball comes down in the ellipse that fills the rectangle between two opposite corners."""
    (x0, y0), (x1, y1) = corners
    middle = ((x0 + x1) / 2, (y0 + y1) / 2)
    cx, cy = landing.standard(middle)
    ax, ay = landing.standard((middle[0] + abs(x1 - x0) / 2, middle[1]))
    bx, by = landing.standard((middle[0], middle[1] + abs(y1 - y0) / 2))
    ux, uy, vx, vy = ax - cx, ay - cy, bx - cx, by - cy
    # The trapezoid rule on a whole turn converges faster than any power of the number of points.
    count = min(4096, 64 + 16 * math.ceil(max(abs(ux) + abs(vx), abs(uy) + abs(vy))))
    total = 0.0
    for number in range(count):
        turn = 2 * math.pi * number / count
        cosine, sine = math.cos(turn), math.sin(turn)
        y = cy + uy * cosine + vy * sine
        if abs(y) < _FAR:
            x = cx + ux * cosine + vx * sine
            total += _below(x) * math.exp(-y * y / 2) * (vy * cosine - uy * sine)
    return min(abs(total) * _DENSITY * 2 * math.pi / count, 1.0)


def beyond(polygon: Sequence[Point], contact: Point, towards: Point, metres: float) -> tuple[Point, ...]:
    """Return the part of ``polygon`` that lies more than ``metres`` from ``contact``, measured along the way ``towards``.

    What lies nearer is where no ball lands that clears the net. Fewer than three points where nothing is left.
    """
    dx, dy = towards[0] - contact[0], towards[1] - contact[1]
    size = math.hypot(dx, dy)

    def past(place: Point) -> float:
        return ((place[0] - contact[0]) * dx + (place[1] - contact[1]) * dy) / size - metres

    kept: list[Point] = []
    for start, end in zip(polygon, (*polygon[1:], polygon[0]), strict=True):
        here, there = past(start), past(end)
        if here >= 0:
            kept.append(start)
        if here * there < 0:
            share = here / (here - there)
            kept.append((start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])))
    return tuple(kept)


def resized(polygon: Sequence[Point], factor: float) -> tuple[Point, ...]:
    """Return ``polygon`` made ``factor`` times as large about the middle of its corners."""
    middle = (sum(x for x, _ in polygon) / len(polygon), sum(y for _, y in polygon) / len(polygon))
    return tuple((middle[0] + factor * (x - middle[0]), middle[1] + factor * (y - middle[1])) for x, y in polygon)


def size_for(polygon: Sequence[Point], landing: Landing, rate: float) -> float:
    """Return how many times as large ``polygon`` must be to be hit at ``rate``.

    Raises ``Impossible`` where ``rate`` is no share between 0 and 1, or where no size is hit that often.
    """
    _share(rate)
    if chance_in(resized(polygon, 50.0), landing) < rate:
        raise Impossible(f"No size of this target is hit {rate:.0%} of the time from where it is aimed at.")
    return root(lambda factor: chance_in(resized(polygon, factor), landing) - rate, 0.0, 50.0, near=1e-7)


def fitted_factor(chance: Callable[[Landing], float], landing: Landing, rate: float) -> float:
    """Return how many times as wide the spread must be for ``chance`` to be ``rate``: fitting it to a group.

    Raises ``Impossible`` where no spread gives that: the aim is outside, or ``rate`` is 0 or 1.
    """
    _share(rate)

    def more(factor: float) -> float:
        return chance(landing.times(factor)) - rate

    tried = [0.02 * 1.3**number for number in range(32)]
    values = [more(factor) for factor in tried]
    # From wide to narrow: the widest spread that gives the rate, since groups miss by too much, not by too little.
    for number in range(len(tried) - 1, 0, -1):
        if values[number] < 0 <= values[number - 1]:
            return root(more, tried[number - 1], tried[number], near=1e-9)
    raise Impossible(
        f"No spread hits this target {rate:.0%} of the time; is it aimed at, and is the rate neither 0 nor 1?"
    )


def _share(rate: float) -> None:
    if not 0 < rate < 1:
        raise Impossible(f"A rate of {rate:g} cannot be fitted; expected more than 0 and less than 1.")


def rate_in_words(hits: int, tries: int) -> tuple[float, float, float]:
    """Return (rate, least, most) of "``hits`` of ``tries``": the share, and its 90 % range (Clopper and Pearson).

    None hit or all hit are counted as half a ball off, so that a spread can be fitted. Raises ``Impossible`` for nonsense.
    """
    if tries < 1 or not 0 <= hits <= tries:
        raise Impossible(f"{hits} of {tries} cannot be; expected 0 to {max(tries, 1)} of a number of tries.")

    def at_least(rate: float, count: int) -> float:
        return sum(math.comb(tries, k) * rate**k * (1 - rate) ** (tries - k) for k in range(count, tries + 1))

    least = 0.0 if hits == 0 else root(lambda rate: at_least(rate, hits) - 0.05, 0.0, 1.0)
    most = 1.0 if hits == tries else root(lambda rate: at_least(rate, hits + 1) - 0.95, 0.0, 1.0)
    return min(max(hits, 0.5), tries - 0.5) / tries, least, most


def tries_for(hits: int, rate: float) -> float:
    """Return the tries to expect for ``hits`` hits, in any order."""
    if rate <= 0:
        raise Impossible("A target that is never hit takes for ever; expected a larger one or a steadier group.")
    return hits / rate


def tries_to_be_sure(hits: int, rate: float, sure: float = 0.9) -> int:
    """Return the least number of tries in which ``hits`` hits or more come with a chance of ``sure``."""
    tries_for(hits, rate)
    _share(sure)
    short, tries = [1.0] + [0.0] * (hits - 1), 0
    while math.fsum(short) > 1 - sure:
        short = [share * (1 - rate) + (short[n - 1] * rate if n else 0.0) for n, share in enumerate(short)]
        tries += 1
        if tries > 100_000:
            raise Impossible(f"It takes more than 100000 tries; a rate of {rate:.2g} is too low to plan with.")
    return tries


PURPOSES: Final[dict[str, tuple[float, float]]] = {
    "in a row": (0.8, 0.97),
    "together": (0.6, 0.9),
    "restricted": (0.5, 0.85),
    "bonus": (0.2, 0.4),
    "normal aim": (0.4, 0.8),
    "feed": (0.7, 1.0),
}
"""How often a target should be hit, by what it is for: least and most. Common practice, no source.

"in a row": a run ends with one miss. "together": a cooperative count. "restricted": a demand that costs the rally.
"bonus": more points for it. "normal aim": what the drill is about, and no more. "feed": the feed itself.
"""
