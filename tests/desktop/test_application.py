"""The program's windows: opened, found again, recovered after a crash; and what is loaded before the first key."""

import subprocess
import sys
from pathlib import Path

import pytest
from desktop import hand

import designer
from designer.bundle import sample
from designer.desktop.application import Windows, report_faults
from designer.storage.recovery import Keeper, copies

ROOT = Path(designer.__file__).resolve().parent.parent


@pytest.fixture
def windows(qtbot, styled, prompts):
    made = Windows(prompts)
    yield made
    for window in made.all():
        window.document.stack.setClean()
        window.close()
    hand.bury()


def test_several_files_are_several_windows(windows):
    paths = [sample("wide-start.drill.json"), sample("hoop-red.drill.json")]
    windows.open(paths)
    assert [window.document.path for window in windows.all()] == paths


def test_a_blank_court_makes_way_for_the_first_drill_but_not_for_work(windows, prompts):
    windows.new()
    windows.open([sample("wide-start.drill.json")])
    assert [window.document.path.name for window in windows.all()] == ["wide-start.drill.json"]
    drawn = windows.new()
    hand.click(drawn.start_row.counts.segments()[1])
    windows.open([sample("hoop-red.drill.json")])
    assert len(windows.all()) == 3


def test_a_drill_that_is_open_comes_to_the_front(windows):
    windows.open([sample("wide-start.drill.json")])
    windows.open([sample("wide-start.drill.json")])
    assert len(windows.all()) == 1


def test_what_cannot_be_read_is_told_in_a_sentence_and_the_rest_is_opened(windows, prompts, tmp_path):
    broken = tmp_path / "broken.drill.json"
    broken.write_text('{"format": 1, ')
    windows.open([broken, sample("wide-start.drill.json"), tmp_path / "gone.drill.json"])
    assert [window.document.path.name for window in windows.all()] == ["wide-start.drill.json"]
    said = [more for kind, _, more in prompts.asked if kind == "say"]
    assert len(said) == 2
    assert "broken.drill.json" in said[0]
    assert "gone.drill.json" in said[1]


def test_after_a_crash_the_copy_is_offered_and_opened_unsaved(windows, prompts, document):
    keeper = Keeper()
    keeper.keep(document.drill.changed(title="Half done"))
    keeper.release()
    prompts.answers = [True]
    windows.recover()
    (window,) = windows.all()
    assert window.document.drill.title == "Half done"
    assert not window.document.clean
    assert "not saved" in window.notice.words
    # The window holds a copy of its own by now, so that a second crash loses nothing.
    assert copies() == ()


def test_a_copy_that_is_not_wanted_is_gone(windows, prompts, document):
    keeper = Keeper()
    keeper.keep(document.drill.changed(title="Half done"))
    keeper.release()
    prompts.answers = [False]
    windows.new()
    windows.recover()
    assert copies() == ()
    assert [window.document.drill.title for window in windows.all()] == [""]


def test_a_fault_keeps_every_drill_and_is_told_once(windows, caplog, monkeypatch):
    window = windows.new()
    hand.write(window.column.title, "Deep")
    monkeypatch.setattr(sys, "excepthook", sys.excepthook)
    report_faults(windows)
    for _ in range(2):
        with pytest.raises(ZeroDivisionError) as fault:
            _ = 1 / 0
        sys.excepthook(fault.type, fault.value, fault.tb)
    assert "A copy of the drill is kept" in window.notice.words
    assert [record.exc_info[0] for record in caplog.records] == [ZeroDivisionError] * 2
    window.filing._keeper.release()
    assert [copy.read().drill.title for copy in copies()] == ["Deep"]


HEAVY = ("reportlab", "pypdfium2", "numpy", "shapely", "pikepdf", "scipy", "pypdf", "jsonschema", "PIL", "lxml")
FIRST_KEY = """
import sys
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from designer.desktop.application import Windows, prepare
from designer.desktop.prompts import Prompts
application = prepare()
window = Windows(Prompts()).new()
for _ in range(3):
    application.processEvents()
press = QKeyEvent(QEvent.Type.KeyPress, Qt.Key.Key_B, Qt.KeyboardModifier.NoModifier, "b")
application.sendEvent(window.canvas, press)
print(window.view.tool)
print(*sorted(name for name in sys.modules if "." not in name))
"""


def test_nothing_heavy_is_loaded_when_the_window_takes_its_first_key():
    done = subprocess.run([sys.executable, "-c", FIRST_KEY], cwd=ROOT, capture_output=True, text=True, check=True)
    tool, loaded = done.stdout.splitlines()
    assert tool == "ball"
    assert not set(loaded.split()) & set(HEAVY)


def test_a_sample_is_opened_as_a_new_drill_so_that_saving_asks_for_a_name(windows, prompts):
    windows.open_copies([sample("hoop-red.drill.json")])
    (window,) = windows.all()
    assert window.document.path is None
    assert window.document.clean
    prompts.answers = [None]
    assert not window.filing.save()


def test_a_heap_of_files_is_opened_only_after_asking(windows, prompts, tmp_path):
    prompts.answers = [False]
    windows.new()
    windows.open([tmp_path / f"{number}.drill.json" for number in range(200)])
    assert len(windows.all()) == 1
    assert prompts.asked == [("yes", "Open 200 drills?")]


def test_a_card_that_is_dropped_is_opened_as_the_drill_it_carries_and_never_written_over(
    windows, prompts, source, tmp_path
):
    from designer.cards.card import make_card
    from designer.desktop.blank import blank
    from designer.desktop.situations import SITUATIONS, with_situation
    from designer.drill.setting import main_setting
    from designer.storage.writing import drill_bytes

    drill = blank(source)
    drill = with_situation(drill, main_setting(drill), SITUATIONS[0], source)
    card = tmp_path / "coach.pdf"
    card.write_bytes(make_card(drill, main_setting(drill), reader="coach", source=drill_bytes(drill)).pdf)
    before = card.read_bytes()
    windows.open([card])
    (window,) = windows.all()
    assert window.document.drill == drill
    prompts.answers = [None]
    assert not window.filing.save()  # it asks for a name
    assert card.read_bytes() == before
