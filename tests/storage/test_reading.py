import json
import os
import resource

import pytest

from designer.bundle import sample
from designer.cards.attachment import finished
from designer.storage import parsing
from designer.storage.reading import Unreadable, file_bytes, open_drill, read_drill
from designer.storage.writing import drill_bytes, save


def sentence(path):
    with pytest.raises(Unreadable) as refused:
        open_drill(path)
    said = str(refused.value)
    assert str(path).split("\0")[0] in said
    assert "\n" not in said
    return said


def test_a_drill_comes_with_its_bytes_and_its_path(drill, tmp_path):
    file = tmp_path / "a.drill.json"
    written = save(file, drill)
    opened = open_drill(file)
    assert (opened.drill, opened.source, opened.path) == (drill, written, file)
    assert (opened.notices, opened.read_only, opened.from_card) == ((), False, False)
    assert open_drill(str(file)) == opened


def test_bytes_that_are_not_our_own_layout_are_kept_as_they_were(drill):
    data = json.dumps(json.loads(drill_bytes(drill)), indent=7).encode()
    opened = read_drill(data, "x")
    assert opened.drill == drill
    assert opened.source == data


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("none.drill.json", "is not there"),
        ("file/a", "is not there"),
        ("folder", "is a folder"),
        ("loop", "is a link that leads back to itself"),
        ("pipe", "is no ordinary file"),
        ("x" * 300, "its name is too long"),
        ("nul\0", "cannot be the name of a file"),
        ("empty", "is empty"),
    ],
)
def test_what_is_no_file_of_a_drill_is_named(tmp_path, name, says):
    (tmp_path / "folder").mkdir()
    (tmp_path / "file").write_text("{}")
    (tmp_path / "empty").touch()
    (tmp_path / "loop").symlink_to("loop")
    os.mkfifo(tmp_path / "pipe")
    assert says in sentence(tmp_path / name)


def test_a_file_that_may_not_be_read_is_named(as_somebody):
    file = as_somebody / "shut.drill.json"
    file.write_text("{}")
    file.chmod(0o000)
    assert "you have no permission" in sentence(file)


@pytest.mark.parametrize(("begins", "limit"), [(b"{", "20 MB"), (b"%PDF-1.7\n", "100 MB")])
def test_two_hundred_megabytes_are_refused_before_they_are_read(tmp_path, begins, limit):
    file = tmp_path / "huge.drill.json"
    with file.open("wb") as opened:
        opened.write(begins)
        opened.truncate(200_000_000)
    before = resource.getrusage(resource.RUSAGE_SELF).ru_inblock, _peak()
    assert f"is larger than {limit}" in sentence(file)
    assert _peak() - before[1] < 50_000  # kilobytes: far less than the file


def _peak():
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss


def test_a_file_that_grows_while_it_is_read_is_not_followed(tmp_path, monkeypatch):
    file = tmp_path / "a"
    file.write_bytes(b"x" * 100)
    real = os.fstat
    monkeypatch.setattr(
        os, "fstat", lambda descriptor: os.stat_result([*real(descriptor)[:6], 10, *real(descriptor)[7:10]])
    )
    with pytest.raises(Unreadable, match="is larger than"):
        file_bytes(file, 50)


@pytest.mark.parametrize("format", [0, -1, 1.5, True, "1", None, [1]])
def test_a_format_is_a_whole_number(format):
    with pytest.raises(Unreadable, match=r"^x: format: .*, expected a whole number from 1"):
        read_drill(json.dumps({"format": format, "id": "d", "progressions": [{"id": "p"}]}).encode(), "x")


@pytest.mark.parametrize("data", [b"[]", b"3", b'"drill"', b"null", b"[{}]"])
def test_other_json_is_no_drill(data):
    with pytest.raises(Unreadable, match=r"^x: "):
        read_drill(data, "x")


@pytest.mark.parametrize(
    ("kind", "first", "second"),
    [
        ("shots", {"by": "A"}, {"by": "B"}),
        ("parts", {"kind": "open"}, {"kind": "open"}),
    ],
)
def test_a_circle_is_refused_with_its_setting(kind, first, second):
    straight = [{"id": "one", **first}, {"id": "two", "after": "one", **second}]
    circle = [{"id": "one", "after": "two", **first}]
    raw = {
        "id": "d",
        "progressions": [{"id": "p", "changes": {kind: straight}, "harder": [{"id": "v", "changes": {kind: circle}}]}],
    }
    with pytest.raises(Unreadable) as refused:
        read_drill(json.dumps(raw).encode(), "x")
    assert str(refused.value) in {
        f"x: progression 1, 'v', {kind}: {pair} come after one another in a circle; expected a first one."
        for pair in ("'one', 'two'", "'two', 'one'")
    }


def test_ids_that_point_nowhere_do_not_keep_a_drill_shut():
    changes = {
        "shots": [{"id": "s", "by": "Z", "after": "ghost", "to": {"on": "ghost"}}],
        "rules": [{"id": "r", "parts": ["ghost"], "must": {"do": "sing"}}],
        "items": [{"kind": "rebound wall", "id": "w"}],
        "drop": ["ghost"],
    }
    raw = {"id": "d", "main": "ghost", "later": 1, "progressions": [{"id": "p", "changes": changes}]}
    opened = read_drill(json.dumps(raw).encode(), "x")
    assert opened.notices == ()
    assert json.loads(drill_bytes(opened.drill)) == {"format": 1, **raw}


def test_an_id_that_stands_twice_is_mended_and_told():
    cone = {"kind": "cone", "id": "home", "place": {}}
    raw = {"id": "d", "progressions": [{"id": "p", "changes": {"items": [cone, cone]}}]}
    opened = read_drill(json.dumps(raw).encode(), "x")
    assert [item.id for item in opened.drill.progressions[0].changes.items] == ["home", "home-2"]
    assert len(opened.notices) == 1


def blank_pdf():
    from reportlab.pdfgen.canvas import Canvas

    canvas = Canvas("unused.pdf", invariant=1)
    canvas.showPage()
    return canvas.getpdfdata()


def test_a_card_that_carries_its_drill_is_opened_as_the_drill(drill, tmp_path):
    file = tmp_path / "card.pdf"
    source = drill_bytes(drill)
    file.write_bytes(finished(blank_pdf(), dated=None, source=source, file_name="small.drill.json"))
    before = file.read_bytes(), file.stat().st_mtime_ns
    opened = open_drill(file)
    assert (opened.drill, opened.source, opened.path, opened.from_card) == (drill, source, file, True)
    assert (file.read_bytes(), file.stat().st_mtime_ns) == before


def test_a_card_is_known_by_its_bytes_and_not_by_its_name(drill, tmp_path):
    (tmp_path / "drill.pdf").write_bytes(drill_bytes(drill))
    assert open_drill(tmp_path / "drill.pdf").drill == drill
    (tmp_path / "card.drill.json").write_bytes(blank_pdf())
    assert "carries no drill" in sentence(tmp_path / "card.drill.json")


def test_nothing_on_the_disk_is_changed_by_what_cannot_be_read(tmp_path):
    for number, data in enumerate((b"{", b"[" * 10_000, b"\xff\xfe{\0", b'{"id": 7}', b"%PDF-1.7 oops", b'{"a": NaN}')):
        file = tmp_path / f"{number}.drill.json"
        file.write_bytes(data)
        sentence(file)
        assert file.read_bytes() == data
    assert len(list(tmp_path.iterdir())) == 6


def test_the_limit_leaves_room_for_every_sample():
    assert max(path.stat().st_size for path in sample().glob("*.drill.json")) * 100 < parsing.LARGEST
