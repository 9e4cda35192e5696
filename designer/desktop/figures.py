"""The numbers of what is picked, for the right end of the bottom line."""

from __future__ import annotations

import itertools
import math
from typing import Any

from designer.court.standards import ground
from designer.desktop.canvas.names import description
from designer.desktop.names import name_of
from designer.desktop.view import View
from designer.drill.items import Ellipse, Rectangle
from designer.drill.movement import Run, Shot
from designer.drill.places import corners_of
from designer.play.directions import direction
from designer.play.sequence import Sequence, sequence
from designer.wording.units import Units, distance


def figures(view: View) -> str:
    """Return what the selection measures: "Ball 2: forehand, cross-court, 21.6 m"; "" where nothing is picked."""
    picked = [record for id in view.selection if (record := view.setting.find(id)) is not None]
    if not picked:
        return ""
    if len(picked) > 1:
        return f"{len(picked)} picked"
    record = picked[0]
    name = name_of(view.setting, record)
    said = _of(view, record)
    return f"{name[:1].upper()}{name[1:]}: {said}" if said else f"{name[:1].upper()}{name[1:]}"


def _of(view: View, record: Any) -> str:
    drill, setting, units = view.document.shown, view.setting, view.units
    court = ground(drill.court)
    if isinstance(record, Shot | Run):
        try:
            play = sequence(setting, court, drill.jobs)
        except ValueError:
            return ""
        return _of_shot(view, play, record) if isinstance(record, Shot) else _of_run(play, record)
    shape = getattr(record, "shape", None)
    if isinstance(shape, Rectangle | Ellipse):
        (left, low), (right, high) = shape.corners
        return size_words(abs(right - left), abs(high - low), units)
    if len(corners_of(record)) > 1:
        from designer.desktop.canvas.measures import size_words as measured

        return measured(court, record, units)
    return description(setting, court, record.id, units)


def size_words(across: float, along: float, units: Units) -> str:
    """Return a size in the units a coach counts in, and in metres: "1 racket by 3 strides, 0.69 by 2.74 m"."""
    metres = f"{across:.2f} by {along:.2f} m"
    if units == "metres":
        return metres
    return f"{distance(across, 'across', units)} by {distance(along, 'along', units)}, {metres}"


def _of_shot(view: View, play: Sequence, shot: Shot) -> str:
    step = play.step(shot.id)
    if step is None:
        return ""
    court = ground(view.document.shown.court)
    words: list[str | None] = [shot.stroke, shot.wing or step.wing, direction(step, play, court)]
    if step.landing is not None:
        words.append(f"{math.dist(step.contact, step.landing):.1f} m")
    return ", ".join(word for word in words if word)


def _of_run(play: Sequence, run: Run) -> str:
    path = play.run_paths.get(run.id, ())
    return f"{sum(math.dist(a, b) for a, b in itertools.pairwise(path)):.1f} m" if len(path) > 1 else ""
