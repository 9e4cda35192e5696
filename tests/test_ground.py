"""What everything else stands on: Qt's bindings, the bundled files, the fonts, and what a call imports."""

import json
import subprocess
import sys
from pathlib import Path

import pytest
from reportlab.pdfbase.ttfonts import TTFontFile

import designer
from designer.bundle import MissingFile, resource, sample

ROOT = Path(designer.__file__).resolve().parent.parent
FACES = ("regular", "bold")


def modules_after(code):
    """Names of all modules loaded by a fresh interpreter that runs `code`."""
    script = f"import sys\n{code}\nprint(*sys.modules, sep=chr(10), file=sys.stderr)"
    done = subprocess.run([sys.executable, "-c", script], cwd=ROOT, capture_output=True, text=True, check=True)
    return set(done.stderr.split())


def widths(face):
    return json.loads(resource("fonts", "widths.json").read_text("utf-8"))[face]


def test_qt_takes_no_reference_to_none(qapp):
    # PySide6 6.12.0 on Python 3.11 drops one reference to None with each call and aborts after some 7,000 of them;
    # measured by ourselves, no public report known. From 3.12 on None cannot die and this cannot fail.
    from PySide6.QtGui import QPainter, QPixmap

    pixmap = QPixmap(8, 8)
    painter = QPainter(pixmap)
    before = sys.getrefcount(None)
    for _ in range(500):
        painter.save()
        painter.restore()
    after = sys.getrefcount(None)
    painter.end()
    assert after > before - 50


def test_bundled_files_are_found():
    assert resource("fonts", "OFL.txt").is_file()
    assert sample().is_dir()


def test_a_missing_file_is_named_in_a_sentence():
    with pytest.raises(MissingFile, match=r"resources/courts/moon\.json should have come with the program"):
        resource("courts", "moon.json")


def test_an_installed_program_does_not_read_the_folder_of_others(tmp_path, monkeypatch):
    # Beside an installed package anybody's `resources` may lie.
    (tmp_path / "resources").mkdir()
    (tmp_path / "designer" / "resources" / "fonts").mkdir(parents=True)
    monkeypatch.setattr("designer.bundle.PACKAGE", tmp_path / "designer")
    assert resource("fonts") == tmp_path / "designer" / "resources" / "fonts"


@pytest.mark.parametrize("face", FACES)
def test_the_table_of_widths_is_that_of_the_face(face):
    # Oracle: reportlab's own reader of TrueType files.
    table = widths(face)
    read = TTFontFile(str(resource("fonts", table["file"])))
    assert read.unitsPerEm == table["unitsPerEm"]
    assert (read.ascent, read.descent) == (table["ascent"], table["descent"])
    assert set(read.charToGlyph) == {int(code) for code in table["advances"]}
    assert {str(code): width for code, width in read.charWidths.items()} == pytest.approx(table["advances"])


def test_the_two_faces_have_names_of_their_own():
    # Two faces with one PostScript name are taken for one in a PDF: bold would print regular.
    read = [TTFontFile(str(resource("fonts", widths(face)["file"]))) for face in FACES]
    assert len({font.name for font in read}) == 2
    assert [widths(face)["postscriptName"] for face in FACES] == ["NotoSans-Regular", "NotoSans-Bold"]


@pytest.mark.parametrize(
    "text", ["Forehand cross-court – 12.80 m × 2", "AVATAR To. WAVE", "Übung: Vorhand, Rückhand", "Čeština"]
)
@pytest.mark.parametrize("face", FACES)
def test_qt_measures_a_text_as_the_table_does(qapp, face, text):
    from PySide6.QtGui import QFont, QFontDatabase, QFontMetricsF

    table = widths(face)
    number = QFontDatabase.addApplicationFont(str(resource("fonts", table["file"])))
    assert number >= 0
    font = QFont(QFontDatabase.applicationFontFamilies(number)[0])
    font.setPixelSize(1000)
    font.setBold(face == "bold")
    font.setKerning(False)
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    expected = sum(table["advances"][str(ord(letter))] for letter in text)
    assert QFontMetricsF(font).horizontalAdvance(text) == pytest.approx(expected, abs=1)


def test_the_licence_of_the_fonts_lies_beside_them():
    assert "SIL OPEN FONT LICENSE Version 1.1" in resource("fonts", "OFL.txt").read_text("utf-8")


def test_the_icon_is_drawn(qapp):
    from PySide6.QtGui import QImage, QPainter
    from PySide6.QtSvg import QSvgRenderer

    image = QImage(32, 32, QImage.Format.Format_ARGB32)
    image.fill(0)
    painter = QPainter(image)
    QSvgRenderer(str(resource("icons", "drill-designer.svg"))).render(painter)
    painter.end()
    assert image.pixelColor(16, 16).alpha() == 255
    assert image.pixelColor(0, 0).alpha() == 0


def test_no_command_loads_qt(tmp_path):
    drill = str(min(sample().rglob("*.drill.json")))
    card, court = tmp_path / "card.pdf", tmp_path / "court.svg"
    calls = [
        ["card", drill, "-o", str(card)],
        ["picture", drill, "-o", str(court)],
        ["describe", drill],
        ["check", drill],
        ["schema"],
        ["--help"],
    ]
    loaded = modules_after(
        "from designer.__main__ import main\n"
        f"for call in {calls}:\n"
        "  try:\n    main(call)\n  except SystemExit:\n    pass\n"
        "  assert not {'PySide6', 'shiboken6'} & set(sys.modules), call\n"
    )
    assert "designer.commands" in loaded
    assert card.stat().st_size > 0
    assert court.stat().st_size > 0


def test_the_entrance_loads_neither_half():
    loaded = modules_after("import designer.__main__")
    assert not loaded & {"designer.desktop", "designer.commands", "PySide6", "pydantic", "reportlab", "numpy"}
