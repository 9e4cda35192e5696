"""The pages of a handbook round its drills, as blocks: cover, contents, legend, safety, indexes, balance, planner."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from designer.cards.blocks import Block, Drawn, Row, Rules
from designer.cards.papers import MM, Paper, Type
from designer.cards.pieces import Pieces
from designer.cards.text import Typesetter
from designer.drawing.legend import WORDS, LegendEntry
from designer.drawing.themes import Theme
from designer.drawing.words import text_width
from designer.drill.drill import Drill
from designer.drill.handbook import BookSection, Entry, Handbook
from designer.drill.setting import main_setting
from designer.wording.kit import kit

if TYPE_CHECKING:
    from designer.cards.page import Page

Part = tuple[str, str, tuple[Block, ...]]
"""(title for the outline, key of its destination, blocks)."""

_NUMBER: Final = re.compile(r"\b\d+\.\d+\b")
_TITLE: Final = Type(28, 36, bold=True)
_HEADING: Final = Type(17, 22, bold=True)
_GROUPS: Final = ("situation", "phase", "stroke", "level", "work")
_READING: Final = (
    "The filled letter is you; the nose of each person stands on the exact place. Letters are jobs, and people change jobs.",
    "A solid line is a ball, a broken line is feet. A square with a digit is a shot, in the order of play; the same square stands before its sentence.",
    "The head of a ball's line points at the bounce. From the flag “open” on, the restrictions end.",
    "A racket is 27 inches, 0.69 m: the singles court is twelve across. A stride is a yard: six from service line to baseline.",
    "A line left empty is a question that the drill leaves to you: write the answer on it.",
)
_SAFETY: Final = (
    "Inspect the court before every session: surface, fence, net posts, loose balls, lights.",
    "Whoever sees a ball or a person on the court calls “stop”, and everybody stops. The rally is replayed.",
    "Local rules and a qualified coach decide. This book sees only what is drawn and knows nothing of your court.",
)
_BLANKS: Final = (
    "First aid is kept at",
    "Who is called in an emergency",
    "When it is too hot to play",
    "When there is lightning",
    "This page was approved by",
)


@dataclass(frozen=True, slots=True)
class Leaf:
    """An entry with its drill, or the reason why there is none; ``digest`` tells whether the drill has changed."""

    entry: Entry
    drill: Drill | None
    reason: str = ""
    digest: str = ""

    @property
    def title(self) -> str:
        """The drill's title, else its file."""
        return (self.drill.title or "Untitled drill") if self.drill else self.entry.file


@dataclass(frozen=True)
class Linked(Row):
    """A row that leads to a place in the book: as a whole to ``target``, else each drill's number to its drill."""

    target: str = ""
    numbers: frozenset[str] = frozenset()

    def draw(self, page: Page, x: float, top: float, width: float) -> None:
        """Draw the row and lay the link over it."""
        super().draw(page, x, top, width)
        if self.target:
            box = (x, top - self.height(width), x + width, top)
            page.canvas.linkRect("", self.target, box, relative=1, thickness=0)
            return
        for line, words in enumerate(self.lines(width)):
            low = top - (line + 1) * self.type_.leading
            for found in _NUMBER.finditer(words):
                if found[0] in self.numbers:
                    left = x + self.hang + text_width(words[: found.start()], self.type_.size)
                    box = (left, low, left + text_width(found[0], self.type_.size), low + self.type_.leading)
                    page.canvas.linkRect("", f"drill-{found[0]}", box, relative=1, thickness=0)


class Pages:
    """Makes the blocks of the pages round the drills."""

    def __init__(self, book: Handbook, paper: Paper, theme: Theme, typesetter: Typesetter) -> None:
        self.book, self.paper, self.typesetter = book, paper, typesetter
        self.pieces = Pieces(paper, theme, typesetter)

    def front(self, leaves: Sequence[Leaf], before: dict[str, str]) -> Iterator[Part]:
        """Yield what stands before the first section."""
        yield "Cover", "cover", tuple(self._cover(leaves, before))
        yield "Contents", "contents", tuple(self._contents(leaves))
        yield "How to read a card", "reading", tuple(self._reading())
        yield "Before a session", "safety", tuple(self._safety(leaves))

    def back(self, leaves: Sequence[Leaf], left_out: dict[str, str]) -> Iterator[Part]:
        """Yield what stands after the last section."""
        if left_out:
            rows = [self._text(f"{number}  {reason}") for number, reason in left_out.items()]
            yield (
                "Drills that could not be printed",
                "left-out",
                (self._head("Drills that could not be printed"), *rows),
            )
        yield "Indexes", "indexes", tuple(self._indexes(leaves))
        yield "Balance", "balance", tuple(self._balance(leaves))
        blanks = ("Date", "Group", "Aim", "Drills, by number", "Kit", "How it went")
        yield (
            "Planner",
            "planner",
            (self._head("Planner"), *(block for words in blanks for block in self._blank(words, 3))),
        )

    def section(self, section: BookSection) -> tuple[Block, ...]:
        """Return the page that opens a section."""
        first = section.drills[0].number.partition(".")[0] if section.drills else ""
        head = Row(f"{first}  {section.title}".strip(), _TITLE, self.typesetter)
        return (head, self._text(section.introduction, before=12)) if section.introduction else (head,)

    def _cover(self, leaves: Sequence[Leaf], before: dict[str, str]) -> Iterator[Block]:
        book = self.book
        dated = f", {book.dated.day} {book.dated:%B} {book.dated.year}" if book.dated else ""
        yield Drawn(130 * MM, lambda *_: None)
        yield Row(book.title, _TITLE, self.typesetter, balanced=True)
        yield self._text(f"Edition {book.edition}{dated}", before=16)
        for words in (book.owner, book.contact, book.licence):
            if words:
                yield self._text(words, before=6)
        yield self._head("What has changed", before=40)
        yield from (self._text(words) for words in changes(leaves, before, book.edition))

    def _contents(self, leaves: Sequence[Leaf]) -> Iterator[Block]:
        titles = {leaf.entry.number: leaf.title for leaf in leaves if leaf.drill}
        yield self._head("Contents")
        for title, key in (("How to read a card", "reading"), ("Before a session", "safety")):
            yield self._link(title, key)
        for section in self.book.sections:
            yield self.pieces.heading(self.typesetter.clean(section.title), before=9)
            for entry in section.drills:
                if entry.number in titles:
                    yield self._link(f"{entry.number}  {titles[entry.number]}", f"drill-{entry.number}")
                else:
                    yield self._link(f"{entry.number}  {entry.file}: not printed", "left-out")
        for title in ("Indexes", "Balance", "Planner"):
            yield self._link(title, title.lower(), before=9 if title == "Indexes" else 1.5)

    def _reading(self) -> Iterator[Block]:
        from designer.drawing.pdf import draw_primitives
        from designer.drawing.samples import legend_shapes

        yield self._head("How to read a card")
        yield from (self._text(words) for words in _READING)
        entries = tuple(LegendEntry(kind, words) for kind, words in WORDS.items())
        theme = self.pieces.theme
        shapes, tall = legend_shapes(entries, theme, 1.0, columns=3, column_width=self.paper.inner / 3, pitch=17)

        def draw(page: Page, x: float, top: float, _: float) -> None:
            draw_primitives(page.canvas, shapes, theme, (x, top), 1.0)

        yield Drawn(tall, draw, before=14)

    def _safety(self, leaves: Sequence[Leaf]) -> Iterator[Block]:
        yield self._head("Before a session")
        yield from (self._text(words) for words in _SAFETY)
        accepted = [(leaf, one.reason) for leaf in leaves if leaf.drill for one in leaf.drill.accepted]
        if accepted:
            yield self.pieces.heading("Cautions accepted, with the reason", before=9)
            for leaf, reason in accepted:
                yield self._link(f"{leaf.entry.number}  {reason}", f"drill-{leaf.entry.number}")
        yield from (block for words in _BLANKS for block in self._blank(words, 1))

    def _indexes(self, leaves: Sequence[Leaf]) -> Iterator[Block]:
        yield self._head("Indexes")
        for name, found in indexes(leaves):
            yield self.pieces.heading(name, before=9)
            for words, numbers in sorted(found.items(), key=lambda pair: _natural(pair[0])):
                yield Linked(
                    f"{words}: {', '.join(numbers)}",
                    self.paper.body,
                    self.typesetter,
                    before=1.5,
                    hang=14,
                    numbers=frozenset(numbers),
                )

    def _balance(self, leaves: Sequence[Leaf]) -> Iterator[Block]:
        printed = [leaf for leaf in leaves if leaf.drill]
        yield self._head("Balance")
        yield self._text(f"{len(printed)} drills.")
        for group in _GROUPS:
            counts = Counter(words for leaf in printed for words in _tags(leaf, group))
            yield self.pieces.heading(group.capitalize(), before=9)
            for words, count in sorted(counts.items()):
                yield self._text(f"{words.replace('-', ' ')}: {count}")
            without = [leaf.entry.number for leaf in printed if not _tags(leaf, group)]
            if without:
                yield self._text(f"not said: {', '.join(without)}")

    def _head(self, words: str, before: float = 0.0) -> Block:
        return Row(words, _HEADING, self.typesetter, before=before, keep_with_next=True)

    def _text(self, words: str, before: float = 3.0) -> Block:
        return Row(words, self.paper.body, self.typesetter, before=before)

    def _link(self, words: str, target: str, before: float = 1.5) -> Block:
        return Linked(words, self.paper.body, self.typesetter, before=before, hang=14, target=target)

    def _blank(self, words: str, lines: int) -> tuple[Block, ...]:
        return self.pieces.heading(words, before=9), Rules(lines, self.paper.note_lines)


def changes(leaves: Sequence[Leaf], before: dict[str, str], edition: int) -> Iterator[str]:
    """Yield what is new, changed and gone since the edition before, whose {number: digest} is ``before``."""
    if not before:
        yield "This is the first edition that is recorded." if edition == 1 else "The edition before is not recorded."
        return
    now = {leaf.entry.number: leaf for leaf in leaves if leaf.drill}
    new = [leaf for number, leaf in now.items() if number not in before]
    changed = [leaf for number, leaf in now.items() if number in before and before[number] != leaf.digest]
    gone = [number for number in before if number not in now]
    for words, found in (("New", new), ("Changed", changed)):
        yield from (f"{words}: {leaf.entry.number} {leaf.title}" for leaf in found)
    yield from (f"Gone: {number}" for number in gone)
    if not (new or changed or gone):
        yield "No drill has changed since the edition before."


def indexes(leaves: Iterable[Leaf]) -> Iterator[tuple[str, dict[str, list[str]]]]:
    """Yield (name of the index, {entry: numbers of the drills}); an index without entries is left out."""
    names = ("Objective", "Situation", "Stroke", "Level", "Players", "Kit", "Minutes", "Coach needed")
    found: dict[str, dict[str, list[str]]] = {name: {} for name in names}
    for leaf in leaves:
        if leaf.drill is None:
            continue
        for name, words in _index_words(leaf.drill):
            numbers = found[name].setdefault(words, [])
            if leaf.entry.number not in numbers:
                numbers.append(leaf.entry.number)
    yield from ((name, entries) for name, entries in found.items() if entries)


def _index_words(drill: Drill) -> Iterator[tuple[str, str]]:
    if drill.objective:
        yield "Objective", drill.objective
    for tag in drill.tags:
        group, _, words = tag.partition(":")
        if group in ("situation", "stroke", "level") and words:
            yield group.capitalize(), words.replace("-", " ")
    least, most = drill.players or (0, 0)
    yield from (("Players", str(count)) for count in range(max(least, 1), most + 1))
    yield from (("Kit", thing.lstrip("0123456789 ")) for thing in kit(drill, main_setting(drill)))
    if drill.minutes:
        yield "Minutes", str(drill.minutes)
    is_needed = drill.coach_needed or any(job.by == "coach" for job in drill.jobs)
    yield "Coach needed", "yes" if is_needed else "no"


def _tags(leaf: Leaf, group: str) -> list[str]:
    tags = leaf.drill.tags if leaf.drill else ()
    return [tag.partition(":")[2] for tag in tags if tag.startswith(f"{group}:")]


def _natural(words: str) -> tuple[int, str]:
    return (int(words), "") if words.isdecimal() else (-1, words.lower())
