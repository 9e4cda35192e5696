"""The controls of a form that are chosen from, and which control belongs to which kind of field."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any, Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QLabel, QWidget

from designer.desktop.controls import CheckBox, DropDown, IconButton, Picker, Segments, fill, stacked
from designer.desktop.flow import Flow
from designer.desktop.fonts import CONTROL, NOTE, font
from designer.desktop.forms.box import Box
from designer.desktop.forms.context import ON_COURT, Context
from designer.desktop.forms.cost_box import CostBox
from designer.desktop.forms.fields import (
    Block,
    Choice,
    Cost,
    Day,
    Flag,
    Hits,
    Line,
    Lines,
    Many,
    Measure,
    Number,
    Options,
    Pick,
    Points,
    Rounds,
    Span,
    Translations,
    Where,
)
from designer.desktop.forms.place_boxes import PICK, CornersBox, WhereBox
from designer.desktop.forms.rounds_box import RoundsBox
from designer.desktop.forms.text_boxes import LineBox, LinesBox, TextBox, TranslationsBox
from designer.desktop.forms.typed_boxes import DayBox, HitsBox, MeasureBox, NumberBox, SpanBox
from designer.desktop.forms.wish import Wish
from designer.desktop.style import look
from designer.desktop.usual import OPEN, UsualButton

FEW: Final = 4
NARROW: Final = 34
"""Options that are this few, with no more letters in all than this, stand side by side; more go into a drop-down."""


class ChoiceBox(Box):
    """One of a few fixed values: side by side where they fit, else in a drop-down."""

    def __init__(self, kind: Choice) -> None:
        super().__init__()
        self._kind = kind
        letters = sum(len(text) for _, text in kind.options)
        self._segments: Segments | None = None
        self._usual: QLabel | UsualButton | None = None
        if len(kind.options) <= FEW and letters <= NARROW:
            self._segments = Segments(kind.options, may_be_empty=kind.optional)
            self._segments.chosen.connect(lambda chosen: self.give(chosen[0] if chosen else None))
            self.setFocusProxy(self._segments.segments()[0])
            self._lay(self._segments)
        else:
            self._list = DropDown()
            self._list.activated.connect(lambda _: self.give(self._list.currentData()))
            self.setFocusProxy(self._list)
            self._lay(self._list)

    def first(self) -> QWidget:
        chosen = [] if self._segments is None else [each for each in self._segments.segments() if each.isChecked()]
        return chosen[0] if chosen else super().first()

    def _lay(self, control: QWidget) -> None:
        """Put the control in its row, and behind or under it that the answer it offers is still to be kept."""
        if self._kind.usual is None:
            self.row.addWidget(control, 1)
            return
        inner = QWidget()
        if isinstance(control, Segments):
            self._usual = label = QLabel(f"usual: {OPEN}")
            label.setTextFormat(Qt.TextFormat.PlainText)
            label.setFont(font(NOTE))
            label.setMinimumHeight(20)
            flow = Flow(inner, gap=6)
            flow.addWidget(control)
            flow.addWidget(label)
        else:
            self._usual = offer = UsualButton()
            offer.clicked.connect(lambda: self.give(self._kind.usual))
            under = stacked(inner, 4)
            under.addWidget(control)
            under.addWidget(offer)
        self.row.addWidget(inner, 1)

    def name(self, words: str) -> None:
        super().name(words)
        if isinstance(self._usual, UsualButton):
            self._usual.offer(dict(self._kind.options)[self._kind.usual], words)
        if self._segments is None:
            self._list.setAccessibleName(words)
        else:
            for segment in self._segments.segments():
                segment.setAccessibleName(f"{words}: {segment.text()}")

    def show_value(self, value: Any, context: Context) -> None:
        del context
        if self._usual is not None:
            self._usual.setVisible(value is None and self.offers)
            if isinstance(self._usual, QLabel):
                self._usual.setStyleSheet(f"color: {look().soft};")
        if self._segments is not None:
            usual = (self._kind.usual,) if self._kind.usual is not None and self.offers else ()
            self._segments.show_values(() if value is None else (value,), usual)
            return
        options: list[tuple[Any, str]] = []
        if self._kind.optional:
            options.append((None, "not said"))
        fill(self._list, [*options, *self._kind.options], value)


class _OnCourt(Box):
    """What is chosen from a list, and where some of it lies on the court can be picked there too."""

    def __init__(self, kind: Pick | Many) -> None:
        super().__init__()
        self._options = kind.options
        self._context: Context | None = None
        self._words = ""
        self.button: IconButton | None = None

    def add_button(self) -> None:
        """Put the button that asks for it on the court behind the list, where there is anything to pick."""
        if self._options in ON_COURT:
            self.button = IconButton("pick", PICK, size=14)
            self.button.clicked.connect(self.begin)
            self.button.hide()
            self.row.addWidget(self.button)

    def name(self, words: str) -> None:
        super().name(words)
        self._words = words
        if self.button is not None:
            self.button.setAccessibleName(f"{words}: {PICK.lower()}")

    def wish(self, context: Context) -> Wish:
        """Return what is to be picked."""
        raise NotImplementedError

    def follow(self, context: Context) -> None:
        """Take note of the drill as it is now."""
        self._context = context
        if self.button is not None:
            self.button.setVisible(context.court is not None)

    def is_among(self, options: Callable[[Context], Sequence[Any]]) -> bool:
        """Whether it is one of ``options`` that is chosen here."""
        return self._options is options

    def begin(self) -> None:
        """Ask for it on the court."""
        if self._context is not None:
            self.ask(self._context, self.wish(self._context))


class PickBox(_OnCourt):
    """One of the values that the drill holds."""

    def __init__(self, kind: Pick) -> None:
        super().__init__(kind)
        self._kind = kind
        self._list = DropDown()
        self._list.activated.connect(lambda _: self.give(self._list.currentData()))
        self.row.addWidget(self._list)
        self.setFocusProxy(self._list)
        self.add_button()

    def name(self, words: str) -> None:
        super().name(words)
        self._list.setAccessibleName(words)

    def wish(self, context: Context) -> Wish:
        return Wish(
            self._words,
            "one",
            self.give,
            options=self._kind.options(context),
            chosen=lambda: (self._list.currentData(),),
        )

    def show_value(self, value: Any, context: Context) -> None:
        self.follow(context)
        first: list[tuple[Any, str]] = [(None, self._kind.nothing)] if self._kind.optional else []
        fill(self._list, [*first, *self._kind.options(context)], value)


class ManyBox(_OnCourt):
    """Any number of the values that the drill holds: a menu of ticks."""

    def __init__(self, kind: Many) -> None:
        super().__init__(kind)
        self._kind = kind
        self._value: tuple[Any, ...] = ()
        self._picker = Picker()
        self._picker.setFont(font(CONTROL))
        self.row.addWidget(self._picker)
        self.setFocusProxy(self._picker)
        self.add_button()
        self._usual: UsualButton | None = None
        if kind.usual:
            self._usual = UsualButton()
            self._usual.clicked.connect(lambda: self.give(kind.usual))
            self.row.addWidget(self._usual)

    def name(self, words: str) -> None:
        super().name(words)
        self._picker.setAccessibleName(words)
        if self._usual is not None:
            self._usual.offer(self._kind.nothing, words)

    def wish(self, context: Context) -> Wish:
        return Wish(
            self._words,
            "many",
            lambda each: self._toggle(each, each not in self._value),
            options=self._kind.options(context),
            chosen=lambda: self._value,
        )

    def show_value(self, value: Any, context: Context) -> None:
        self.follow(context)
        self._value = tuple(value)
        options = [*self._kind.options(context)]
        options += [(each, f"{each} (not there)") for each in self._value if each not in dict(options)]
        said = dict(options)
        nothing = "not said" if self._usual is not None else self._kind.nothing
        self._picker.setText(", ".join(said[each] for each in self._value) or nothing)
        if self._usual is not None:
            self._usual.setVisible(not self._value)
        menu = self._picker.menu()
        menu.clear()
        none = QAction(nothing, menu, checkable=True)
        none.setChecked(not self._value)
        none.triggered.connect(lambda _: self.give(()))
        menu.addAction(none)
        if self._kind.none_yet and not options:
            menu.addAction(self._kind.none_yet).setEnabled(False)
        for each, words in options:
            action = QAction(words, menu, checkable=True)
            action.setChecked(each in self._value)
            action.toggled.connect(lambda on, each=each: self._toggle(each, on))
            menu.addAction(action)

    def _toggle(self, each: Any, on: object) -> None:
        without = tuple(other for other in self._value if other != each)
        self.give((*without, each) if on else without)


class FlagBox(Box):
    """Yes or no, or with ``asked`` not known either."""

    def __init__(self, kind: Flag) -> None:
        super().__init__()
        self._kind = kind
        if kind.asked:
            options: Options = ((True, "yes"), (False, "no"))
            self._segments = Segments(options)
            self._segments.chosen.connect(lambda chosen: self.give(chosen[0] if chosen else None))
            self.row.addWidget(self._segments, 1)
        else:
            self._box = CheckBox(kind.words)
            self._box.clicked.connect(lambda: self.give(self._box.isChecked()))
            self.row.addWidget(self._box)
            self.row.addStretch(1)
            self.setFocusProxy(self._box)

    def show_value(self, value: Any, context: Context) -> None:
        del context
        if self._kind.asked:
            self._segments.show_values(() if value is None else (value,))
        else:
            self._box.setChecked(bool(value))


class Complaint(QLabel):
    """A sentence under a control that could not take what was typed."""

    def __init__(self) -> None:
        super().__init__()
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setFont(font(NOTE))
        self.setWordWrap(True)
        self.hide()

    def say(self, sentence: str) -> None:
        """Show ``sentence``, or nothing."""
        self.setText(sentence)
        self.setStyleSheet(f"color: {look().ink};")
        self.setVisible(bool(sentence))


def box_for(kind: Any) -> Box:
    """Return the control for a simple kind of field; raise ``TypeError`` for a kind that holds records."""
    makers: dict[type, Any] = {
        Choice: ChoiceBox,
        Pick: PickBox,
        Many: ManyBox,
        Number: NumberBox,
        Span: SpanBox,
        Measure: MeasureBox,
        Line: LineBox,
        Flag: FlagBox,
        Where: WhereBox,
        Points: CornersBox,
        Block: lambda kind: TextBox(kind.hint),
        Lines: LinesBox,
        Day: lambda _: DayBox(),
        Hits: lambda _: HitsBox(),
        Cost: CostBox,
        Rounds: lambda _: RoundsBox(),
        Translations: lambda _: TranslationsBox(),
    }
    if type(kind) not in makers:
        raise TypeError(f"{type(kind).__name__} holds records")
    made: Box = makers[type(kind)](kind)
    return made
