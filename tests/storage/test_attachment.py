import io
import zlib

import pikepdf
import pytest

from designer.storage import attachment
from designer.storage.attachment import extract, is_pdf
from designer.storage.parsing import LARGEST, Unreadable

DRILL = b'{"id": "d", "progressions": [{"id": "p"}]}'


def card(*files, change=None, **options):
    """A PDF with (name, bytes, relationship) attached."""
    document = pikepdf.new()
    document.add_blank_page()
    for key, (name, data, relationship) in enumerate(files):
        spec = pikepdf.AttachedFileSpec(document, data, filename=name, relationship=pikepdf.Name(f"/{relationship}"))
        document.attachments[f"{key}"] = spec
    if change is not None:
        change(document)
    result = io.BytesIO()
    document.save(result, **options)
    return result.getvalue()


def source(name="small.drill.json", data=DRILL):
    return (name, data, "Source")


def sentence(pdf):
    with pytest.raises(Unreadable) as refused:
        extract(pdf, "card.pdf")
    said = str(refused.value)
    assert said.startswith("card.pdf: ")
    assert "\n" not in said
    return said


def test_the_attached_bytes_come_out_as_they_went_in():
    assert extract(card(source()), "card.pdf") == DRILL


@pytest.mark.parametrize(
    "name", ["../../../etc/small.drill.json", "/abs/small.drill.json", "C:\\small.DRILL.JSON", "nul\0.drill.json"]
)
def test_a_path_in_the_name_is_never_used(name, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    assert extract(card(source(name)), "card.pdf") == DRILL
    assert list(tmp_path.iterdir()) == []


def test_the_source_is_taken_before_other_drills():
    files = (("a.drill.json", b"{}", "Data"), source(), ("z.drill.json", b"[]", "Supplement"))
    assert extract(card(*files), "card.pdf") == DRILL


def test_a_drill_that_is_not_marked_is_taken_where_it_is_the_only_one():
    assert (
        extract(card(("readme.txt", b"hello", "Source"), ("a.drill.json", DRILL, "Unspecified")), "card.pdf") == DRILL
    )


def test_of_several_different_drills_none_is_taken():
    assert "carries 2 different drills; expected one" in sentence(card(source(), source("b.drill.json", b"{}")))
    assert extract(card(source(), source("b.drill.json")), "card.pdf") == DRILL


@pytest.mark.parametrize("files", [(), (("a.txt", b"x", "Source"),), (("drill.json", DRILL, "Source"),)])
def test_a_card_without_a_drill_says_so(files):
    assert "carries no drill; expected a card that was made with its source" in sentence(card(*files))


def test_what_unpacks_to_more_than_a_drill_is_refused_before_it_is_unpacked(monkeypatch):
    bomb = card(source(data=b" " * 100_000_000))
    assert len(bomb) < 500_000
    unpacked = []
    real = zlib.decompressobj

    class Watched:
        def __init__(self):
            self.inner = real()

        def decompress(self, data, limit=0):
            unpacked.append(limit)
            return self.inner.decompress(data, limit)

        @property
        def eof(self):
            return self.inner.eof

    monkeypatch.setattr(attachment.zlib, "decompressobj", Watched)
    assert "the drill in it: is larger than 20 MB" in sentence(bomb)
    assert unpacked == [LARGEST + 1]


def packed(data, filters, **more):
    """A change that puts ``data`` in the place of the attached stream, said to be packed by ``filters``."""

    def change(document):
        for spec in document.attachments.values():
            stream = spec.obj.EF.F
            stream.write(data, filter=filters, **more)

    return change


def test_a_drill_that_is_packed_twice_is_unpacked_twice():
    filters = pikepdf.Array([pikepdf.Name.FlateDecode, pikepdf.Name.FlateDecode])
    pdf = card(
        source(),
        change=packed(zlib.compress(zlib.compress(DRILL)), filters),
        stream_decode_level=pikepdf.StreamDecodeLevel.none,
    )
    assert extract(pdf, "card.pdf") == DRILL


def test_a_drill_that_is_not_packed_is_taken_as_it_is():
    assert extract(card(source(), compress_streams=False), "card.pdf") == DRILL


@pytest.mark.parametrize("name", ["LZWDecode", "DCTDecode", "JBIG2Decode"])
def test_another_packing_is_refused_by_name(name):
    pdf = card(
        source(),
        change=packed(b"whatever", pikepdf.Name(f"/{name}")),
        compress_streams=False,
        stream_decode_level=pikepdf.StreamDecodeLevel.none,
    )
    assert f"packed as /{name}" in sentence(pdf)


@pytest.mark.parametrize(
    ("data", "says"), [(b"no zlib data", "the drill in it is damaged"), (zlib.compress(DRILL)[:-9], "is cut short")]
)
def test_a_broken_packing_is_told(data, says):
    pdf = card(
        source(),
        change=packed(data, pikepdf.Name.FlateDecode),
        stream_decode_level=pikepdf.StreamDecodeLevel.none,
    )
    assert says in sentence(pdf)


@pytest.mark.parametrize(
    "odd",
    [
        lambda document: setattr(document.Root, "Names", pikepdf.Array([1, 2])),
        lambda document: setattr(document.Root, "Names", 3),
        lambda document: setattr(document.Root.Names, "EmbeddedFiles", pikepdf.String("files")),
        lambda document: setattr(document.Root.Names.EmbeddedFiles, "Names", pikepdf.Array([pikepdf.String("a"), 7])),
        lambda document: setattr(document.Root.Names.EmbeddedFiles, "Names", pikepdf.Array([7])),
        lambda document: next(iter(document.attachments.values())).obj.__delitem__("/EF"),
        lambda document: setattr(next(iter(document.attachments.values())).obj, "EF", pikepdf.Dictionary(F=5)),
        lambda document: setattr(next(iter(document.attachments.values())).obj, "UF", pikepdf.Array([])),
    ],
)
def test_a_pdf_that_is_built_wrongly_is_a_sentence_and_no_crash(odd):
    said = sentence(card(source(), change=odd))
    assert "is a damaged PDF" in said or "carries no drill" in said


@pytest.mark.parametrize("pdf", [b"%PDF-1.7\n", b"%PDF-1.7 and no more", b"%PDF-1.7\n" + bytes(range(256)) * 20])
def test_what_only_begins_as_a_pdf_is_damaged(pdf):
    assert "is a damaged PDF; expected a card" in sentence(pdf)


@pytest.mark.parametrize("cut", [0.2, 0.5, 0.9])
def test_a_pdf_that_was_cut_short_is_a_sentence_or_still_whole(cut):
    pdf = card(source())
    try:
        found = extract(pdf[: int(len(pdf) * cut)], "card.pdf")
    except Unreadable as refused:
        found = str(refused)
    assert found == DRILL or found.startswith("card.pdf: ")


def test_a_locked_card_is_named():
    locked = card(source(), encryption=pikepdf.Encryption(owner="o", user="u"))
    assert "is locked with a password" in sentence(locked)


def test_a_card_that_is_locked_for_changes_only_is_read():
    assert extract(card(source(), encryption=pikepdf.Encryption(owner="o", user="")), "card.pdf") == DRILL


def test_what_is_no_pdf_is_named():
    assert "is no PDF; expected a card" in sentence(DRILL)


def test_a_pdf_is_known_by_its_mark_within_the_first_kilobyte():
    # ISO 32000-1:2008, annex H, implementation note 13 (from memory).
    assert is_pdf(b"%PDF-1.7")
    assert is_pdf(b"junk\n" * 100 + b"%PDF-1.7")
    assert not is_pdf(b"x" * 1024 + b"%PDF-1.7")
