import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

import pytest

from designer.bundle import sample
from designer.commands import main

ROOT = Path(__file__).parents[2]


@dataclass
class Said:
    """What a command left: its exit status, its output (text and bytes) and its complaints."""

    status: int
    out: str
    err: str
    data: bytes

    def one_sentence(self, *words):
        """The one line on standard error, once it names the program and says these words."""
        assert self.err.startswith("drill-designer: ")
        assert self.err.count("\n") == 1
        assert "Traceback" not in self.err
        for word in words:
            assert str(word) in self.err
        return self.err


@pytest.fixture
def call(capfdbinary):
    """Runs a command in this process."""

    def run(*words):
        status = main([str(word) for word in words])
        out, err = capfdbinary.readouterr()
        return Said(status, out.decode(errors="replace"), err.decode(), out)

    return run


@pytest.fixture
def wide(tmp_path):
    """A copy of the first sample, with its brand beside it."""
    for name in ("wide-start.drill.json", "brand.json", "alder-quay.svg"):
        (tmp_path / name).write_bytes(sample(name).read_bytes())
    return tmp_path / "wide-start.drill.json"


@pytest.fixture
def broken(tmp_path):
    """A file that is no drill."""
    file = tmp_path / "broken.drill.json"
    file.write_text('{"id": "d", "progressions": [{"id": "p", "minutes": 0}]}')
    return file


@pytest.fixture
def newer(tmp_path):
    """A drill of a format that is not known yet."""
    file = tmp_path / "newer.drill.json"
    file.write_text('{"format": 2, "id": "d", "progressions": [{"id": "p"}]}')
    return file


@pytest.fixture
def modules_after():
    """Runs a command in a fresh process; returns its exit status and the top modules that it loaded."""

    def run(*words):
        script = (
            "import sys\nfrom designer.__main__ import main\nstatus = main(sys.argv[1:])\n"
            "print(status, *sorted({name.partition('.')[0] for name in sys.modules}), file=sys.stderr)"
        )
        ran = subprocess.run(
            [sys.executable, "-c", script, *map(str, words)], cwd=ROOT, capture_output=True, text=True, check=True
        )
        status, *names = ran.stderr.splitlines()[-1].split()
        return int(status), set(names)

    return run
