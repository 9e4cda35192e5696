"""Show the players: the court alone, large, one shot a press, with the sentence that is said of it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetricsF,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPixmap,
    QResizeEvent,
)
from PySide6.QtWidgets import QWidget

from designer.court.standards import ground
from designer.desktop.canvas.legend import column_width
from designer.desktop.canvas.lens import fitted, unit_metres
from designer.desktop.fonts import NOTE, family
from designer.desktop.look import Look
from designer.desktop.style import look
from designer.drawing.picture import Picture, picture
from designer.drawing.primitives import Bounds, Layer, Mark, Primitive, bounds_of
from designer.drawing.qt import paint, paint_primitive
from designer.drawing.samples import legend_shapes
from designer.drawing.themes import Theme, theme
from designer.drill.drill import Drill
from designer.drill.setting import At, setting_at
from designer.play.sequence import Step, sequence
from designer.wording.card import card_words
from designer.wording.sentence import Sentence, unmarked
from designer.wording.units import Units

LARGER: Final = 1.6
"""Marks are so much larger than in the window: they are looked at from a bench, not from a chair."""

PALE: Final = 0.32
"""How much is left of balls and runs that were."""

SAID: Final = 0.135
"""How much of the height is for what is said. It is kept free from press to press, so that the court stands still."""

SIZES: Final = (0.036, 0.03, 0.025, 0.021)
"""Letters of what is said, as shares of the height, the largest that fit."""

LEGEND_PITCH: Final = 14.0

KEYS: Final = "Space or → goes on   ·   ← goes back   ·   1 to 9 for a progression   ·   Esc leaves"


@dataclass(frozen=True, slots=True)
class Scene:
    """One press: what is new, what was before, and what is said. The first has nothing new, the last has everything."""

    words: tuple[str, ...]
    new: frozenset[str] = frozenset()
    before: frozenset[str] = frozenset()


def scenes(drill: Drill, at: At, units: Units) -> tuple[Scene, ...]:
    """Return what is shown of the setting at ``at``, press by press: who stands where, each ball with its runs, all of it."""
    setting = setting_at(drill, at)
    card = card_words(drill, at, "player", units=units)
    said = {section.key: [each for each in section.sentences if not each.missing] for section in card.sections}
    # What is said of the start where it has a digit is said of the feed, which then has no step of its own.
    told = [each for each in said.get("start", ()) if each.lead is not None] + said.get("steps", [])
    begin = (card.objective,) if card.objective else tuple(unmarked(each.text) for each in said.get("start", ()))
    try:
        groups = list(_together(sequence(setting, ground(drill.court), drill.jobs).steps))
    except ValueError:
        groups = []
    made = [Scene(begin)]
    shown: frozenset[str] = frozenset()
    for group in groups:
        runs = {run.id for step in group for run in step.runs}
        new = frozenset({step.shot.id for step in group} | runs)
        made.append(Scene(_words(told, new), new, shown))
        shown |= new
    everything = frozenset((*setting.shots, *setting.runs))
    points = tuple(_led(each) for each in said.get("points", ()))
    if everything and points:
        made.append(Scene(points, everything))
    return tuple(made)


def _together(steps: tuple[Step, ...]) -> Iterator[list[Step]]:
    """Yield the steps of one press: a ball, or all the balls that may be played in its stead."""
    group: list[Step] = []
    for step in steps:
        if group and not (step.alternatives and step.digit == group[0].digit):
            yield group
            group = []
        group.append(step)
    if group:
        yield group


def _led(sentence: Sentence) -> str:
    """Return a sentence with what stands before it: "+1" of points."""
    before = "" if sentence.lead is None else sentence.lead.text
    return f"{before}  {unmarked(sentence.text)}".strip()


def _words(steps: list[Sentence], ids: frozenset[str]) -> tuple[str, ...]:
    return tuple(unmarked(each.text) for each in steps if ids & set(each.about))


class PlayersShow(QWidget):
    """A window of its own that fills the screen. It shows a value: the drill may be changed meanwhile."""

    left = Signal()

    def __init__(self, drill: Drill, at: At, *, units: Units, turned: bool, parent: QWidget | None = None) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._drill, self._units, self._turned = drill, units, turned
        self._picture: Picture | None = None
        self._scale = 1.0
        self.at = at
        self.number = 0
        self.scenes = scenes(drill, at, units)
        self.setWindowTitle(drill.title or "Drill Designer")
        self._tell()

    @property
    def scene(self) -> Scene:
        """Return what is shown now."""
        return self.scenes[self.number]

    def go_on(self) -> None:
        """Show the next ball, past the last one the next progression."""
        if self.number + 1 < len(self.scenes):
            self._take(self.number + 1)
        else:
            self._go_to_progression(self._progression() + 1)

    def go_back(self) -> None:
        """Show the ball before, before the first one the end of the progression before."""
        if self.number > 0:
            self._take(self.number - 1)
        elif self._go_to_progression(self._progression() - 1):
            self._take(len(self.scenes) - 1)

    def _progression(self) -> int:
        return [each.id for each in self._drill.progressions].index(self.at.progression)

    def _go_to_progression(self, number: int) -> bool:
        if not 0 <= number < len(self._drill.progressions):
            return False
        self.at = At(self._drill.progressions[number].id)
        self.scenes = scenes(self._drill, self.at, self._units)
        self._picture = None
        self._take(0)
        return True

    def _take(self, number: int) -> None:
        self.number = number
        self._tell()
        self.update()

    def _tell(self) -> None:
        words = " ".join(self.scene.words)
        self.setAccessibleName(f"{self._heading()}. {self.number + 1} of {len(self.scenes)}")
        self.setAccessibleDescription(words)

    def _heading(self) -> str:
        progression = self._drill.progressions[self._progression()]
        number = f"{self._progression() + 1}  " if len(self._drill.progressions) > 1 else ""
        return "   ·   ".join(filter(None, (self._drill.title, f"{number}{progression.name}".strip())))

    # keys and presses

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = event.key()
        if key in (Qt.Key.Key_Escape, Qt.Key.Key_Q):
            self.close()
        elif key in (
            Qt.Key.Key_Space,
            Qt.Key.Key_Right,
            Qt.Key.Key_Down,
            Qt.Key.Key_Return,
            Qt.Key.Key_Enter,
            Qt.Key.Key_PageDown,
        ):
            self.go_on()
        elif key in (Qt.Key.Key_Left, Qt.Key.Key_Up, Qt.Key.Key_Backspace, Qt.Key.Key_PageUp):
            self.go_back()
        elif key == Qt.Key.Key_Home:
            self._take(0)
        elif key == Qt.Key.Key_End:
            self._take(len(self.scenes) - 1)
        elif Qt.Key.Key_1 <= key <= Qt.Key.Key_9:
            self._go_to_progression(key - Qt.Key.Key_1)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() == Qt.MouseButton.LeftButton:
            self.go_on()
        elif event.button() == Qt.MouseButton.RightButton:
            self.go_back()

    def closeEvent(self, event: object) -> None:
        super().closeEvent(event)  # type: ignore[arg-type]
        self.left.emit()

    # how it looks

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._picture = None

    def _letters(self, share: float, *, bold: bool = False) -> QFont:
        """Return the bundled face, as large as a share of the window's height."""
        face = QFont(family())
        face.setPixelSize(max(NOTE, round(self.height() * share)))
        face.setBold(bold)
        face.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
        return face

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(self.rect(), QColor(now.canvas))
        rim = self.height() * 0.025
        width = self.width() - 2 * rim
        heading, keys = self._letters(0.026, bold=True), self._letters(0.0165)
        top = rim + QFontMetricsF(heading).height() * 1.3
        foot = self.height() - rim - QFontMetricsF(keys).height()
        said = QRectF(rim, foot - self.height() * SAID, width, self.height() * SAID)
        self._court(painter, QRectF(rim, top, width, said.top() - top - rim / 2), now)
        painter.setPen(QColor(now.soft))
        painter.setFont(heading)
        painter.drawText(QPointF(rim, rim + QFontMetricsF(heading).ascent()), self._heading())
        painter.setPen(QColor(now.ink))
        words = "\n".join(self.scene.words)
        painter.setFont(self._fitting_letters(words, said))
        painter.drawText(said, _WRAPPED, words)
        painter.setPen(QColor(now.faint))
        painter.setFont(keys)
        place = f"{self.number + 1} of {len(self.scenes)}   ·   {KEYS}"
        painter.drawText(QPointF(rim, self.height() - rim), place)

    def _fitting_letters(self, words: str, box: QRectF) -> QFont:
        """Return the largest letters in which ``words`` stand in ``box``: many sentences stand smaller than one."""
        for share in SIZES:
            letters = self._letters(share)
            if QFontMetricsF(letters).boundingRect(box, _WRAPPED, words).height() <= box.height():
                return letters
        return self._letters(SIZES[-1])

    def _court(self, painter: QPainter, box: QRectF, now: Look) -> None:
        """Paint the court and under it the legend, as many columns as the window has room for."""
        colours = theme(now.name, surface=self._drill.court.surface)
        if self._picture is None:
            self._picture, self._scale = self._fitted(box, colours)
        drawn, scene = self._picture, self.scene
        pixels = drawn.unit * self._scale
        legend, tall = self._legend(drawn, colours, box.width(), pixels)
        setting = setting_at(self._drill, self.at)
        moving = {*setting.shots, *setting.runs}
        middle = QPointF(box.center().x(), box.top() + (box.height() - tall) / 2)
        pale = [mark for mark in drawn.marks if mark.id in scene.before]
        full = [mark for mark in drawn.marks if mark.id not in moving or mark.id in scene.new]
        # The court lies under what was before, and that under what is new; its words stand on top.
        ground_marks = [mark for mark in full if mark.layer <= Layer.COURT]
        self._paint_marks(painter, ground_marks, middle, colours)
        self._paint_pale(painter, pale, middle, colours)
        self._paint_marks(painter, [mark for mark in full if mark.layer > Layer.COURT], middle, colours)
        painter.save()
        wide = bounds_of(legend)[2] if legend else 0.0
        painter.translate(box.center().x() - wide / 2, box.bottom() - tall)
        for shape in legend:
            paint_primitive(painter, shape, colours)
        painter.restore()

    def _paint_marks(self, painter: QPainter, marks: Iterable[Mark], middle: QPointF, colours: Theme) -> None:
        assert self._picture is not None
        left, low, right, high = self._picture.extent
        painter.save()
        painter.translate(middle)
        painter.scale(self._scale, self._scale)
        painter.translate(-(left + right) / 2, (low + high) / 2)
        paint(painter, marks, colours)
        painter.restore()

    def _paint_pale(self, painter: QPainter, marks: list[Mark], middle: QPointF, colours: Theme) -> None:
        """Paint ``marks`` as one pale sheet: each on its own, what lies under it would shine through."""
        if not marks:
            return
        ratio = self.devicePixelRatioF()
        sheet = QPixmap(self.size() * ratio)
        sheet.setDevicePixelRatio(ratio)
        sheet.fill(Qt.GlobalColor.transparent)
        over = QPainter(sheet)
        over.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint_marks(over, marks, middle, colours)
        over.end()
        painter.setOpacity(PALE)
        painter.drawPixmap(0, 0, sheet)
        painter.setOpacity(1.0)

    def _legend(
        self, drawn: Picture, colours: Theme, width: float, pixels: float
    ) -> tuple[tuple[Primitive, ...], float]:
        column = column_width() * pixels
        columns = min(max(1, int(width / column)), max(1, len(drawn.legend)))
        return legend_shapes(drawn.legend, colours, pixels, columns=columns, column_width=column, pitch=LEGEND_PITCH)

    def _fitted(self, box: QRectF, colours: Theme) -> tuple[Picture, float]:
        """Return the picture as it is larger, upright or across, and its scale in pixels a metre."""
        court = ground(self._drill.court)
        upright = (2 * court.side_fence, 2 * court.back_fence)
        best: tuple[Picture, float] | None = None
        for across in (False, True):

            def made(unit: float, across: bool = across) -> Picture:  # noqa: FBT001 - one of two
                return picture(
                    self._drill, self.at, unit=LARGER * unit, theme=colours, turned=self._turned, across=across
                )

            def extent_at(unit: float) -> Bounds:
                return made(unit).extent

            court_size = upright[::-1] if across else upright
            fit = fitted(box.width(), box.height(), extent_at, court_size)
            drawn = made(unit_metres(fit.scale))
            # How high the legend is follows from the scale, and the scale from what it leaves.
            tall = self._legend(drawn, colours, box.width(), drawn.unit * fit.scale)[1]
            fit = fitted(box.width(), box.height() - tall, extent_at, court_size)
            drawn = made(unit_metres(fit.scale))
            if best is None or fit.scale > best[1]:
                best = drawn, fit.scale
        assert best is not None
        return best


_WRAPPED: Final = int(Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignVCenter)
