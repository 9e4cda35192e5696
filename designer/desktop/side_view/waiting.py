"""Where to wait for the next ball, shown on the court: the place, the two widest balls, and what limits each."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from PySide6.QtGui import QBrush, QPainterPath

from designer.desktop.canvas.ink import InkItem, Stroke, pen, tag_at, tint
from designer.desktop.canvas.overlay import LOOKS
from designer.desktop.fonts import NOTE, font
from designer.drill.base import Point

if TYPE_CHECKING:
    from designer.desktop.canvas.court_canvas import CourtCanvas
    from designer.numbers.recovery import Recovery

_ABOVE: Final = 90.0
_PLACE: Final = 9.0
_LANDS: Final = 4.0
_LIMITS: Final = {
    "the net": "any wider: the net",
    "the sideline": "any wider: out at the side",
    "the back line": "any wider: out behind",
    "the speed": "any wider: too far",
    "nothing": "",
}


class WaitingLayer:
    """Draws one recovery place on one canvas, until it is cleared."""

    def __init__(self, canvas: CourtCanvas) -> None:
        self._canvas = canvas
        self._ink = InkItem(_ABOVE)
        canvas.court_scene.addItem(self._ink)
        self._shown: tuple[Recovery, str] | None = None
        canvas.sight_changed.connect(self._draw)

    @property
    def shown(self) -> Recovery | None:
        """Return what is shown."""
        return None if self._shown is None else self._shown[0]

    def show(self, place: Recovery | None, letter: str) -> None:
        """Show where ``letter`` waits; None shows nothing."""
        self._shown = None if place is None else (place, letter)
        self._draw()

    def labels(self) -> tuple[str, ...]:
        """Return the words that stand on the court."""
        if self._shown is None:
            return ()
        place, letter = self._shown
        ends = (f"{end.stroke}\n{_LIMITS[end.limit]}".strip() for end in (place.left, place.right))
        return (f"{letter} waits", *ends)

    def _draw(self) -> None:
        if self._shown is None:
            self._ink.draw()
            return
        place, _ = self._shown
        sight = self._canvas.sight
        colour, scale = LOOKS[self._canvas.view.theme].highlighter_edge, sight.scale
        wedge = QPainterPath(sight.to_scene(place.contact))
        for corner in (place.left.landing, place.right.landing):
            wedge.lineTo(sight.to_scene(corner))
        wedge.closeSubpath()
        lines = QPainterPath()
        for end in (place.left.landing, place.right.landing, place.behind):
            lines.moveTo(sight.to_scene(place.contact))
            lines.lineTo(sight.to_scene(end))
        strokes = [
            Stroke(wedge, None, QBrush(tint(colour, 0.10))),
            Stroke(lines, pen(colour, 1.2, scale, dash=(6, 5))),
        ]
        for spot, radius in ((place.behind, _PLACE), (place.left.landing, _LANDS), (place.right.landing, _LANDS)):
            strokes.append(
                Stroke(self._round(spot, radius / scale), pen(colour, 1.6, scale), QBrush(tint(colour, 0.5)))
            )
        self._ink.draw(tuple(strokes), 4 / scale)
        small = font(NOTE)
        ends = ((place.behind, 1), (place.left.landing, -1), (place.right.landing, -1))
        tags = []
        for words, (spot, way) in zip(self.labels(), ends, strict=True):
            at = sight.to_scene(spot)
            down = (24 if (spot[1] < 0) == (way > 0) else -24) / scale
            at.setY(at.y() + down)
            tags.append(tag_at(words, at, small, scale))
        self._ink.say(tuple(tags), LOOKS[self._canvas.view.theme], small, scale)

    def _round(self, spot: Point, radius: float) -> QPainterPath:
        path = QPainterPath()
        path.addEllipse(self._canvas.sight.to_scene(spot), radius, radius)
        return path
