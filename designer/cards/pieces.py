"""The pieces cards are put together from: headings, sentences with their bullets, the legend, the diagram."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from designer.cards.blocks import Balanced, Bar, Block, Columns, Drawn, Group, Lead, Row
from designer.cards.facts import draw_facts, fact_rows
from designer.cards.papers import Paper, Type
from designer.cards.text import Typesetter
from designer.drawing.words import CAP_HEIGHT, text_width
from designer.wording.card import CardWords, Section
from designer.wording.sentence import Lead as SentenceLead
from designer.wording.sentence import Sentence

if TYPE_CHECKING:
    from designer.cards.page import Page
    from designer.drawing.picture import Picture
    from designer.drawing.themes import Theme

STEP_HANG: Final = 17.0
"""Hangs and indents are those of A5 and grow with the body (``Paper.scale``)."""
_TALLEST: Final = 13.5
"""Height in u of the tallest mark that is a step's bullet, the flag of "open", and a little more."""
_RUN_SCALE: Final = 0.72
"""A run's sample is as wide as a step's bullet allows."""

VALUE_HANG: Final = 16.0
BULLET_HANG: Final = 8.0
BOUND_HANG: Final = 11.5
_MARKS: Final = {
    "hit": "step digit",
    "feed": "feed digit",
    "choice": "step digit",
    "run": "run",
    "recover": "recovery run",
    "open": "open flag",
}


class Pieces:
    """Makes blocks for one card: its paper, its theme and its typesetter are the same for all."""

    def __init__(self, paper: Paper, theme: Theme, typesetter: Typesetter) -> None:
        self.paper = paper
        self.theme = theme
        self.typesetter = typesetter

    def heading(self, text: str, *, before: float | None = None, caution: bool = False) -> Block:
        """Return a section's heading, which stays with the block after it."""
        return Heading(
            text,
            self.paper.heading,
            self.typesetter,
            colour="brand",
            before=(4.0 if self.paper.layout == "front and back" else 5.5 * self.paper.scale)
            if before is None
            else before,
            keep_with_next=True,
            caution=caution,
        )

    def section(self, section: Section, *, body: Type | None = None, narrow: bool = False) -> Group:
        """Return a section's heading and its sentences, kept together.

        On a small card the heading begins the first line, but not in a ``narrow`` column.
        """
        type_ = body or self.paper.body
        steps, sentences = section.key == "steps", section.sentences
        first = sentences[0] if sentences else None
        if self.paper.layout == "front and back" and not narrow and first is not None and first.lead is None:
            blocks: list[Block] = [self._begun(section, first, type_)]
            sentences = sentences[1:]
        else:
            blocks = [self.heading(section.heading, caution=section.key == "care")]
        between = max(1.6, self.paper.mark * _TALLEST - type_.leading) if self.paper.mark > 1 else 1.6
        for number, sentence in enumerate(sentences):
            gap = 1.2 if number == 0 else between if steps else 1.8 * self.paper.scale
            blocks.append(self.sentence(sentence, type_, before=gap))
        return Group(tuple(blocks), before=blocks[0].before)

    def _begun(self, section: Section, first: Sentence, type_: Type) -> Block:
        """Return a section's first sentence behind its heading, on one line."""
        bold = Type(type_.size, type_.leading, bold=True)
        wide = text_width(section.heading, bold.size, bold=True)
        caution = section.key == "care"

        def draw(page: Page, x: float, base: float) -> None:
            page.write(section.heading, x, base, bold, "brand")
            if caution:
                draw_caution(page, x + wide + 4, base - 0.6, bold.size * 1.05)

        lead = Lead(wide + (4 + bold.size * 1.05 if caution else 0.0) + 1.5, draw)
        return Opening(
            first.text,
            type_,
            self.typesetter,
            lead=lead,
            before=3.5,
            rule=first.missing,
            heading=section.heading,
        )

    def sentence(self, sentence: Sentence, type_: Type, *, before: float, hang: float | None = None) -> Block:
        """Return a sentence behind its bullet; an unanswered one gets a ruled line to write on."""
        lead = self.lead(sentence.lead, type_)
        if hang is None:
            hang = 0.0 if sentence.lead is None else _HANGS.get(sentence.lead.kind, STEP_HANG) * self.paper.scale
        soft = sentence.key == "care:no-other"
        return Row(
            sentence.text,
            type_,
            self.typesetter,
            colour="soft" if soft else "ink",
            lead=lead,
            hang=hang,
            before=before,
            rule=sentence.missing,
            keep_with_next=sentence.text.endswith(":"),
            least=_TOGETHER if self.paper.layout == "beside" else 2,
        )

    def lead(self, lead: SentenceLead | None, type_: Type) -> Lead | None:
        """Return the bullet that ``lead`` asks for, drawn like the mark on the court that it stands for."""
        if lead is None:
            return None
        if lead.kind in _MARKS:
            return self._mark_lead(_MARKS[lead.kind], lead.text, type_)
        if lead.kind == "bullet":
            scale = self.paper.scale
            return Lead(2.0, lambda page, x, base: page.dot(x + 3 * scale, base + 0.36 * type_.size, 1.1 * scale))
        if lead.kind == "bound":
            size = CAP_HEIGHT * type_.size
            return Lead(size, lambda page, x, base: draw_cross(page, x, base, size))
        return self.strong(lead.text, type_)

    def strong(self, text: str, type_: Type | None = None) -> Lead:
        """Return bold words as a bullet."""
        body = type_ or self.paper.body
        bold = Type(body.size, body.leading, bold=True)

        def draw(page: Page, x: float, base: float) -> None:
            page.write(text, x, base, bold)

        return Lead(text_width(text, bold.size, bold=True), draw)

    def _mark_lead(self, kind: str, text: str, type_: Type) -> Lead:
        from designer.drawing.pdf import draw_primitives
        from designer.drawing.primitives import bounds_of
        from designer.drawing.samples import sample

        size = self.paper.mark * (_RUN_SCALE if kind in ("run", "recovery run") else 1.0)
        primitives = sample(kind, self.theme, size, text)
        left, low, right, high = bounds_of(primitives)
        rise = CAP_HEIGHT * type_.size / 2 - (low + high) / 2

        def draw(page: Page, x: float, base: float) -> None:
            draw_primitives(page.canvas, primitives, self.theme, (x - left, base + rise), 1.0)

        return Lead(right - left, draw)

    def person_lead(self, letter: str, *, alone: bool) -> Lead:
        """Return the filled disc with the reader's letter, as it stands on the court, beside one line or two."""
        scale = self.paper.you.size / 11.4
        type_ = Type(9.6 * scale, 12 * scale, bold=True)
        radius = 8.6 * scale

        def draw(page: Page, x: float, base: float) -> None:
            middle = base + CAP_HEIGHT * self.paper.you.size / 2 if alone else base - 3.0 * scale
            page.canvas.setFillColor(page.colours["ink"])
            page.canvas.circle(x + radius, middle, radius, stroke=0, fill=1)
            wide = text_width(letter, type_.size, bold=True)
            page.write(letter, x + radius - wide / 2, middle - CAP_HEIGHT * type_.size / 2, type_, "#FFFFFF")

        return Lead(2 * radius, draw)

    def objective(self, words: CardWords) -> tuple[Row, ...]:
        """Return the objective in quotation marks as a block, () where there is none."""
        if not words.objective:
            return ()
        return (Row(f"“{words.objective}”", self.paper.objective, self.typesetter, balanced=True),)

    def head(self, words: CardWords) -> tuple[Block, ...]:
        """Return the facts and which setting it is as blocks, for a small card's back: on one line where both fit."""
        type_ = self.paper.facts
        wide = self.paper.inner if self.paper.columns == 1 else self.paper.half
        rows = fact_rows(words.facts, type_, self.typesetter, wide, wide)
        name = self.typesetter.clean(words.setting_name)
        end = max((x + text_width(text, type_.size) for _, text, x in rows[:1][0][-1:]), default=0.0) if rows else 0.0
        shares = bool(rows) and end + 2 * type_.size + text_width(name, self.paper.body.size) <= wide

        def draw(page: Page, x: float, top: float, width: float) -> None:
            base = top - type_.leading * 0.8
            draw_facts(page, rows, x, base, type_)
            if shares:
                page.write_right(name, x + min(width, wide), base, self.paper.body, "soft")

        blocks: list[Block] = []
        if name and not shares:
            blocks.append(Row(words.setting_name, self.paper.body, self.typesetter, colour="soft", before=4))
        if rows:
            blocks.append(Drawn(len(rows) * type_.leading, draw, before=2 if blocks else 4))
        return tuple(blocks)

    def caption_height(self, title: str) -> float:
        """Return the height in points of what stands over a diagram."""
        return self.paper.heading.leading + 2 if title else 0.0

    def diagram(self, picture: Picture, width: float, title: str = "") -> Block:
        """Return the diagram, ``width`` points wide, with ``title`` over it."""
        left, low, right, high = picture.extent
        scale = width / (right - left)
        above = self.caption_height(title)
        tall = (high - low) * scale + above

        def draw(page: Page, x: float, top: float, _: float) -> None:
            from designer.drawing.pdf import draw as draw_picture

            if title:
                page.write(title, x, top - self.paper.heading.leading + 2, self.paper.heading, "ink")
            draw_picture(page.canvas, picture, self.theme, x, top - tall, scale)

        return Drawn(tall, draw)

    def legend(self, picture: Picture, columns: int, width: float) -> Drawn:
        """Return the legend of the diagram in at most ``columns`` columns that its words have room in, read down."""
        from designer.drawing.samples import WIDTH, legend_shapes

        longest = max((text_width(entry.words, 9.0) for entry in picture.legend), default=0.0)
        columns = max(1, min(columns, int(width / ((WIDTH + 4.5 + longest + _APART) * self.paper.mark))))

        shapes, tall = legend_shapes(
            picture.legend,
            self.theme,
            self.paper.mark,
            columns=columns,
            column_width=width / columns,
            pitch=self.paper.legend.leading / self.paper.mark,
        )

        def draw(page: Page, x: float, top: float, _: float) -> None:
            from designer.drawing.pdf import draw_primitives

            draw_primitives(page.canvas, shapes, self.theme, (x, top), 1.0)

        return Drawn(tall, draw, before=7)


_TOGETHER: Final = 4
"""Lines of a sentence that stay together on a card: who turns it over has forgotten the other half."""
_APART: Final = 2.0
"""Least space in u between the columns of a legend."""
_HANGS: Final = {
    "value": VALUE_HANG,
    "bullet": BULLET_HANG,
    "number": VALUE_HANG,
    "caution": VALUE_HANG,
    "bound": BOUND_HANG,
}


@dataclass(frozen=True)
class Heading(Row):
    """A heading in the brand's colour, with the caution sign behind it where the section is about safety."""

    caution: bool = False
    goes_on: bool = False

    def again(self) -> Heading:
        """Return the heading over what is left of its section on another side."""
        if self.goes_on:
            return self
        return replace(self, text=f"{self.text}, continued", caution=False, goes_on=True, _lines={})

    def draw(self, page: Page, x: float, top: float, width: float) -> None:
        """Draw the words and the sign."""
        super().draw(page, x, top, width)
        if self.caution:
            size = self.type_.size
            base = top - (self.type_.leading - size) / 2 - 0.8 * size
            end = x + text_width(self.text, size, self.type_.bold) + 6
            draw_caution(page, end, base - 0.6, size * 1.05)


@dataclass(frozen=True)
class Opening(Row):
    """A section's first sentence behind its heading: ``heading`` is drawn as its bullet."""

    heading: str = ""


def headings(blocks: Iterable[Block], *, more: bool = False) -> Iterator[str]:
    """Yield the words of each heading among ``blocks``, in order; with ``more`` also of what only goes on there."""
    for block in blocks:
        if isinstance(block, Heading):
            if not block.goes_on:
                yield block.text
            elif more:
                yield f"more {block.text.partition(',')[0]}"
        elif isinstance(block, Opening) and block.lead is not None:
            yield block.heading
        elif isinstance(block, Bar):
            yield from headings((block.block,), more=more)
        elif isinstance(block, Balanced | Group):
            yield from headings(block.blocks, more=more)
        elif isinstance(block, Columns):
            for column in block.columns:
                yield from headings(column, more=more)


def draw_caution(page: Page, x: float, base: float, size: float) -> None:
    """Draw the caution sign: an outlined triangle with an exclamation mark, ``size`` points wide."""
    high = size * 0.9
    page.polyline(
        [(x, base), (x + size, base), (x + size / 2, base + high)],
        weight=0.9,
        colour="ink",
        closed=True,
    )
    middle = x + size / 2
    page.canvas.setLineCap(0)
    page.canvas.line(middle, base + high * 0.62, middle, base + high * 0.3)
    page.canvas.setFillColor(page.colours["ink"])
    page.canvas.circle(middle, base + high * 0.17, 0.55, stroke=0, fill=1)


def draw_cross(page: Page, x: float, base: float, size: float) -> None:
    """Draw the cross of what is not allowed, ``size`` points high on the base line."""
    inset = 0.06 * size
    low, high, left, right = base + inset, base + size - inset, x + inset, x + size - inset
    for begin, end in (((left, low), (right, high)), ((left, high), (right, low))):
        page.polyline([begin, end], weight=0.22 * size, colour="ink", closed=False)
