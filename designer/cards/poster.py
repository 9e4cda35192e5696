"""A poster for the fence: title, court with letters and digits, and the score, to be read from two metres."""

from __future__ import annotations

import io
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any, Final

from designer.cards.blocks import Block, Row, draw_stack, stacked, taken
from designer.cards.page import NOTE_LINE, Page
from designer.cards.papers import A4, MM, POSTERS, Paper, Type
from designer.cards.pieces import Pieces
from designer.cards.subject import Subject
from designer.cards.text import Typesetter, fitted
from designer.drawing.balls import TAG_TEXT
from designer.drawing.themes import Theme

if TYPE_CHECKING:
    from designer.drawing.picture import Picture

LEAST: Final = 40.0
"""Points of the smallest letter: read from two metres at 17 minutes of arc, which the trade's table asks for at least."""
LEADING: Final = 1.16
MARGIN: Final = 12 * MM
UNIT: Final = LEAST / TAG_TEXT
"""Points of a mark unit: so that the smallest sign on the court, a shot's digit, has the least size."""
GROWTH: Final = (1.8, 1.6, 1.4, 1.2)
"""How much larger a score may be that has a sheet of its own, the largest that fits: it is read from further away."""
LEAST_COURT: Final = 0.5
"""The court takes at least this share of a sheet's height, else the score goes to a sheet of its own."""


@dataclass(frozen=True, slots=True)
class Poster:
    """The sheets of one poster: what stands above the court, the court, and what stands below it or on the next sheet."""

    paper: Paper
    title: tuple[Block, ...]
    score: tuple[Block, ...]
    together: bool

    @property
    def court_room(self) -> float:
        """Height in points left for the court."""
        below = stacked(self.score, self.paper.inner) + LEAST * 0.5 if self.together else 0.0
        free = self.paper.height - self.paper.top - self.paper.bottom
        return free - stacked(self.title, self.paper.inner) - LEAST * 0.4 - below


def poster(subject: Subject, name: str, theme: Theme, typesetter: Typesetter) -> tuple[bytes, int]:
    """Return the PDF of the poster of this name and how many sheets it has. Raises ``KeyError`` for another name.

    It says no more than can be read from two metres; rules and cautions are on the cards.
    """
    from reportlab.pdfgen.canvas import Canvas

    from designer.drawing.pdf import REGULAR, register_fonts

    register_fonts()
    made = _laid_out(subject, name, theme, typesetter)
    picture = _court(subject, made, theme)
    result = io.BytesIO()
    canvas = Canvas(
        result,
        pagesize=(made.paper.width, made.paper.height),
        invariant=1,
        initialFontName=REGULAR,  # type: ignore[arg-type]  # the stub is wrong: it is a name
        lang=subject.drill.language,
    )
    canvas.setTitle(typesetter.clean(subject.drill.title) or "Untitled drill")
    canvas.setSubject(typesetter.clean(subject.drill.objective))
    canvas.setCreator("Drill Designer")
    ink = theme.colour("ink")
    colours = dict.fromkeys(("ink", "soft", "brand", "bar"), ink.hex if ink else "#000000") | {"note": NOTE_LINE}
    page = Page(canvas, made.paper, colours, typesetter)
    top = made.paper.height - made.paper.top
    top = draw_stack(page, made.title, made.paper.left, top, made.paper.inner) - LEAST * 0.4
    low = _draw_court(canvas, picture, theme, made, top)
    sheets, rest = 1, made.score
    if made.together:
        draw_stack(page, rest, made.paper.left, low - LEAST * 0.5, made.paper.inner)
        rest = ()
    canvas.showPage()
    while rest:
        low = draw_stack(page, made.title, made.paper.left, made.paper.height - made.paper.top, made.paper.inner)
        top = low - LEAST * 0.5
        fitting, left = taken(rest, made.paper.inner, top - made.paper.bottom)
        fitting, rest = (fitting, left) if fitting else (rest[:1], rest[1:])
        draw_stack(page, fitting, made.paper.left, top, made.paper.inner)
        canvas.showPage()
        sheets += 1
    canvas.save()
    return result.getvalue(), sheets


def _laid_out(subject: Subject, name: str, theme: Theme, typesetter: Typesetter) -> Poster:
    title, width, height = POSTERS[name]
    body = Type(LEAST, LEAST * LEADING)
    edges = {"left": MARGIN, "right": MARGIN, "top": MARGIN, "bottom": MARGIN}
    paper = Paper(
        **{field: getattr(A4, field) for field in A4.__dataclass_fields__}
        | edges
        | {"name": name, "title": title, "width": width, "height": height, "body": body, "legend": body, "unit": UNIT}
    )
    said = subject.words.title or "Untitled drill"
    size = fitted(typesetter.clean(said), (LEAST * 1.6, LEAST), paper.inner)
    head: tuple[Block, ...] = (Row(said, Type(size, size * LEADING, bold=True), typesetter, balanced=True),)
    made = Poster(paper, head, _score(subject, Pieces(paper, theme, typesetter), body), together=True)
    if made.court_room >= LEAST_COURT * height:
        return made
    free = height - paper.top - paper.bottom - stacked(head, paper.inner) - LEAST * 0.5
    for growth in GROWTH:
        large = Type(LEAST * growth, LEAST * growth * LEADING)
        score = _score(subject, Pieces(replace(paper, body=large), theme, typesetter), large)
        if stacked(score, paper.inner) <= free:
            return Poster(paper, head, score, together=False)
    return replace(made, together=False)


def _score(subject: Subject, pieces: Pieces, type_: Type) -> tuple[Block, ...]:
    """Return points and finish in letters of this size, and in small ones which edition it is."""
    points = subject.words.section("points")
    said = [sentence for sentence in (points.sentences if points else ()) if not sentence.missing]
    stale = Row(_edition(subject), Type(LEAST, LEAST * LEADING), pieces.typesetter, colour="soft", before=10.0)
    return (*(pieces.sentence(sentence, type_, before=4.0 * type_.size / LEAST) for sentence in said), stale)


def _edition(subject: Subject) -> str:
    """Return edition and date, so that a stale poster is seen."""
    dated = subject.drill.dated
    day = f" · {dated.day} {dated:%b} {dated.year}" if dated else ""
    return f"Edition {subject.drill.edition}{day}"


def _court(subject: Subject, made: Poster, theme: Theme) -> Picture:
    """Return the court with letters, digits and values, as large as there is room for."""
    from designer.drawing.picture import picture
    from designer.drawing.reach import end_in_use

    told = subject.told
    end = end_in_use(told.setting, told.sequence)

    def drawn(metres: float) -> Picture:
        return picture(
            subject.drill, subject.told.setting, unit=metres, theme=theme, names=False, patient=True, end=end
        )

    shown = drawn(UNIT * 2 * told.ground.side_fence / made.paper.inner)
    for _ in range(_TRIES):  # marks may reach beyond the fence, and more so the smaller the court is
        scale = _scale(shown, made)
        if shown.unit * scale >= UNIT:
            break
        shown = drawn(UNIT / scale * _A_LITTLE_MORE)
    return shown


_TRIES: Final = 6
_A_LITTLE_MORE: Final = 1.004


def _scale(picture: Picture, made: Poster) -> float:
    """Return how many points a metre of the court has."""
    left, low, right, high = picture.extent
    return min(made.paper.inner / (right - left), made.court_room / (high - low))


def _draw_court(canvas: Any, picture: Picture, theme: Theme, made: Poster, top: float) -> float:
    """Draw the court in the middle under ``top`` and return where it ends."""
    from designer.drawing.pdf import draw

    left, low, right, high = picture.extent
    scale = _scale(picture, made)
    x = made.paper.left + (made.paper.inner - (right - left) * scale) / 2
    y = top - (high - low) * scale
    draw(canvas, picture, theme, x, y, scale)
    return y
