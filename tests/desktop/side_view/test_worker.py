"""Work off the window's thread: the newest counts, nothing overtaken is begun, nothing forgotten is shown."""

import threading

import pytest
from PySide6.QtCore import QThread

from designer.desktop.side_view.worker import Worker


@pytest.fixture
def worker(qapp):
    made = Worker()
    made.said = []
    made.finished.connect(lambda *told: made.said.append(told))
    return made


@pytest.fixture
def gate():
    """Holds the first piece of work until it is opened."""
    held = threading.Event()
    yield held
    held.set()


def test_it_works_elsewhere_and_tells_here(qtbot, worker):
    here = QThread.currentThread()
    with qtbot.waitSignal(worker.finished):
        worker.ask("a", lambda: QThread.currentThread() is here)
    assert worker.said == [("a", False, "")]


def test_what_was_overtaken_while_it_waited_is_never_begun(qtbot, worker, gate):
    begun = []
    worker.ask("a", lambda: (gate.wait(5), begun.append(1)))
    worker.ask("a", lambda: begun.append(2))
    worker.ask("a", lambda: begun.append(3))
    gate.set()
    qtbot.waitUntil(lambda: len(worker.said) == 2)
    assert begun == [1, 3]


def test_what_is_about_something_else_by_now_is_not_shown(qtbot, worker, gate):
    worker.ask("a", lambda: gate.wait(5) and "old")
    worker.ask("b", lambda: "new")
    gate.set()
    qtbot.waitUntil(lambda: not worker.busy)
    assert worker.said == [("b", "new", "")]


def test_what_was_forgotten_is_not_shown(qtbot, worker, gate):
    worker.ask("a", lambda: gate.wait(5) and "old")
    worker.forget()
    gate.set()
    qtbot.waitUntil(lambda: not worker.busy)
    assert worker.said == []


def test_a_sentence_says_why_there_is_nothing(qtbot, worker):
    def refuse():
        raise ValueError("There is no ball.")

    with qtbot.waitSignal(worker.finished):
        worker.ask("a", refuse)
    assert worker.said == [("a", None, "There is no ball.")]
