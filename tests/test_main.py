"""The entrance: which half a call goes to, and what it says where no window can be opened."""

import ctypes
import sys
from types import ModuleType

import pytest

import designer
from designer import __main__ as entrance


@pytest.fixture
def called(monkeypatch):
    """The calls that reach the desktop and the command line, both replaced."""
    calls = []
    commands, desktop, application = (ModuleType(name) for name in ("commands", "desktop", "application"))
    commands.main = lambda arguments: calls.append(("commands", arguments)) or 64
    application.run = lambda paths: calls.append(("desktop", paths)) or 0
    desktop.application = application
    monkeypatch.setattr(designer, "commands", commands, raising=False)
    monkeypatch.setitem(sys.modules, "designer.desktop", desktop)
    return calls


@pytest.mark.parametrize(
    ("arguments", "paths"),
    [
        ([], []),
        (["open"], []),
        (["open", "a.json", "b.drill.json"], ["a.json", "b.drill.json"]),
        (["open", "--", "-a.drill.json"], ["-a.drill.json"]),
        (["wide-start.drill.json"], ["wide-start.drill.json"]),
        (["Wide start.DRILL.JSON", "card.pdf"], ["Wide start.DRILL.JSON", "card.pdf"]),
    ],
)
def test_these_open_a_window(called, arguments, paths):
    assert entrance.main(arguments) == 0
    assert called == [("desktop", paths)]


@pytest.mark.parametrize(
    "arguments",
    [
        ["--help"],
        ["open", "--help"],
        ["card", "a.drill.json", "-o", "a.pdf"],
        ["check", "a.drill.json"],
        ["a.json"],
        ["--frobnicate.pdf"],
        ["a.drill.json", "--force"],
    ],
)
def test_all_else_goes_to_the_command_line_and_keeps_its_exit_status(called, arguments):
    assert entrance.main(arguments) == 64
    assert called == [("commands", arguments)]


def test_the_words_of_the_call_are_taken_from_the_shell(called, monkeypatch):
    monkeypatch.setattr(sys, "argv", ["drill-designer", "schema"])
    entrance.main()
    assert called == [("commands", ["schema"])]


@pytest.fixture
def on_linux(monkeypatch):
    monkeypatch.setattr(sys, "platform", "linux")
    for name in ("QT_QPA_PLATFORM", "DISPLAY", "WAYLAND_DISPLAY"):
        monkeypatch.delenv(name, raising=False)
    return monkeypatch


def lacking(monkeypatch, *names):
    """Makes the machine one on which just these shared libraries cannot be loaded."""

    def load(name, *_arguments, **_options):
        if name in names:
            raise OSError(f"{name}: cannot open shared object file: No such file or directory")

    monkeypatch.setattr(ctypes, "CDLL", load)


def test_without_a_screen_one_sentence_says_so(called, on_linux, capsys):
    assert entrance.main([]) == 1
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.startswith("drill-designer: there is no screen here")
    assert said.err.count("\n") == 1
    assert called == []


@pytest.mark.parametrize(
    ("name", "value"), [("WAYLAND_DISPLAY", "wayland-0"), ("QT_QPA_PLATFORM", "offscreen"), ("DISPLAY", ":7")]
)
def test_a_screen_of_any_kind_will_do(called, on_linux, name, value):
    on_linux.setenv(name, value)
    lacking(on_linux)
    assert entrance.main([]) == 0
    assert called == [("desktop", [])]


def test_a_missing_library_of_the_screen_names_its_package_before_qt_aborts(called, on_linux, capsys):
    on_linux.setenv("DISPLAY", ":7")
    lacking(on_linux, "libxcb-icccm.so.4", "libxcb-shape.so.0")
    assert entrance.main(["open", "a.drill.json"]) == 1
    assert capsys.readouterr().err.endswith("sudo apt-get install libxcb-icccm4 libxcb-shape0\n")
    assert called == []


def test_a_library_that_qt_cannot_load_names_its_package(on_linux, capsys):
    on_linux.setenv("QT_QPA_PLATFORM", "offscreen")
    lacking(on_linux, "libGL.so.1", "libEGL.so.1")
    on_linux.setitem(
        sys.modules,
        "designer.desktop",
        raising_module("libGL.so.1: cannot open shared object file: No such file or directory"),
    )
    assert entrance.main([]) == 1
    said = capsys.readouterr().err
    assert said.endswith("sudo apt-get install libgl1 libegl1\n")
    assert said.count("\n") == 1


def test_an_unknown_library_is_named_as_it_is(on_linux, capsys):
    on_linux.setenv("QT_QPA_PLATFORM", "offscreen")
    lacking(on_linux)
    on_linux.setitem(sys.modules, "designer.desktop", raising_module("libodd.so.9: cannot open shared object file"))
    assert entrance.main([]) == 1
    assert (
        capsys.readouterr().err
        == "drill-designer: the window needs Qt, which could not be loaded (libodd.so.9: cannot open shared object file).\n"
    )


def test_a_fault_of_our_own_is_not_taken_for_a_missing_library(on_linux):
    on_linux.setenv("QT_QPA_PLATFORM", "offscreen")
    on_linux.setitem(sys.modules, "designer.desktop", raising_module("cannot import name 'application'"))
    with pytest.raises(ImportError, match="cannot import name 'application'"):
        entrance.main([])


def raising_module(message):
    """A stand-in for the desktop whose import fails as if Qt could not be loaded."""

    class Desktop(ModuleType):
        def __getattr__(self, name):
            if name == "application":
                raise ImportError(message)
            raise AttributeError(name)

    return Desktop("designer.desktop")
