"""One window for many tests: each finds it as it was, and leaves it hidden."""

import pytest

from designer.bundle import sample
from designer.desktop.blank import blank
from designer.desktop.document import Document
from designer.drill.setting import At
from designer.storage.reading import open_drill


class Shelf:
    """Keeps the window, and closes it in a home of its own when all tests are done."""

    def __init__(self, home):
        self.home = home
        self.window = None
        self.blank = None

    def close(self):
        for window in (self.window, self.blank):
            if window is not None:
                self._close(window)

    def _close(self, window):
        with pytest.MonkeyPatch.context() as patch:
            for name in ("HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_STATE_HOME", "XDG_CACHE_HOME"):
                patch.setenv(name, str(self.home))
            window.document.stack.setClean()
            window.close()


def open_sample(prompts, name, source):
    """A window with a sample in it, as large as a small laptop's screen."""
    from designer.desktop.window import MainWindow

    path = sample(f"{name}.drill.json")
    opened = open_drill(path)
    window = MainWindow(Document(opened.drill, path=path, source=source), prompts, opened)
    window.resize(1366, 768)
    return window


def open_blank(prompts, source):
    """A window with a blank court in it, as large as a small laptop's screen."""
    from designer.desktop.window import MainWindow

    window = MainWindow(Document(blank(source), source=source), prompts, None)
    window.resize(1366, 768)
    return window


def as_it_was(window, at):
    """Takes back all that was done, and looks at one setting with nothing open or picked."""
    window.column.close_form()
    window.document.end_preview()
    window.bursts.end()
    window.document.stack.setIndex(0)
    window.document.stack.clear()
    window.notice.clear()
    window.view.set_tool("select")
    window.view.go_to(At(*at))
    window.view.select(())
    window.view.set_hovered(None)
    window.column.bar.choose("player")
