"""Controls in a line: none is lost or covered, however narrow the place."""

import pytest
from PySide6.QtCore import QRect
from PySide6.QtWidgets import QPushButton, QWidget

from designer.desktop.controls import Segments
from designer.desktop.flow import Flow


@pytest.fixture
def row(qtbot, styled):
    holder = QWidget()
    qtbot.addWidget(holder)
    flow = Flow(holder, gap=6)
    flow.setContentsMargins(4, 3, 4, 3)
    for words in ("one", "two", "three", "a rather long four"):
        button = QPushButton(words)
        button.setFixedSize(20 + 8 * len(words), 26)
        flow.addWidget(button)
    return holder, flow


@pytest.mark.parametrize("width", [180, 240, 320, 600])
def test_nothing_overlaps_or_leaves_its_place(row, width):
    _, flow = row
    height = flow.heightForWidth(width)
    flow.setGeometry(QRect(0, 0, width, height))
    boxes = [flow.itemAt(n).geometry() for n in range(flow.count())]
    for number, box in enumerate(boxes):
        assert box.left() >= 4
        assert box.right() < width - 4 + 1
        assert box.bottom() < height - 3 + 1
        assert not any(box.intersects(other) for other in boxes[number + 1 :])


def test_it_takes_one_line_where_there_is_room_and_more_where_there_is_not(row):
    _, flow = row
    assert flow.heightForWidth(2000) == 26 + 6
    assert flow.heightForWidth(170) > 2 * 26


def test_a_hidden_control_takes_no_room(row):
    holder, flow = row
    holder.show()
    whole = flow.sizeHint().width()
    flow.itemAt(3).widget().hide()
    assert flow.sizeHint().width() < whole
    holder.hide()


def test_words_of_a_choice_that_do_not_fit_go_into_a_second_frame(qtbot, styled):
    choice = Segments([(n, f"a long answer {n}") for n in range(4)])
    qtbot.addWidget(choice)
    choice.resize(260, choice.heightForWidth(260))
    choice.show()
    assert len(choice.layout().lines()) > 1
    choice.hide()
