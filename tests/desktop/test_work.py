"""Work off the window's thread: told, stopped, failed, and never two at once."""

import threading

import pytest
from desktop import hand
from PySide6.QtCore import QObject, QThreadPool

from designer.desktop.controls import Link
from designer.desktop.notice import NoticeBar
from designer.desktop.work import Work
from designer.storage.writing import Unwritable


@pytest.fixture
def bar(qtbot, styled):
    made = NoticeBar()
    qtbot.addWidget(made)
    return made


@pytest.fixture
def work(qtbot, bar):
    owner = QObject()
    made = Work(bar, owner)
    yield made
    made.stop()
    del owner


class Told:
    def __init__(self):
        self.results, self.problems = [], []

    def begin(self, work, do):
        return work.begin("Making it", do, self.results.append, self.problems.append)


def test_the_result_comes_on_the_window_s_thread(work, qtbot):
    told, threads = Told(), []
    with qtbot.waitSignal(work.finished):
        assert work.begin(
            "Making it",
            lambda _: threading.get_ident(),
            lambda found: threads.extend((found, threading.get_ident())),
            print,
        )
        assert work.busy == "Making it"
    assert threads[0] != threads[1] == threading.get_ident()
    assert work.busy == ""
    assert told.problems == []


def test_long_work_is_spoken_of_with_its_progress_and_can_be_stopped(work, bar, qtbot):
    go_on, told, reached = threading.Event(), Told(), []

    def slow(progress):
        progress.step(1, 3)
        go_on.wait(20)
        reached.append("second")
        progress.step(2, 3)
        reached.append("never")

    told.begin(work, slow)
    assert bar.words == ""  # what is soon done needs no notice
    qtbot.waitUntil(lambda: bar.words == "Making it: 1 of 3 …")
    stop = next(link for link in bar.findChildren(Link) if link.text() == "Stop")
    with qtbot.waitSignal(work.finished):
        stop.click()
    assert bar.words == ""
    assert work.busy == ""
    go_on.set()
    assert QThreadPool.globalInstance().waitForDone(5000)
    hand.settle()
    assert reached == ["second"]
    assert (told.results, told.problems) == ([], [])


def test_what_fails_is_told_in_its_own_sentence(work, qtbot):
    told = Told()

    def fail(_):
        raise Unwritable("card.pdf: not saved, because the disk is full.")

    with qtbot.waitSignal(work.finished):
        told.begin(work, fail)
    assert told.problems == ["card.pdf: not saved, because the disk is full."]


def test_a_fault_of_the_program_is_logged_and_told_without_a_traceback(work, qtbot, caplog):
    told = Told()
    with qtbot.waitSignal(work.finished):
        told.begin(work, lambda _: 1 / 0)
    assert told.problems == ["Something went wrong in the program."]
    assert "ZeroDivisionError" in caplog.text


def test_a_second_work_waits_for_the_first_to_end(work, qtbot):
    told, go_on = Told(), threading.Event()
    told.begin(work, lambda _: go_on.wait(20))
    assert not told.begin(work, lambda _: "second")
    with qtbot.waitSignal(work.finished):
        go_on.set()
    assert told.results == [True]
