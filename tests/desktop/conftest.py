"""A window whose questions are answered by a script, and the settled world that a window's test stands on."""

from random import Random

import numpy as np  # noqa: F401 - a window's thread may be loading it while `pytest.approx` looks at it
import pytest
from desktop import hand
from desktop.kept import Shelf, as_it_was, open_blank, open_sample
from shiboken6 import isValid

from designer.desktop.blank import blank
from designer.desktop.document import Document
from designer.desktop.prompts import Prompts


class Scripted(Prompts):
    """Answers as told, in order, and remembers what was asked. A question without an answer fails the test."""

    def __init__(self):
        self.answers = []
        self.asked = []

    def _answer(self, *asked):
        self.asked.append(asked)
        assert self.answers, f"asked without an answer: {asked}"
        return self.answers.pop(0)

    def unsaved(self, parent, name):
        return self._answer("unsaved", name)

    def yes(self, parent, question, more, verb):
        return self._answer("yes", question)

    def choose(self, parent, question, more, answers):
        return self._answer("choose", question, more, tuple(answers))

    def say(self, parent, sentence, more=""):
        self.asked.append(("say", sentence, more))

    def text(self, parent, question, value=""):
        return self._answer("text", question)

    def open_paths(self, parent, folder):
        return self._answer("open", folder)

    def printer(self, parent, prepare):
        made = self._answer("printer")
        if made is not None:
            prepare(made)
        return made

    def save_path(self, parent, suggestion, kinds):
        return self._answer("save", suggestion)


@pytest.fixture
def prompts():
    return Scripted()


@pytest.fixture
def source():
    return Random(7)


@pytest.fixture
def document(qapp, source):
    return Document(blank(source), source=source)


@pytest.fixture
def styled(qapp):
    """The program's style, light whatever the machine is set to."""
    from designer.desktop.style import style

    style().choose("light")
    return style()


@pytest.fixture
def make_window(qtbot, styled, prompts):
    """Makes a window that closes without a question when the test ends."""
    from designer.desktop.window import MainWindow

    made = []

    def make(document, opened=None, *, shown=True):
        window = MainWindow(document, prompts, opened)
        window.resize(1366, 768)
        made.append(window)
        if shown:
            window.show()
            qtbot.waitExposed(window)
            qtbot.waitUntil(lambda: bool(window.column.sentences()))
        return window

    yield make
    for window in filter(isValid, made):
        window.work.stop()
        window.document.stack.setClean()
        window.close()
    hand.bury()


@pytest.fixture
def window(make_window, document):
    return make_window(document)


@pytest.fixture(scope="session")
def shelf(tmp_path_factory):
    kept = Shelf(tmp_path_factory.mktemp("shelf"))
    yield kept
    kept.close()


@pytest.fixture
def wide_kept(shelf, qtbot, styled, prompts):
    """The sample "wide-start" at its fed progression, in a window that many tests share, each finding it as new."""
    if shelf.window is None:
        shelf.window = open_sample(prompts, "wide-start", Random(7))
    yield from shown(shelf.window, prompts, "p-fed", qtbot)


@pytest.fixture
def blank_kept(shelf, qtbot, styled, prompts):
    """A blank court in a window that many tests share, each finding it as new."""
    if shelf.blank is None:
        shelf.blank = open_blank(prompts, Random(7))
    yield from shown(shelf.blank, prompts, shelf.blank.document.drill.progressions[0].id, qtbot)


def shown(window, prompts, progression, qtbot):
    """Yield a shared window as it was at first, in sight for one test."""
    window.prompts = prompts
    as_it_was(window, (progression,))
    window.show()
    qtbot.waitExposed(window)
    qtbot.waitUntil(lambda: bool(window.column.sentences()))
    hand.settle()
    yield window
    window.hide()
    hand.settle()
