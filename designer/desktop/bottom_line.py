"""One line under everything: what the review found, how long the card takes to read, the kit, and the selection."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Final

from PySide6.QtCore import QPoint, QRect, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QHBoxLayout, QLabel, QMenu, QSizePolicy, QWidget

from designer.desktop.controls import frame
from designer.desktop.document import Document
from designer.desktop.figures import figures
from designer.desktop.fonts import CONTROL, font, scaled
from designer.desktop.icons import icon, paint_icon
from designer.desktop.style import look, style
from designer.desktop.view import View

if TYPE_CHECKING:
    from designer.wording.card import CardWords

HEIGHT: Final = 34
BESIDE_PROMPT: Final = 260
"""So much of the line the checks keep while a prompt is shown."""
QWIDGETSIZE_MAX: Final = 16_777_215
"""Qt's own word for no limit; the bindings have none."""
CROWDED: Final = 300
"""With more records than that in a setting the review takes so long that it is left to those who work off the window's thread."""
PAUSE: Final = 700
"""Milliseconds without a change before the review speaks up."""

ICONS: Final = {"error": "error", "caution": "caution", "suggestion": "suggestion"}
LOOKING: Final = "Looking the drawing over …"
CLEAN: Final = "No other cautions from the drawing; inspect the court."


class ChecksButton(QAbstractButton):
    """The weightiest check with its sign; a press lists them all."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.weight = ""
        self.words = ""
        self.setFont(font(CONTROL))
        self.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def show_words(self, weight: str, words: str, more: int) -> None:
        """Show one check and how many more there are."""
        self.weight = weight
        self.words = f"{words} (+{more})" if more else words
        self.setAccessibleName(f"{weight}: {self.words}" if weight else self.words)
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(QFontMetrics(self.font()).horizontalAdvance(self.words) + 36, scaled(HEIGHT) - 4)

    def minimumSizeHint(self) -> QSize:
        return QSize(120, scaled(HEIGHT) - 4)

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        if self.underMouse():
            frame(painter, self.rect(), edge=now.hover, fill=now.hover)
        if self.hasFocus():
            frame(painter, self.rect(), edge=now.ink, fill=None, width=2)
        left = 6
        if self.weight:
            paint_icon(painter, ICONS[self.weight], QRectF(6, self.height() / 2 - 7, 14, 14), now.ink)
            left = 27
        painter.setFont(self.font())
        painter.setPen(QColor(now.ink if self.weight else now.soft))
        box = self.rect().adjusted(left, 0, -4, 0)
        text = QFontMetrics(self.font()).elidedText(self.words, Qt.TextElideMode.ElideRight, box.width() + 2)
        painter.drawText(box, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, text)


class QuietWords(QLabel):
    """Plain words that are cut short where there is no room, and never make the window wider."""

    def minimumSizeHint(self) -> QSize:
        return QSize(min(60, super().sizeHint().width()), super().minimumSizeHint().height())

    def paintEvent(self, _: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setFont(self.font())
        painter.setPen(self.palette().color(self.foregroundRole()))
        text = self.fontMetrics().elidedText(self.text(), Qt.TextElideMode.ElideRight, self.width() + 1)
        painter.drawText(self.rect(), Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, text)
        if text != self.text():
            self.setToolTip(self.text())


class BottomLine(QWidget):
    """``shown`` asks for what a check is about: (where it is, the ids).

    ``mended`` carries a check whose own mend is wanted, ``answered`` one of the answers that a check offers,
    ``accepted`` a caution that is to be accepted.
    """

    shown = Signal(object, object)
    mended = Signal(object)
    answered = Signal(object)
    accepted = Signal(object)
    reviewed = Signal()
    """The quick checks are shown, or are to be made with the others; there is time for those that take longer."""

    def __init__(self, document: Document, view: View, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._view = document, view
        self._checks: tuple[Any, ...] = ()
        self._accepted: tuple[tuple[Any, Any], ...] = ()
        self._prompt = ""
        self.setFixedHeight(scaled(HEIGHT))
        line = QHBoxLayout(self)
        line.setContentsMargins(10, 2, 16, 2)
        line.setSpacing(10)
        self.checks = ChecksButton(self)
        self.checks.clicked.connect(self._list)
        self.aloud, self.kit, self.figures = self._label(QLabel(self)), self._label(), self._label()
        self._rules = [self._rule() for _ in range(2)]
        line.addWidget(self.checks)
        for widget in (self._rules[0], self.aloud, self._rules[1], self.kit):
            line.addWidget(widget)
        line.addStretch(1)
        line.addWidget(self.figures)
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.setInterval(PAUSE)
        self._pause.timeout.connect(self._review_at_rest)
        document.changed.connect(lambda *_: self._pause.start())
        view.at_changed.connect(lambda _: self._pause.start())
        document.shown_changed.connect(self._show_figures)
        view.selection_changed.connect(self._show_figures)
        view.units_changed.connect(self._show_figures)
        style().changed.connect(self._colour)
        self._colour()
        self._show_figures()
        self._pause.start()

    def show_card(self, card: CardWords) -> None:
        """Show how long what is read aloud of ``card`` takes, and the kit."""
        from designer.wording.kit import kit
        from designer.wording.reading_time import SPOKEN, seconds_aloud, word_count
        from designer.wording.sentence import unmarked

        said = (
            s.text for section in card.sections if section.key in SPOKEN for s in section.sentences if not s.missing
        )
        count = sum(word_count(text) for text in said)
        self.aloud.setText(f"Reads aloud in {seconds_aloud(count)} s" if count else "")
        words = kit(self._document.shown, self._view.at)
        balls = self._document.shown.balls
        self.kit.setText(", ".join(([f"{balls} balls"] if balls else []) + [unmarked(each) for each in words]))
        for rule, label in zip(self._rules, (self.aloud, self.kit), strict=True):
            rule.setVisible(bool(label.text()))

    def say(self, words: str) -> None:
        """Show ``words`` at the right end; "" shows the prompt or the selection again."""
        if words:
            self.figures.setText(words)
        else:
            self._show_figures()

    def read(self, words: str) -> None:
        """Show the reading of a gesture, unless there is a prompt: the reading stands beside the pointer as well."""
        if not self._prompt:
            self.say(words)

    def prompt(self, words: str) -> None:
        """Show what the next press does until there is nothing to be said of it; the checks make room meanwhile."""
        self._prompt = words
        self.checks.setMaximumWidth(scaled(BESIDE_PROMPT) if words else QWIDGETSIZE_MAX)
        self._colour()
        self._show_figures()

    def _review_at_rest(self) -> None:
        """Run the checks, but not in the middle of a gesture: no step of it waits for them."""
        if self._document.previewing:
            self._pause.start()
        elif self.crowded:
            self._checks, self._accepted = (), ()
            self.checks.show_words("", LOOKING, 0)
            self.reviewed.emit()
        else:
            self.review()

    @property
    def crowded(self) -> bool:
        """Whether so much is on the court that the window must not wait for its checks."""
        return len(self._view.setting.ids()) > CROWDED

    def review(self) -> None:
        """Run the checks and show the weightiest of those of the setting in view."""
        from designer.review.checks import reviewed

        self._pause.stop()
        self.show_checks(*reviewed(self._document.drill, self._view.at))
        self.reviewed.emit()

    def show_checks(self, found: tuple[Any, ...], accepted: tuple[tuple[Any, Any], ...] = ()) -> None:
        """Show the weightiest of what was found; ``accepted`` cautions, each with its acceptance, stand in the list."""
        self._checks, self._accepted = found, accepted
        if self._checks:
            order = list(ICONS)
            first = min(self._checks, key=lambda check: order.index(check.weight))
            self.checks.show_words(first.weight, first.sentence.text, len(self._checks) - 1)
        else:
            self.checks.show_words("", CLEAN, 0)

    def menu(self) -> QMenu:
        """Return the list of all checks; a press on one shows what it is about, or mends it."""
        menu = QMenu(self)
        for check in self._checks:
            action = menu.addAction(icon(ICONS[check.weight], look().ink), check.sentence.text.replace("&", "&&"))
            action.triggered.connect(lambda _=False, check=check: self.shown.emit(check.at, check.about))
            for answer in check.answers:
                given = menu.addAction(f"      {answer.words[:1].upper()}{answer.words[1:]}")
                given.triggered.connect(lambda _=False, answer=answer: self.answered.emit(answer))
            if check.mend is not None:
                mend = menu.addAction("      Mend it")
                mend.triggered.connect(lambda _=False, check=check: self.mended.emit(check))
            if check.weight == "caution":
                accept = menu.addAction("      Accept it, with a reason …")
                accept.triggered.connect(lambda _=False, check=check: self.accepted.emit(check))
        if not self._checks:
            menu.addAction(CLEAN).setEnabled(False)
        if self._accepted:
            menu.addSection("Accepted")
        for check, acceptance in self._accepted:
            words = f"{check.sentence.text} Accepted: {acceptance.reason}"
            action = menu.addAction(icon("tick", look().soft), words.replace("&", "&&"))
            action.triggered.connect(lambda _=False, check=check: self.shown.emit(check.at, check.about))
        return menu

    def _list(self) -> None:
        menu = self.menu()
        menu.popup(self.checks.mapToGlobal(QPoint(0, -menu.sizeHint().height())))

    def _show_figures(self, *_: object) -> None:
        self.figures.setText(self._prompt or figures(self._view))

    def _label(self, label: QLabel | None = None) -> QLabel:
        label = QuietWords(self) if label is None else label
        label.setTextFormat(Qt.TextFormat.PlainText)
        label.setFont(font(CONTROL))
        return label

    def _rule(self) -> QWidget:
        rule = QWidget(self)
        rule.setFixedSize(1, scaled(18))
        rule.setAutoFillBackground(True)
        return rule

    def _colour(self, *_: object) -> None:
        now = look()
        self.aloud.setStyleSheet(f"color: {now.ink};")
        self.kit.setStyleSheet(f"color: {now.ink};")
        self.figures.setStyleSheet(f"color: {now.ink if self._prompt else now.soft};")
        for rule in self._rules:
            rule.setStyleSheet(f"background: {now.hairline};")
        self.update()

    def paintEvent(self, _: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(QRect(0, 0, self.width(), 1), QColor(look().hairline))
