"""What stands round the words of a card: title, logo, objective, facts, and the line at the foot."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from designer.cards.logo import Logo, draw_logo, read_logo
from designer.cards.page import Page
from designer.cards.papers import MM, Paper, Type
from designer.cards.text import Typesetter, fitted
from designer.drawing.words import text_width
from designer.drill.brand import Brand
from designer.drill.drill import Drill
from designer.wording.card import CardWords, Reader

_BAR_WIDTH: Final = 15 * MM
_BAR_HEIGHT: Final = 1.5 * MM
_SHORT_TITLE: Final = Type(13, 16, bold=True)
_READERS: Final = {"player": "", "coach": "Coach", "stand-in": "Stand-in"}


@dataclass(frozen=True, slots=True)
class Frame:
    """The frame of every side of one card."""

    paper: Paper
    words: CardWords
    reader: Reader
    drill: Drill
    brand: Brand | None
    logo: Logo | None
    typesetter: Typesetter
    pages: int
    grey: bool

    @property
    def title_width(self) -> float:
        """Width that the title may take beside the logo."""
        logo = self.paper.logo_height * min(self.logo.ratio, 3.0) + 10 if self.logo else 0.0
        return self.paper.inner - logo

    @property
    def title_type(self) -> Type:
        """The title's size: as wished where it fits on one line, never under the least."""
        title = self.typesetter.clean(self.words.title or "Untitled drill")
        size = fitted(title, self.paper.heading_sizes, self.title_width)
        return Type(size, size * 1.22, bold=True)

    def title_lines(self) -> tuple[str, ...]:
        """Return the title, broken only where even its least size is too wide."""
        return self.typesetter.lines(self.words.title or "Untitled drill", self.title_type, self.title_width)

    def objective_lines(self) -> tuple[str, ...]:
        """Return the objective in quotation marks, its lines balanced."""
        if not self.words.objective:
            return ()
        return self.typesetter.balanced(f"“{self.words.objective}”", self.paper.objective, self.title_width)

    def draw(self, page: Page, number: int) -> None:
        """Draw the frame of side ``number`` (0 is the first)."""
        top = self.paper.height - self.paper.top
        if not self.grey:
            page.box(self.paper.left, top - _BAR_HEIGHT, _BAR_WIDTH, _BAR_HEIGHT, "bar")
        else:
            page.box(self.paper.left, top - _BAR_HEIGHT, _BAR_WIDTH, _BAR_HEIGHT, "ink")
        right = self.paper.width - self.paper.right
        if self.logo is not None:
            height = self.paper.logo_height
            width = height * self.logo.ratio
            only = page.colours["ink"] if self.grey else None
            draw_logo(page.canvas, self.logo, right - width, top - height, height, only)
        if number == 0:
            self._draw_full(page, top)
        else:
            self._draw_short(page, top, number)
        self._draw_foot(page)

    def _draw_full(self, page: Page, top: float) -> None:
        left = self.paper.left
        base = top - _BAR_HEIGHT - 4 - self.title_type.size * 0.95
        for line in self.title_lines():
            page.write(line, left, base, self.title_type)
            base -= self.title_type.leading
        base += self.title_type.leading - 5
        for line in self.objective_lines():
            base -= self.paper.objective.leading
            page.write(line, left, base, self.paper.objective)
        base -= 8 + self.paper.facts.size
        self._draw_facts(page, base)

    def _draw_facts(self, page: Page, base: float) -> None:
        type_ = self.paper.facts
        x = self.paper.left
        label = self._label(0)
        limit = self.paper.width - self.paper.right
        if label:
            limit = page.write_right(label, limit, base, type_, "soft") - 10
        for fact in self.words.facts:
            icon = fact_icon(fact.icon)
            wide = text_width(page.typesetter.clean(fact.text), type_.size) + (
                type_.size * 1.25 * icon.ratio + 4 if icon else 0
            )
            if x + wide > limit:
                continue
            if icon is not None:
                height = type_.size * 1.2
                draw_logo(page.canvas, icon, x, base - height * 0.18, height, page.colours["soft"])
                x += height * icon.ratio + 4
            x = page.write(fact.text, x, base, type_) + 14

    def _label(self, number: int) -> str:
        """Return what stands at the right of the facts: which setting, or whose card and which of its sides."""
        if self.reader == "player":
            return self.words.setting_name if number == 0 else f"{number + 1}/{self.pages}"
        reader = _READERS[self.reader]
        return f"{reader}  {number + 1}/{self.pages}" if self.pages > 1 else reader

    def _draw_short(self, page: Page, top: float, number: int) -> None:
        base = top - _BAR_HEIGHT - 6 - _SHORT_TITLE.size
        label = self._label(number)
        right = self.paper.left + self.title_width
        if label:
            right = page.write_right(label, right, base, self.paper.facts, "soft") - 12
        title = self.typesetter.lines(self.words.title or "Untitled drill", _SHORT_TITLE, right - self.paper.left)
        page.write(title[0], self.paper.left, base, _SHORT_TITLE)

    def _draw_foot(self, page: Page) -> None:
        type_ = self.paper.footer
        base = self.paper.bottom
        right = self.paper.width - self.paper.right
        page.rule(self.paper.left, base + type_.leading + 1, right, weight=0.5, colour="note")
        owner = (self.brand.footer or self.brand.name) if self.brand else ""
        begin = page.write_right(owner, right, base + 1, type_, "soft") if owner else right
        left = "  ·  ".join(part for part in self.words.footer if part not in (owner, self.brand and self.brand.name))
        line = self.typesetter.lines(left, type_, begin - self.paper.left - 8) if left else ()
        if line:
            page.write(line[0], self.paper.left, base + 1, type_, "soft")


def header_height(frame: Frame, *, short: bool = False) -> float:
    """Return the height from the top margin to where the columns begin, in points."""
    if short:
        return max(_BAR_HEIGHT + 6 + _SHORT_TITLE.size + 12, frame.paper.logo_height + 8 if frame.logo else 0.0)
    lines = len(frame.title_lines())
    title = _BAR_HEIGHT + 4 + frame.title_type.size * 0.95 + (lines - 1) * frame.title_type.leading + 5
    objective = len(frame.objective_lines()) * frame.paper.objective.leading
    return title + objective + 8 + frame.paper.facts.size + 10


_ICONS: dict[str, Logo | None] = {}


def fact_icon(name: str) -> Logo | None:
    """Return the bundled icon of this name as shapes, None where there is none (kit has only its words)."""
    if name not in _ICONS:
        from designer.bundle import resource

        try:
            _ICONS[name] = read_logo(resource("icons", f"{name}.svg").read_text(encoding="utf-8"))
        except FileNotFoundError:
            _ICONS[name] = None
    return _ICONS[name]
