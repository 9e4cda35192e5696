"""Rulers outside the fence, counted from the net and the centre line.

Rackets across and strides along, or metres, or feet both ways.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from designer.court.regions import RACKET, STRIDE
from designer.drawing.plan import Plan
from designer.drawing.primitives import Layer, Point, Primitive, Strokes, Style
from designer.drawing.words import text_width
from designer.wording.units import Units

SHORT: Final = 2.8
LONG: Final = 6.3
SIZE: Final = 8.45
"""Ticks and numbers in u: 4, 9 and 12 px where a u is 1.42 px."""


FOOT: Final = 0.3048
"""Exactly: the international yard and pound agreement of 1959."""


@dataclass(frozen=True, slots=True)
class Scale:
    """What one ruler counts: its word, what it counts in metres, and how many of them lie from tick to tick."""

    word: str
    unit: float
    ticks: int = 1


SCALES: Final[dict[Units, tuple[Scale, Scale]]] = {
    "rackets": (Scale("rackets", RACKET), Scale("strides", STRIDE)),
    "metres": (Scale("metres", 1.0), Scale("metres", 1.0)),
    "feet": (Scale("feet", FOOT, 3), Scale("feet", FOOT, 3)),
}
"""Across and along. Every third foot has a tick: single feet would be a grey band."""


def ruler_marks(plan: Plan, units: Units = "rackets") -> None:
    """Add the rulers at the left and the foot of the sheet."""
    across_scale, along_scale = SCALES[units]
    ground = plan.ground
    along = [line for line in (ground.service_line, ground.baseline) if line is not None]
    across = [line for line in (ground.singles, ground.doubles) if line is not None]
    plan.add(None, "rulers", Layer.COURT, _ruler(plan, along_scale, ground.back_fence, along, lengthwise=True), "along")
    plan.add(
        None,
        "rulers",
        Layer.COURT,
        _ruler(plan, across_scale, ground.side_fence, across, lengthwise=False),
        "across",
    )


def _ruler(plan: Plan, scale: Scale, most: float, painted: list[float], *, lengthwise: bool) -> Iterator[Primitive]:
    """Yield one ruler. It stands at the left where its direction is up the page, else at the foot."""
    u, left, low = plan.unit, plan.fence[0], plan.fence[1]
    upright = lengthwise != plan.page.across

    def on_page(value: float) -> Point:
        x, y = plan.page.to_page((0.0, value) if lengthwise else (value, 0.0))
        return (left, y) if upright else (x, low)

    def tick(value: float, length: float) -> tuple[Point, Point]:
        x, y = on_page(value)
        return ((x, y), (x - length * u, y)) if upright else ((x, y), (x, y - length * u))

    word, step = scale.word, scale.unit * scale.ticks
    count = math.floor(most / step + 1e-6)
    ticks = [tick(number * step, SHORT) for number in range(-count, count + 1)]
    named = [0.0, *painted, *(-value for value in painted)]
    yield Strokes(tuple(ticks), Style("fence", 0.7 * u))
    yield Strokes(tuple(tick(value, LONG) for value in named), Style("court line", 0.7 * u))
    for value in named:
        zero = "net" if lengthwise else "0"
        x, y = on_page(value)
        at = (x - (LONG + 2.5) * u, y) if upright else (x, y - (LONG + 6) * u)
        text = zero if value == 0 else _counted(abs(value) / scale.unit, word)
        yield plan.pen.words(text, at, SIZE, "soft", align="right" if upright else "middle")
    if upright:
        width = text_width(word, SIZE * u)
        yield plan.pen.words(word, (left + max(0.0, width / 2 - 14 * u), plan.fence[3] + 8 * u), SIZE, "soft")
    else:
        # Large letters leave it no room before the first number: it stands under the numbers then.
        first = min(on_page(value)[0] for value in named) - text_width("88", SIZE * u) / 2
        drop = 6 if left + text_width(word, SIZE * u) <= first else 15
        yield plan.pen.words(word, (left, low - (LONG + drop) * u), SIZE, "soft", align="left")


def _counted(count: float, word: str) -> str:
    """Return a count to the half, of metres to the centimetre."""
    if word == "metres":
        return f"{count:.2f}"
    halves = round(count * 2)
    return f"{halves // 2 or ''}{'½' if halves % 2 else ''}" or "0"
