"""What all commands have in common: help, wrong usage, and what they load."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

import designer
from designer import commands

ROOT = Path(__file__).parents[2]
NAMES = ("card", "picture", "describe", "check", "extract", "schema")
HEAVY = {"PySide6", "shiboken6", "reportlab", "pikepdf", "numpy", "shapely", "scipy"}


def test_help_names_every_command_and_what_the_exit_statuses_mean(call):
    said = call("--help")
    assert said.status == 0
    for name in (*NAMES, "open"):
        assert f"\n    {name} " in said.out
    for meaning in ("0 nothing wrong", "1 a check found an error", "2 a file cannot be read", "64 wrong usage"):
        assert meaning in said.out


@pytest.mark.parametrize("name", [*NAMES, "open"])
def test_each_command_has_help_with_an_example_that_can_be_called(call, name):
    said = call(name, "--help")
    assert said.status == 0
    example = said.out[said.out.index("example") :].splitlines()[1]
    assert example.startswith(f"  drill-designer {name}")
    words = example.split()[1:]
    parsed = commands._parser().parse_args(
        [word for word in words if word != ">"][: words.index(">") if ">" in words else None]
    )
    assert callable(parsed.run)


def test_the_version_is_the_one_of_the_package(call):
    assert call("--version").out == f"drill-designer {designer.__version__}\n"


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ([], "COMMAND"),
        (["frobnicate"], "frobnicate"),
        (["card"], "FILE"),
        (["card", "a.drill.json"], "--output"),
        (["card", "a.drill.json", "-o", "x.pdf", "--paper", "a3"], "a3"),
        (["card", "a.drill.json", "-o", "x.pdf", "--for", "parent"], "parent"),
        (["card", "a.drill.json", "-o", "x.pdf", "--with-source", "--no-source"], "--no-source"),
        (["card", "a.drill.json", "-o", "x.pdf", "--pap", "a5"], "--pap"),
        (["describe", "a.drill.json", "--units", "yards"], "yards"),
        (["picture", "a.drill.json", "-o", "x.svg", "--width", "0"], "'0' is not a whole number from 50"),
        (["picture", "a.drill.json", "-o", "x.svg", "--width", "wide"], "'wide' is not a whole number"),
        (["check"], "FILE"),
        (["open", "a.drill.json"], "opens no window"),
    ],
)
def test_wrong_usage_is_one_sentence_and_64(call, words, says):
    said = call(*words)
    assert said.status == 64
    assert said.out == ""
    said.one_sentence(says)


@pytest.mark.parametrize("name", ["describe", "check", "extract", "card", "picture"])
def test_a_file_that_is_not_there_is_2_whatever_was_to_be_done_with_it(call, tmp_path, name):
    output = ["-o", tmp_path / "made.svg"] if name in ("extract", "card", "picture") else []
    said = call(name, tmp_path / "none.drill.json", *output)
    assert said.status == 2
    assert said.out == ""
    said.one_sentence(tmp_path / "none.drill.json", "is not there")
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("name", ["describe", "card", "picture", "check"])
def test_a_newer_format_is_refused(call, newer, tmp_path, name):
    output = ["-o", tmp_path / "made.svg"] if name in ("card", "picture") else []
    said = call(name, newer, *output)
    assert said.status == 2
    said.one_sentence(newer, "is in format 2", "expected at most format 1")
    assert not (tmp_path / "made.svg").exists()


@pytest.mark.parametrize("name", ["describe", "card", "picture", "check"])
def test_a_fault_in_a_file_is_named_with_its_place(call, broken, tmp_path, name):
    output = ["-o", tmp_path / "made.svg"] if name in ("card", "picture") else []
    said = call(name, broken, *output)
    assert said.status == 2
    said.one_sentence(broken, "progression 1, minutes: 0, expected at least 1")


def test_what_was_mended_is_told_and_does_not_stop_anything(call, tmp_path):
    cone = '{"kind": "cone", "id": "c", "place": {}}'
    file = tmp_path / "twins.drill.json"
    file.write_text(f'{{"id": "d", "progressions": [{{"id": "p", "changes": {{"items": [{cone}, {cone}]}}}}]}}')
    said = call("describe", file)
    assert said.status == 0
    said.one_sentence(file, "the later one is now 'c-2'")
    assert "Untitled drill" in said.out


@pytest.mark.parametrize("words", [["schema"], ["describe", "samples/wide-start.drill.json"], ["--help"]])
def test_words_load_neither_qt_nor_the_makers_of_pdf(words, modules_after):
    status, loaded = modules_after(*words)
    assert status == 0
    assert not HEAVY & loaded


def test_a_check_loads_neither_qt_nor_the_makers_of_pdf(modules_after):
    status, loaded = modules_after("check", "samples/wide-start.drill.json")
    assert status == 0
    assert not loaded & {"PySide6", "shiboken6", "reportlab", "pikepdf", "scipy"}


def test_a_reader_who_has_heard_enough_is_not_complained_to():
    ran = subprocess.run(
        [sys.executable, "-c", "from designer.commands import main; raise SystemExit(main(['schema']))"],
        cwd=ROOT,
        stdout=closed_pipe(),
        stderr=subprocess.PIPE,
        text=True,
        check=False,
    )
    assert (ran.returncode, ran.stderr) == (0, "")


def closed_pipe():
    reading, writing = os.pipe()
    os.close(reading)
    return writing
