import os
import subprocess
import sys
from pathlib import Path

import pytest

from designer.storage.parsing import Unreadable
from designer.storage.recovery import Keeper, copies, recovery_folder
from designer.storage.writing import Unwritable, drill_bytes

HOLD = """
import sys
from pathlib import Path
from designer.storage.reading import open_drill
from designer.storage.recovery import Keeper
keeper = Keeper(Path(sys.argv[1]))
keeper.keep(open_drill(sys.argv[2]).drill, sys.argv[2])
print("kept", flush=True)
sys.stdin.read()
"""


def test_copies_lie_in_the_state_folder_of_the_user(own_home):
    assert recovery_folder().is_relative_to(own_home)
    assert "drill-designer" in recovery_folder().parts


def test_without_a_folder_there_is_nothing_to_find():
    assert copies() == ()


def test_a_copy_is_not_offered_while_its_drill_is_open(drill):
    with Keeper() as keeper:
        keeper.keep(drill)
        assert copies() == ()


def test_a_drill_that_was_saved_or_given_up_leaves_nothing(drill, tmp_path):
    with Keeper(tmp_path) as keeper:
        keeper.keep(drill, "a.drill.json")
        keeper.keep(drill.changed(title="Later"), "a.drill.json")
        keeper.discard()
        assert list(tmp_path.iterdir()) == []
        keeper.keep(drill)
    assert list(tmp_path.iterdir()) == []


def test_what_a_fault_interrupts_is_found_again_as_it_was_last(drill, tmp_path):
    path = tmp_path / "a.drill.json"

    def work(keeper):
        keeper.keep(drill, path)
        keeper.keep(drill.changed(title="Later"), path)
        raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError), Keeper() as keeper:
        work(keeper)
    (copy,) = copies()
    assert copy.path == path
    assert copy.read().drill == drill.changed(title="Later")
    copy.discard()
    assert copies() == ()
    assert list(recovery_folder().iterdir()) == []


def test_a_drill_without_a_file_has_no_path(drill, tmp_path):
    keeper = Keeper(tmp_path)
    keeper.keep(drill)
    keeper.release()
    (copy,) = copies(tmp_path)
    assert copy.path is None


def test_the_newest_copy_comes_first(drill, tmp_path):
    for number, when in enumerate((1_000_000_000, 1_200_000_000, 1_100_000_000)):
        keeper = Keeper(tmp_path)
        file = keeper.keep(drill.changed(title=str(number)))
        keeper.release()
        os.utime(file, (when, when))
    assert [copy.read().drill.title for copy in copies(tmp_path)] == ["1", "2", "0"]


def test_a_program_that_is_killed_leaves_its_copy_to_the_next(drill, tmp_path):
    file = tmp_path / "a.drill.json"
    file.write_bytes(drill_bytes(drill))
    folder = tmp_path / "recovery"
    other = subprocess.Popen(
        [sys.executable, "-c", HOLD, folder, file],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
        cwd=Path(__file__).parents[2],
    )
    with other:
        assert other.stdout.readline() == "kept\n"
        assert copies(folder) == ()
        other.kill()
        other.wait()
        (copy,) = copies(folder)
        assert (copy.path, copy.read().drill) == (file, drill)


def test_a_copy_that_is_damaged_is_told_when_it_is_read(drill, tmp_path):
    keeper = Keeper(tmp_path)
    file = keeper.keep(drill, "a.drill.json")
    keeper.release()
    file.write_bytes(b"{")
    for origin in tmp_path.glob("*.origin.json"):
        origin.write_bytes(b"[")
    (copy,) = copies(tmp_path)
    assert copy.path is None
    with pytest.raises(Unreadable):
        copy.read()


def test_a_folder_that_cannot_be_made_is_named(drill, tmp_path):
    (tmp_path / "file").touch()
    with pytest.raises(Unwritable, match="no recovery copy is kept"):
        Keeper(tmp_path / "file" / "recovery").keep(drill)


def test_copies_are_nobody_elses_business(drill, tmp_path):
    with Keeper(tmp_path / "new") as keeper:
        keeper.keep(drill)
        assert (tmp_path / "new").stat().st_mode & 0o077 == 0
