"""The row of facts under the objective: people, court, minutes, balls and kit, each behind its icon."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from designer.cards.logo import Logo, draw_logo, read_logo
from designer.cards.papers import Type
from designer.cards.text import Typesetter
from designer.drawing.words import text_width
from designer.wording.facts import Fact

if TYPE_CHECKING:
    from designer.cards.page import Page

_GAP = 14.0
_AFTER_ICON = 4.0

FactRow = tuple[tuple[str, str, float], ...]
"""(icon, words, how far from the left in points) of each fact on one line; a line that goes on has no icon."""


def fact_rows(
    facts: Sequence[Fact], type_: Type, typesetter: Typesetter, first: float, width: float
) -> tuple[FactRow, ...]:
    """Return ``facts`` on as many lines as they need, the first ``first`` points wide, the others ``width``."""
    rows: list[list[tuple[str, str, float]]] = [[]]
    x, limit = 0.0, first
    for fact in facts:
        icon = fact_icon(fact.icon)
        indent = type_.size * 1.2 * icon.ratio + _AFTER_ICON if icon else 0.0
        text = typesetter.clean(fact.text)
        wide = indent + text_width(text, type_.size)
        if x and x + wide > limit:
            rows.append([])
            x, limit = 0.0, width
        head, *rest = typesetter.lines(text, type_, limit - x - indent)
        rows[-1].append((fact.icon, head, x))
        for line in rest:
            rows.append([("", line, 0.0)])
            x, limit = 0.0, width
        x += text_width(rest[-1], type_.size) + _GAP if rest else wide + _GAP
    return tuple(tuple(row) for row in rows if row)


def draw_facts(page: Page, rows: Sequence[FactRow], left: float, base: float, type_: Type) -> None:
    """Draw ``rows`` from ``left``, the first on the base line ``base``."""
    for row in rows:
        for name, text, offset in row:
            icon = fact_icon(name) if name else None
            x = left + offset
            if icon is not None:
                height = type_.size * 1.2
                draw_logo(page.canvas, icon, x, base - height * 0.18, height, page.colours["soft"])
                x += height * icon.ratio + _AFTER_ICON
            page.write(text, x, base, type_)
        base -= type_.leading


_ICONS: dict[str, Logo | None] = {}


def fact_icon(name: str) -> Logo | None:
    """Return the bundled icon of this name as shapes, None where there is none (kit has only its words)."""
    if name not in _ICONS:
        from designer.bundle import resource

        try:
            _ICONS[name] = read_logo(resource("icons", f"{name}.svg").read_text(encoding="utf-8"))
        except FileNotFoundError:
            _ICONS[name] = None
    return _ICONS[name]
