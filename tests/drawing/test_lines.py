import pytest

from designer.drawing import lines
from designer.drawing.pen import Pen
from designer.drawing.primitives import Path, bounds_of
from designer.drill.items import Area, Line, Rectangle

PEN = Pen(1.0)


def inked(shapes):
    return [shape for shape in shapes if not (shape.style.stroke or shape.style.fill or "").startswith("casing")]


def test_discs_stand_evenly_on_a_line_of_two_ends_and_at_each_given_corner():
    assert lines.discs_along(((0.0, 0.0), (8.0, 0.0)), 5) == (
        (0.0, 0.0),
        (2.0, 0.0),
        (4.0, 0.0),
        (6.0, 0.0),
        (8.0, 0.0),
    )
    corners = ((0.0, 0.0), (1.0, 0.0), (5.0, 0.0))
    assert lines.discs_along(corners, None) == lines.discs_along(corners, 9) == corners


def test_a_line_whose_marking_is_not_known_is_drawn_in_thought():
    line = ((0.0, 0.0), (30.0, 0.0))
    assert tuple(lines.line(PEN, line, "made of light")) == tuple(lines.line(PEN, line, "in thought"))


def test_tape_is_a_closed_strip_round_its_line():
    (strip,) = (shape for shape in inked(lines.line(PEN, ((0.0, 0.0), (30.0, 0.0)), "tape")) if isinstance(shape, Path))
    assert strip.closed
    assert bounds_of([strip])[1::2] == pytest.approx((-1.45, 1.45))


def test_chalk_ends_in_bars_so_that_a_tick_reads():
    shapes = inked(lines.line(PEN, ((0.0, 0.0), (30.0, 0.0)), "chalk"))
    bars = sorted(shape.points for shape in shapes if shape.style.width == 1.3)
    # Each bar is 6.2 long, and its outer edge lies where the chalk ends.
    assert [abs(low[1] - high[1]) for low, high in bars] == pytest.approx([6.2, 6.2])
    assert [low[0] for low, _ in bars] == pytest.approx([0.65, 29.35])


def running(drawing, line, **options):
    made = drawing.made(line, **options)
    marks = [mark for mark in made.marks if mark.id == line.id and mark.kind == "line in thought"]
    return [shape.points for mark in marks for shape in mark.primitives]


def test_a_line_runs_on_in_thought_to_the_fence_or_to_the_next_painted_line(drawing):
    behind = Line(
        kind="line", id="chalk", corners=((-4.1148, -12.8016), (4.1148, -12.8016)), marked="chalk", runs_on=True
    )
    ends = {round(x, 3) for way in running(drawing, behind) for x, _ in way}
    # The side fence of a club court: half of 36 ft and 10 ft of run-off, ITF Technical Booklet 2015, table 5.
    assert ends == {-4.115, 4.115, round(-28 * 0.3048, 3), round(28 * 0.3048, 3)}
    inside = Line(
        kind="line", id="lane", corners=((-1.3716, -10.9728), (-1.3716, -7.3152)), marked="chalk", runs_on=True
    )
    ends = {round(y, 3) for way in running(drawing, inside) for _, y in way}
    # Rules of tennis, rule 1: the service line is 21 ft and the baseline 39 ft from the net.
    assert ends == {-10.973, -7.315, round(-21 * 0.3048, 3), round(-39 * 0.3048, 3)}


def test_an_areas_sides_show_what_is_laid_there_and_its_own_edge_on_painted_lines(drawing):
    zone = Area(
        kind="area",
        id="zone",
        shape=Rectangle(form="rectangle", corners=((0.0, 6.4008), (4.1148, 9.0))),
        marked="throw-down",
    )
    made = drawing.made(zone)
    laid = next(mark for mark in made.marks if mark.kind == "throw-down line")
    sides = {shape.points for shape in inked(laid.primitives)}
    # The outer side lies on the singles line, the front one on the service line: two are free.
    assert len(sides) == 2
    assert all({x for x, _ in side} == {0.0} or {y for _, y in side} == {9.0} for side in sides)
    assert "throw-down line" in [entry.kind for entry in made.legend]
