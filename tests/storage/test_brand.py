import json
import zlib

import pytest

from designer.bundle import sample
from designer.drill.brand import Brand
from designer.storage import brand as module
from designer.storage.brand import brand_beside, branded, logo_beside
from designer.storage.parsing import Unreadable

LOGO = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0h9v9z" fill="#123456"/></svg>'


def academy(folder, logo=LOGO, logo_name="logo.svg", **values):
    """A folder with a brand, and with a drill two folders below."""
    (folder / "brand.json").write_text(json.dumps({"name": "Alder Quay", "logo": logo_name, **values}))
    (folder / "logo.svg").write_text(logo)
    drill = folder / "handbook" / "drills" / "wide.drill.json"
    drill.parent.mkdir(parents=True)
    return drill


def test_the_brand_is_found_beside_the_drill_and_above_it(tmp_path):
    drill = academy(tmp_path, colour="#00AA11")
    brand = Brand(name="Alder Quay", colour="#00AA11", logo="logo.svg")
    assert brand_beside(drill) == brand
    assert brand_beside(tmp_path / "near.drill.json") == brand
    assert logo_beside(drill) == LOGO


def test_the_nearest_brand_counts(tmp_path):
    drill = academy(tmp_path)
    (tmp_path / "handbook" / "brand.json").write_text('{"name": "Alder Quay Juniors"}')
    assert brand_beside(drill).name == "Alder Quay Juniors"
    assert logo_beside(drill) is None


def test_no_brand_is_looked_for_three_folders_above(tmp_path):
    drill = academy(tmp_path)
    assert brand_beside(drill.parent / "deeper" / "far.drill.json") is None
    assert logo_beside(drill.parent / "deeper" / "far.drill.json") is None


def test_the_brand_beside_a_linked_drill_is_the_one_beside_the_real_file(tmp_path):
    academy(tmp_path)
    real = tmp_path / "real.drill.json"
    real.write_text("{}")
    elsewhere = tmp_path.parent / f"{tmp_path.name}-elsewhere"
    elsewhere.mkdir()
    (elsewhere / "link.drill.json").symlink_to(real)
    assert brand_beside(elsewhere / "link.drill.json").name == "Alder Quay"


def test_the_samples_have_their_own_and_nothing_above_them_counts(monkeypatch, tmp_path):
    assert brand_beside(sample("wide-start.drill.json")).name == "Alder Quay Tennis Academy"
    assert logo_beside(sample("wide-start.drill.json")).lstrip().startswith("<")
    drill = academy(tmp_path)
    monkeypatch.setattr(module.bundle, "sample", lambda: tmp_path / "handbook")
    assert brand_beside(drill) is None


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "is empty; expected a brand file"),
        ("[]", "holds an empty list; expected a brand"),
        ('{"colour": "#123456"}', "name: is missing"),
        ('{"name": "A", "colour": "red"}', 'colour: "red", expected a colour such as "#17202A"'),
        ('{"name": "A", "name": "B"}', "the key “name” stands twice"),
    ],
)
def test_a_brand_that_is_broken_is_named(tmp_path, text, says):
    (tmp_path / "brand.json").write_text(text)
    with pytest.raises(Unreadable) as refused:
        brand_beside(tmp_path / "a.drill.json")
    assert str(refused.value).startswith(f"{tmp_path / 'brand.json'}: ")
    assert says in str(refused.value)


@pytest.mark.parametrize("logo", ["../logo.svg", "/etc/passwd", "link.svg", ".", "nul\0.svg", "none.svg"])
def test_a_logo_lies_in_the_folder_of_its_brand(tmp_path, logo):
    inner = tmp_path / "inner"
    inner.mkdir()
    drill = academy(inner, logo=LOGO)
    (tmp_path / "logo.svg").write_text(LOGO)
    (inner / "link.svg").symlink_to("../logo.svg")
    (inner / "brand.json").write_text(json.dumps({"name": "A", "logo": logo}))
    with pytest.raises(Unreadable, match=r"expected the name of an SVG or PNG file|is not there"):
        logo_beside(drill)


@pytest.mark.parametrize(
    ("logo", "says"),
    [
        ("<svg", "is damaged"),
        ("<html/>", "is not a picture"),
        ('<!DOCTYPE svg [<!ENTITY a "b">]><svg>&a;</svg>', "has a document type"),
        ('<?xml-stylesheet href="http://x/"?><svg/>', "style sheet"),
        ("<svg><script>1</script></svg>", "has a <script>"),
        ("<svg><style>@import 'x';</style></svg>", "has a <style>"),
        ('<svg><image href="file:///etc/passwd"/></svg>', "has a <image>"),
        ("<svg><foreignObject/></svg>", "has a <foreignObject>"),
        ('<svg><a href="http://example.org/"/></svg>', "nothing from outside"),
        ('<svg xmlns:l="http://www.w3.org/1999/xlink"><a l:href="x.svg#y"/></svg>', "nothing from outside"),
        ('<svg><rect fill="url(http://x/#a)"/></svg>', "nothing from outside"),
        ("<svg><rect style=\"fill: URL( '//x#a')\"/></svg>", "nothing from outside"),
        ('<svg onload="x()"/>', "nothing from outside"),
        (" " * 1_000_001, "is larger than 1 MB"),
    ],
)
def test_a_logo_that_needs_more_than_itself_is_refused(tmp_path, logo, says):
    drill = academy(tmp_path, logo=logo)
    with pytest.raises(Unreadable) as refused:
        logo_beside(drill)
    assert says in str(refused.value)
    assert "logo.svg" in str(refused.value)


def test_a_logo_may_point_into_itself(tmp_path):
    logo = '<svg><linearGradient id="a"/><rect fill="url(#a)"/><a href="#a"/></svg>'
    assert logo_beside(academy(tmp_path, logo=logo)) == logo


def png(width, height, body=b""):
    """A PNG whose header says this size: ISO/IEC 15948, 5.2 and 11.2.2."""
    header = width.to_bytes(4, "big") + height.to_bytes(4, "big") + bytes((8, 2, 0, 0, 0))
    chunk = b"IHDR" + header
    return b"\x89PNG\r\n\x1a\n" + (13).to_bytes(4, "big") + chunk + zlib.crc32(chunk).to_bytes(4, "big") + body


def test_a_png_is_a_logo_unless_it_unpacks_to_more_than_it_should(tmp_path):
    drill = academy(tmp_path, logo_name="logo.png")
    (tmp_path / "logo.png").write_bytes(png(300, 200))
    assert logo_beside(drill) == png(300, 200)
    for bomb, says in (
        (png(60_000, 60_000), "60000 by 60000 pixels"),
        (png(0, 5), "0 by 5"),
        (png(1, 1)[:20], "damaged"),
    ):
        (tmp_path / "logo.png").write_bytes(bomb)
        with pytest.raises(Unreadable, match=says):
            logo_beside(drill)


def test_a_handbook_may_name_a_brand_in_its_own_folder_and_nowhere_else(tmp_path):
    academy(tmp_path)
    (tmp_path / "juniors").mkdir()
    (tmp_path / "juniors" / "red.json").write_text('{"name": "Red"}')
    book = tmp_path / "juniors" / "x.handbook.json"
    assert branded(book, "red.json").brand.name == "Red"
    assert branded(book).brand.name == "Alder Quay"
    with pytest.raises(Unreadable, match="expected the name of a brand file in the same folder"):
        branded(book, "../brand.json")
