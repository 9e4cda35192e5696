"""The README says what is so: its commands install what the program needs, and the files it names exist."""

import re
from pathlib import Path

import pytest

import designer
from designer.commands import main
from designer.screen import LIBRARIES, SCREEN_LIBRARIES

ROOT = Path(designer.__file__).resolve().parent.parent
README = (ROOT / "README.md").read_text("utf-8")
SET_UP = [line for line in README.splitlines() if "apt-get install" in line]


def packages(line):
    return re.search(r"--no-install-recommends ([^&]*) &&", line)[1].split()


def test_two_lines_do_all_the_set_up():
    assert len(SET_UP) == 2
    assert "drill-designer card" in SET_UP[0]
    assert SET_UP[1].endswith(".venv/bin/pip install '.[test]' && .venv/bin/python -m pytest -n auto")


@pytest.mark.parametrize("line", SET_UP)
def test_they_install_every_library_that_the_program_would_miss(line):
    assert set(packages(line)) == {"python3-venv", *LIBRARIES.values(), *SCREEN_LIBRARIES.values()}


@pytest.mark.parametrize("path", sorted(set(re.findall(r"\b(?:samples|resources)/[\w./-]*\w", README))))
def test_the_files_it_names_exist(path):
    assert (ROOT / path).exists()


def test_every_command_it_names_has_help(capsys):
    names = set(re.findall(r"`drill-designer ([a-z]+) ", README)) - {"open"}
    assert names >= {"card", "picture", "describe", "check", "extract"}
    for name in names:
        status = main([name, "--help"])
        said = capsys.readouterr()
        assert (status, said.err) == (0, "")
        assert f"drill-designer {name}" in said.out
