"""The court as it is seen: the picture of the setting in view, to scale, with zoom and pan. No tools."""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import Final

from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, Qt, QTimer, Signal
from PySide6.QtGui import QColor, QMouseEvent, QNativeGestureEvent, QPainter, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QFrame, QGraphicsView, QWidget

from designer.court.standards import ground
from designer.desktop.canvas.legend import with_legend
from designer.desktop.canvas.lens import Fit, clamped, fitted, lies_across, most, unit_metres
from designer.desktop.canvas.live import change, moves
from designer.desktop.canvas.overlay import LOOKS, Sight
from designer.desktop.canvas.scene import CourtScene
from designer.desktop.document import Document
from designer.desktop.fonts import share
from designer.desktop.view import View
from designer.drawing.page import Page
from designer.drawing.part import part
from designer.drawing.picture import Picture, picture
from designer.drawing.primitives import Bounds, Mark
from designer.drawing.themes import Theme, theme
from designer.drill.base import Point
from designer.drill.drill import Court
from designer.drill.setting import Setting

ZOOM_STEP: Final = 1.2
SMALLEST: Final = 0.5
"""It can be made so much smaller than where all of it is seen: beyond that its words only lie on one another."""

FAR: Final = 60.0
"""The scene reaches so many metres round the net: one can pan off the court, but not out of sight of it."""

MOST_WORDED: Final = 300
"""Past so many things on one court words and digits would only cover one another: none is searched a place for."""

RESTS: Final = 140
"""After so many milliseconds without a movement a hand rests, and words find their best places."""


class CourtView(QGraphicsView):
    """Shows one view of one document."""

    sight_changed = Signal()
    """The scale or the part of the court that is seen has changed."""

    def __init__(self, document: Document, view: View, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.document = document
        self.view = view
        self.court_scene = CourtScene(self)
        self._page = Page()
        self._scale = self._whole_at = 1.0
        self._fitting = True
        self._fitted_court: Court | None = None
        self._lies_by_itself = False
        self._mouse: QPointF | None = None
        self._stays_at: QPointF | None = None
        self._pictured: tuple[Setting, object, Page, float, Theme, str | None] | None = None
        self._resting = QTimer(self)
        self._resting.setSingleShot(True)
        self._resting.setInterval(RESTS)
        self._resting.timeout.connect(self._rest)
        self._dress()
        document.shown_changed.connect(self.follow)
        document.changed.connect(self._settle)
        for signal in (view.at_changed, view.you_changed, view.theme_changed, view.units_changed):
            signal.connect(self.follow)
        view.lie_changed.connect(self.fit)
        view.turned_changed.connect(self.fit)

    def _dress(self) -> None:
        # Asked for a viewport that Qt made, PySide goes through every widget class there is to learn what it is.
        self.setViewport(QWidget())
        self.setScene(self.court_scene)
        self.court_scene.setSceneRect(-FAR, -FAR, 2 * FAR, 2 * FAR)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setRenderHint(QPainter.RenderHint.Antialiasing)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setTransformationAnchor(QGraphicsView.ViewportAnchor.NoAnchor)
        self.setResizeAnchor(QGraphicsView.ViewportAnchor.AnchorViewCenter)
        self.setMinimumSize(240, 240)
        self.setAccessibleName("Court")

    @property
    def theme(self) -> Theme:
        """Return the theme of the court as it is shown."""
        return theme(self.view.theme, surface=self.document.shown.court.surface)

    @property
    def pixels_per_metre(self) -> float:
        """Return the scale."""
        return self._scale

    @property
    def sight(self) -> Sight:
        """Return how the court is seen now."""
        seen = self.mapToScene(self.viewport().rect()).boundingRect()
        return Sight(self._scale, unit_metres(self._scale, share()), self._page, seen)

    def _picture(self, unit: float, *, across: bool) -> Picture:
        shown = self.theme
        made = picture(
            self.document.shown,
            self.view.setting,
            unit=unit,
            theme=shown,
            you=self.view.you,
            turned=self.view.turned,
            across=across,
            rulers=True,
            units=self.view.units,
            words=self._has_room_for_words(),
        )
        return with_legend(made, shown)

    def _has_room_for_words(self) -> bool:
        """Whether there are so few things that a name or a digit finds a place."""
        setting = self.view.setting
        return sum(map(len, (setting.spots, setting.items, setting.shots, setting.runs))) <= MOST_WORDED

    def follow(self, *_: object) -> None:
        """Show the drill as it is now: whole, or at first only what differs while a gesture goes on or the court is crowded."""
        live = self.document.previewing or not self._has_room_for_words()
        if live and self._follow_gesture():
            return
        if self._fitting and self._fitted_court not in (None, self.document.shown.court):
            self.fit()  # another court has another size
        else:
            self.picture_whole()

    def picture_whole(self) -> None:
        """Make the whole picture anew and show it."""
        self._resting.stop()
        made = self._picture(unit_metres(self._scale, share()), across=self._page.across)
        self.court_scene.reconcile(made, self.theme)
        self._pictured = self._sheet()
        beyond = QColor(LOOKS[self.view.theme].canvas)
        if self.backgroundBrush().color() != beyond:
            self.setBackgroundBrush(beyond)  # paints all of the court again

    def _follow_gesture(self) -> bool:
        """Show what a gesture changes; return False where that asks for a whole picture."""
        if self._pictured is None or self._sheet()[1:] != self._pictured[1:]:
            return False
        moved = moves(self._pictured[0], self.view.setting)
        if moved is None:
            return False
        marks = self._part(moved.redrawn) if moved.redrawn else ()
        carried = {id: self._page.to_page(by) for id, by in moved.carried.items()}
        self.court_scene.show_change(change(self.court_scene.pictured, moved, carried, marks))
        self._resting.start()
        return True

    def _settle(self, *_: object) -> None:
        """A gesture has become a step: what it showed last is what holds, but its words have no places yet."""
        if not self.court_scene.is_whole and self._has_room_for_words():
            self.follow()

    def _rest(self) -> None:
        if self.document.previewing or not self.court_scene.is_whole:
            self.picture_whole()

    def _part(self, ids: frozenset[str]) -> tuple[Mark, ...]:
        return part(
            self.document.shown,
            self.view.setting,
            ids,
            unit=unit_metres(self._scale, share()),
            theme=self.theme,
            you=self.view.you,
            page=self._page,
        )

    def _sheet(self) -> tuple[Setting, object, Page, float, Theme, str | None]:
        """Return what a whole picture depends on, the setting first."""
        shown = self.document.shown
        return (self.view.setting, (shown.court, shown.jobs), self._page, self._scale, self.theme, self.view.you)

    def fit(self, *_: object) -> None:
        """Show the whole picture, lying as the view says or as it is larger."""
        self._fitting = True
        self._fitted_court = self.document.shown.court
        across, fit = self._best_fit()
        self._lies_by_itself = self.view.lie == "fitting"
        self._page = Page(across=across, turned=self.view.turned)
        self._whole_at = fit.scale
        self._set_scale(fit.scale)
        left, low, right, high = fit.extent
        self.centerOn(QPointF((left + right) / 2, -(low + high) / 2))
        self._look_again()

    def zoom_in(self) -> None:
        """Show less, larger, round the pointer or the middle."""
        self.zoom(ZOOM_STEP, self.pointer_place())

    def zoom_out(self) -> None:
        """Show more, smaller."""
        self.zoom(1 / ZOOM_STEP, self.pointer_place())

    def _best_fit(self) -> tuple[bool, Fit]:
        size = self.viewport().size()

        court = ground(self.document.shown.court)
        upright_size = (2 * court.side_fence, 2 * court.back_fence)

        def fit_of(across: bool) -> Fit:  # noqa: FBT001 - one of two
            def extent_at(unit: float) -> Bounds:
                return self._picture(unit, across=across).extent

            return fitted(
                size.width(), size.height(), extent_at, upright_size[::-1] if across else upright_size, share()
            )

        if self.view.lie != "fitting":
            across = self.view.lie == "across"
            return across, fit_of(across)
        if self._lies_by_itself and self._page.across:
            # It stays as it lies until it is larger the other way: a court that turns at every panel confuses.
            lying = fit_of(True)
            if lying.scale >= most(size.width(), size.height(), upright_size):
                return True, lying
            upright = fit_of(False)
            return (True, lying) if lying.scale >= upright.scale else (False, upright)
        upright = fit_of(False)
        if not lies_across(upright, Fit(most(size.width(), size.height(), upright_size[::-1]), upright.extent)):
            return False, upright  # not even a court without anything round it would gain enough
        lying = fit_of(True)
        return (True, lying) if lies_across(upright, lying) else (False, upright)

    def pointer_place(self) -> QPointF:
        """Return the pixel of the viewport where the pointer is, its middle where that is elsewhere."""
        return self._mouse if self._mouse is not None else QPointF(self.viewport().rect().center())

    def zoom(self, factor: float, at: QPointF) -> None:
        """Zoom so that what lies under ``at`` (viewport pixels) stays there."""
        scale = max(clamped(self._scale * factor), min(self._whole_at * SMALLEST, self._scale))
        if scale == self._scale:
            return
        self._fitting = False
        held = self.mapToScene(at.toPoint())
        middle = self.mapToScene(self.viewport().rect().center())
        shrunk = self._scale / scale
        self._set_scale(scale)
        self.centerOn(held + (middle - held) * shrunk)
        self._look_again()

    def _set_scale(self, scale: float) -> None:
        self._scale = scale
        self.resetTransform()
        self.scale(scale, scale)

    def _look_again(self) -> None:
        self.follow()
        self.sight_changed.emit()

    def pan(self, by: QPoint) -> None:
        """Move what is seen by so many pixels."""
        self._fitting = False
        self._move_by(by)

    def _move_by(self, by: QPoint) -> None:
        across, along = self.horizontalScrollBar(), self.verticalScrollBar()
        across.setValue(across.value() - by.x())
        along.setValue(along.value() - by.y())
        self.sight_changed.emit()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Remember where the pointer is."""
        self._mouse = event.position()
        event.accept()

    def leaveEvent(self, event: QEvent) -> None:
        """Forget where the pointer was."""
        self._mouse = None
        super().leaveEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the whole court in sight until somebody has zoomed or panned, but where it was where it is to stay."""
        super().resizeEvent(event)
        if self._stays_at is not None:
            moved = self._stays_at - self._net_on_screen()
            self._stays_at = None
            self._move_by(moved.toPoint())
        elif self._fitting:
            self.fit()

    def stay(self) -> None:
        """Stay where it is on the screen, and as large, when there is room for more of it: a hand is at work on it."""
        self._stays_at = self._net_on_screen()

    def _net_on_screen(self) -> QPointF:
        return self.viewport().mapToGlobal(self.to_pixel((0.0, 0.0)))

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom by a wheel, pan by a touchpad; Ctrl always zooms, Shift always pans."""
        pixels, angle = event.pixelDelta(), event.angleDelta()
        held = event.modifiers()
        if held & Qt.KeyboardModifier.ShiftModifier:
            self.pan(QPoint(angle.y() or angle.x(), 0))
        elif not pixels.isNull() and not held & Qt.KeyboardModifier.ControlModifier:
            self.pan(pixels)
        else:
            self.zoom(math.pow(ZOOM_STEP, angle.y() / 120), event.position())
        event.accept()

    def viewportEvent(self, event: QEvent) -> bool:
        """Zoom by two fingers on a touchpad."""
        if isinstance(event, QNativeGestureEvent):
            if event.gestureType() == Qt.NativeGestureType.ZoomNativeGesture:
                self.zoom(1 + event.value(), event.position())
            return True
        return super().viewportEvent(event)

    def to_court(self, pixel: QPointF) -> Point:
        """Return the point of the court under a pixel of the viewport, in metres."""
        at = self.viewportTransform().inverted()[0].map(pixel)
        return self._page.to_court((at.x(), -at.y()))

    def to_pixel(self, point: Point) -> QPointF:
        """Return the pixel of the viewport that shows ``point`` of the court."""
        return self.viewportTransform().map(self.sight.to_scene(point))

    def rectangle_of(self, ids: Iterable[str]) -> QRectF:
        """Return the box round the marks of ``ids`` in pixels of the viewport, null where they have none."""
        box = QRectF()
        for item in self.court_scene.marks_of(ids):
            box = box.united(item.sceneBoundingRect())
        return self.viewportTransform().mapRect(box) if not box.isNull() else box
