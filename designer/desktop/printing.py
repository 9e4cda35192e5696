"""One press makes a card: the PDF of the setting in view for the chosen reader."""

from __future__ import annotations

from pathlib import Path
from typing import Final, Literal

from designer.desktop.filing import Filing
from designer.desktop.view import View
from designer.drill.brand import Brand
from designer.drill.setting import At
from designer.storage.brand import brand_beside, logo_svg
from designer.storage.parsing import Unreadable
from designer.storage.writing import write_file
from designer.wording.card import Reader

Paper = Literal["a5", "a4"]

UNIT: Final = 0.108
"""Metres of court to one mark unit in an exported picture: as on an A5 card."""


def card_path(filing: Filing, view: View, reader: Reader) -> Path:
    """Return where a card is offered to be saved: beside the drill, named after it, the setting and the reader."""
    ids = [progression.id for progression in view.document.drill.progressions]
    words = [f"-{ids.index(view.at.progression) + 1}" if len(ids) > 1 else ""]
    words.append("" if view.at.variation is None else f"-{_degree(view, view.at)}")
    return filing.suggestion(f"{''.join(words)}-{reader}.pdf")


def _degree(view: View, at: At) -> str:
    from designer.desktop.ladder import degree_of

    return {"others": "other"}.get(str(degree_of(view.document.drill, at)), str(degree_of(view.document.drill, at)))


def write_card(
    path: Path,
    filing: Filing,
    view: View,
    reader: Reader,
    *,
    paper: Paper = "a5",
    grey: bool = False,
) -> tuple[str, ...]:
    """Write the card to ``path`` and return what could not be printed as it was written.

    A coach's or stand-in's card carries its drill. Raises ``Unwritable`` with a sentence.
    """
    from designer.cards.card import make_card

    document = view.document
    brand, logo, notices = found_brand(document.path)
    card = make_card(
        document.drill,
        view.at,
        paper=paper,
        reader=reader,
        player=view.you if reader == "player" and document.drill.job(view.you or "") is not None else None,
        units=view.units,
        brand=brand,
        logo=logo,
        source=None if reader == "player" else filing.source(),
        grey=grey,
    )
    write_file(path, card.pdf)
    return (*notices, *card.notices)


def found_brand(path: Path | None) -> tuple[Brand | None, str | None, tuple[str, ...]]:
    """Return the brand beside the drill at ``path``, its logo, and what was wrong with either."""
    if path is None:
        return None, None, ()
    try:
        return brand_beside(path), logo_svg(path), ()
    except Unreadable as reason:
        return None, None, (f"The card has no brand: {reason}",)


def write_picture(path: Path, view: View, width: int = 1600) -> None:
    """Write the court of the setting in view to ``path``: SVG by that ending, else PNG. Raises ``Unwritable``."""
    from designer.drawing.picture import picture
    from designer.drawing.sheet import with_legend
    from designer.drawing.themes import theme

    document = view.document
    paper = theme("paper", surface=document.drill.court.surface)
    drawn = with_legend(picture(document.drill, view.at, unit=UNIT, theme=paper, turned=view.turned), paper)
    if path.suffix.lower() == ".svg":
        from designer.drawing.svg import svg

        write_file(path, svg(drawn, paper, width).encode())
        return
    from designer.drawing.qt import png

    write_file(path, png(drawn, paper, width))
