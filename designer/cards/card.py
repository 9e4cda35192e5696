"""A card: one setting of a drill on A5 or A4, for a player, the coach or a stand-in, as a PDF."""

from __future__ import annotations

import io
import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from designer.cards.attachment import carried, finished
from designer.cards.blocks import draw_stack
from designer.cards.cautions import with_dangers
from designer.cards.contents import NOTES, PLAYED, contents, legend_later, objective_later, resized
from designer.cards.frame import Frame, header_height
from designer.cards.layout import Contents, Placed, Room, Side, as_read, laid_out, narrower, rows_of, wider
from designer.cards.licence import Licensed, licensed
from designer.cards.logo import Logo, UnreadableLogo, read_logo
from designer.cards.page import NOTE_LINE, Page
from designer.cards.papers import POSTERS, Paper, chosen_paper
from designer.cards.people_today import with_names
from designer.cards.pieces import Pieces, headings
from designer.cards.poster import poster
from designer.cards.subject import Subject
from designer.cards.text import RIGHT_TO_LEFT, Typesetter, Unprintable
from designer.cards.typeface import own_faces
from designer.cards.whereabouts import where_written
from designer.drawing.themes import Theme, theme
from designer.drawing.words import set_in
from designer.drill.brand import Brand
from designer.drill.drill import Drill
from designer.drill.setting import At, addresses, setting_at
from designer.drill.today import Today
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
    typeface: tuple[bytes, bytes | None] | None = None,
    source: bytes | None = None,
    grey: bool = False,
    across: bool = False,
    large_print: bool = False,
    binder: bool = False,
    sealed: bool = False,
    address: str | None = None,
    today: Today | None = None,
) -> Card:
    """Return the card of the setting at ``at``. The same arguments give the same bytes.

    ``paper`` is one of ``papers.PAPERS`` or ``papers.POSTERS``; ``across`` and the three after it are those of
    ``papers.chosen_paper``. ``player`` is the job a player's card speaks to; ``logo`` is the text of an SVG file or a PNG;
    ``typeface`` are the bytes of a regular and a bold TrueType file; ``source`` is the drill file to attach; ``grey``
    prints black on white for a photocopier; ``address`` is printed as a code, the brand's where it is None, none where it
    is ""; the names of ``today`` are printed on a card and stand nowhere else in the PDF.
    Raises ``KeyError`` where the drill has no such setting, job or paper, ``Unprintable`` where a text cannot be set.
    """
    refuse_stranger(drill, player)
    words = with_dangers(card_words(drill, at, reader, player=player, units=units), drill, at)
    colours = theme("photocopy" if grey else "paper", surface=drill.court.surface)
    typesetter = Typesetter()
    faces, notices = own_faces(typeface)
    with set_in(faces):
        if paper in POSTERS:
            pdf, pages = poster(Subject(drill, at, words, reader, player, units), paper, colours, typesetter)
        else:
            sheet = chosen_paper(paper, across=across, large_print=large_print, binder=binder, sealed=sealed)
            words = with_names(words, drill, today, reader)
            mark, more = usable_logo(logo)
            code = led_to(address, brand)
            made = Maker(drill, at, words, reader, player, colours, typesetter, brand, mark, grey, units, code)
            found, sheet = made.licensed_sides(sheet)
            notices += (*more, *((found.notice,) if found.notice else ()))
            pdf, pages = made.pdf(found, sheet), len(found.sides)
        refuse_declined(drill, typesetter)
    notices += (*(() if grey else faint(brand)), *lacking(drill, typesetter), *(carried(drill) if source else ()))
    name = f"{drill.code or drill.id}.drill.json"
    return Card(finished(pdf, dated=drill.dated, source=source, file_name=name), pages, notices)


def led_to(address: str | None, brand: Brand | None) -> str:
    """Return what a card's code leads to: ``address``, else what the brand says, "" for no code."""
    return address if address is not None else brand.address if brand is not None else ""


def refuse_stranger(drill: Drill, player: str | None) -> None:
    """Raise ``KeyError`` with a sentence where ``player`` is no job of the drill."""
    if player is not None and drill.job(player) is None:
        letters = ", ".join(job.letter for job in drill.jobs) or "none"
        raise KeyError(f"the drill has no job {player!r}; it has {letters}")


def refuse_declined(drill: Drill, typesetter: Typesetter) -> None:
    """Raise ``Unprintable`` where a text has letters that are written from right to left."""
    text = typesetter.declined()
    if text:
        sign = next(sign for sign in text if unicodedata.bidirectional(sign) in RIGHT_TO_LEFT)
        where = "".join(f" in {place}" for place in where_written(drill, sign)[:1])
        raise Unprintable(
            f"“{sign}”{where} is of a script that is written from right to left. This program cannot set it as it is read, "
            "so it makes no card of it; write that text in Latin, Greek or Cyrillic letters."
        )


def lacking(drill: Drill, typesetter: Typesetter) -> tuple[str, ...]:
    """Return a sentence about each sign that could not be printed, with where in the drill it stands."""
    drawn = (
        getattr(item, field, "")
        for at in addresses(drill)
        for item in setting_at(drill, at).items.values()
        for field in ("name", "text")
    )
    for text in dict.fromkeys(drawn):
        typesetter.clean(text or "")
    return tuple(
        f"The card's font has no sign for {sign} (U+{ord(sign):04X}){_listed(where_written(drill, sign))}; "
        "a question mark stands in its place."
        for sign in typesetter.lacking()
    )


def _listed(places: Sequence[str]) -> str:
    return f" in {', '.join(places)}" if places else ""


def usable_logo(found: str | bytes | None) -> tuple[Logo | None, tuple[str, ...]]:
    """Return the logo as shapes, None where there is none or it cannot be read, and what is wrong with it."""
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
    address: str = ""
    reserved: float = 0.0
    """Points kept free above the foot of every side."""

    def licensed_sides(self, paper: Paper) -> tuple[Licensed, Paper]:
        """Return the sides with the brand's licence on the last, and the paper they were laid out for."""
        licence = self.brand.licence if self.brand else ""
        sides, sheet = self.sides(paper)
        foot = self._frame(sheet, len(sides)).foot_room
        found = licensed(sides, sheet, licence, self.typesetter, foot=foot)
        if not found.missing:
            return found, sheet
        sides, sheet = replace(self, reserved=found.missing).sides(paper)
        return licensed(sides, sheet, licence, self.typesetter, foot=foot), sheet

    def sides(self, paper: Paper) -> tuple[tuple[Side, ...], Paper]:
        """Return the sides, and the paper they were laid out for.

        The diagram is as large as it can be with as few sides, and as many words beside it, as at its usual size; on a
        player's card it gives way before a side is added, and cues go overleaf before how it is played does.
        """
        found, room = self._contents(paper)
        first = laid_out(found, room)
        if len(first) > _A_LEAF and self.reader == "player" and len(laid_out(found.narrowed, room)) < len(first):
            found = found.narrowed
            first = laid_out(found, room)
        if paper.layout != "beside":
            return first, paper
        found, first, narrow = self._told_first(found, first, paper)
        if narrow is not paper:
            return self._with_diagram(found, narrow, self.room(narrow), draft=False), narrow
        for tried in wider(paper, found, room, sides=len(first)):
            draft = self._with_diagram(found, tried, room, draft=True)
            if _as_much(draft, first):
                sides = self._with_diagram(found, tried, room, draft=False)
                if _as_much(sides, first):  # the true picture may turn out a little taller than its draft
                    return sides, tried
        return first, paper

    def _told_first(
        self, found: Contents, first: tuple[Side, ...], paper: Paper
    ) -> tuple[Contents, tuple[Side, ...], Paper]:
        """Return contents, sides and paper of a player's card that tell most of how it is played on the first side.

        As they are, where nothing is overleaf, and on any other card.
        """
        best = found, first, paper
        if len(first) == 1 or self.reader != "player":
            return best
        whole = sum(heading in PLAYED for side in first for placed in side for heading in headings(placed.blocks))
        for tried, sheet in self._shorter(found, paper):
            if _told(best[1])[1] == whole:
                break
            sides = self._with_diagram(tried, sheet, self.room(sheet), draft=True)
            if _told(sides) > _told(best[1]):
                best = tried, sides, sheet
        return best

    def _shorter(self, found: Contents, paper: Paper) -> Iterator[tuple[Contents, Paper]]:
        """Yield ways to have more of how it is played on the first side: what gives way first comes first."""
        small, pieces = narrower(paper), Pieces(paper, self.theme, self.typesetter)
        yield found.words_first, paper
        yield found, small
        yield found.words_first, small
        signs = legend_later(found, pieces)
        yield signs, paper
        yield signs, small
        last = objective_later(found.words_first, self.words, pieces), objective_later(signs, self.words, pieces)
        yield from ((each, replace(small, objective_later=True)) for each in last)

    def _with_diagram(self, found: Contents, paper: Paper, room: Room, *, draft: bool) -> tuple[Side, ...]:
        """Return the sides with the diagram as large as ``paper`` says."""
        pieces = Pieces(paper, self.theme, self.typesetter)
        return laid_out(resized(found, self._subject(), pieces, draft=draft), replace(room, paper=paper))

    def _contents(self, paper: Paper) -> tuple[Contents, Room]:
        """Return what there is to print on ``paper`` and the room there is for it."""
        room = self.room(paper)
        pieces = Pieces(paper, self.theme, self.typesetter)
        return contents(self._subject(), pieces, front=room.height(0), back=room.height(1)), room

    def room(self, paper: Paper) -> Room:
        """Return the room for words on the sides of ``paper``."""
        frame = self._frame(paper, 1)
        top = paper.height - paper.top - header_height(frame)
        short = paper.height - paper.top - header_height(frame, side=1)
        return Room(paper, top, short, paper.bottom + paper.footer.leading + 6 + self.reserved)

    def _subject(self) -> Subject:
        return Subject(self.drill, self.at, self.words, self.reader, self.player, self.units, self.address)

    def _frame(self, paper: Paper, pages: int) -> Frame:
        return Frame(
            paper, self.words, self.reader, self.drill, self.brand, self.logo, self.typesetter, pages, self.grey
        )

    def pdf(self, found: Licensed, paper: Paper) -> bytes:
        """Return the PDF of the sides that are ``found``, with its outline, title, author, language and embedded fonts."""
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
        sides = found.sides
        for number in range(len(sides)):
            is_last = number == len(sides) - 1
            page = self.draw_side(canvas, sides, number, paper, licence=found.in_foot if is_last else "")
            if is_last:
                found.draw(page)
            for placed in as_read(sides[number], number):
                _outline(page, placed, number)
            canvas.showPage()
        canvas.save()
        return result.getvalue()

    def draw_side(
        self, canvas: Canvas, sides: tuple[Side, ...], number: int, paper: Paper, *, licence: str = ""
    ) -> Page:
        """Draw side ``number`` on the canvas's page, with ``licence`` in its foot, and return it."""
        page = Page(canvas, paper, self._colours(), self.typesetter)
        if paper.mirrored and number % 2:
            canvas.translate(paper.right - paper.left, 0)
        turns = number == 0 and self.reader == "player" and paper.layout == "beside"
        frame = self._frame(paper, len(sides))
        frame.draw_head(page, number)
        for placed in as_read(sides[number], number):
            draw_stack(page, placed.blocks, placed.x, placed.top, placed.width)
        frame.draw_foot(page, _overleaf(sides) if turns else (), licence)
        return page

    def _colours(self) -> dict[str, str]:
        def role(name: str) -> str:
            colour = self.theme.colour(name)
            return colour.hex if colour else "#000000"

        ink = role("ink")
        brand = self.brand.colour if self.brand and not self.grey else ink
        heading = brand if contrast_with_white(brand) >= LEAST_CONTRAST else ink
        return {"ink": ink, "soft": role("soft"), "brand": heading, "bar": brand, "note": NOTE_LINE}


_A_LEAF: Final = 2
"""Sides of a leaf."""


def _as_much(sides: Sequence[Side], first: Sequence[Side]) -> bool:
    """Whether there are no more ``sides`` than ``first`` has, and as much is said on the first of them."""
    return len(sides) <= len(first) and _said(sides[0]) >= _said(first[0]) and _told(sides) >= _told(first)


def _said(side: Side) -> int:
    """Return how many paragraphs a side has."""
    return sum(rows_of(placed.blocks) for placed in side)


def _told(sides: Sequence[Side]) -> tuple[int, int]:
    """Return how few sides there are, then how many of the sections by which it is played are whole on the first.

    One that is parted between its columns is not.
    """
    begun = [name for placed in sides[0] for name in headings(placed.blocks) if name in PLAYED]
    parted = {name for side in sides for placed in side for name in headings(placed.blocks, more=True)}
    return -len(sides), sum(f"more {name}" not in parted for name in begun)


def _overleaf(sides: Sequence[Side]) -> tuple[str, ...]:
    """Return the headings of what begins on the sides after the first, lines to write on left out."""
    found = dict.fromkeys(name for side in sides[1:] for placed in side for name in headings(placed.blocks, more=True))
    begun = {f"more {name}" for name in found}
    return tuple(name for name in found if name != NOTES and name not in begun)


def _outline(page: Page, placed: Placed, number: int) -> None:
    """Add an outline entry for each heading on this side."""
    for heading in headings(placed.blocks):
        key = f"side-{number + 1}-{heading}"
        page.canvas.bookmarkPage(key)
        page.canvas.addOutlineEntry(heading, key, level=1)


def faint(brand: Brand | None) -> tuple[str, ...]:
    """Return a sentence about a brand's colour that cannot be read on white, () where it can."""
    contrast = contrast_with_white(brand.colour) if brand else LEAST_CONTRAST
    if brand is None or contrast >= LEAST_CONTRAST:
        return ()
    sentence = (
        f"The brand's colour {brand.colour} has a contrast of {contrast:.1f} to 1 with white, under {LEAST_CONTRAST}"
    )
    return (f"{sentence}; headings are printed in ink.",)


def contrast_with_white(colour: str) -> float:
    """Return the contrast ratio of #RRGGBB with white, by WCAG 2.1's definition of relative luminance."""
    parts = [int(colour[start : start + 2], 16) / 255 for start in (1, 3, 5)]
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 1.05 / (0.2126 * red + 0.7152 * green + 0.0722 * blue + 0.05)
