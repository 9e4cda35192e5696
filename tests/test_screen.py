"""What is said where Qt cannot work; the calls that lead there are in test_main.py."""

import pytest

from designer import screen


def test_an_import_that_failed_otherwise_is_no_missing_library():
    assert (
        screen.why_no_qt(ImportError("cannot import name 'x' from 'y' (/home/a/my.songs/y.py)"), "a .png picture")
        is None
    )


def test_a_picture_needs_no_library_of_the_screen(monkeypatch):
    monkeypatch.setattr(screen, "loads", lambda library: library not in ("libGL.so.1", "libxcb-cursor.so.0"))
    monkeypatch.setattr("sys.platform", "linux")
    said = screen.why_no_qt(ImportError("libGL.so.1: cannot open shared object file"), "a .png picture")
    assert said == (
        "a .png picture needs system libraries that are not installed; on Debian or Ubuntu install them with: "
        "sudo apt-get install libgl1"
    )


@pytest.mark.parametrize("platform", ["win32", "darwin"])
def test_other_systems_bring_their_screen_libraries(monkeypatch, platform):
    monkeypatch.setattr("sys.platform", platform)
    monkeypatch.delenv("DISPLAY", raising=False)
    monkeypatch.delenv("QT_QPA_PLATFORM", raising=False)
    assert screen.why_no_window() is None


def test_a_library_that_nobody_has_does_not_load():
    assert not screen.loads("libno-such-library.so.1")
