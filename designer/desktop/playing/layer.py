"""What moves on the court while it is played: the marks of the people, the ball with its shadow. All else steps back."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QBrush, QColor, QPainterPath

from designer.desktop.canvas.ink import InkItem, Stroke, pen, tint
from designer.drill.places import locate

if TYPE_CHECKING:
    from designer.desktop.canvas.court_canvas import CourtCanvas
    from designer.desktop.playing.course import Moment

BALL: Final = 5.0
"""Radius of a ball on the ground, in pixels."""
GROWS: Final = 0.4
"""So much larger for each metre of height."""
LARGEST: Final = 17.0
FALLS: Final = 0.35
"""Metres to the side and down that a shadow falls for each metre of height."""
PALE: Final = 0.25
"""How much is left of balls and runs that are not in play."""
_ABOVE: Final = 120.0


class PlayLayer:
    """Shows moments on one canvas, and puts everything back when it is cleared."""

    def __init__(self, canvas: CourtCanvas) -> None:
        self._canvas = canvas
        self._shadow, self._ball = InkItem(_ABOVE), InkItem(_ABOVE + 1)
        self._choices = InkItem(_ABOVE - 1)
        for item in (self._shadow, self._ball, self._choices):
            canvas.court_scene.addItem(item)
        self._moved: set[str] = set()
        self._paled: set[str] = set()

    @property
    def radius(self) -> float:
        """Return how large the ball is shown, in pixels; 0 where it is not."""
        return self._ball.boundingRect().width() / 2 * self._canvas.pixels_per_metre

    def show_moment(self, moment: Moment | None, choices: Iterable[str] = ()) -> None:
        """Show where everything is; the balls of ``choices`` stand out."""
        chosen = tuple(choices)
        setting = self._canvas.view.setting
        others = {*setting.shots, *setting.runs} - set(chosen)
        if moment is not None:
            others -= {moment.leg.step.shot.id, *(run.id for run in moment.leg.step.runs)}
        self._pale(others)
        if moment is None:
            self._ball.draw()
            self._shadow.draw()
            return
        self._move_people(moment)
        self._draw_ball(moment)

    def clear(self) -> None:
        """Put everything back as the drill has it, and take the ball away."""
        self._pale(set())
        for item in self._canvas.court_scene.marks_of(self._moved):
            item.setPos(0, 0)
        self._moved.clear()
        for ink in (self._shadow, self._ball, self._choices):
            ink.draw()

    def remove(self) -> None:
        """Clear, and leave the scene."""
        self.clear()
        for ink in (self._shadow, self._ball, self._choices):
            self._canvas.court_scene.removeItem(ink)

    def _pale(self, ids: set[str]) -> None:
        scene = self._canvas.court_scene
        for item in scene.marks_of(self._paled - ids):
            item.setOpacity(1.0)
        for item in scene.marks_of(ids):
            item.setOpacity(PALE)
        self._paled = ids

    def _move_people(self, moment: Moment) -> None:
        setting, sight = self._canvas.view.setting, self._canvas.sight
        for spot in setting.spots.values():
            now, drawn = moment.people.get(spot.job), locate(setting, spot.place)
            if now is None or drawn is None:
                continue
            by = sight.to_scene(now) - sight.to_scene(drawn)
            for item in self._canvas.court_scene.marks_of((spot.id,)):
                item.setPos(by)
            self._moved.add(spot.id)

    def _draw_ball(self, moment: Moment) -> None:
        if moment.ball is None:
            self._ball.draw()
            self._shadow.draw()
            return
        x, y, height = moment.ball
        scale = self._canvas.pixels_per_metre
        at = self._canvas.sight.to_scene((x, y))
        radius = min(BALL * (1 + GROWS * max(height, 0.0)), LARGEST) / scale
        fall = FALLS * max(height, 0.0)
        theme = self._canvas.theme
        colour, edge = theme.colour("ball"), theme.colour("paper")
        assert colour is not None
        self._shadow.draw(
            (Stroke(_round(at + QPointF(fall, fall), BALL / scale), None, QBrush(tint("#000000", 0.35))),)
        )
        outline = pen(edge.hex if edge is not None else "#FFFFFF", 1.5, scale)
        self._ball.draw((Stroke(_round(at, radius), outline, QBrush(QColor(colour.hex))),), 2 / scale)


def _round(at: QPointF, radius: float) -> QPainterPath:
    path = QPainterPath()
    path.addEllipse(at, radius, radius)
    path.setFillRule(Qt.FillRule.WindingFill)
    return path
