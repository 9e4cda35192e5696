"""Several small cards on one large sheet: side by side, each back behind its front, with marks to cut along."""

from __future__ import annotations

import io
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from designer.cards.papers import MM, PAPERS, UNPRINTED

SHEETS: Final = {name: (PAPERS[name].width, PAPERS[name].height) for name in ("a4", "letter")}
"""Width and height in points of the sheets that a printer takes."""
MARK: Final = 4 * MM
"""Length of a mark to cut along."""
_SLACK: Final = 0.5 * MM
"""Sheets of the A series are rounded to the millimetre: two A6 are a little wider than A5 is high."""


@dataclass(frozen=True, slots=True)
class Grid:
    """How cards of one size lie on a sheet: ``turned`` by a quarter or not, from (left, low), all in points."""

    sheet: tuple[float, float]
    cell: tuple[float, float]
    across: int
    along: int
    turned: bool

    @property
    def count(self) -> int:
        """How many cards there are on a sheet."""
        return self.across * self.along

    @property
    def corner(self) -> tuple[float, float]:
        """Lower left corner of the cards, which stand in the middle of the sheet."""
        return (
            (self.sheet[0] - self.across * self.cell[0]) / 2,
            (self.sheet[1] - self.along * self.cell[1]) / 2,
        )

    def place(self, slot: int, *, back: bool) -> tuple[float, float, float, float, float, float]:
        """Return the matrix that puts a card's page into ``slot``, counted from the upper left of a front.

        A sheet is turned over its long edge: the back of the first card of a row stands last in it, and a card that lies
        on its side on the front lies on its other side on the back.
        """
        row, column = divmod(slot, self.across)
        column = self.across - 1 - column if back else column
        x = self.corner[0] + column * self.cell[0]
        y = self.corner[1] + (self.along - 1 - row) * self.cell[1]
        if not self.turned:
            return (1, 0, 0, 1, x, y)
        return (0, -1, 1, 0, x, y + self.cell[1]) if back else (0, 1, -1, 0, x + self.cell[0], y)

    def marks(self) -> Iterator[tuple[float, float, float, float]]:
        """Yield the marks to cut along, (x, y, x, y): at the ends of each cut, outside the cards where there is room."""
        left, low = self.corner
        right, high = left + self.across * self.cell[0], low + self.along * self.cell[1]
        for column in range(self.across + 1):
            x = left + column * self.cell[0]
            if _SLACK < x < self.sheet[0] - _SLACK:
                for y, way in ((low, -1), (high, 1)):
                    yield (x, y, x, y + way * self._reach(low if way < 0 else self.sheet[1] - high))
        for row in range(self.along + 1):
            y = low + row * self.cell[1]
            if _SLACK < y < self.sheet[1] - _SLACK:
                for x, way in ((left, -1), (right, 1)):
                    yield (x, y, x + way * self._reach(left if way < 0 else self.sheet[0] - right), y)

    @staticmethod
    def _reach(free: float) -> float:
        """Return how long a mark is, outwards; less than 0 is inwards, on the cut itself, where it reaches out of the rim."""
        return MARK if free - UNPRINTED >= MARK / 2 else free - UNPRINTED - MARK


def grid(card: tuple[float, float], sheet: str) -> Grid:
    """Return how most cards of the size ``card`` lie on ``sheet``.

    Raises ``KeyError`` with a sentence where the sheet is not known or not even two cards fit.
    """
    if sheet not in SHEETS:
        raise KeyError(f"there is no sheet {sheet!r} to print several cards on; there are {', '.join(SHEETS)}")
    size = SHEETS[sheet]
    found = []
    for turned in (False, True):
        wide, high = (card[1], card[0]) if turned else card
        across, along = (int((length + _SLACK) / part) for length, part in zip(size, (wide, high), strict=True))
        found.append(Grid(size, (wide, high), across, along, turned))
    best = max(found, key=lambda tried: (tried.count, not tried.turned))
    if best.count < 2:
        raise KeyError(
            f"two cards of this size do not fit on one sheet of {PAPERS[sheet].title}; print them one by one"
        )
    return best


def leaves(pages: int) -> int:
    """Return how many cards of two sides ``pages`` sides make."""
    return -(-pages // 2)


def imposed(cards: Sequence[bytes], sheet: str, *, copies: int | None = None) -> bytes:
    """Return the sheets of ``cards``, PDFs of one size: fronts and, where any card has one, backs behind them.

    ``copies`` is how often each card is printed; without it as often as fills the first sheet. Title, language and author
    are those of the first card. Raises ``KeyError`` as `grid` does.
    """
    import pikepdf

    sources = [pikepdf.open(io.BytesIO(card)) for card in cards]
    box = sources[0].pages[0].mediabox
    lies = grid((float(box[2]), float(box[3])), sheet)
    both = any(len(source.pages) > 1 for source in sources)
    with pikepdf.new() as document:
        forms = [_forms(document, source) for source in sources]
        each = [pair for pages in forms for pair in pages]
        times = copies if copies is not None else max(1, lies.count // len(each))
        order = [pair for pages in forms for _ in range(times) for pair in pages]
        for start in range(0, len(order), lies.count):
            part = order[start : start + lies.count]
            for back in (False, True) if both else (False,):
                _add_page(document, lies, [pair[back] for pair in part], back=back)
        for key, value in sources[0].docinfo.items():
            document.docinfo[key] = str(value)
        document.Root.Lang = pikepdf.String(str(sources[0].Root.get("/Lang", "en")))
        result = io.BytesIO()
        document.save(result, deterministic_id=True)
    for source in sources:
        source.close()
    return result.getvalue()


def _forms(document: object, source: object) -> list[tuple[object, object | None]]:
    """Return the pages of a card as (front, back) forms of ``document``; a last back may be missing."""
    made = [document.copy_foreign(page.as_form_xobject()) for page in source.pages]  # type: ignore[attr-defined]
    return [(made[n], made[n + 1] if n + 1 < len(made) else None) for n in range(0, len(made), 2)]


def _add_page(document: object, lies: Grid, forms: Sequence[object | None], *, back: bool) -> None:
    import pikepdf

    document.add_blank_page(page_size=lies.sheet)  # type: ignore[attr-defined]
    page = document.pages[-1]  # type: ignore[attr-defined]
    names = {f"/Card{number}": form for number, form in enumerate(forms) if form is not None}
    drawn = []
    for slot, form in enumerate(forms):
        if form is not None:
            matrix = " ".join(f"{value:.4f}".rstrip("0").rstrip(".") for value in lies.place(slot, back=back))
            drawn.append(f"q {matrix} cm /Card{slot} Do Q")
    marks = "" if back else " ".join(f"{x:.2f} {y:.2f} m {u:.2f} {v:.2f} l" for x, y, u, v in lies.marks())
    lines = "\n".join((*drawn, *((f"q 0.4 w 0.5 G {marks} S Q",) if marks else ())))
    page.Contents = document.make_stream(lines.encode("ascii"))  # type: ignore[attr-defined]
    page.Resources = pikepdf.Dictionary(XObject=pikepdf.Dictionary(names))


def joined(cards: Sequence[bytes]) -> bytes:
    """Return ``cards`` one after another in one PDF; where any has a back, each begins on a new leaf.

    Title, language and author are those of the first.
    """
    import pikepdf

    sources = [pikepdf.open(io.BytesIO(card)) for card in cards]
    both = any(len(source.pages) > 1 for source in sources)
    with pikepdf.open(io.BytesIO(cards[0])) as document:
        for number, source in enumerate(sources):
            if number:
                document.pages.extend(source.pages)
            if both and len(source.pages) % 2 and number + 1 < len(sources):
                box = source.pages[-1].mediabox
                document.add_blank_page(page_size=(float(box[2]), float(box[3])))
        result = io.BytesIO()
        document.save(result, deterministic_id=True)
    for source in sources:
        source.close()
    return result.getvalue()
