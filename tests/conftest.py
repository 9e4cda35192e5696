"""What every test stands on: no screen, no real folders of the user, no question that waits for an answer.

Qt is looked at only where it is loaded already, so that a test of a core room can run without it.
"""

import functools
import gc
import itertools
import logging
import os
import sys

import pytest
from hypothesis import Phase, settings

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

# How long an example takes says something about the machine, not about the program.
# No explaining: it traces every line of a failing example, which takes minutes on a window.
PHASES = [phase for phase in Phase if phase is not Phase.explain]
settings.register_profile("project", deadline=None, print_blob=True, max_examples=25, phases=PHASES)
# For a night: HYPOTHESIS_PROFILE=thorough python -m pytest
settings.register_profile("thorough", settings.get_profile("project"), max_examples=1000)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "project"))

HOMES = ("XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_STATE_HOME", "XDG_CACHE_HOME")
# QMenu.exec is missing: it is static and a method at once, and an instance does not see it replaced. Use `popup`.
QUESTIONS = {
    "QDialog": ("exec",),
    "QMessageBox": ("exec", "about", "critical", "information", "question", "warning"),
    "QFileDialog": ("exec", "getExistingDirectory", "getOpenFileName", "getOpenFileNames", "getSaveFileName"),
    "QInputDialog": ("getDouble", "getInt", "getItem", "getMultiLineText", "getText"),
    "QColorDialog": ("exec", "getColor"),
    "QFontDialog": ("exec", "getFont"),
}


def widgets():
    """Qt's widgets, or None where nothing has loaded them."""
    return sys.modules.get("PySide6.QtWidgets")


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config, log):
    """Give each process tests that lie side by side, so that what a file's tests share is made in one of them."""
    from xdist.scheduler import WorkStealingScheduling

    return WorkStealingScheduling(config, log) if config.getvalue("dist") == "load" else None


def pytest_collection_finish():
    """What is loaded by now stays to the end: the collector need not go through it after every few tests."""
    gc.collect()
    gc.freeze()
    gc.set_threshold(20_000, 20, 20)  # frozen records are no circles: looking for those took a fourteenth of the time


def new_homes(folder, environment):
    """Yield home folders for ever and tell the environment of each; one that was left as new is handed on."""
    for number in itertools.count():
        home = folder / str(number)
        home.mkdir()
        environment.setenv("HOME", str(home))
        for name in HOMES:
            environment.setenv(name, str(home / name.lower()))
        while not any(home.iterdir()):
            yield home


@pytest.fixture(scope="session")
def homes(tmp_path_factory):
    with pytest.MonkeyPatch.context() as environment:
        yield new_homes(tmp_path_factory.mktemp("homes"), environment)


@pytest.fixture(autouse=True)
def own_home(homes):
    """A home folder of its own for each test: settings, recovery files and caches of the user stay untouched."""
    return next(homes)


@functools.cache
def refuse_questions(qt):
    """From now on a dialog that waits for a person fails its test; questions go through a scripted object."""
    for owner, names in QUESTIONS.items():
        for name in names:
            setattr(getattr(qt, owner), name, refusal(f"{owner}.{name}"))


def refusal(name):
    def refuse(*_arguments, **_options):
        pytest.fail(f"{name} would wait for a person")

    return refuse


def close_windows(qt):
    """Close what is still in sight and return it."""
    if qt.QApplication.instance() is None:
        return []
    left = [widget for widget in qt.QApplication.topLevelWidgets() if widget.isVisible()]
    for widget in left:
        widget.hide()
        widget.deleteLater()
    return left


class Collector(logging.Handler):
    def __init__(self):
        super().__init__(logging.WARNING)
        self.messages = []

    def emit(self, record):
        self.messages.append(f"{record.name}: {record.getMessage()}")


@pytest.fixture(autouse=True)
def nothing_left(request):
    """Fails a test that asks a person, leaves a window open, or warns in a log that it does not read (`caplog`)."""
    if (qt := widgets()) is not None:
        refuse_questions(qt)
    collector = Collector()
    logging.getLogger().addHandler(collector)
    yield
    logging.getLogger().removeHandler(collector)
    if (qt := widgets()) is not None:
        left = close_windows(qt)
        assert not left, f"windows left open: {left}"
    if "caplog" not in request.fixturenames:
        assert not collector.messages, f"warnings in the log: {collector.messages}"
