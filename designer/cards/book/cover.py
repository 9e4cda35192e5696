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
"""Lines of owner, contact and licence each; a longer licence stands on the next page alone, and so does all of the others."""


def draw_cover(page: Page, book: Handbook, brand: Brand | None, logo: Logo | None, licence: str) -> None:
    """Draw the cover on the open page."""
    paper = page.paper
    left, top = paper.left, paper.height - 34 * MM
    if logo is not None:
        height = min(42 * MM, paper.inner / max(logo.ratio, 0.1))
        draw_logo(page.canvas, logo, left, top - height, height)
    bottom = _draw_owner(page, book, licence)
    y = paper.height - 130 * MM
    page.box(left, y + 12, 40 * MM, 2.4 * MM, "bar")
    second = brand.second_colour if brand else None
    if second:
        page.box(left + 40 * MM, y + 12, 12 * MM, 2.4 * MM, second)
    title = page.typesetter.clean(book.title)
    size = fitted(title, _SIZES, paper.inner)
    type_ = Type(size, size * 1.18, bold=True)
    y -= size
    most = max(1, int((y - bottom - 3 * _EDITION.leading) / type_.leading))
    lines = page.typesetter.balanced(title, type_, paper.inner)
    for line in (*lines[: most - 1], " ".join(lines[most - 1 :])):
        page.write(page.typesetter.on_one_line(line, type_, paper.inner), left, y, type_, "brand")
        y -= type_.leading
    y -= 4
    page.write(f"Edition {book.edition}", left, y, _EDITION)
    if book.dated:
        page.write(day(book.dated), left, y - _EDITION.leading, _EDITION)


def _draw_owner(page: Page, book: Handbook, licence: str) -> float:
    """Write owner, contact and licence at the foot of the cover, each as far as it has room; return their upper end."""
    paper = page.paper

    def lines(words: str, kind: Type) -> tuple[tuple[str, Type], ...]:
        found = page.typesetter.lines(words, kind, paper.inner)
        rest = " ".join(found[_MOST_LINES - 1 :])
        kept = (*found[: _MOST_LINES - 1], page.typesetter.on_one_line(rest, kind, paper.inner))
        return tuple((line, kind) for line in kept if line)

    is_long = len(page.typesetter.lines(licence, _SMALL, paper.inner)) > _MOST_LINES
    whole = (
        *lines(book.owner, _OWNER),
        *lines(book.contact, _SMALL),
        *lines(LICENCE_ELSEWHERE if is_long else licence, _SMALL),
    )
    top = y = paper.bottom + 10 * MM + sum(kind.leading for _, kind in whole)
    for line, kind in whole:
        y -= kind.leading
        page.write(line, paper.left, y, kind, "ink" if kind.bold else "soft")
    return top
