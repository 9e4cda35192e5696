"""The picture of a setting: marks in metres that every medium draws alike."""

from __future__ import annotations

from collections.abc import Container
from dataclasses import dataclass, replace
from typing import Final

from designer.court.regions import End
from designer.court.standards import Ground, ground
from designer.drawing import court_marks, court_words, item_marks, labels, people_marks, shot_marks
from designer.drawing import rulers as ruler
from designer.drawing.geometry import bounds_of_points, grown
from designer.drawing.legend import LegendEntry, legend_of
from designer.drawing.page import Page
from designer.drawing.pen import Pen
from designer.drawing.placing import ASIDE_OF_PLAY, COURT, OUT_OF_PLAY, PAINTED, PATH, Space
from designer.drawing.plan import Plan
from designer.drawing.primitives import Bounds, Mark
from designer.drawing.themes import Theme
from designer.drawing.words import in_bundled_faces
from designer.drill.drill import Drill
from designer.drill.places import corners_of
from designer.drill.setting import At, Setting, setting_at
from designer.play.sequence import Sequence, sequence
from designer.wording.units import Units


@dataclass(frozen=True, slots=True)
class Picture:
    """Marks in the order they are drawn. ``extent`` is what is to be shown, in metres of the page."""

    marks: tuple[Mark, ...]
    extent: Bounds
    legend: tuple[LegendEntry, ...]
    unit: float
    page: Page
    cut: bool = False
    """Whether marks reach beyond the extent and are to be cut off there."""


@in_bundled_faces
def picture(  # noqa: PLR0913 - each is one choice of a medium, all but the first two by name
    drill: Drill,
    at: At | Setting,
    *,
    unit: float,
    theme: Theme,
    you: str | None = None,
    turned: bool = False,
    across: bool = False,
    rulers: bool = False,
    units: Units = "rackets",
    words: bool = True,
    patient: bool = False,
    shots: Container[str] | None = None,
    end: End | None = None,
    names: bool = True,
    signs: float = 1.0,
) -> Picture:
    """Return the picture of the setting ``at``.

    ``unit`` is how many metres of court one mark unit is on the medium (``look``: 1 pt at 1:307 is 0.108 m). ``you`` is the
    letter of the reader, drawn filled. ``turned`` shows the far end at the foot, ``across`` lays the court on its side; letters
    stay upright. ``rulers`` adds rackets and strides, or what ``units`` count,
    outside the fence. ``words`` False leaves out every word and digit, for a thumbnail; ``patient`` searches long for places of
    words that cover nothing, as on paper. ``shots`` are those whose balls and runs are
    drawn, all where None; of the court only the half at ``end``, where given. ``names`` False leaves the letters of people, digits and
    values, for a poster, and ``signs`` is how many times larger than other marks those are. Only ``theme.switched`` matters here: colours
    are named by role. Raises ``KeyError`` where the drill has no such setting.
    """
    setting = setting_at(drill, at) if isinstance(at, At) else at
    court = ground(drill.court)
    plan = plan_of(drill, setting, court, Page(across, turned), unit, switched=theme.switched, end=end)
    plan.you, plan.words, plan.patient, plan.signs = you, words, patient, signs
    regions = _in_play(plan)
    plan.marks += court_marks.court_marks(court, plan.page, plan.pen, regions)
    _note_court(plan, regions)
    people_marks.note_discs(plan)
    item_marks.item_marks(plan)
    people_marks.people_marks(plan)
    drawn = shot_marks.flights(plan, shots)
    shot_marks.ball_marks(plan, drawn)
    shot_marks.run_marks(plan, None if shots is None else _runs_during(setting, shots))
    item_marks.area_marks(plan, _written(plan, drawn, names=names) if words else {})
    if rulers:
        ruler.ruler_marks(plan, units)
    marks = tuple(sorted(plan.marks, key=lambda mark: mark.layer))
    extent = _extent(plan) if end is None else grown(plan.fence, 0.4 * unit)
    return Picture(marks, extent, legend_of(marks), unit, plan.page, cut=end is not None)


def _written(plan: Plan, drawn: tuple[shot_marks.Flight, ...], *, names: bool) -> dict[tuple[str, str], list[Bounds]]:
    """Add digits and words, without ``names`` only digits and values; return the room they keep free in what they name."""
    if not names:
        shot_marks.digit_marks(plan, drawn)
        values = (label for label in plan.labels if label.part.startswith("value"))
        plan.labels = [replace(label, size=label.size * plan.signs) for label in values]
        return labels.label_marks(plan, _court_box(plan))
    court_words.reserve_side_words(plan)
    shot_marks.digit_marks(plan, drawn)
    shot_marks.flag_mark(plan, drawn)
    court_words.you_word(plan)
    labels.tip_labels(plan, drawn)
    free = labels.label_marks(plan, _court_box(plan))
    court_words.net_and_side_words(plan)
    return free


def _runs_during(setting: Setting, shots: Container[str]) -> frozenset[str]:
    return frozenset(id for id, run in setting.runs.items() if run.during in shots)


def thumbnail(drill: Drill, at: At | Setting, *, theme: Theme, width: float = 90.0) -> Picture:
    """Return the picture without words for a court shown ``width`` points wide: its unit is 0.6 pt."""
    court = ground(drill.court)
    unit = 0.6 * 2 * court.side_fence / width
    return picture(drill, at, unit=unit, theme=theme, words=False)


def plan_of(
    drill: Drill, setting: Setting, court: Ground, page: Page, unit: float, *, switched: bool, end: End | None = None
) -> Plan:
    """Return an empty sheet for the picture of ``setting``, of the half at ``end`` alone where that is given."""
    outline = tuple(map(page.to_page, court_marks.outline(court)))
    fence = court_marks.fence(court, page)
    if end is not None:
        fence = _half(page, fence, -1.0 if end == "near" else 1.0)
    return Plan(
        setting=setting,
        ground=court,
        page=page,
        pen=Pen(unit, outline, switched),
        jobs={job.letter: job for job in drill.jobs},
        sequence=_sequence(drill, setting, court),
        fence=fence,
        space=Space(unit, fence),
    )


NET_CLEAR: Final = 1.6
"""How far words keep from the net, in u: it is the thickest line of the court."""

BEYOND_NET: Final = 1.6
"""How much of the other half is shown where only one is, in metres: enough to know the net by."""


def _half(page: Page, fence: Bounds, side: float) -> Bounds:
    """Return the part of ``fence`` at the near (-1) or far (1) end."""
    cut, inside = page.to_page((0.0, -side * BEYOND_NET)), page.to_page((0.0, side))
    left, low, right, high = fence
    if page.across:
        return (left, low, cut[0], high) if cut[0] > inside[0] else (cut[0], low, right, high)
    return (left, low, right, cut[1]) if cut[1] > inside[1] else (left, cut[1], right, high)


def _sequence(drill: Drill, setting: Setting, court: Ground) -> Sequence | None:
    """Return the play, None where shots go round in a circle: the review says so, and the rest is still drawn."""
    try:
        return sequence(setting, court, drill.jobs)
    except ValueError:
        return None


def _in_play(plan: Plan) -> tuple[court_marks.Polygon, ...]:
    name = plan.setting.in_play
    item = plan.setting.items.get(name) if name is not None else None
    corners = corners_of(item) if item is not None else ()
    if corners:
        other = tuple((-x, -y) for x, y in corners)
        return (corners, other) if getattr(item, "both_ends", False) else (corners,)
    return court_marks.in_play_regions(plan.ground, name)


def _note_court(plan: Plan, in_play: tuple[court_marks.Polygon, ...]) -> None:
    thick, thin = court_marks.split_lines(plan.ground.lines, in_play)
    for lines, cost, owner in ((thick, PAINTED, COURT), (thin, OUT_OF_PLAY, ASIDE_OF_PLAY)):
        for line in lines:
            plan.space.cross(tuple(map(plan.page.to_page, line)), cost, owner)
    for off in (0.0, NET_CLEAR * plan.unit, -NET_CLEAR * plan.unit):
        posts = [plan.page.to_page((sign * plan.ground.net.ends_x, off)) for sign in (-1, 1)]
        plan.space.cross(posts, PATH * 4, "net")


def _court_box(plan: Plan) -> Bounds:
    return bounds_of_points(tuple(map(plan.page.to_page, court_marks.outline(plan.ground))))


def _extent(plan: Plan) -> Bounds:
    """Return the fence and whatever stands outside it."""
    left, low, right, high = grown(plan.fence, 0.4 * plan.unit)
    for mark in plan.marks:
        if mark.kind != "ground":
            left, low = min(left, mark.bounds[0]), min(low, mark.bounds[1])
            right, high = max(right, mark.bounds[2]), max(high, mark.bounds[3])
    has_rulers = any(mark.kind == "rulers" for mark in plan.marks)
    return grown((left, low, right, high), 3 * plan.unit) if has_rulers else (left, low, right, high)
