import pikepdf
import pytest


@pytest.fixture
def card(call, wide, tmp_path):
    """A coach's card, which carries its drill."""
    file = tmp_path / "card.pdf"
    assert call("card", wide, "-o", file, "--for", "coach").status == 0
    return file


def attach(card, data):
    """Puts other bytes in the place of the attached drill."""
    with pikepdf.open(card, allow_overwriting_input=True) as document:
        for spec in document.attachments.values():
            spec.obj.EF.F.write(data)
            spec.obj.EF.UF.write(data)
        document.save(card)


def test_the_drill_comes_out_as_the_bytes_that_went_in(call, wide, card, tmp_path):
    assert call("extract", card, "-o", tmp_path / "out.drill.json").status == 0
    assert (tmp_path / "out.drill.json").read_bytes() == wide.read_bytes()
    assert call("extract", card, "-o", "-").data == wide.read_bytes()


def test_a_file_that_is_there_is_kept(call, card, tmp_path):
    (tmp_path / "out.drill.json").write_bytes(b"mine")
    said = call("extract", card, "-o", tmp_path / "out.drill.json")
    assert said.status == 64
    said.one_sentence("out.drill.json", "--force")
    assert (tmp_path / "out.drill.json").read_bytes() == b"mine"
    assert call("extract", card, "-o", tmp_path / "out.drill.json", "--force").status == 0


@pytest.mark.parametrize(
    ("data", "says"),
    [
        (b"MZ no drill at all", "is not a drill file"),
        (b'{"id": 7}', "id: 7, expected text"),
        (b'{"format": 2, "id": "d", "progressions": [{"id": "p"}]}', "is in format 2"),
    ],
)
def test_what_is_no_drill_is_not_written(call, card, tmp_path, data, says):
    attach(card, data)
    said = call("extract", card, "-o", tmp_path / "out.drill.json")
    assert said.status == 2
    said.one_sentence(card, "the drill in it", says)
    assert not (tmp_path / "out.drill.json").exists()


def test_a_player_s_card_carries_none(call, wide, tmp_path):
    call("card", wide, "-o", tmp_path / "card.pdf")
    said = call("extract", tmp_path / "card.pdf", "-o", tmp_path / "out.drill.json")
    assert said.status == 2
    said.one_sentence("carries no drill")


def test_a_drill_is_no_card(call, wide, tmp_path):
    said = call("extract", wide, "-o", tmp_path / "out.drill.json")
    assert said.status == 2
    said.one_sentence(wide, "is no PDF")
