"""The cover of a handbook: logo, title, edition and owner, in the academy's two colours."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from designer.cards.book.binding import LICENCE_ELSEWHERE
from designer.cards.book.front import day
from designer.cards.logo import Logo, draw_logo
from designer.cards.papers import MM, Type
from designer.cards.text import fitted

if TYPE_CHECKING:
    from designer.cards.page import Page
    from designer.drill.brand import Brand
    from designer.drill.handbook import Handbook

_SIZES: Final = (40.0, 26.0)
_EDITION: Final = Type(14, 19)
_OWNER: Final = Type(12.6, 17, bold=True)
_SMALL: Final = Type(9.6, 12.6)
_MOST_LINES: Final = 4
"""A longer licence stands on the next page alone."""


def draw_cover(page: Page, book: Handbook, brand: Brand | None, logo: Logo | None, licence: str) -> None:
    """Draw the cover on the open page."""
    paper = page.paper
    left, top = paper.left, paper.height - 34 * MM
    if logo is not None:
        height = min(42 * MM, paper.inner / max(logo.ratio, 0.1))
        draw_logo(page.canvas, logo, left, top - height, height)
    y = paper.height - 130 * MM
    page.box(left, y + 12, 40 * MM, 2.4 * MM, "bar")
    second = brand.second_colour if brand else None
    if second:
        page.box(left + 40 * MM, y + 12, 12 * MM, 2.4 * MM, second)
    title = page.typesetter.clean(book.title)
    size = fitted(title, _SIZES, paper.inner)
    type_ = Type(size, size * 1.18, bold=True)
    y -= size
    for line in page.typesetter.balanced(title, type_, paper.inner):
        page.write(line, left, y, type_, "brand")
        y -= type_.leading
    y -= 4
    page.write(f"Edition {book.edition}", left, y, _EDITION)
    if book.dated:
        page.write(day(book.dated), left, y - _EDITION.leading, _EDITION)
    is_long = len(page.typesetter.lines(licence, _SMALL, paper.inner)) > _MOST_LINES
    lines = [(words, _SMALL) for words in (book.contact, LICENCE_ELSEWHERE if is_long else licence) if words]
    if book.owner:
        lines.insert(0, (book.owner, _OWNER))
    whole = [(line, kind) for words, kind in lines for line in page.typesetter.lines(words, kind, paper.inner)]
    y = paper.bottom + 10 * MM + sum(kind.leading for _, kind in whole)
    for line, kind in whole:
        y -= kind.leading
        page.write(line, left, y, kind, "ink" if kind.bold else "soft")
