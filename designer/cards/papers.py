"""Papers a card is printed on: size, margins and columns, and the sizes of its letters."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

MM: Final = 72 / 25.4
"""Points in a millimetre."""


@dataclass(frozen=True, slots=True)
class Type:
    """A size of letters and the distance from line to line, both in points."""

    size: float
    leading: float
    bold: bool = False


@dataclass(frozen=True, slots=True)
class Paper:
    """One paper with its layout, in points: margins, the diagram's column, the text's column, the type."""

    name: str
    title: str
    width: float
    height: float
    left: float
    right: float
    top: float
    bottom: float
    diagram: float
    gutter: float
    unit: float
    legend_columns: int
    logo_height: float
    heading_sizes: tuple[float, float]
    objective: Type
    facts: Type
    body: Type
    cue: Type
    legend: Type
    footer: Type
    note_lines: float

    @property
    def inner(self) -> float:
        """Width between the margins, in points."""
        return self.width - self.left - self.right

    @property
    def text(self) -> float:
        """Width of the column beside the diagram, in points."""
        return self.inner - self.diagram - self.gutter

    @property
    def heading(self) -> Type:
        """Headings are body type in bold."""
        return Type(self.body.size, self.body.leading, bold=True)

    @property
    def half(self) -> float:
        """Width of one of two equal columns, in points."""
        return (self.inner - self.gutter) / 2


A5: Final = Paper(
    name="a5",
    title="A5",
    width=148 * MM,
    height=210 * MM,
    left=10 * MM,
    right=10 * MM,
    top=8 * MM,
    bottom=6 * MM,
    diagram=55.6 * MM,
    gutter=6.5 * MM,
    unit=1.0,
    legend_columns=2,
    logo_height=8.6 * MM,
    heading_sizes=(20, 15),
    objective=Type(11, 14.7),
    facts=Type(9.6, 13),
    body=Type(9.5, 12.3),
    cue=Type(10.4, 13.4),
    legend=Type(9, 12.6),
    footer=Type(8, 10),
    note_lines=8 * MM,
)

A4: Final = Paper(
    name="a4",
    title="A4",
    width=210 * MM,
    height=297 * MM,
    left=22 * MM,
    right=11 * MM,
    top=10.5 * MM,
    bottom=8 * MM,
    diagram=68 * MM,
    gutter=9 * MM,
    unit=1.2,
    legend_columns=3,
    logo_height=10 * MM,
    heading_sizes=(25, 15),
    objective=Type(12.6, 16.9),
    facts=Type(9.6, 13),
    body=Type(9.6, 12.6),
    cue=Type(10.8, 14.2),
    legend=Type(9, 12.6),
    footer=Type(8, 10),
    note_lines=8 * MM,
)

PAPERS: Final = {paper.name: paper for paper in (A5, A4)}
"""Papers by name, in the order in which they are offered."""
