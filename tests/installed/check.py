"""Looks whether an installed program does its job: every sample checked, one card and one picture made and read back.

    PYTHON tests/installed/check.py

PYTHON is the interpreter of the environment into which the wheel was installed, called from outside the checkout, so
that nothing but what the wheel brought can be found. Run on its own by `.ci/run`.
"""

import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ET
from pathlib import Path

import pikepdf

import designer
from designer.bundle import sample

PROGRAM = Path(sys.executable).with_name("drill-designer")
A5 = (419.53, 595.28)  # points, ISO 216: 148 mm by 210 mm


def run(*words: str | Path) -> str:
    """What the program prints; any exit status but 0 ends the check."""
    return subprocess.run([PROGRAM, *words], check=True, stdout=subprocess.PIPE, text=True).stdout


def look_at_card(drill: Path, folder: Path) -> None:
    card = folder / "card.pdf"
    run("card", drill, "-o", card, "--for", "coach", "--paper", "a5")
    with pikepdf.open(card) as pdf:
        box = pdf.pages[0].mediabox
        size = (float(box[2] - box[0]), float(box[3] - box[1]))
        assert max(abs(a - b) for a, b in zip(size, A5, strict=True)) < 0.5, f"the card measures {size} points"
    back = folder / "back.drill.json"
    run("extract", card, "-o", back)
    assert back.read_bytes() == drill.read_bytes(), "the card does not carry the bytes of its drill"


def look_at_picture(drill: Path, folder: Path) -> None:
    picture = folder / "court.svg"
    run("picture", drill, "-o", picture)
    drawn = [
        element
        for element in ET.parse(picture).iter()
        if element.tag.rpartition("}")[2] in ("path", "polyline", "line")
    ]
    assert len(drawn) > 10, f"the picture holds only {len(drawn)} lines"


def main() -> None:
    assert Path(designer.__file__).is_relative_to(sys.prefix), f"{designer.__file__} is not what the wheel installed"
    samples = sorted(sample().rglob("*.drill.json"))
    assert samples, "the wheel brought no samples"
    run("check", *samples)
    with tempfile.TemporaryDirectory() as folder:
        look_at_card(samples[0], Path(folder))
        look_at_picture(samples[0], Path(folder))
    print(f"{len(samples)} samples checked; one card and one picture made")


if __name__ == "__main__":
    main()
