"""Makes the two faces of `resources/fonts` and their table of widths from the variable Noto Sans.

Needs the extra `fonts` (`pip install '.[fonts]'`); run as `python tests/fonts/make_faces.py`.
Same versions of the two packages, same bytes: nothing here depends on the time or the machine.
"""

import json
from importlib.metadata import files
from pathlib import Path

from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont
from fontTools.varLib.instancer import instantiateVariableFont
from signs import contours, signs

FOLDER = Path(__file__).resolve().parents[2] / "resources" / "fonts"
SOURCE = "fontpkg-noto-sans"
FACES = {"regular": ("NotoSans-Regular.ttf", 400), "bold": ("NotoSans-Bold.ttf", 700)}
STROKES = {400: 76.0, 700: 120.0}
"""How wide a line of the signs added is at each weight, in thousandths of an em: about that of the letters."""


def from_package(name: str) -> Path:
    """Path of the file called `name` in the installed font package."""
    return next(Path(str(entry.locate())) for entry in files(SOURCE) or () if entry.name == name)


def face(weight: int) -> TTFont:
    """A static face: the variable font held at one weight and the normal width.

    Names are updated because two faces with one PostScript name are taken for the same face in a PDF.
    """
    variable = TTFont(from_package("NotoSans[wdth,wght].ttf"), recalcTimestamp=False)
    font = instantiateVariableFont(variable, {"wght": weight, "wdth": 100}, updateFontNames=True)
    with_signs(font, STROKES[weight])
    return font


def with_signs(font: TTFont, stroke: float) -> None:
    """Add the signs that the face lacks; one that it has stays as it is."""
    has, glyphs, widths = font.getBestCmap(), font["glyf"], font["hmtx"]
    for code, (advance, shape) in signs(stroke).items():
        if code in has:
            continue
        pen = TTGlyphPen(None)
        for contour in contours(shape):
            pen.moveTo(contour[0])
            for point in contour[1:]:
                pen.lineTo(point)
            pen.closePath()
        name = f"uni{code:04X}"
        glyphs[name] = pen.glyph()
        glyphs[name].recalcBounds(glyphs)
        widths[name] = (advance, glyphs[name].xMin)
        for subtable in font["cmap"].tables:
            if subtable.isUnicode():
                subtable.cmap[code] = name


def table(font: TTFont, file: str) -> dict[str, object]:
    """What measuring a text without Qt needs: lengths in font units, advances by decimal code point."""
    return {
        "file": file,
        "postscriptName": font["name"].getDebugName(6),
        "unitsPerEm": font["head"].unitsPerEm,
        "ascent": font["hhea"].ascent,
        "descent": font["hhea"].descent,
        "capHeight": font["OS/2"].sCapHeight,
        "xHeight": font["OS/2"].sxHeight,
        "advances": {str(code): font["hmtx"][glyph][0] for code, glyph in sorted(font.getBestCmap().items())},
    }


def main() -> None:
    """Writes both faces, the table and the licence."""
    tables = {}
    for key, (file, weight) in FACES.items():
        font = face(weight)
        font.save(FOLDER / file)
        tables[key] = table(TTFont(FOLDER / file), file)
    (FOLDER / "widths.json").write_text(json.dumps(tables, separators=(",", ":")) + "\n", encoding="utf-8")
    (FOLDER / "OFL.txt").write_bytes(from_package("LICENSE").read_bytes())


if __name__ == "__main__":
    main()
