"""Papers a card is printed on: size, margins and columns, and the sizes of its letters."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final, Literal

MM: Final = 72 / 25.4
"""Points in a millimetre."""
INCH: Final = 72.0
"""Points in an inch."""
UNPRINTED: Final = 4.2 * MM
"""The rim of a sheet that office printers leave white, a sixth of an inch. Common practice, no source."""
COURT_RATIO: Final = 34.75 / 17.07
"""Length over width of a tennis court with the run-off of a club."""

Layout = Literal["beside", "front and back", "one column"]
"""Words beside the diagram; the diagram in front and the words behind; or all in one column across the page."""


@dataclass(frozen=True, slots=True)
class Type:
    """A size of letters and the distance from line to line, both in points."""

    size: float
    leading: float
    bold: bool = False


@dataclass(frozen=True, slots=True)
class Paper:
    """One paper with its layout, in points: margins, the diagram's column, the text's column, the type.

    ``unit`` is a mark unit on the diagram, ``mark`` one of the legend and the bullets. ``columns`` is how many columns
    of words there are on a side without a diagram. ``strip`` says whether a coach's lower strip of four columns is
    tried. ``mirrored``: the margins change sides on the back of each sheet. ``objective_later``: a full card tells its objective
    behind how it is played, not above.
    """

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
    you: Type = Type(11.4, 14.5, bold=True)
    short_title: Type = Type(13, 16, bold=True)
    mark: float = 1.0
    columns: int = 2
    layout: Layout = "beside"
    strip: bool = False
    across: bool = False
    mirrored: bool = False
    objective_later: bool = False

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

    @property
    def scale(self) -> float:
        """How many times larger than on A5 indents and hangs are."""
        return self.body.size / _BODY.size


_BODY: Final = Type(9.5, 12.3)

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
    body=_BODY,
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
    strip=True,
)

A6: Final = replace(
    A5,
    name="a6",
    title="A6",
    width=105 * MM,
    height=148 * MM,
    left=5.5 * MM,
    right=5.5 * MM,
    top=5 * MM,
    bottom=5 * MM,
    gutter=3 * MM,
    legend_columns=1,
    logo_height=7 * MM,
    objective=Type(9.8, 11.8),
    facts=Type(9.5, 12),
    body=Type(9.5, 11.2),
    cue=Type(9.5, 11.2),
    short_title=Type(11, 13, bold=True),
    note_lines=7.5 * MM,
    columns=1,
    layout="front and back",
)

PAPERS: Final = {
    paper.name: paper
    for paper in (
        A5,
        A4,
        A6,
        replace(A4, name="letter", title="Letter", width=8.5 * INCH, height=11 * INCH),
        replace(A5, name="half-letter", title="Half letter", width=5.5 * INCH, height=8.5 * INCH),
        replace(
            A5,
            name="5x8",
            title="5 × 8 in",
            width=5 * INCH,
            height=8 * INCH,
            left=8 * MM,
            right=8 * MM,
            diagram=53 * MM,
            gutter=5.5 * MM,
        ),
        replace(A6, name="4x6", title="4 × 6 in", width=4 * INCH, height=6 * INCH, left=5 * MM, right=5 * MM),
        replace(
            A6,
            name="3x5",
            title="3 × 5 in",
            width=3 * INCH,
            height=5 * INCH,
            left=5 * MM,
            right=5 * MM,
            logo_height=5 * MM,
        ),
    )
}
"""Papers by name, in the order in which they are offered."""

LARGE_PRINT: Final = ("a4", "letter")
"""Papers that have room for large print."""

POSTERS: Final = {
    "poster-a4": ("Poster, A4", 210 * MM, 297 * MM),
    "poster-a3": ("Poster, A3", 297 * MM, 420 * MM),
}
"""Posters for a fence: title, width and height in points. ISO 216."""

_BINDER: Final = 20 * MM
"""Left margin that clears the holes of a ring binder: ISO 838 puts them 12 mm from the edge, 6 mm wide."""
_SEAL: Final = 5 * MM
"""Unprinted edge that a laminating pouch is sealed on: common practice, no source."""


def chosen_paper(
    name: str, *, across: bool = False, large_print: bool = False, binder: bool = False, sealed: bool = False
) -> Paper:
    """Return the paper of this name as it is wanted.

    ``across`` lays the sheet on its side, ``large_print`` sets nothing under 16 pt, ``binder`` leaves a margin for
    the rings that changes sides on the back, ``sealed`` leaves an edge for lamination. Raises ``KeyError`` with a
    sentence where there is no such paper.
    """
    if name not in PAPERS:
        raise KeyError(f"there is no paper {name!r}; there are {', '.join((*PAPERS, *POSTERS))}")
    if large_print and name not in LARGE_PRINT:
        raise KeyError(f"large print does not fit {PAPERS[name].title}; choose one of {', '.join(LARGE_PRINT)}")
    paper = PAPERS[name]
    if across:
        paper = _on_its_side(paper)
    if large_print:
        paper = _in_large_print(paper)
    if binder:
        paper = replace(paper, left=max(paper.left, _BINDER), right=min(paper.right, 11 * MM), mirrored=True)
    if sealed:
        paper = replace(
            paper,
            left=paper.left + _SEAL,
            right=paper.right + _SEAL,
            top=paper.top + _SEAL,
            bottom=paper.bottom + _SEAL,
        )
    return replace(paper, diagram=paper.inner) if paper.layout == "one column" else paper


def _on_its_side(paper: Paper) -> Paper:
    """Return the sheet turned, the court lying along it at the scale it has upright."""
    diagram = paper.diagram * COURT_RATIO
    return replace(
        paper,
        width=paper.height,
        height=paper.width,
        diagram=diagram,
        legend_columns=paper.legend_columns + 1,
        columns=2,
        gutter=max(paper.gutter, 5 * MM),
        across=True,
    )


def _in_large_print(paper: Paper) -> Paper:
    """Return the paper set again in one column, the court across it, no letter under 16 pt.

    16 pt is the least size of large print in UKAAF's guidance, as the trade quotes it.
    """
    body = Type(16, 20.5)
    return replace(
        paper,
        left=14 * MM,
        right=14 * MM,
        unit=2.0,
        mark=2.0,
        legend_columns=3,
        heading_sizes=(30, 22),
        objective=Type(18, 23),
        facts=body,
        body=body,
        cue=Type(17, 22),
        legend=Type(18, 25),
        footer=Type(16, 19),
        note_lines=11 * MM,
        you=Type(19, 24, bold=True),
        short_title=Type(20, 25, bold=True),
        columns=1,
        layout="one column",
        strip=False,
        across=True,
    )
