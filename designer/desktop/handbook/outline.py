"""The sections and drills of a handbook as a tree: dragged into order, told apart by what has become of them."""

from __future__ import annotations

from pathlib import Path
from typing import Final, Literal

from PySide6.QtCore import QItemSelectionModel, QModelIndex, QPersistentModelIndex, QPoint, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QDragEnterEvent,
    QDragMoveEvent,
    QDropEvent,
    QKeyEvent,
    QPainter,
    QPalette,
    QPen,
)
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTreeWidget,
    QTreeWidgetItem,
    QWidget,
)

from designer.desktop.fonts import CONTROL, font, scaled
from designer.desktop.handbook.looking import Seen
from designer.desktop.style import look, scroll_bar_sheet, style
from designer.drill.handbook import BookSection, Entry, Handbook

Chosen = tuple[Literal["book", "section", "drill"], str]
"""What is chosen in the tree: the book, a section by its place from 0, a drill by its number."""

_ROLE: Final = Qt.ItemDataRole.UserRole
_KEEP: Final = QItemSelectionModel.SelectionFlag.NoUpdate
_COLUMNS: Final = ("Section or drill", "State", "Sheets", "Seen")


class Outline(QTreeWidget):
    """Shows a handbook; every wish comes out as a signal, and the tree is filled again from the handbook that follows.

    ``chose`` carries what is chosen. ``drills_moved`` carries (numbers, section, place), ``section_moved`` (place, to),
    ``files_dropped`` (paths, section, place), ``removal_wanted`` nothing.
    """

    chose = Signal(object)
    drills_moved = Signal(object, int, int)
    section_moved = Signal(int, int)
    files_dropped = Signal(object, int, int)
    removal_wanted = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setColumnCount(len(_COLUMNS))
        self.setHeaderLabels(_COLUMNS)
        self.setFont(font(CONTROL))
        self.header().setFont(font(CONTROL))
        self.header().setStretchLastSection(True)
        self.header().setSectionResizeMode(0, QHeaderView.ResizeMode.Interactive)
        self.setColumnWidth(0, scaled(430))
        self.setColumnWidth(1, scaled(84))
        self.setColumnWidth(2, scaled(64))
        heads = self.headerItem()
        assert heads is not None
        heads.setTextAlignment(2, Qt.AlignmentFlag.AlignCenter)
        self.setIndentation(scaled(18))
        self.setUniformRowHeights(True)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setDragDropMode(QAbstractItemView.DragDropMode.DragDrop)
        self.setDefaultDropAction(Qt.DropAction.MoveAction)
        self.setAccessibleName("Sections and drills")
        self.setExpandsOnDoubleClick(False)
        self._seen: dict[str, Seen] = {}
        self._sheets: dict[str, str] = {}
        self._drills: dict[str, QTreeWidgetItem] = {}
        self.itemSelectionChanged.connect(lambda: self.chose.emit(self.chosen()))
        self.setFrameShape(QTreeWidget.Shape.NoFrame)
        self.setItemDelegate(_Row(self))
        style().changed.connect(self._take_look)
        self._take_look()

    def show_book(self, book: Handbook) -> None:
        """Show ``book``; what was chosen and open stays so where it is still there."""
        chosen = self.chosen_numbers()
        first = self.chosen()
        closed = {item.text(0) for item in self._sections() if not item.isExpanded() and item.childCount()}
        blocked = self.blockSignals(True)
        self.clear()
        self._drills = {}
        for place, section in enumerate(book.sections):
            item = self._section(place, section)
            self.addTopLevelItem(item)
            for entry in section.drills:
                self._drills[entry.number] = self._drill(entry)
                item.addChild(self._drills[entry.number])
            item.setExpanded(item.text(0) not in closed)
        for number in chosen:
            if number in self._drills:
                self._drills[number].setSelected(True)
                self.setCurrentItem(self._drills[number], 0, _KEEP)
        if not chosen and first[0] == "section" and int(first[1]) < len(book.sections):
            self._sections()[int(first[1])].setSelected(True)
        self.blockSignals(blocked)

    def _sections(self) -> list[QTreeWidgetItem]:
        items = (self.topLevelItem(place) for place in range(self.topLevelItemCount()))
        return [item for item in items if item is not None]

    def show_seen(self, number: str, seen: Seen) -> None:
        """Show what is seen of a drill."""
        self._seen[number] = seen
        self._tell(number)

    def show_sheets(self, number: str, sheets: int) -> None:
        """Show how many sheets a drill takes."""
        self._sheets[number] = str(sheets)
        self._tell(number)

    def chosen(self) -> Chosen:
        """Return what is chosen, the book where nothing is; of several drills the current one."""
        items = self.selectedItems()
        current = self.currentItem()
        if not items:
            return ("book", "")
        item = current if current in items else items[0]
        kind, name = item.data(0, _ROLE)
        return (kind, name)

    def chosen_numbers(self) -> tuple[str, ...]:
        """Return the numbers of the drills that are chosen, in the order of the book."""
        return tuple(number for number, item in self._drills.items() if item.isSelected())

    def choose(self, chosen: Chosen) -> None:
        """Choose a section, a drill, or with the book nothing."""
        self.clearSelection()
        kind, name = chosen
        item = (
            self._drills.get(name) if kind == "drill" else self.topLevelItem(int(name)) if kind == "section" else None
        )
        if item is not None:
            self.setCurrentItem(item)

    def insertion(self) -> tuple[int, int]:
        """Return (section, place) at which something new belongs: after what is chosen, else at the end of the last."""
        kind, name = self.chosen()
        if kind == "drill":
            item = self._drills[name]
            return next(
                (section, parent.indexOfChild(item) + 1)
                for section, parent in enumerate(self._sections())
                if parent is item.parent()
            )
        section = int(name) if kind == "section" else self.topLevelItemCount() - 1
        item_at = self.topLevelItem(section)
        return section, item_at.childCount() if item_at is not None else 0

    def _section(self, place: int, section: BookSection) -> QTreeWidgetItem:
        item = QTreeWidgetItem([section.title or "Section without a title", "", "", _drill_count(section)])
        item.setData(0, _ROLE, ("section", str(place)))
        item.setFont(0, font(CONTROL, bold=True))
        return item

    def _drill(self, entry: Entry) -> QTreeWidgetItem:
        item = QTreeWidgetItem([f"{entry.number}  {entry.file}", entry.state, "", ""])
        item.setData(0, _ROLE, ("drill", entry.number))
        item.setFlags(item.flags() & ~Qt.ItemFlag.ItemIsDropEnabled)
        self._drills[entry.number] = item
        self._fill(item, entry.number)
        return item

    def _tell(self, number: str) -> None:
        item = self._drills.get(number)
        if item is not None:
            self._fill(item, number)

    def _fill(self, item: QTreeWidgetItem, number: str) -> None:
        seen = self._seen.get(number)
        if seen is not None:
            item.setText(0, f"{number}  {seen.leaf.title}")
            item.setText(3, seen.words)
            item.setToolTip(3, seen.words)
            item.setToolTip(0, seen.leaf.entry.file)
        item.setText(2, self._sheets.get(number, ""))
        item.setTextAlignment(2, Qt.AlignmentFlag.AlignCenter)
        self._colour(item, number)

    def _colour(self, item: QTreeWidgetItem, number: str) -> None:
        seen = self._seen.get(number)
        missing = seen is not None and seen.leaf.summary is None
        item.setFont(0, font(CONTROL))
        item.setFont(3, font(CONTROL, bold=missing))
        for column in (1, 2, 3):
            item.setForeground(column, QColor(look().ink if missing else look().soft))

    def _take_look(self, *_: object) -> None:
        now = look()
        palette = QPalette(self.palette())
        palette.setColor(QPalette.ColorRole.Base, QColor(now.panel))
        palette.setColor(QPalette.ColorRole.Highlight, QColor(now.highlighter))
        palette.setColor(QPalette.ColorRole.HighlightedText, QColor(now.ink))
        self.setPalette(palette)
        self.verticalScrollBar().setStyleSheet(scroll_bar_sheet(now))
        self.header().setStyleSheet(
            f"QHeaderView {{ background: {now.panel}; border: none; }}"
            f"QHeaderView::section {{ background: {now.panel}; color: {now.soft}; border: none;"
            f" border-bottom: 1px solid {now.hairline}; padding: {scaled(6)}px {scaled(3)}px; }}"
        )
        for number, item in self._drills.items():
            self._colour(item, number)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self.removal_wanted.emit()
            return
        super().keyPressEvent(event)

    # what is dragged

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        if _files(event):
            event.acceptProposedAction()
        else:
            super().dragEnterEvent(event)

    def dragMoveEvent(self, event: QDragMoveEvent) -> None:
        super().dragMoveEvent(event)
        if _files(event):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Ask for the move instead of making it: the tree is filled again from the handbook that follows."""
        section, place = self.place_at(event.position().toPoint())
        files = _files(event)
        event.setDropAction(Qt.DropAction.CopyAction)  # so that the view does not take its own rows away
        event.accept()
        self.drop(files, section, place)

    def drop(self, files: tuple[Path, ...], section: int, place: int) -> None:
        """Ask for what a drop at ``place`` of ``section`` means: ``files`` put in, else what is chosen moved there."""
        if files:
            self.files_dropped.emit(files, max(section, 0), place)
            return
        numbers = self.chosen_numbers()
        kind, name = self.chosen()
        if numbers:
            self.drills_moved.emit(numbers, section, place)
        elif kind == "section":
            self.section_moved.emit(int(name), section + (1 if place else 0))

    def place_at(self, point: QPoint) -> tuple[int, int]:
        """Return (section, place in it) that a drop at ``point`` of the viewport means.

        On a section's own line, drills go to its end, and above that line to the end of the section before it; another
        section goes before it, or after it where the drop is below its line.
        """
        index = self.indexAt(point)
        where = self.dropIndicatorPosition()
        if not index.isValid():
            last = self.topLevelItemCount() - 1
            return last, max(1, self._count(last))
        is_above = where == QAbstractItemView.DropIndicatorPosition.AboveItem
        is_below = where == QAbstractItemView.DropIndicatorPosition.BelowItem
        if index.parent().isValid():
            return index.parent().row(), index.row() + (1 if is_below else 0)
        section = index.row()
        if not self.chosen_numbers():
            return section, 1 if is_below else 0
        if is_above and section:
            return section - 1, self._count(section - 1)
        return section, 0 if is_above or is_below else self._count(section)

    def _count(self, section: int) -> int:
        item = self.topLevelItem(section)
        return item.childCount() if item is not None else 0


class _Row(QStyledItemDelegate):
    """Rows high enough for a poor mouse; the one the keyboard is at has a frame that leaves its words as they are."""

    def initStyleOption(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> None:
        super().initStyleOption(option, index)
        option.state &= ~QStyle.StateFlag.State_HasFocus

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        super().paint(painter, option, index)
        if option.state & QStyle.StateFlag.State_HasFocus and index.column() == 0:
            painter.setPen(QPen(QColor(look().highlighter_edge), 1))
            painter.drawRect(option.rect.adjusted(0, 1, -2, -2))

    def sizeHint(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:
        size = super().sizeHint(option, index)
        return QSize(size.width(), scaled(28))


def _files(event: QDropEvent) -> tuple[Path, ...]:
    mime = event.mimeData()
    paths = (Path(url.toLocalFile()) for url in mime.urls() if url.isLocalFile()) if mime.hasUrls() else ()
    return tuple(path for path in paths if path.suffix.lower() == ".json")


def _drill_count(section: BookSection) -> str:
    count = len(section.drills)
    return f"{count} drill{'s' * (count != 1)}"
