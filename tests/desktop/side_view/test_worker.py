"""Work off the window's thread: the newest counts, nothing overtaken is begun, nothing forgotten is shown."""

import threading

import pytest
from PySide6.QtCore import QObject, QThread, QThreadPool
from shiboken6 import delete

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
        worker.ask("a", lambda _: QThread.currentThread() is here)
    assert worker.said == [("a", False, "")]


def test_what_was_overtaken_while_it_waited_is_never_begun(qtbot, worker, gate):
    begun = []
    worker.ask("a", lambda _: (gate.wait(5), begun.append(1)))
    worker.ask("a", lambda _: begun.append(2))
    worker.ask("a", lambda _: begun.append(3))
    gate.set()
    qtbot.waitUntil(lambda: len(worker.said) == 2)
    assert begun == [1, 3]


def test_what_is_about_something_else_by_now_is_not_shown(qtbot, worker, gate):
    worker.ask("a", lambda _: gate.wait(5) and "old")
    worker.ask("b", lambda _: "new")
    gate.set()
    qtbot.waitUntil(lambda: not worker.busy)
    assert worker.said == [("b", "new", "")]


def test_what_was_forgotten_is_not_shown(qtbot, worker, gate):
    worker.ask("a", lambda _: gate.wait(5) and "old")
    worker.forget()
    gate.set()
    qtbot.waitUntil(lambda: not worker.busy)
    assert worker.said == []


def test_a_sentence_says_why_there_is_nothing(qtbot, worker):
    def refuse(_):
        raise ValueError("There is no ball.")

    with qtbot.waitSignal(worker.finished):
        worker.ask("a", refuse)
    assert worker.said == [("a", None, "There is no ball.")]


def test_figures_on_the_way_are_told_while_nobody_asks_for_anything_newer(qtbot, worker, gate):
    so_far = []
    worker.so_far.connect(lambda *told: so_far.append(told))

    def count(job):
        job.tell(1)
        gate.wait(5)
        return job.cancelled

    worker.ask("a", count)
    qtbot.waitUntil(lambda: so_far == [("a", 1)])
    worker.forget()
    gate.set()
    qtbot.waitUntil(lambda: not worker.busy)
    assert worker.said == []


def test_work_may_outlive_its_window(qtbot, gate, capfd):
    # A window that closes while a job runs: the job must not speak to what is gone.
    window, begun = QObject(), threading.Event()
    told = []

    def long(job):
        begun.set()
        gate.wait(5)
        told.append(job.cancelled)
        job.tell("half")
        return "all"

    pool = QThreadPool()
    own = Worker(window, pool)
    own.ask("a", long)
    assert begun.wait(5)
    delete(window)
    gate.set()
    assert pool.waitForDone(5000)
    assert told == [True]
    assert capfd.readouterr().err == ""


def test_nothing_is_begun_once_it_is_stopped(qtbot, worker):
    begun = []
    worker.stop()
    worker.ask("a", lambda _: begun.append(1))
    assert (begun, worker.busy) == ([], False)
