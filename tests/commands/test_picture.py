import subprocess
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest
from PIL import Image

ROOT = Path(__file__).parents[2]
SVG = "{http://www.w3.org/2000/svg}svg"


def test_an_svg_is_as_wide_as_asked_and_says_its_title(call, wide, tmp_path):
    assert call("picture", wide, "-o", tmp_path / "a.svg", "--width", 640).status == 0
    root = ET.parse(tmp_path / "a.svg").getroot()
    assert root.tag == SVG
    assert float(root.get("width").removesuffix("px")) == pytest.approx(640)
    assert root.find("{http://www.w3.org/2000/svg}title").text == "Wide Ball, Recover, Play the Point"


def test_the_same_drill_gives_the_same_bytes_and_another_setting_others(call, wide):
    first = call("picture", wide, "-o", "-").data
    assert call("picture", wide, "-o", "-").data == first
    assert call("picture", wide, "-o", "-", "--at", "4").data != first
    assert call("picture", wide, "-o", "-", "--grey").data != first
    assert ET.fromstring(first).tag == SVG


def test_a_png_needs_no_screen(wide, tmp_path):
    import os

    environment = {name: value for name, value in os.environ.items() if name not in ("DISPLAY", "QT_QPA_PLATFORM")}
    ran = subprocess.run(
        [sys.executable, "-m", "designer", "picture", wide, "-o", tmp_path / "a.png", "--width", "300"],
        cwd=ROOT,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )
    assert (ran.returncode, ran.stderr) == (0, "")
    data = (tmp_path / "a.png").read_bytes()
    # PNG, third edition, 5.2 and 11.2.1: the signature, then a header that begins with width and height, 32 bits each.
    assert data[:8] == b"\x89PNG\r\n\x1a\n"
    assert data[12:16] == b"IHDR"
    assert int.from_bytes(data[16:20]) == 300
    assert int.from_bytes(data[20:24]) > 300


def test_an_svg_loads_no_qt(wide, tmp_path, modules_after):
    status, loaded = modules_after("picture", wide, "-o", tmp_path / "a.svg")
    assert status == 0
    assert not loaded & {"PySide6", "shiboken6", "reportlab", "pikepdf"}


@pytest.mark.parametrize("name", ["a.jpg", "a", "a.svg.txt"])
def test_another_ending_is_wrong_usage(call, wide, tmp_path, name):
    said = call("picture", wide, "-o", tmp_path / name)
    assert said.status == 64
    said.one_sentence(name, ".svg or .png")
    assert not (tmp_path / name).exists()


def test_without_the_libraries_of_qt_the_packages_are_named(call, wide, tmp_path, monkeypatch):
    monkeypatch.setitem(sys.modules, "designer.drawing.qt", None)
    import builtins

    real = builtins.__import__

    def fail(name, *rest):
        if name == "designer.drawing.qt":
            raise ImportError("libEGL.so.1: cannot open shared object file: No such file or directory")
        return real(name, *rest)

    monkeypatch.setattr(builtins, "__import__", fail)
    said = call("picture", wide, "-o", tmp_path / "a.png")
    assert said.status == 2
    said.one_sentence("a.png", "Qt")
    assert not (tmp_path / "a.png").exists()


def test_all_progressions_stand_in_one_row_with_their_names(call, wide):
    root = ET.fromstring(call("picture", wide, "-o", "-", "--all").data)
    said = [text.text for text in root.iter(SVG.replace("svg}svg", "svg}text"))]
    assert [text for text in said if text[:1].isdigit() and len(text) > 2] == [
        "1 Together", "2 Fed, then open", "3 Points", "4 From the serve",
    ]  # fmt: skip
    assert said.count("NET") == 4
    assert call("picture", wide, "-o", "-", "--all", "--at", "2").status == 64


def test_a_transparent_picture_has_no_ground(qapp, call, wide, tmp_path):
    """SVG 1.1, 9.2 for the rectangle; PNG, third edition, 11.2.1: colour type 6 is truecolour with alpha."""
    plain, bare = (call("picture", wide, "-o", "-", *more).data for more in ((), ("--transparent",)))
    ground = f"{SVG[:-3]}rect"
    assert ET.fromstring(plain).find(ground) is not None
    assert ET.fromstring(bare).find(ground) is None
    assert call("picture", wide, "-o", tmp_path / "a.png", "--transparent", "--width", "200").status == 0
    with Image.open(tmp_path / "a.png") as image:
        assert image.mode == "RGBA"
        assert image.getpixel((1, 1))[3] == 0
        assert image.getchannel("A").getextrema() == (0, 255)
