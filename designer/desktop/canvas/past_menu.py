"""The part of the menu on the court that ties a ball to a cone, a disc or a line: it is to land past it.

A ball is past a line and not past a point, so a cone or a disc gets a line in thought across the court, level with it.
"""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QMenu

from designer.desktop.names import name_of
from designer.drill.conditions import In
from designer.drill.drill import Drill
from designer.drill.edits import put
from designer.drill.ids import Chooser, new_id
from designer.drill.items import Cone, Disc, Line
from designer.drill.movement import FEEDS, Shot
from designer.drill.places import anchor, locate
from designer.drill.rules import Keep, Rule
from designer.drill.setting import At, Setting, setting_at

if TYPE_CHECKING:
    from designer.desktop.canvas.court_canvas import CourtCanvas


LEVEL: Final = 0.1
"""Metres within which a line is level with a thing."""


def add_past_entries(menu: QMenu, canvas: CourtCanvas) -> None:
    """Add to ``menu`` a rule for each ball that may land past what is picked alone; nothing where that marks no depth."""
    bench = canvas.bench
    picked = bench.view.selection
    item = bench.setting.items.get(next(iter(picked))) if len(picked) == 1 else None
    if not isinstance(item, Cone | Disc | Line) or bench.document.read_only:
        return
    if isinstance(item, Line) and not _lies_across(item):
        return
    balls = balls_towards(bench.setting, item.id)
    if not balls:
        return
    menu.addSeparator()
    for shot in balls:
        name = name_of(bench.setting, shot)
        menu.addAction(f"{name[:1].upper()}{name[1:]}: must land past it", partial(_ask_for, canvas, item.id, shot.id))


def balls_towards(setting: Setting, id: str) -> list[Shot]:
    """Return the balls that land in the half in which the thing ``id`` lies; no feeds, which nobody is to answer for."""
    at = anchor(setting, id)
    if at is None:
        return []
    ends = ((shot, locate(setting, shot.to)) for shot in setting.shots.values() if shot.to is not None)
    return [shot for shot, end in ends if shot.stroke not in FEEDS and end is not None and end[1] * at[1] > 0]


def with_line(drill: Drill, at: At, id: str, half: float, source: Chooser) -> tuple[Drill, str]:
    """Return ``drill`` with a line to be past, and its id: the line ``id`` itself, else one level with that thing.

    The line reaches ``half`` metres to both sides; one that lies there already is taken.
    """
    setting = setting_at(drill, at)
    stands = anchor(setting, id)
    if id not in setting.items or isinstance(setting.items[id], Line) or stands is None:
        return drill, id
    level = stands[1]
    for item in setting.items.values():
        if isinstance(item, Line) and all(abs(y - level) < LEVEL for _, y in item.corners):
            return drill, item.id
    line = Line(
        kind="line",
        id=new_id("line", source, setting.ids()),
        corners=((-half, level), (half, level)),
        marked="in thought",
        name=f"{name_of(setting, setting.items[id])} line",
    )
    return put(drill, at, line), line.id


def _lies_across(line: Line) -> bool:
    (x, y), (other_x, other_y) = line.corners[0], line.corners[-1]
    return abs(other_x - x) > abs(other_y - y)


def _ask_for(canvas: CourtCanvas, id: str, shot: str) -> None:
    bench = canvas.bench
    drill, line = with_line(bench.drill, bench.at, id, bench.ground.singles, bench.source)
    past = In(area=line, side="behind", judged="bounce")
    known = setting_at(drill, bench.at).ids()
    rule = Rule(id=new_id("rule", bench.source, known), of=(shot,), must=Keep(do="keep", where=(past,)))
    bench.perform("Add a rule", put(drill, bench.at, rule))
    QTimer.singleShot(0, canvas, lambda: canvas.opened.emit(rule.id))  # once the card has its sentence
