"""Cards and pictures from the window: the PDF of a setting for a reader, the court as SVG and PNG."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Final

from designer.desktop.filing import Filing
from designer.desktop.papers import parts
from designer.desktop.view import View
from designer.drill.drill import Drill
from designer.drill.setting import At, setting_at
from designer.storage.brand import Branded, branded
from designer.storage.parsing import Unreadable
from designer.storage.writing import Unwritable, write_file
from designer.wording.card import Reader
from designer.wording.units import Units

if TYPE_CHECKING:
    from PySide6.QtCore import QMimeData

    from designer.drawing.picture import Picture
    from designer.drawing.themes import Theme

UNIT: Final = 0.108
"""Metres of court to one mark unit in an exported picture: as on an A5 card."""

WIDTH: Final = 1600
"""How wide a picture in pixels is."""


def card_path(filing: Filing, view: View, reader: Reader) -> Path:
    """Return where a card is offered to be saved: beside the drill, named after it, the setting and the reader."""
    ids = [progression.id for progression in view.document.drill.progressions]
    words = [f"-{ids.index(view.at.progression) + 1}" if len(ids) > 1 else ""]
    words.append("" if view.at.variation is None else f"-{_degree(view, view.at)}")
    return filing.suggestion(f"{''.join(words)}-{reader}.pdf")


def _degree(view: View, at: At) -> str:
    from designer.desktop.ladder import degree_of

    return {"others": "other"}.get(str(degree_of(view.document.drill, at)), str(degree_of(view.document.drill, at)))


@dataclass(frozen=True, slots=True)
class Order:
    """All that a card is made from, taken from the window at once: making it may take a while, and the drill goes on."""

    drill: Drill
    at: At
    reader: Reader
    player: str | None
    units: Units
    paper: str
    """One of `papers.NAMES`."""
    grey: bool
    path: Path | None
    """Where the drill is kept; its brand is looked for beside it."""
    source: bytes | None
    each: bool = False
    """Whether each player of the setting gets a card."""


def ordered(
    filing: Filing,
    view: View,
    reader: Reader,
    *,
    paper: str = "a5",
    grey: bool = False,
    at: At | None = None,
    each: bool = False,
) -> Order:
    """Return the order for the card of the setting in view, or of ``at``, for ``reader``; for ``each`` player of it."""
    document = view.document
    letter = view.you if view.you is not None else _first_player(view)
    return Order(
        drill=document.drill,
        at=view.at if at is None else at,
        reader=reader,
        player=letter if reader == "player" and document.drill.job(letter or "") is not None else None,
        units=view.units,
        paper=paper,
        grey=grey,
        path=document.path,
        source=None if reader == "player" else filing.source(),
        each=each and reader == "player",
    )


def _first_player(view: View) -> str | None:
    """Return the first letter that plays: whose card it is while none is shown on the screen."""
    people = {job.letter for job in view.document.drill.jobs if job.by == "player"}
    playing = sorted(spot.job for spot in view.setting.spots.values() if spot.task == "plays" and spot.job in people)
    return playing[0] if playing else None


def made(order: Order) -> tuple[bytes, tuple[str, ...]]:
    """Return the card's PDF, and what could not be printed as it was written. Touches no window.

    A coach's or stand-in's card carries its drill. Raises ``Unwritable`` where something cannot be set as it should be.
    """
    from designer.cards.attachment import finished
    from designer.cards.card import make_card
    from designer.cards.imposing import imposed, joined
    from designer.cards.text import Unprintable

    own, notices = found_brand(order.path)
    paper, is_large, sheet = parts(order.paper)
    try:
        cards = [
            make_card(
                order.drill,
                order.at,
                paper=paper,
                reader=order.reader,
                player=letter,
                units=order.units,
                brand=own.brand,
                logo=own.logo,
                typeface=own.typeface,
                source=order.source if sheet is None else None,
                grey=order.grey,
                large_print=is_large,
            )
            for letter in _letters(order)
        ]
    except Unprintable as reason:
        raise Unwritable(str(reason)) from reason
    said = tuple(dict.fromkeys((*notices, *(notice for card in cards for notice in card.notices))))
    if sheet is None and len(cards) == 1:
        return cards[0].pdf, said
    pdfs = [card.pdf for card in cards]
    whole = joined(pdfs) if sheet is None else imposed(pdfs, sheet)
    name = f"{order.drill.code or order.drill.id}.drill.json"
    return finished(whole, dated=order.drill.dated, source=order.source, file_name=name), said


def _letters(order: Order) -> tuple[str | None, ...]:
    if not order.each:
        return (order.player,)
    standing = {spot.job for spot in setting_at(order.drill, order.at).spots.values()}
    players = tuple(job.letter for job in order.drill.jobs if job.by == "player" and job.letter in standing)
    return players or (order.player,)


def found_brand(path: Path | None) -> tuple[Branded, tuple[str, ...]]:
    """Return the brand beside the drill at ``path`` with its logo and typeface, and what was wrong with it."""
    if path is None:
        return Branded(), ()
    try:
        return branded(path), ()
    except Unreadable as reason:
        return Branded(), (f"The card has no brand: {reason}",)


@dataclass(frozen=True, slots=True)
class Court:
    """The court of one setting as it goes on paper, with its legend."""

    picture: Picture
    theme: Theme

    def svg(self, width: int = WIDTH) -> bytes:
        """Return it as an SVG file."""
        from designer.drawing.svg import svg

        return svg(self.picture, self.theme, width).encode()

    def png(self, width: int = WIDTH) -> bytes:
        """Return it as a PNG file ``width`` pixels wide."""
        from designer.drawing.qt import png

        return png(self.picture, self.theme, width)


def court(view: View) -> Court:
    """Return the court of the setting in view as it goes on paper."""
    from designer.drawing.picture import picture
    from designer.drawing.sheet import with_legend
    from designer.drawing.themes import theme

    drill = view.document.drill
    paper = theme("paper", surface=drill.court.surface)
    return Court(
        with_legend(picture(drill, view.at, unit=UNIT, theme=paper, turned=view.turned, patient=True), paper), paper
    )


def write_picture(path: Path, view: View, width: int = WIDTH) -> None:
    """Write the court of the setting in view to ``path``: SVG by that ending, else PNG. Raises ``Unwritable``."""
    drawn = court(view)
    write_file(path, drawn.svg(width) if path.suffix.lower() == ".svg" else drawn.png(width))


def copied_picture(view: View) -> QMimeData:
    """Return the court of the setting in view for the clipboard: as pixels, as PNG and as SVG at once.

    Whoever pastes takes what they can use: a letter the drawing, a chat the pixels.
    """
    from PySide6.QtCore import QMimeData
    from PySide6.QtGui import QImage

    drawn = court(view)
    png, mime = drawn.png(), QMimeData()
    mime.setImageData(QImage.fromData(png))
    mime.setData("image/png", png)
    mime.setData("image/svg+xml", drawn.svg())
    return mime
