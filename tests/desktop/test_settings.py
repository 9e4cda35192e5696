"""What is remembered, read back as a new process reads it: from text."""

import subprocess
import sys
from pathlib import Path

from PySide6.QtCore import QByteArray

from designer.desktop import settings

ROOT = Path(settings.__file__).resolve().parent.parent.parent


def in_a_new_process(code):
    script = f"from designer.desktop import settings\nprint(repr(({code})))"
    done = subprocess.run([sys.executable, "-c", script], cwd=ROOT, capture_output=True, text=True, check=True)
    return done.stdout.strip()


def test_they_lie_in_the_users_own_folder(own_home):
    settings.set_units("feet")
    settings.settings().sync()
    assert settings.settings_path().is_relative_to(own_home)
    assert settings.settings_path().is_file()


def test_values_keep_their_types_in_a_new_process(tmp_path):
    drill = tmp_path / "one.drill.json"
    drill.write_text("{}")
    settings.set_strip_open(shown=False)
    settings.set_theme("dark")
    settings.set_geometry(QByteArray(b"\x00\x01geometry"))
    settings.add_recent(drill)
    settings.settings().sync()
    assert in_a_new_process("settings.strip_open(), settings.theme()") == "(False, 'dark')"
    assert in_a_new_process("bytes(settings.geometry().data())") == repr(b"\x00\x01geometry")
    assert in_a_new_process("[path.name for path in settings.recent_files()]") == "['one.drill.json']"


def test_without_settings_the_usual_is_taken():
    assert (settings.theme(), settings.units(), settings.strip_open()) == ("system", "rackets", True)
    assert settings.geometry().isEmpty()
    assert settings.recent_files() == ()


def test_a_value_that_is_none_of_the_known_ones_is_not_taken():
    settings.settings().setValue("window/theme", "plaid")
    settings.settings().setValue("files/recent", "not JSON [")
    assert settings.theme() == "system"
    assert settings.recent_files() == ()


def test_recent_files_come_newest_first_once_each_and_only_while_they_exist(tmp_path):
    files = [tmp_path / f"{number}.drill.json" for number in range(settings.RECENT + 3)]
    for file in files:
        file.write_text("{}")
        settings.add_recent(file)
    settings.add_recent(files[5])
    files[-1].unlink()
    names = [path.name for path in settings.recent_files()]
    assert names[:2] == ["5.drill.json", "13.drill.json"]
    assert len(names) == settings.RECENT - 1
    settings.forget_recent()
    assert settings.recent_files() == ()


def test_what_a_later_program_has_written_is_taken_only_where_it_makes_sense():
    for key, value in (
        ("drill/hand", "both"),
        ("drill/language", "English!"),
        ("card/paper", "a3"),
        ("drill/court", ""),
    ):
        settings.settings().setValue(key, value)
    assert (settings.hand(), settings.language(), settings.paper(), settings.court()) == ("right", "en", "a5", "tennis")
