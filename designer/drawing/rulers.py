"""Rulers outside the fence: strides along the court, rackets across it, counted from the net and the centre line."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Final

from designer.court.regions import RACKET, STRIDE
from designer.drawing.plan import Plan
from designer.drawing.primitives import Layer, Point, Primitive, Strokes, Style
from designer.drawing.words import text_width

SHORT: Final = 2.8
LONG: Final = 6.3
SIZE: Final = 8.45
"""Ticks and numbers in u: 4, 9 and 12 px where a u is 1.42 px."""


def ruler_marks(plan: Plan) -> None:
    """Add the rulers at the left and the foot of the sheet."""
    ground = plan.ground
    along = [line for line in (ground.service_line, ground.baseline) if line is not None]
    across = [line for line in (ground.singles, ground.doubles) if line is not None]
    plan.add(
        None, "rulers", Layer.COURT, _ruler(plan, "strides", STRIDE, ground.back_fence, along, lengthwise=True), "along"
    )
    plan.add(
        None,
        "rulers",
        Layer.COURT,
        _ruler(plan, "rackets", RACKET, ground.side_fence, across, lengthwise=False),
        "across",
    )


def _ruler(
    plan: Plan, word: str, step: float, most: float, painted: list[float], *, lengthwise: bool
) -> Iterator[Primitive]:
    """Yield one ruler. It stands at the left where its direction is up the page, else at the foot."""
    u, left, low = plan.unit, plan.fence[0], plan.fence[1]
    upright = lengthwise != plan.page.across

    def on_page(value: float) -> Point:
        x, y = plan.page.to_page((0.0, value) if lengthwise else (value, 0.0))
        return (left, y) if upright else (x, low)

    def tick(value: float, length: float) -> tuple[Point, Point]:
        x, y = on_page(value)
        return ((x, y), (x - length * u, y)) if upright else ((x, y), (x, y - length * u))

    count = math.floor(most / step + 1e-6)
    ticks = [tick(number * step, SHORT) for number in range(-count, count + 1)]
    named = [0.0, *painted, *(-value for value in painted)]
    yield Strokes(tuple(ticks), Style("fence", 0.7 * u))
    yield Strokes(tuple(tick(value, LONG) for value in named), Style("court line", 0.7 * u))
    for value in named:
        zero = "net" if lengthwise else "0"
        x, y = on_page(value)
        at = (x - (LONG + 2.5) * u, y) if upright else (x, y - (LONG + 6) * u)
        text = zero if value == 0 else _counted(abs(value) / step)
        yield plan.pen.words(text, at, SIZE, "soft", align="right" if upright else "middle")
    if upright:
        width = text_width(word, SIZE * u)
        yield plan.pen.words(word, (left + max(0.0, width / 2 - 14 * u), plan.fence[3] + 8 * u), SIZE, "soft")
    else:
        yield plan.pen.words(word, (left, low - (LONG + 6) * u), SIZE, "soft", align="left")


def _counted(count: float) -> str:
    """Return a count to the half."""
    halves = round(count * 2)
    return f"{halves // 2 or ''}{'½' if halves % 2 else ''}" or "0"
