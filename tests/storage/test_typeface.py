"""A typeface is looked at before any library reads it: ISO/IEC 14496-22 says where its tables and maps lie."""

import io
import json
import struct

import pytest
from fontTools.ttLib import TTFont

from designer.bundle import resource
from designer.storage.brand import branded
from designer.storage.parsing import Unreadable
from designer.storage.typeface import checked_typeface

FACE = resource("fonts", "NotoSans-Regular.ttf")


def written(folder, data):
    file = folder / "own.ttf"
    file.write_bytes(data)
    return file


def with_map(claimed):
    """A sound face whose last map of characters claims so many: a group of format 12 rewritten."""
    data = bytearray(FACE.read_bytes())
    count = struct.unpack_from(">H", data, 4)[0]
    tables = {
        bytes(data[12 + 16 * at : 16 + 16 * at]): struct.unpack_from(">LL", data, 20 + 16 * at) for at in range(count)
    }
    start, _ = next(place for tag, place in tables.items() if tag == b"cmap")
    maps = struct.unpack_from(">H", data, start + 2)[0]
    for at in range(maps):
        own = start + struct.unpack_from(">L", data, start + 8 + 8 * at)[0]
        if struct.unpack_from(">H", data, own)[0] == 4:
            data[own : own + 28] = struct.pack(">HHLLLLLL", 12, 0, 28, 0, 1, 0, claimed, 1)
    return bytes(data)


def test_a_sound_face_is_given_back_as_it_is(tmp_path):
    assert checked_typeface(written(tmp_path, FACE.read_bytes())) == FACE.read_bytes()


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (lambda _: b"OTTO" + bytes(50), "is no TrueType face"),
        (lambda _: b"wOF2" + bytes(50), "is no TrueType face"),
        (lambda data: data[:5000], "is damaged"),
        (lambda data: data[:4] + b"\xff\xff" + data[6:], "is damaged"),
        (lambda data: data.replace(b"glyf", b"glyx", 1), "has no table 'glyf'"),
        (lambda _: with_map(0xFFFFFFF0), "claims to have 8589"),
        (lambda _: b"\0\1\0\0" + bytes(5_000_001), "is larger than 5 MB"),
    ],
)
def test_what_could_choke_a_reader_is_refused_with_a_sentence(tmp_path, change, says):
    with pytest.raises(Unreadable, match=says):
        checked_typeface(written(tmp_path, change(FACE.read_bytes())))


def test_a_brand_names_a_typeface_in_its_own_folder_and_nowhere_else(tmp_path):
    home = tmp_path / "home"
    home.mkdir()
    written(home, FACE.read_bytes())
    brand = {"name": "A", "typeface": "own.ttf", "typeface_bold": "own.ttf"}
    (home / "brand.json").write_text(json.dumps(brand))
    assert branded(home / "a.drill.json").typeface == (FACE.read_bytes(), FACE.read_bytes())
    (home / "brand.json").write_text(json.dumps({"name": "A", "typeface": "../own.ttf"}))
    own = branded(home / "a.drill.json")
    assert own.brand.name == "A"
    assert own.typeface is None
    (fault,) = own.faults
    assert "expected the name of a TrueType file in the same folder" in fault
    assert fault.endswith("The typeface is left out.")


def test_the_bundled_face_is_what_the_test_takes_it_for():
    assert len(TTFont(io.BytesIO(FACE.read_bytes())).getBestCmap()) > 500
