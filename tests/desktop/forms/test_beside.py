"""What is worked out stands beside the forms of what it is worked out from, and nowhere else."""

from designer.desktop.forms.beside import beside_of
from designer.drill.base import place
from designer.drill.conditions import Event
from designer.drill.items import Area, Cone, Line, Rectangle
from designer.drill.rules import Swap


def test_areas_lines_and_swaps_are_told_of(qapp, styled):
    shape = Rectangle(form="rectangle", corners=((0, 0), (1, 1)))
    records = (
        Area(kind="area", id="a", shape=shape),
        Line(kind="line", id="l", corners=((0, 0), (1, 1))),
        Swap(id="s", on=(Event(what="starts", count=5),)),
    )
    assert all(beside_of(record) is not None for record in records)
    assert beside_of(Cone(kind="cone", id="c", place=place(0, 0))) is None
