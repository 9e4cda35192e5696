"""How a card is read: the words that every card takes for granted, and the one legend of all its signs."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from designer.cards.blocks import BAR, Block, Drawn
from designer.cards.book.rows import Setter
from designer.cards.facts import fact_icon
from designer.cards.logo import draw_logo
from designer.cards.papers import Type
from designer.cards.pieces import draw_caution, draw_cross
from designer.drawing.legend import WORDS
from designer.drill.handbook import Handbook

if TYPE_CHECKING:
    from designer.cards.page import Page
    from designer.drawing.primitives import Primitive
    from designer.drawing.themes import Theme

_READING: Final = (
    (
        "People",
        "The nose of each person stands on the exact place. Letters are jobs, and people change jobs: YOU stands where the drill is looked at from, and on a player’s own card the filled letter is you.",
    ),
    ("Lines", "A solid line is a ball, a broken line is feet. The head of a ball’s line points at the bounce."),
    ("Digits", "A square with a digit is a shot, in the order of play; the same square stands before its sentence."),
    ("Open", "From the flag “open” on, the restrictions end and the point is played."),
    (
        "Counts",
        "A racket is 27 inches, 0.69\N{NO-BREAK SPACE}m: the singles court is twelve across. A stride is a yard, 0.91\N{NO-BREAK SPACE}m: six from service line to baseline.",
    ),
    ("Empty lines", "A line left empty is a question that the drill leaves to you: write the answer on it."),
    (
        "Stand-in",
        "The sheets of this book assume nothing: they are written for whoever stands in for a coach. Shorter cards, for a coach or for a player, are printed from the drill itself.",
    ),
)
_SHEETS: Final = (
    "Sheets are numbered by their drill: 3.12a is the first sheet of drill 12 in section 3, 3.12b the next.{leaves}"
)
_OWN_LEAVES: Final = " A drill begins on a leaf of its own, so that one leaf can be changed for another."
PEOPLE: Final = (
    ("you", "you"),
    ("person", "another player"),
    ("left-hander", "left-handed"),
    ("coach", "coach"),
    ("waits", "waits or collects"),
    ("step digit", "a shot"),
    ("feed digit", "a feed"),
    ("open flag", "the point is open"),
)
LINES: Final = (
    ("going on", "goes on"),
    ("in play", "line in play"),
    ("out of play", "line not in play"),
    ("fence", "fence, as measured"),
    ("assumed fence", "fence, assumed"),
)
"""What a diagram shows besides ``legend.WORDS``, which its own legend takes for granted."""
SHEET: Final = (
    ("people", "who plays"),
    ("court", "which court"),
    ("clock", "how long"),
    ("ball", "how many balls"),
    ("kit", "what to bring"),
    ("value", "points for it"),
    ("bound", "not allowed"),
    ("caution", "take care"),
    ("bar", "the one of this card"),
    ("way", "there in the next round"),
    ("resting", "waits in this round"),
)
"""Signs that stand on a card outside its diagram."""


def reading(book: Handbook, setter: Setter, theme: Theme) -> Iterator[Block]:
    """Yield how a card is read, with every sign that it can have."""
    yield setter.title("How to read a card")
    sheets = "Sheets", _SHEETS.format(leaves=_OWN_LEAVES if book.own_leaves else "")
    yield from (
        setter.term(setter.vocabulary.said(word), setter.vocabulary.said(words)) for word, words in (*_READING, sheets)
    )
    yield setter.heading("The marks on the court", before=12)
    yield _legend((*PEOPLE, *WORDS.items(), *LINES), setter, theme)
    yield setter.heading("The signs on the sheet", before=8)
    yield _legend(SHEET, setter, theme)


def _legend(entries: Iterable[tuple[str, str]], setter: Setter, theme: Theme) -> Block:
    """Return ``entries`` (kind, words) in columns, read down."""
    signs = [(_painter(kind, setter, theme), setter.vocabulary.said(words)) for kind, words in entries]
    rows = -(-len(signs) // _COLUMNS)
    wide, body = setter.paper.inner / _COLUMNS, setter.paper.body

    def draw(page: Page, x: float, top: float, _: float) -> None:
        for place, (paint, words) in enumerate(signs):
            column, row = divmod(place, rows)
            left, middle = x + column * wide, top - (row + 0.5) * _PITCH
            paint(page, left, middle)
            page.write(words, left + _BESIDE, middle - 0.35 * body.size, body)

    return Drawn(rows * _PITCH, draw, before=4)


_COLUMNS: Final = 3
_UNIT: Final = 1.2
"""Points of a mark unit on the page of marks."""
_PITCH: Final = 24.0
"""Points from row to row: a person with a racket is 22 units high."""
_BESIDE: Final = 46.0
"""Points from a sign's left edge to its words: clear of a racket."""
_WIDE: Final = 22 * _UNIT
"""Points that a sign is wide."""

Paint = Callable[["Page", float, float], None]
"""Draws a sign on a page, from (left, middle)."""


def _painter(kind: str, setter: Setter, theme: Theme) -> Paint:
    if kind in _PAINTED:
        return _PAINTED[kind]
    if kind in dict(SHEET) and kind not in ("way", "resting"):
        return _Icon(kind)
    return _Marked(kind, setter.vocabulary.said("open"), theme)


@dataclass(frozen=True, slots=True)
class _Icon:
    kind: str

    def __call__(self, page: Page, left: float, middle: float) -> None:
        icon = fact_icon(self.kind)
        assert icon is not None, f"no icon is called {self.kind}"
        draw_logo(
            page.canvas, icon, left + (_WIDE - _ICON * icon.ratio) / 2, middle - _ICON / 2, _ICON, page.colours["soft"]
        )


@dataclass(frozen=True, slots=True)
class _Marked:
    """A sign by the code of the marks themselves."""

    kind: str
    flag: str
    theme: Theme

    def __call__(self, page: Page, left: float, middle: float) -> None:
        from designer.drawing.pdf import draw_primitives

        draw_primitives(page.canvas, self._primitives(), self.theme, (left, middle), 1.0)

    def _primitives(self) -> tuple[Primitive, ...]:
        from designer.drawing import balls, court_marks, rotation
        from designer.drawing.pen import Pen
        from designer.drawing.samples import sample

        pen, ends = Pen(_UNIT, switched=self.theme.switched), ((0.0, 0.0), (_WIDE, 0.0))
        if self.kind == "going on":
            return (*balls.bounce(pen, ends[0]), *balls.going_on(pen, *ends))
        if self.kind in ("in play", "out of play"):
            return tuple(court_marks.court_line(pen, *ends, is_thick=self.kind == "in play"))
        if self.kind in ("fence", "assumed fence"):
            return tuple(court_marks.fence_line(pen, *ends, assumed=self.kind == "assumed fence"))
        if self.kind in ("way", "resting"):
            return tuple(rotation.round_sign(pen, "A", rests=self.kind == "resting"))
        return sample(self.kind, self.theme, _UNIT, self.flag if self.kind == "open flag" else "")


def _value(page: Page, left: float, middle: float) -> None:
    type_ = Type(page.paper.body.size, page.paper.body.leading, bold=True)
    page.write("+1", left + _WIDE / 2 - 6, middle - 0.35 * type_.size, type_)


def _bound(page: Page, left: float, middle: float) -> None:
    draw_cross(page, left + _WIDE / 2 - 3.5, middle - 3.5, 7.0)


def _caution(page: Page, left: float, middle: float) -> None:
    draw_caution(page, left + _WIDE / 2 - 6, middle - 5.4, 12.0)


def _bar(page: Page, left: float, middle: float) -> None:
    tall = page.paper.body.leading
    page.box(left + _WIDE / 2 - BAR / 2, middle - tall / 2, BAR, tall, "ink")


_ICON: Final = 13.0
"""Height in points of a fact's icon."""
_PAINTED: Final[dict[str, Paint]] = {"value": _value, "bound": _bound, "caution": _caution, "bar": _bar}
