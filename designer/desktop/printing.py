"""Cards and pictures from the window: the PDF of a setting for a reader, the court as SVG and PNG."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Final

from designer.desktop.filing import Filing
from designer.desktop.papers import parts
from designer.desktop.view import View
from designer.drill.drill import Drill
from designer.drill.setting import At, setting_at
from designer.drill.today import Today
from designer.storage.brand import Branded, branded
from designer.storage.parsing import Unreadable
from designer.storage.today import kept_today
from designer.storage.writing import Unwritable, write_file
from designer.wording.card import Reader
from designer.wording.units import Units

if TYPE_CHECKING:
    from PySide6.QtCore import QMimeData

    from designer.desktop.work import Progress
    from designer.drawing.picture import Picture
    from designer.drawing.themes import Theme

UNIT: Final = 0.108
"""Metres of court to one mark unit in an exported picture: as on an A5 card."""

WIDTH: Final = 1600
"""How wide a picture in pixels is."""


def card_path(filing: Filing, view: View, reader: Reader, at: At | None = None) -> Path:
    """Return where a card is offered to be saved: beside the drill, named after it, the setting and the reader.

    The setting is ``at``, else that in view.
    """
    at = view.at if at is None else at
    ids = [progression.id for progression in view.document.drill.progressions]
    words = [f"-{ids.index(at.progression) + 1}" if len(ids) > 1 else ""]
    words.append("" if at.variation is None else f"-{_degree(view, at)}")
    return filing.suggestion(f"{''.join(words)}-{reader}.pdf")


def cards_path(filing: Filing, reader: Reader, *, everything: bool) -> Path:
    """Return where cards of each progression, or of ``everything``, are offered to be saved as one file."""
    return filing.suggestion(f"-{'all' if everything else 'progressions'}-{reader}.pdf")


def _degree(view: View, at: At) -> str:
    from designer.desktop.ladder import degree_of

    return {"others": "other"}.get(str(degree_of(view.document.drill, at)), str(degree_of(view.document.drill, at)))


@dataclass(frozen=True, slots=True)
class Manner:
    """How a card lies on its paper: on its side, with room for rings, with an edge for lamination; what its code leads to."""

    across: bool = False
    binder: bool = False
    sealed: bool = False
    address: str | None = None
    """None for that of the brand, "" for no code."""
    named: bool = True
    """Whether the names of today's players are printed."""


PLAIN: Final = Manner()


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
    manner: Manner = PLAIN
    today: Today | None = None
    """Whose names are printed, and stand nowhere else."""


def ordered(
    filing: Filing,
    view: View,
    reader: Reader,
    *,
    paper: str = "a5",
    grey: bool = False,
    at: At | None = None,
    each: bool = False,
    manner: Manner = PLAIN,
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
        manner=manner,
        today=kept_today(document.drill.id) if manner.named else None,
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
    from designer.cards.card import make_card
    from designer.cards.imposing import imposed
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
                across=order.manner.across,
                binder=order.manner.binder,
                sealed=order.manner.sealed,
                address=order.manner.address,
                today=order.today,
            )
            for letter in _letters(order)
        ]
    except Unprintable as reason:
        raise Unwritable(str(reason)) from reason
    said = tuple(dict.fromkeys((*notices, *(notice for card in cards for notice in card.notices))))
    if sheet is None and len(cards) == 1:
        return cards[0].pdf, said
    pdfs = [card.pdf for card in cards]
    return (bound(order, pdfs) if sheet is None else _attached(order, imposed(pdfs, sheet))), said


def bound(order: Order, pdfs: Sequence[bytes]) -> bytes:
    """Return ``pdfs`` one after another as one, with the dates of the drill of ``order`` and what its cards carry."""
    from designer.cards.imposing import joined

    return _attached(order, joined(pdfs))


def _attached(order: Order, pdf: bytes) -> bytes:
    from designer.cards.attachment import finished

    name = f"{order.drill.code or order.drill.id}.drill.json"
    return finished(pdf, dated=order.drill.dated, source=order.source, file_name=name)


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
        own = branded(path)
    except Unreadable as reason:
        return Branded(), (f"The card has no brand: {reason}",)
    return own, own.faults


@dataclass(frozen=True, slots=True)
class CourtOrder:
    """All that a picture of the court is made from, taken from the window at once: making it may take a second."""

    drill: Drill
    at: At
    turned: bool = False


def ordered_court(view: View) -> CourtOrder:
    """Return the order for a picture of the setting in view."""
    return CourtOrder(view.document.drill, view.at, view.turned)


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


def court(order: CourtOrder) -> Court:
    """Return the court of ``order`` as it goes on paper. Touches no window, as all below."""
    from designer.drawing.picture import picture
    from designer.drawing.sheet import with_legend
    from designer.drawing.themes import theme

    drill = order.drill
    paper = theme("paper", surface=drill.court.surface)
    return Court(
        with_legend(picture(drill, order.at, unit=UNIT, theme=paper, turned=order.turned, patient=True), paper), paper
    )


def write_picture(path: Path, order: CourtOrder, progress: Progress) -> Path:
    """Write the court of ``order`` to ``path``: SVG by that ending, else PNG; return ``path``.

    Raises ``Unwritable``, and ``Stopped`` where the user has given it up: then nothing is written.
    """
    progress.step(1, 3)
    drawn = court(order)
    progress.step(2, 3)
    data = drawn.svg() if path.suffix.lower() == ".svg" else drawn.png()
    progress.step(3, 3)
    write_file(path, data)
    return path


def both_pictures(order: CourtOrder, progress: Progress) -> tuple[bytes, bytes]:
    """Return the court of ``order`` as PNG and as SVG. Raises ``Stopped`` where the user has given it up."""
    progress.step(1, 2)
    drawn = court(order)
    progress.step(2, 2)
    return drawn.png(), drawn.svg()


def copied_picture(png: bytes, svg: bytes) -> QMimeData:
    """Return a picture for the clipboard: as pixels, as PNG and as SVG at once.

    Whoever pastes takes what they can use: a letter the drawing, a chat the pixels.
    """
    from PySide6.QtCore import QMimeData
    from PySide6.QtGui import QImage

    mime = QMimeData()
    mime.setImageData(QImage.fromData(png))
    mime.setData("image/png", png)
    mime.setData("image/svg+xml", svg)
    return mime
