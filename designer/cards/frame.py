"""What stands round the words of a card: title, logo, objective, facts, and the line at the foot."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from designer.cards.facts import FactRow, draw_facts, fact_rows
from designer.cards.logo import Logo, draw_logo
from designer.cards.page import Page
from designer.cards.papers import MM, Paper, Type
from designer.cards.text import Typesetter, fitted
from designer.drawing.words import text_width
from designer.drill.brand import Brand
from designer.drill.drill import Drill
from designer.wording.card import CardWords, Reader

_BAR_WIDTH: Final = 15 * MM
_BAR_HEIGHT: Final = 1.5 * MM
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

    @property
    def is_small(self) -> bool:
        """Whether each line counts: the backs of a small card have their title and nothing else above the words."""
        return self.paper.layout == "front and back"

    def bar(self, number: int) -> bool:
        """Whether side ``number`` has the brand's bar over its title."""
        return not self.is_small or (number == 0 and self.brand is not None)

    def title_lines(self) -> tuple[str, ...]:
        """Return the title, broken only where even its least size is too wide, into lines that are even."""
        return self.typesetter.balanced(self.words.title or "Untitled drill", self.title_type, self.title_width)

    def objective_lines(self) -> tuple[str, ...]:
        """Return the objective in quotation marks, its lines balanced."""
        if not self.words.objective or self.paper.objective_later:
            return ()
        return self.typesetter.balanced(f"“{self.words.objective}”", self.paper.objective, self.title_width)

    def draw_head(self, page: Page, number: int) -> None:
        """Draw what stands over the words of side ``number`` (0 is the first)."""
        top = self.paper.height - self.paper.top
        if self.bar(number):
            page.box(self.paper.left, top - _BAR_HEIGHT, _BAR_WIDTH, _BAR_HEIGHT, "ink" if self.grey else "bar")
        right = self.paper.width - self.paper.right
        if self.logo is not None and (number == 0 or not self.is_small):
            height = self.paper.logo_height
            width = height * self.logo.ratio
            only = page.colours["ink"] if self.grey else None
            draw_logo(page.canvas, self.logo, right - width, top - height, height, only)
        if number == 0 and self.paper.layout != "front and back":
            self._draw_full(page, top)
        else:
            self._draw_short(page, top, number)

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

    def fact_rows(self) -> tuple[FactRow, ...]:
        """Return the lines of facts; the first ends where the label at its right begins."""
        # As wide as it may become: how many sides there are is known only after the lines are.
        type_, label = self.paper.facts, self._label(0) if self.reader == "player" else f"{_READERS[self.reader]}  8/8"
        taken = text_width(self.typesetter.clean(label), type_.size) + 10 if label else 0.0
        return fact_rows(self.words.facts, type_, self.typesetter, self.paper.inner - taken, self.paper.inner)

    def _draw_facts(self, page: Page, base: float) -> None:
        label = self._label(0)
        if label:
            page.write_right(label, self.paper.width - self.paper.right, base, self.paper.facts, "soft")
        draw_facts(page, self.fact_rows(), self.paper.left, base, self.paper.facts)

    def _label(self, number: int) -> str:
        """Return what stands at the right of the facts: which setting, or whose card and which of its sides."""
        if self.reader == "player":
            is_full = number == 0 and self.paper.layout != "front and back"
            return self._setting() if is_full else f"{number + 1}/{self.pages}"
        reader = _READERS[self.reader]
        return f"{reader}  {number + 1}/{self.pages}" if self.pages > 1 else reader

    def _setting(self) -> str:
        """Return which progression it is and of how many; the word for it only where it takes the room of no fact."""
        type_, inner = self.paper.facts, self.paper.inner
        number, _, rest = self.words.setting_name.partition(" ")
        name = f"{number} of {len(self.drill.progressions)}{': ' if rest else ''}{rest}"

        def lines(label: str) -> int:
            room = inner - text_width(self.typesetter.clean(label), type_.size) - 10
            return len(fact_rows(self.words.facts, type_, self.typesetter, room, inner))

        tried = f"Progression {name}", name, self.words.setting_name
        return next(label for label in tried if lines(label) <= lines(self.words.setting_name))

    def short_title(self, number: int) -> tuple[Type, tuple[str, ...]]:
        """Return the title over a back, or over a small card, and its lines: one where its least size allows that."""
        type_ = self.paper.short_title
        label = "8/8" if self.reader == "player" else f"{_READERS[self.reader]}  8/8"
        right = self.title_width if number == 0 or not self.is_small else self.paper.inner
        width = right - text_width(label, self.paper.facts.size) - 12
        words = self.typesetter.clean(self.words.title or "Untitled drill")
        least = _LEAST_REMINDER if self.is_small and number else _LEAST_TITLE * self.paper.scale
        size = fitted(words, (type_.size, least), width)
        type_ = Type(size, size * 1.2, bold=True)
        return type_, self.typesetter.balanced(words, type_, width)

    def _draw_short(self, page: Page, top: float, number: int) -> None:
        base = top - (_BAR_HEIGHT + 6 if self.bar(number) else 0) - self.paper.short_title.size
        type_, lines = self.short_title(number)
        for count, line in enumerate(lines):
            page.write(line, self.paper.left, base - count * type_.leading, type_)
        right = self.paper.left + (self.title_width if number == 0 or not self.is_small else self.paper.inner)
        if label := self._label(number):
            page.write_right(label, right, base, self.paper.facts, "soft")

    @property
    def owner(self) -> str:
        """Whose card it is, as the foot says it."""
        return (self.brand.footer or self.brand.name) if self.brand else ""

    def _dated(self) -> str:
        """Return code, edition and date, by which a stale card is seen: the left of the foot."""
        shown = (self.owner, self.brand and self.brand.name)
        left = "  ·  ".join(part for part in self.words.footer if part not in shown)
        return self.typesetter.lines(left, self.paper.footer, self.paper.inner)[0] if left else ""

    @property
    def foot_room(self) -> float:
        """Width in points at the right of the foot that is left beside code, edition and date."""
        return self.paper.inner - text_width(self._dated(), self.paper.footer.size) - 10

    def draw_foot(self, page: Page, overleaf: Sequence[str], licence: str = "") -> None:
        """Draw code, edition and date; beside them ``licence``, else ``overleaf``, which are headings, else the owner."""
        type_ = self.paper.footer
        base = self.paper.bottom
        right = self.paper.width - self.paper.right
        page.rule(self.paper.left, base + type_.leading + 1, right, weight=0.5, colour="note")
        end = page.write(self._dated(), self.paper.left, base + 1, type_, "soft")
        if licence:
            page.write_right(licence, right, base + 1, type_, "soft")
        elif overleaf:
            self._point_overleaf(page, overleaf, end + 14, base + 1)
        elif self.owner and end + 8 + text_width(self.typesetter.clean(self.owner), type_.size) <= right:
            page.write_right(self.owner, right, base + 1, type_, "soft")

    def _point_overleaf(self, page: Page, headings: Sequence[str], left: float, base: float) -> None:
        """Write as many of ``headings`` as there is room for, in the letters of the legend or those of the foot."""
        right = self.paper.width - self.paper.right
        ways = [headings, *([name for name in headings if name not in _LESSER[:count]] for count in (1, 2))]
        cut = [[*ways[-1][:count], "…"] for count in range(len(ways[-1]) - 1, 0, -1)]
        for shown in (*ways, *cut):
            text = f"Overleaf: {', '.join(shown)}".replace(", …", " …")
            for type_ in (self.paper.legend, self.paper.footer):
                if left + text_width(self.typesetter.clean(text), type_.size) <= right:
                    page.write_right(text, right, base, type_)
                    return


_LESSER: Final = ("Signs", "Remember")
"""Headings that the foot leaves out first."""
_LEAST_TITLE: Final = 9.5
"""Points of the least size of a title over a back on A5."""
_LEAST_REMINDER: Final = 8.5
"""The same over the backs of a small card, where it only reminds of the front."""


def header_height(frame: Frame, *, side: int = 0) -> float:
    """Return the height from the top margin to where the columns begin on a side, in points."""
    if frame.is_small or side:
        bar = _BAR_HEIGHT + 6 if frame.bar(side) else 0.0
        below = 7 if frame.is_small else 12
        logo = frame.paper.logo_height + 8 if frame.logo and (side == 0 or not frame.is_small) else 0.0
        type_, lines = frame.short_title(side)
        return max(bar + frame.paper.short_title.size + (len(lines) - 1) * type_.leading + below, logo)
    count = len(frame.title_lines())
    title = _BAR_HEIGHT + 4 + frame.title_type.size * 0.95 + (count - 1) * frame.title_type.leading + 5
    objective = len(frame.objective_lines()) * frame.paper.objective.leading
    more_facts = max(0, len(frame.fact_rows()) - 1) * frame.paper.facts.leading
    return title + objective + 8 + frame.paper.facts.size + more_facts + 10
