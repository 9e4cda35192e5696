"""A poster for the fence: title, court with letters and digits, and the score, to be read from two metres."""

from __future__ import annotations

import io
from collections.abc import Iterator
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
UNIT: Final = 3.0
"""Points of a mark unit."""
SIGNS: Final = LEAST / (TAG_TEXT * UNIT)
"""How much larger people and digits are: so that the smallest sign on the court, a shot's digit, has the least size."""
GROWTH: Final = (1.8, 1.6, 1.4, 1.2, 1.0)
"""How much larger a score may be that has room of its own, the largest that fits: it is read from further away."""
LEAST_COURT: Final = 595.0
"""The court is at least this many points high, 21 cm, else the score goes to a sheet of its own."""
WORTH: Final = 0.8
"""A sheet is laid on its side, for larger letters, where the court keeps this share of its size upright."""
GAP: Final = LEAST * 0.5
"""Points between the title, the court and the score."""


@dataclass(frozen=True, slots=True)
class Poster:
    """The sheets of one poster: what stands above the court, the court, and the score below it, beside it or on the next sheet.

    ``beside`` is how wide the score's column is beside the court, in points, 0 where it stands below.
    """

    paper: Paper
    title: tuple[Block, ...]
    score: tuple[Block, ...]
    together: bool
    beside: float = 0.0

    @property
    def court_room(self) -> tuple[float, float]:
        """Width and height in points left for the court."""
        below = stacked(self.score, self.paper.inner) + GAP if self.together and not self.beside else 0.0
        wide = self.paper.inner - (self.beside + GAP if self.beside else 0.0)
        return wide, _free(self.paper, self.title) - below


def _free(paper: Paper, title: tuple[Block, ...]) -> float:
    """Return the height in points under the title."""
    return paper.height - paper.top - paper.bottom - stacked(title, paper.inner) - GAP


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
    sheets = _draw(Page(canvas, made.paper, colours, typesetter), made, picture, theme)
    canvas.save()
    return result.getvalue(), sheets


def _draw(page: Page, made: Poster, picture: Picture, theme: Theme) -> int:
    """Draw all sheets and return how many there are."""
    paper = made.paper
    top = draw_stack(page, made.title, paper.left, paper.height - paper.top, paper.inner) - GAP
    low = _draw_court(page.canvas, picture, theme, made, top)
    sheets, rest = 1, made.score
    if made.beside:
        draw_stack(page, rest, paper.width - paper.right - made.beside, top, made.beside)
    elif made.together:
        draw_stack(page, rest, paper.left, low - GAP, paper.inner)
    if made.together:
        rest = ()
    page.canvas.showPage()
    while rest:
        top = draw_stack(page, made.title, paper.left, paper.height - paper.top, paper.inner) - GAP
        fitting, left = taken(rest, paper.inner, top - paper.bottom)
        fitting, rest = (fitting, left) if fitting else (rest[:1], rest[1:])
        draw_stack(page, fitting, paper.left, top, paper.inner)
        page.canvas.showPage()
        sheets += 1
    return sheets


def _laid_out(subject: Subject, name: str, theme: Theme, typesetter: Typesetter) -> Poster:
    """Return the sheets: all on one, upright or on its side, wherever the court is large enough there."""
    title, width, height = POSTERS[name]
    paper = _sheet(name, title, width, height)
    head = _title(subject, paper, typesetter)
    made = Poster(paper, head, _score(subject, Pieces(paper, theme, typesetter), paper.body), together=True)
    lying = _on_its_side(subject, _sheet(name, title, height, width), theme, typesetter)
    fits = made.court_room[1] >= LEAST_COURT
    if lying is not None and lying.court_room[1] >= LEAST_COURT:
        wins = _court_scale(subject, lying) >= WORTH * _court_scale(subject, made)
        if wins or not fits:
            return lying
    if fits:
        return made
    for large, score in _scores(subject, paper, theme, typesetter):
        if large == LEAST or stacked(score, paper.inner) <= _free(paper, head):
            return Poster(paper, head, score, together=False)
    return replace(made, together=False)


def _on_its_side(subject: Subject, paper: Paper, theme: Theme, typesetter: Typesetter) -> Poster | None:
    """Return the sheet with the score beside the court in letters as large as fit, None where even the least do not."""
    head = _title(subject, paper, typesetter)
    free, (wide, tall) = _free(paper, head), _court_size(subject)
    beside = paper.inner - GAP - free * wide / tall * _A_LITTLE_WIDER
    if beside <= 0:
        return None
    for _, score in _scores(subject, paper, theme, typesetter):
        if stacked(score, beside) <= free:
            return Poster(paper, head, score, together=True, beside=beside)
    return None


_A_LITTLE_WIDER: Final = 1.04
"""Discs and digits may stand a little outside the fence."""


def _court_size(subject: Subject) -> tuple[float, float]:
    """Return how wide and how long what is shown of the court is, in metres."""
    from designer.drawing.picture import BEYOND_NET
    from designer.drawing.reach import end_in_use

    told, ground = subject.told, subject.told.ground
    half = end_in_use(told.setting, told.sequence) is not None
    return 2 * ground.side_fence, ground.back_fence + (BEYOND_NET if half else ground.back_fence)


def _court_scale(subject: Subject, made: Poster) -> float:
    """Return about how many points a metre of the court has."""
    return min(room / metres for room, metres in zip(made.court_room, _court_size(subject), strict=True))


def _sheet(name: str, title: str, width: float, height: float) -> Paper:
    body = Type(LEAST, LEAST * LEADING)
    edges = {"left": MARGIN, "right": MARGIN, "top": MARGIN, "bottom": MARGIN}
    return Paper(
        **{field: getattr(A4, field) for field in A4.__dataclass_fields__}
        | edges
        | {"name": name, "title": title, "width": width, "height": height, "body": body, "legend": body, "unit": UNIT}
    )


def _title(subject: Subject, paper: Paper, typesetter: Typesetter) -> tuple[Block, ...]:
    said = subject.words.title or "Untitled drill"
    size = fitted(typesetter.clean(said), (LEAST * 1.6, LEAST), paper.inner)
    return (Row(said, Type(size, size * LEADING, bold=True), typesetter, balanced=True),)


def _scores(
    subject: Subject, paper: Paper, theme: Theme, typesetter: Typesetter
) -> Iterator[tuple[float, tuple[Block, ...]]]:
    """Yield (size, score in letters of it), the largest first."""
    for growth in GROWTH:
        large = Type(LEAST * growth, LEAST * growth * LEADING)
        yield large.size, _score(subject, Pieces(replace(paper, body=large), theme, typesetter), large)


def _score(subject: Subject, pieces: Pieces, type_: Type) -> tuple[Block, ...]:
    """Return points and finish in letters of this size, and in small ones which edition it is."""
    points, rules = (subject.words.section(key) for key in ("points", "rules"))
    said = [sentence for sentence in (points.sentences if points else ()) if not sentence.missing]
    # A player looks up among the rules what becomes of a level score; on the fence it stands with the rest.
    said += [sentence for sentence in (rules.sentences if rules else ()) if sentence.key.startswith("finish:")]
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
            subject.drill,
            subject.told.setting,
            unit=metres,
            theme=theme,
            names=False,
            patient=True,
            end=end,
            signs=SIGNS,
        )

    shown = drawn(UNIT * 2 * told.ground.side_fence / made.court_room[0])
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
    wide, tall = made.court_room
    return min(wide / (right - left), tall / (high - low))


def _draw_court(canvas: Any, picture: Picture, theme: Theme, made: Poster, top: float) -> float:
    """Draw the court in the middle of its room under ``top`` and return where it ends."""
    from designer.drawing.pdf import draw

    left, low, right, high = picture.extent
    scale = _scale(picture, made)
    x = made.paper.left + (made.court_room[0] - (right - left) * scale) / 2
    y = top - (high - low) * scale
    draw(canvas, picture, theme, x, y, scale)
    return y
