"""A card: one setting of a drill on A5 or A4, for a player, the coach or a stand-in, as a PDF."""

from __future__ import annotations

import io
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from designer.cards.attachment import finished
from designer.cards.blocks import draw_stack
from designer.cards.cautions import with_dangers
from designer.cards.contents import contents, resized
from designer.cards.frame import Frame, header_height
from designer.cards.layout import Contents, Placed, Room, Side, laid_out, narrower, rows_of, wider
from designer.cards.logo import Logo, UnreadableLogo, read_logo
from designer.cards.page import NOTE_LINE, Page
from designer.cards.papers import Paper, chosen_paper
from designer.cards.pieces import Pieces, headings
from designer.cards.subject import Subject
from designer.cards.text import Typesetter
from designer.drawing.themes import Theme, theme
from designer.drill.brand import Brand
from designer.drill.drill import Drill
from designer.drill.setting import At
from designer.wording.card import CardWords, Reader, card_words
from designer.wording.units import Units

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas

READERS: Final = ("player", "coach", "stand-in")
LEAST_CONTRAST: Final = 4.5
"""WCAG 2.1, success criterion 1.4.3: contrast of text with what is behind it."""


@dataclass(frozen=True, slots=True)
class Card:
    """A card's PDF, the number of its sides, and sentences about what could not be printed as it was written."""

    pdf: bytes
    pages: int
    notices: tuple[str, ...] = ()


def make_card(  # noqa: PLR0913  keywords, each one choice of whoever prints
    drill: Drill,
    at: At,
    *,
    paper: str = "a5",
    reader: Reader = "player",
    player: str | None = None,
    units: Units = "rackets",
    brand: Brand | None = None,
    logo: str | bytes | None = None,
    source: bytes | None = None,
    grey: bool = False,
    across: bool = False,
    large_print: bool = False,
    binder: bool = False,
    sealed: bool = False,
) -> Card:
    """Return the card of the setting at ``at``.

    ``paper`` and the last four are those of ``papers.chosen_paper``. ``player`` is the job a player's card speaks to; ``logo`` is the text of an SVG file or a PNG; ``source`` is the drill file
    to attach; ``grey`` prints black on white for a photocopier. The same arguments give the same bytes. Raises
    ``KeyError`` where the drill has no such setting, job or paper.
    """
    sheet = chosen_paper(paper, across=across, large_print=large_print, binder=binder, sealed=sealed)
    if player is not None and drill.job(player) is None:
        letters = ", ".join(job.letter for job in drill.jobs) or "none"
        raise KeyError(f"the drill has no job {player!r}; it has {letters}")
    words = with_dangers(card_words(drill, at, reader, player=player, units=units), drill, at)
    colours = theme("photocopy" if grey else "paper", surface=drill.court.surface)
    typesetter = Typesetter()
    mark, notices = _logo(logo)
    made = Maker(drill, at, words, reader, player, colours, typesetter, brand, mark, grey=grey, units=units)
    sides, sheet = made.sides(sheet)
    pdf = made.pdf(sides, sheet)
    name = f"{drill.code or drill.id}.drill.json"
    done = finished(pdf, dated=drill.dated, source=source, file_name=name)
    return Card(done, len(sides), (*notices, *typesetter.notices()))


def _logo(found: str | bytes | None) -> tuple[Logo | None, tuple[str, ...]]:
    if not found:
        return None, ()
    try:
        logo = read_logo(found)
    except UnreadableLogo as error:
        return None, (f"The logo is left out: {error}.",)
    return logo, logo.notices


@dataclass(frozen=True, slots=True)
class Maker:
    """Lays one card out and draws its sides."""

    drill: Drill
    at: At
    words: CardWords
    reader: Reader
    player: str | None
    theme: Theme
    typesetter: Typesetter
    brand: Brand | None
    logo: Logo | None
    grey: bool
    units: Units = "rackets"

    def sides(self, paper: Paper) -> tuple[tuple[Side, ...], Paper]:
        """Return the sides, and the paper they were laid out for.

        The diagram is as large as it can be with as few sides, and as many words beside it, as at its usual size; on a
        player's card it gives way before a side is added.
        """
        found, room = self._contents(paper)
        first = laid_out(found, room)
        if paper.layout != "beside":
            return first, paper
        for tried in wider(paper, found, room, sides=len(first)):
            draft = self._with_diagram(found, tried, room, draft=True)
            if len(draft) <= len(first) and _said(draft[0]) >= _said(first[0]):
                return self._with_diagram(found, tried, room, draft=False), tried
        if len(first) > 1 and self.reader == "player":
            tried = narrower(paper)
            if len(self._with_diagram(found, tried, room, draft=True)) < len(first):
                return self._with_diagram(found, tried, room, draft=False), tried
        return first, paper

    def _with_diagram(self, found: Contents, paper: Paper, room: Room, *, draft: bool) -> tuple[Side, ...]:
        """Return the sides with the diagram as large as ``paper`` says."""
        pieces = Pieces(paper, self.theme, self.typesetter)
        return laid_out(resized(found, self._subject(), pieces, draft=draft), replace(room, paper=paper))

    def _contents(self, paper: Paper) -> tuple[Contents, Room]:
        """Return what there is to print on ``paper`` and the room there is for it."""
        frame = self._frame(paper, 1)
        top = paper.height - paper.top - header_height(frame)
        short = paper.height - paper.top - header_height(frame, side=1)
        bottom = paper.bottom + paper.footer.leading + 6
        pieces = Pieces(paper, self.theme, self.typesetter)
        return contents(self._subject(), pieces, front=top - bottom), Room(paper, top, short, bottom)

    def _subject(self) -> Subject:
        return Subject(self.drill, self.at, self.words, self.reader, self.player, self.units)

    def _frame(self, paper: Paper, pages: int) -> Frame:
        return Frame(
            paper, self.words, self.reader, self.drill, self.brand, self.logo, self.typesetter, pages, self.grey
        )

    def pdf(self, sides: tuple[Side, ...], paper: Paper) -> bytes:
        """Return the PDF of ``sides``, with its outline, title, author, language and embedded fonts."""
        from reportlab.pdfgen.canvas import Canvas

        from designer.drawing.pdf import REGULAR, register_fonts

        register_fonts()
        result = io.BytesIO()
        canvas = Canvas(
            result,
            pagesize=(paper.width, paper.height),
            invariant=1,
            initialFontName=REGULAR,  # type: ignore[arg-type]  # the stub is wrong: it is a name
            lang=self.drill.language,
        )
        clean = self.typesetter.clean
        canvas.setTitle(clean(self.drill.title) or "Untitled drill")
        canvas.setAuthor(clean(self.drill.author) or (clean(self.brand.name) if self.brand else ""))
        canvas.setSubject(clean(self.drill.objective))
        canvas.setKeywords(", ".join(self.drill.tags))
        canvas.setCreator("Drill Designer")
        canvas.bookmarkPage("card")
        canvas.addOutlineEntry(clean(self.drill.title) or "Untitled drill", "card", level=0)
        for number in range(len(sides)):
            page = self.draw_side(canvas, sides, number, paper)
            for placed in sides[number]:
                _outline(page, placed, number)
            canvas.showPage()
        canvas.save()
        return result.getvalue()

    def draw_side(self, canvas: Canvas, sides: tuple[Side, ...], number: int, paper: Paper) -> Page:
        """Draw side ``number`` on the canvas's page and return it."""
        page = Page(canvas, paper, self._colours(), self.typesetter)
        if paper.mirrored and number % 2:
            canvas.translate(paper.right - paper.left, 0)
        self._frame(paper, len(sides)).draw(page, number)
        for placed in sides[number]:
            draw_stack(page, placed.blocks, placed.x, placed.top, placed.width)
        return page

    def _colours(self) -> dict[str, str]:
        def role(name: str) -> str:
            colour = self.theme.colour(name)
            return colour.hex if colour else "#000000"

        ink = role("ink")
        brand = self.brand.colour if self.brand and not self.grey else ink
        heading = brand if contrast_with_white(brand) >= LEAST_CONTRAST else ink
        return {"ink": ink, "soft": role("soft"), "brand": heading, "bar": brand, "note": NOTE_LINE}


def _said(side: Side) -> int:
    """Return how many paragraphs a side has."""
    return sum(rows_of(placed.blocks) for placed in side)


def _outline(page: Page, placed: Placed, number: int) -> None:
    """Add an outline entry for each heading on this side."""
    for heading in headings(placed.blocks):
        key = f"side-{number + 1}-{heading}"
        page.canvas.bookmarkPage(key)
        page.canvas.addOutlineEntry(heading, key, level=1)


def contrast_with_white(colour: str) -> float:
    """Return the contrast ratio of #RRGGBB with white, by WCAG 2.1's definition of relative luminance."""
    parts = [int(colour[start : start + 2], 16) / 255 for start in (1, 3, 5)]
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 1.05 / (0.2126 * red + 0.7152 * green + 0.0722 * blue + 0.05)
