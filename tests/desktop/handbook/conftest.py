"""A handbook of two drills in a folder of its own, in a window that a module's tests share."""

import json
import shutil
from pathlib import Path

import pytest
from desktop import hand
from desktop.conftest import Scripted
from shiboken6 import isValid

from designer.bundle import sample

DRILLS = ("serve-open", "wide-start")


class Answers(Scripted):
    def open_handbook(self, parent, folder):
        return self._answer("handbook", folder)


def write_book(folder: Path) -> Path:
    for name in DRILLS:
        shutil.copy(sample(f"{name}.drill.json"), folder)
    drills = [
        {"number": f"1.{place}", "file": f"{name}.drill.json", "prints": "first sheet"}
        for place, name in enumerate(DRILLS, 1)
    ]
    file = folder / "aq.handbook.json"
    sections = [{"title": "First", "drills": drills}, {"title": "Second"}]
    file.write_text(json.dumps({"title": "Alder Quay", "planners": 0, "sections": sections}), encoding="utf-8")
    return file


@pytest.fixture
def file(tmp_path):
    return write_book(tmp_path)


@pytest.fixture
def open_book(qtbot, styled):
    """Opens a handbook's window, which closes without a question when the test ends."""
    from designer.desktop.handbook.book_document import BookDocument
    from designer.desktop.handbook.window import HandbookWindow
    from designer.storage.handbook import open_handbook

    made = []

    def open_(file):
        window = HandbookWindow(BookDocument(open_handbook(file), file), Answers())
        made.append(window)
        window.show()
        return window

    yield open_
    for window in filter(isValid, made):
        window.stop_printing()
        window.document.stack.setClean()
        window.close()
    hand.bury()


@pytest.fixture
def window(open_book, file):
    return open_book(file)
