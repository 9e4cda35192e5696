"""Before printing: the very pages that will come out, for whom, on which paper, and of which settings."""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, cast

from PySide6.QtCore import QSize, Qt, QUrl, Signal
from PySide6.QtGui import QColor, QDesktopServices, QImage, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from designer.desktop.controls import CheckBox, DropDown, FilledButton, Link, Segments, fill, tinted
from designer.desktop.dialog import Dialog
from designer.desktop.fonts import CONTROL, NOTE, font, scaled
from designer.desktop.notice import NoticeBar
from designer.desktop.pages import Sheet, fit_paper, image, print_sheets, sheets
from designer.desktop.papers import CHOICES
from designer.desktop.printing import Manner, Order, bound, card_path, cards_path, found_brand, made, ordered
from designer.desktop.prompts import CARDS
from designer.desktop.style import field_sheet, look, scroll_bar_sheet
from designer.desktop.work import Progress, Work
from designer.drill.setting import At, addresses
from designer.storage.today import kept_today
from designer.storage.writing import write_file

if TYPE_CHECKING:
    from designer.desktop.window import MainWindow
    from designer.wording.card import Reader

READERS: Final = (("player", "Player"), ("coach", "Coach"), ("stand-in", "Stand-in"))
THIS: Final = ("this", "This one")
PROGRESSIONS: Final = ("progressions", "Each progression, as set")
ALL: Final = ("all", "All, with easier and harder")
SIDE: Final = 300
"""Pixels for the choices."""
SMALLEST: Final = 0.55
LARGEST: Final = 1.9
"""Pixels to a point in the preview: pages take the width there is, within reason."""
TABLE: Final = 24
"""Pixels of the table on every side of a page."""


class PagePicture(QWidget):
    """One page on the grey of a table."""

    def __init__(self, sheet: Sheet, number: int, count: int, parent: QWidget) -> None:
        super().__init__(parent)
        self.sheet = sheet
        self._image: QImage | None = None
        self.setAccessibleName(f"Page {number} of {count}")
        self._scale = 1.0

    def take_width(self, width: int) -> None:
        """Be as wide as ``width`` pixels, within reason."""
        self._scale = min(max((width - 2) / self.sheet.width, SMALLEST), LARGEST)
        self._image = None
        self.setFixedSize(round(self.sheet.width * self._scale) + 2, round(self.sheet.height * self._scale) + 2)

    def paintEvent(self, _: QPaintEvent) -> None:
        ratio = self.devicePixelRatioF()
        if self._image is None or self._image.devicePixelRatio() != ratio:
            self._image = image(self.sheet, self._scale * ratio)
            self._image.setDevicePixelRatio(ratio)
        painter = QPainter(self)
        painter.drawImage(1, 1, self._image)
        painter.setPen(QColor(look().edge))
        painter.drawRect(self.rect().adjusted(0, 0, -1, -1))


class PrintPreview(Dialog):
    """Shows the pages and prints them, or keeps them as one PDF. What is chosen here is for this printing only."""

    printed = Signal()
    kept = Signal(object, object)
    """(path that was offered, path): the card is kept there."""

    def __init__(self, window: MainWindow, paper: str, *, grey: bool, each: bool = False) -> None:
        super().__init__(window)
        self.setWindowTitle("Print the card")
        self._window = window
        self._reader: Reader = window.column.bar.reader
        self._which, self._paper = "this", paper
        self._each = each
        self._pages: tuple[Sheet, ...] = ()
        self._orders: tuple[Order, ...] = ()
        self._cards: list[bytes] = []
        self._pictures: list[PagePicture] = []
        self.notice = NoticeBar()
        self.work = Work(self.notice, self)
        self._again = False
        self.work.finished.connect(self._went_on)
        self._make(grey=grey)
        self.resize(QSize(1040, 720).boundedTo(window.screen().availableSize()))
        self.refresh()

    def pages(self) -> tuple[Sheet, ...]:
        """Return the pages that are shown."""
        return self._pages

    def _make(self, *, grey: bool) -> None:
        tinted(self, look().window)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(self.notice)
        row = QHBoxLayout()
        row.setSpacing(0)
        whole.addLayout(row, 1)
        row.addWidget(self._choices(grey=grey))
        self._scroll = QScrollArea()
        self._scroll.setFrameShape(QFrame.Shape.NoFrame)
        self._scroll.setWidgetResizable(True)
        self._scroll.setAccessibleName("Pages")
        self._scroll.verticalScrollBar().setStyleSheet(scroll_bar_sheet(look()))
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        row.addWidget(self._scroll, 1)

    def _choices(self, *, grey: bool) -> QWidget:
        side = QWidget(self)
        side.setFixedWidth(scaled(SIDE))
        column = QVBoxLayout(side)
        column.setContentsMargins(20, 18, 20, 18)
        column.setSpacing(6)
        self.readers = self._segments(column, "For", READERS, self._reader, self._take_reader)
        column.addSpacing(6)
        column.addWidget(self._label("Which", CONTROL))
        self.which = DropDown()
        self.which.setAccessibleName("Which")
        fill(self.which, self._settings(), self._which)
        self.which.setEnabled(self.which.count() > 1)
        self.which.activated.connect(lambda _: self._take_which(self.which.currentData()))
        column.addWidget(self.which)
        column.addSpacing(6)
        column.addWidget(self._label("Paper", CONTROL))
        self.papers = DropDown()
        self.papers.setAccessibleName("Paper")
        fill(self.papers, CHOICES, self._paper)
        self.papers.activated.connect(lambda _: self._take_paper(self.papers.currentData()))
        column.addWidget(self.papers)
        column.addSpacing(8)
        self._say_how(column, grey=grey)
        column.addSpacing(14)
        self.count = self._label("", NOTE)
        self.count.setWordWrap(True)
        column.addWidget(self.count)
        column.addStretch(1)
        self.print_button = FilledButton("Print …")
        self.print_button.clicked.connect(self.print)
        self.keep_button, leave = Link("Keep as PDF …"), Link("Close")
        self.keep_button.clicked.connect(self.keep)
        leave.clicked.connect(self.close)
        for widget in (self.print_button, self.keep_button, leave):
            column.addWidget(widget, 0, Qt.AlignmentFlag.AlignLeft)
        return side

    def _say_how(self, column: QVBoxLayout, *, grey: bool) -> None:
        """Put into ``column`` what the sheets are to be like, and what they are to carry beside the drill."""
        self.grey = CheckBox("For a photocopier")
        self.grey.setChecked(grey)
        self.across, self.binder = CheckBox("On its side"), CheckBox("Margin for a binder")
        self.sealed = CheckBox("Edge for lamination")
        for box in (self.grey, self.across, self.binder, self.sealed):
            box.clicked.connect(self.refresh)
            column.addWidget(box)
        column.addSpacing(8)
        column.addWidget(self._label("A code leads to", CONTROL))
        column.addWidget(self._address())
        column.addSpacing(8)
        self.named = CheckBox("With the names of today")
        self.named.setChecked(True)
        self.named.clicked.connect(self.refresh)
        column.addWidget(self.named)
        self.today = Link("Who plays today …")
        self.today.clicked.connect(self._name_players)
        column.addWidget(self.today, 0, Qt.AlignmentFlag.AlignLeft)

    def _settings(self) -> list[tuple[str, str]]:
        """Return what can be chosen: the setting in view, and more where the drill has more."""
        drill = self._window.document.drill
        more = [PROGRESSIONS] if len(drill.progressions) > 1 else []
        return [THIS, *more, *([ALL] if any(at.variation is not None for at in addresses(drill)) else [])]

    def _address(self) -> QLineEdit:
        """Return the field for the address that is printed as a code: at first that of the brand."""
        brand = found_brand(self._window.document.path)[0].brand
        self._offered = brand.address if brand is not None else ""
        self.address = QLineEdit(self._offered)
        self.address.setPlaceholderText("no code")
        self.address.setAccessibleName("A code leads to")
        self.address.setStyleSheet(field_sheet(look()))
        self.address.setFont(font(CONTROL))
        self._leads = self._offered
        self.address.editingFinished.connect(self._take_address)
        return self.address

    def _segments(
        self, column: QVBoxLayout, words: str, options: tuple[tuple[str, str], ...], value: str, take: Any
    ) -> Segments:
        column.addSpacing(6)
        column.addWidget(self._label(words, CONTROL))
        made = Segments(options, may_be_empty=False)
        made.setAccessibleName(words)
        made.show_values((value,))
        made.chosen.connect(lambda values: take(values[0]))
        column.addWidget(made)
        return made

    def _label(self, words: str, size: int) -> QLabel:
        label = QLabel(words)
        label.setTextFormat(Qt.TextFormat.PlainText)
        label.setFont(font(size))
        label.setStyleSheet(f"color: {look().soft};")
        label.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        return label

    def _take_reader(self, reader: str) -> None:
        self._reader = cast("Reader", reader)
        self.refresh()

    def _take_which(self, which: str) -> None:
        self._which = which
        self.refresh()

    def _take_paper(self, paper: str) -> None:
        self._paper = paper
        self.refresh()

    def _name_players(self) -> None:
        self._window.deeds.card.name_players().kept.connect(self.refresh)

    def _take_address(self) -> None:
        if self.address.text().strip() != self._leads:
            self._leads = self.address.text().strip()
            self.refresh()

    # the pages

    def manner(self) -> Manner:
        """Return how the card is to lie on its paper."""
        boxes = (self.across, self.binder, self.sealed)
        is_poster = self._paper.startswith("poster")
        for box in (*boxes, self.address):
            box.setEnabled(not is_poster)
        across, binder, sealed = (box.isChecked() for box in boxes)
        return Manner(
            across, binder, sealed, None if self._leads == self._offered else self._leads, self.named.isChecked()
        )

    def orders(self) -> tuple[Order, ...]:
        """Return what is to be printed, in the order of play."""
        window = self._window
        ats: list[At] = [window.view.at]
        if self._which != "this":
            everything = self._which == "all"
            ats = [at for at in addresses(window.document.drill) if everything or at.variation is None]
        order = partial(ordered, window.filing, window.view, self._reader, paper=self._paper, each=self._each)
        self.named.setEnabled(kept_today(window.document.drill.id) is not None)
        grey, manner = self.grey.isChecked(), self.manner()
        return tuple(order(grey=grey, at=at, manner=manner) for at in ats)

    def refresh(self) -> None:
        """Make the pages anew; what is being made already is given up."""
        if self.work.busy:
            self._again = True
            self.work.stop()
            return
        orders = self._orders = self.orders()
        self.print_button.setEnabled(False)
        self.keep_button.setEnabled(False)
        self.count.setText("The pages are being made …")
        self.work.begin("Making the pages", partial(_made_all, orders), self._show, self._sorry)

    def _went_on(self) -> None:
        if self._again:
            self._again = False
            self.refresh()
        elif not self._pages:
            self.count.setText("No pages were made.")

    def _show(self, cards: list[tuple[bytes, tuple[str, ...]]]) -> None:
        self._cards = [pdf for pdf, _ in cards]
        self._pages = tuple(sheet for pdf in self._cards for sheet in sheets(pdf))
        table = QWidget()
        tinted(table, look().title)
        column = QVBoxLayout(table)
        column.setContentsMargins(TABLE, TABLE, TABLE, TABLE)
        column.setSpacing(18)
        self._pictures = []
        for number, sheet in enumerate(self._pages, 1):
            self._pictures.append(PagePicture(sheet, number, len(self._pages), table))
            column.addWidget(self._pictures[-1], 0, Qt.AlignmentFlag.AlignHCenter)
        column.addStretch(1)
        self._take_widths()
        self._scroll.setWidget(table)
        notices = sorted({notice for _, each in cards for notice in each})
        said = "1 page" if len(self._pages) == 1 else f"{len(self._pages)} pages"
        self.count.setText("\n".join((f"{said}, in true size.", *notices)))
        self.print_button.setEnabled(True)
        self.keep_button.setEnabled(True)

    def _take_widths(self) -> None:
        room = self.width() - scaled(SIDE) - self._scroll.verticalScrollBar().sizeHint().width() - 2 * TABLE
        for each in self._pictures:
            each.take_width(room)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._take_widths()

    def _sorry(self, reason: str) -> None:
        self._window.prompts.say(self, "The pages were not made.", reason)

    # what is done with them

    def print(self) -> None:
        """Ask which printer, and send the pages there."""
        if not self._pages or self.work.busy:
            return
        printer = self._window.prompts.printer(self, lambda new: fit_paper(new, self._pages[0]))
        if printer is None:
            return
        pages = self._pages

        def send(progress: Progress) -> None:
            print_sheets(printer, pages, progress.step)

        self.work.begin("Printing", send, lambda _: self._printed(len(pages)), self._not_printed)

    def _printed(self, count: int) -> None:
        self.printed.emit()
        self._window.bottom.say(f"{count} page{'' if count == 1 else 's'} sent to the printer.")
        self.close()

    def _not_printed(self, reason: str) -> None:
        self._window.prompts.say(self, "The card was not printed.", reason)

    def keep(self) -> None:
        """Keep the pages that are shown as one PDF, named after what is in it."""
        if not self._cards or self.work.busy:
            return
        window, orders, cards = self._window, self._orders, self._cards
        if len(cards) == 1:
            offered = card_path(window.filing, window.view, self._reader, orders[0].at)
        else:
            offered = cards_path(window.filing, self._reader, everything=self._which == ALL[0])
        path = window.prompts.save_path(self, offered, CARDS)
        if path is None:
            return
        if path.suffix.lower() != ".pdf":
            path = path.with_name(f"{path.name}.pdf")

        def write(_: Progress) -> None:
            write_file(path, cards[0] if len(cards) == 1 else bound(orders[0], cards))

        self.work.begin("Writing the card", write, lambda _: self._tell_kept(offered, path), self._sorry)

    def _tell_kept(self, offered: Path, path: Path) -> None:
        self.kept.emit(offered, path)
        self.notice.say(
            "kept",
            f"The card is kept: {path.name}.",
            ("Open it", lambda: show_file(path)),
            ("Open its folder", lambda: show_file(path.parent)),
        )

    def done(self, result: int) -> None:
        """Close; what is being made is given up."""
        self.work.stop()
        super().done(result)


def show_file(path: Path) -> None:
    """Open a file or a folder in whatever the system opens it with."""
    QDesktopServices.openUrl(QUrl.fromLocalFile(str(path)))


def _made_all(orders: tuple[Order, ...], progress: Progress) -> list[tuple[bytes, tuple[str, ...]]]:
    cards = []
    for number, order in enumerate(orders, 1):
        progress.step(number, len(orders))
        cards.append(made(order))
    return cards
