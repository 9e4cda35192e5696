"""The pages that open a section: its number and title, its introduction, and each of its drills with a small court."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from designer.cards.blocks import Block, Columns, Drawn, Row, stacked
from designer.cards.book.binding import page_room
from designer.cards.book.front import people_and_minutes
from designer.cards.book.leaf import Leaf, Summary
from designer.cards.book.rows import Setter, drill_key
from designer.cards.papers import COURT_RATIO, Type
from designer.cards.text import NO_BREAK
from designer.drill.handbook import BookSection

if TYPE_CHECKING:
    from designer.cards.page import Page

_NUMBER: Final = Type(44, 48, bold=True)
_TITLE: Final = Type(26, 31, bold=True)
_WIDTHS: Final = (58.0, 112.0)
"""Points across a small court: the least, and what is wished where a page has room for all of them."""
_BETWEEN: Final = 12.0
_ACROSS: Final = 2
"""Drills side by side."""


def section_page(section: BookSection, name: str, leaves: Mapping[str, Leaf], setter: Setter) -> Iterator[Block]:
    """Yield the pages that open a section, whose number is ``name``."""
    head = [
        setter.space(12),
        Row(name, _NUMBER, setter.typesetter, colour="brand", keep_with_next=True),
        Row(setter.said(section.title), _TITLE, setter.typesetter, keep_with_next=True),
        *([setter.text(section.introduction, before=8)] if section.introduction else ()),
        setter.space(8),
    ]
    yield from head
    drills = [(leaf, leaf.summary) for entry in section.drills if (leaf := leaves[entry.number]).summary is not None]
    rows = -(-len(drills) // _ACROSS)
    room = page_room(setter.paper) - stacked(head, setter.paper.inner)
    least, wished = _WIDTHS
    wide = max(least, min(wished, (room / max(1, rows) - _BETWEEN) / COURT_RATIO))
    for start in range(0, len(drills), _ACROSS):
        cells = [_cell(leaf, found, wide, setter) for leaf, found in drills[start : start + _ACROSS]]
        cells += [()] * (_ACROSS - len(cells))
        yield _Unbroken(tuple(cells), setter.paper.gutter, before=_BETWEEN)


@dataclass(frozen=True)
class _Unbroken(Columns):
    """Columns that stay on one page."""

    def split(self, width: float, room: float) -> None:
        """Return that they are not divided."""


def _cell(leaf: Leaf, found: Summary, wide: float, setter: Setter) -> tuple[Block, ...]:
    """Return a drill: its court, and beside it number, title, what it is for, who plays and how long."""
    number = leaf.entry.number
    said = [setter.link(leaf.title, drill_key(number), number=number, before=0, bold=True)]
    if found.objective:
        said.append(setter.text(found.objective, before=2))
    facts = (*map(setter.said, people_and_minutes(found)), *map(setter.named, found.tagged("level")))
    if facts:
        words = f"{NO_BREAK}· ".join(fact.replace(" ", NO_BREAK) for fact in facts)
        said.append(setter.said_already(words, before=2, colour="soft"))
    half = (setter.paper.inner - setter.paper.gutter) / _ACROSS
    court = Drawn(wide * COURT_RATIO, lambda page, x, top, _: _draw_court(page, leaf, x, top, wide))
    return (Columns(((court,), tuple(said)), _BETWEEN, shares=(wide, half - wide - _BETWEEN)),)


def _draw_court(page: Page, leaf: Leaf, x: float, top: float, wide: float) -> None:
    """Draw the court of the drill's main setting, read anew, ``wide`` points across or in the height there is for it."""
    from designer.drawing.pdf import draw
    from designer.drawing.picture import thumbnail
    from designer.drawing.themes import theme
    from designer.drill.setting import main_setting

    assert leaf.read is not None
    colours = theme("paper")
    try:
        drill = leaf.read()
        shown = thumbnail(drill, main_setting(drill), theme=colours, width=wide)
    except Exception:  # noqa: BLE001  its own pages, or the list of what is left out, say what is wrong with it
        return
    left, low, right, high = shown.extent
    scale = min(wide / (right - left), wide * COURT_RATIO / (high - low))
    draw(page.canvas, shown, colours, x, top - (high - low) * scale, scale)
