import errno
import json
import os
import resource
import stat
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import AWKWARD, drills, json_values

from designer.drill.base import Place, place
from designer.drill.conditions import Event, In
from designer.drill.drill import Changes, Court, Drill, Progression
from designer.drill.items import Area, Cone, Note, Rectangle, Unknown
from designer.drill.rules import Bounces, Rule, Swap
from designer.storage import writing
from designer.storage.reading import read_drill
from designer.storage.writing import WIDTH, Unwritable, drill_bytes, json_bytes, save, write_file


def raw_of(drill):
    return json.loads(drill_bytes(drill))


def one(**changes):
    return Drill(id="d", progressions=(Progression(id="p", changes=Changes(**changes)),))


def changes_of(drill):
    return raw_of(drill)["progressions"][0].get("changes", {})


class TestDrillBytes:
    @given(drills())
    def test_what_is_written_is_read_as_the_same_drill_and_written_as_the_same_bytes(self, drill):
        data = drill_bytes(drill)
        opened = read_drill(data, "x")
        assert opened.drill == drill
        assert opened.notices == ()
        assert drill_bytes(opened.drill) == data

    @given(drills(most_progressions=1))
    def test_equal_drills_give_equal_bytes(self, drill):
        turned = {word: dict(reversed(texts.items())) for word, texts in reversed(drill.translations.items())}
        assert drill_bytes(drill.changed(translations=turned)) == drill_bytes(drill)

    @pytest.mark.parametrize("text", AWKWARD)
    def test_awkward_texts_come_back_letter_for_letter(self, text):
        item = Note(kind="note", id="n", place=Place(), text=text)
        drill = one(items=(item,)).changed(title=text, cues=(text,), translations={"fr": {text: text}})
        assert read_drill(drill_bytes(drill), "x").drill == drill

    def test_only_what_differs_from_the_default_is_written_but_for_the_format_and_the_kinds(self):
        cone = Cone(kind="cone", id="home", place=Place())
        rule = Rule(id="r", must=Bounces(do="bounces"))
        zone = Area(kind="area", id="zone", shape=Rectangle(form="rectangle", corners=((0.0, 0.0), (1.0, 1.0))))
        drill = one(items=(cone, zone), rules=(rule,)).changed(court=Court(surface="clay"))
        assert raw_of(drill) == {
            "format": 1,
            "id": "d",
            "court": {"surface": "clay"},
            "progressions": [
                {
                    "id": "p",
                    "changes": {
                        "items": [
                            {"kind": "cone", "id": "home", "place": {}},
                            {"kind": "area", "id": "zone", "shape": {"form": "rectangle", "corners": [[0, 0], [1, 1]]}},
                        ],
                        "rules": [{"id": "r", "must": {"do": "bounces"}}],
                    },
                }
            ],
        }

    def test_keys_stand_in_the_order_of_the_records_a_kind_first_and_a_note_last(self):
        cone = Cone(
            kind="cone", id="home", note="by the post", care="exact", place=Place(on="A", at=(1.0, 2.0)), later=1
        )
        (written,) = changes_of(one(items=(cone,)))["items"]
        assert list(written) == ["kind", "id", "care", "place", "note", "later"]
        assert list(written["place"]) == ["on", "at"]
        assert list(raw_of(one().changed(title="T", minutes=5, author="A"))) == [
            "format",
            "id",
            "title",
            "minutes",
            "author",
            "progressions",
        ]

    def test_and_is_written_as_the_word_it_is(self):
        event = Event(what="landed", where=(In(area="zone"),), and_=(Event(what="won"),))
        (swap,) = changes_of(one(swaps=(Swap(id="s", on=(event,)),)))["swaps"]
        assert swap["on"] == [{"what": "landed", "where": [{"area": "zone"}], "and": [{"what": "won"}]}]

    def test_metres_are_written_to_a_tenth_of_a_millimetre_and_dates_as_dates(self):
        drill = one(items=(Cone(kind="cone", id="home", place=place(0.1 + 0.2, -0.0)),)).changed(dated=date(2026, 5, 1))
        assert b'"at": [0.3, 0.0]' in drill_bytes(drill)
        assert raw_of(drill)["dated"] == "2026-05-01"

    def test_what_an_unknown_kind_brings_is_written_back(self):
        odd = Unknown(kind="rebound wall", id="wall", tilt=[1, {"by": None}], name="w")
        assert changes_of(one(items=(odd,)))["items"] == [
            {"kind": "rebound wall", "id": "wall", "tilt": [1, {"by": None}], "name": "w"}
        ]


class TestJsonBytes:
    @given(json_values())
    def test_it_is_json_of_the_same_value(self, value):
        assert json.loads(json_bytes(value)) == value

    @given(st.dictionaries(st.text(max_size=20), json_values(), max_size=4))
    def test_only_a_single_value_stands_on_a_line_that_is_too_long(self, value):
        for line in json_bytes(value).decode().split("\n"):
            if len(line) > WIDTH:
                alone = json.loads(
                    "{" + line.strip().removesuffix(",") + "}" if '": ' in line else line.removesuffix(",")
                )
                (inner,) = alone.values() if isinstance(alone, dict) else (alone,)
                assert not isinstance(inner, list | dict) or not inner

    def test_a_value_that_just_fits_stands_on_one_line_and_one_more_character_breaks_it(self):
        def lines(length):
            return json_bytes({"first": ["x" * length, 1], "last": 1}).decode().split("\n")

        # Two spaces, the key, the list and the comma behind it: 120 characters in all.
        room = WIDTH - len('  "first": ["", 1],')
        assert len(lines(room)[1]) == WIDTH
        assert lines(room + 1)[1] == '  "first": ['

    def test_it_is_utf_8_with_one_line_break_at_the_end(self):
        assert json_bytes({"a": "é🎾"}) == '{"a": "é🎾"}\n'.encode()

    @pytest.mark.parametrize("text", ["\ud83c", "a\udc00b", "\udf89\ud83c"])
    def test_half_a_character_is_written_as_a_replacement(self, text):
        written = json.loads(json_bytes({"a": text}))["a"]
        assert written == "".join("\ufffd" if "\ud800" <= char <= "\udfff" else char for char in text)

    @pytest.mark.parametrize("value", [float("nan"), float("inf")])
    def test_what_is_no_number_in_json_is_never_written(self, value):
        with pytest.raises(ValueError, match="JSON"):
            json_bytes({"a": value})


def only(folder):
    """The names in a folder, so that a temporary file left behind is seen."""
    return sorted(path.name for path in folder.iterdir())


class TestSave:
    def test_a_new_file_is_the_drill(self, drill, tmp_path):
        written = save(tmp_path / "a.drill.json", drill)
        assert (tmp_path / "a.drill.json").read_bytes() == written == drill_bytes(drill)
        assert only(tmp_path) == ["a.drill.json"]

    def test_a_new_file_has_the_permissions_that_this_user_gives(self, drill, tmp_path):
        before = os.umask(0o027)
        try:
            save(tmp_path / "a", drill)
        finally:
            os.umask(before)
        assert stat.S_IMODE((tmp_path / "a").stat().st_mode) == 0o640

    @pytest.mark.parametrize("mode", [0o600, 0o664, 0o755])
    def test_permissions_are_kept(self, drill, tmp_path, mode):
        file = tmp_path / "a"
        file.write_bytes(b"old")
        file.chmod(mode)
        save(file, drill)
        assert stat.S_IMODE(file.stat().st_mode) == mode

    def test_a_link_stays_a_link_and_what_it_points_to_is_written(self, drill, tmp_path):
        (tmp_path / "far").mkdir()
        (tmp_path / "far" / "real").write_bytes(b"old")
        (tmp_path / "middle").symlink_to("far/real")
        (tmp_path / "link").symlink_to("middle")
        save(tmp_path / "link", drill)
        assert (tmp_path / "link").is_symlink()
        assert (tmp_path / "middle").is_symlink()
        assert (tmp_path / "far" / "real").read_bytes() == drill_bytes(drill)
        assert only(tmp_path / "far") == ["real"]

    def test_a_link_to_nothing_makes_what_it_points_to(self, drill, tmp_path):
        (tmp_path / "link").symlink_to("new")
        save(tmp_path / "link", drill)
        assert (tmp_path / "new").read_bytes() == drill_bytes(drill)

    def test_the_bytes_are_on_the_disk_before_the_old_file_is_gone_and_the_name_is_there_before_it_returns(
        self, drill, tmp_path, monkeypatch
    ):
        steps = []
        flush, replace = os.fsync, os.replace

        def fsync(descriptor):
            steps.append("flush a folder" if stat.S_ISDIR(os.fstat(descriptor).st_mode) else "flush a file")
            flush(descriptor)

        def replacing(source, target):
            steps.append("replace")
            replace(source, target)

        monkeypatch.setattr(os, "fsync", fsync)
        monkeypatch.setattr(os, "replace", replacing)
        save(tmp_path / "a", drill)
        assert steps == ["flush a file", "replace", "flush a folder"]

    @pytest.mark.parametrize(
        ("name", "says"),
        [
            (".", "it is a folder"),
            ("none/a", "the folder is not there"),
            ("file/a", "the folder is not there"),
            ("x" * 300, "its name is too long"),
            ("nul\0", "cannot be the name of a file"),
            ("loop", "a link that leads back to itself"),
        ],
    )
    def test_a_place_where_no_file_can_be_is_named(self, drill, tmp_path, name, says):
        (tmp_path / "file").write_bytes(b"old")
        (tmp_path / "loop").symlink_to("loop")
        with pytest.raises(Unwritable, match=says) as refused:
            save(tmp_path / name, drill)
        assert repr(str(tmp_path))[1:-1] in str(refused.value)
        assert only(tmp_path) == ["file", "loop"]

    def test_a_folder_that_may_not_be_written_to_is_left_as_it_was(self, drill, as_somebody):
        (as_somebody / "a").write_bytes(b"old")
        as_somebody.joinpath("shut").mkdir()
        (as_somebody / "shut" / "a").write_bytes(b"old")
        (as_somebody / "shut").chmod(0o555)
        with pytest.raises(Unwritable, match="shut/a: not saved, because you have no permission to write there"):
            save(as_somebody / "shut" / "a", drill)
        assert (as_somebody / "shut" / "a").read_bytes() == b"old"

    def test_a_write_protected_file_is_not_replaced(self, drill, as_somebody):
        file = as_somebody / "a"
        file.write_bytes(b"old")
        file.chmod(0o444)
        with pytest.raises(Unwritable, match="write-protected"):
            save(file, drill)
        assert file.read_bytes() == b"old"
        assert only(as_somebody) == ["a"]

    def test_a_file_that_the_disk_cuts_short_never_takes_the_place_of_the_old_one(self, drill, tmp_path):
        file = tmp_path / "a"
        file.write_bytes(b"old")
        before = resource.getrlimit(resource.RLIMIT_FSIZE)
        resource.setrlimit(resource.RLIMIT_FSIZE, (40, before[1]))
        try:
            with pytest.raises(Unwritable, match="the disk takes no file of that size"):
                save(file, drill)
        finally:
            resource.setrlimit(resource.RLIMIT_FSIZE, before)
        assert file.read_bytes() == b"old"
        assert only(tmp_path) == ["a"]

    @pytest.mark.parametrize("step", ["fsync", "replace"])
    @pytest.mark.parametrize(
        ("number", "says"),
        [(errno.ENOSPC, "the disk is full"), (errno.EROFS, "the disk is read-only"), (errno.EIO, "reports a fault")],
    )
    def test_a_fault_of_the_disk_leaves_the_old_file(self, drill, tmp_path, monkeypatch, step, number, says):
        file = tmp_path / "a"
        file.write_bytes(b"old")

        def fail(*_):
            raise OSError(number, os.strerror(number))

        monkeypatch.setattr(os, step, fail)
        with pytest.raises(Unwritable, match=says):
            save(file, drill)
        assert file.read_bytes() == b"old"
        assert only(tmp_path) == ["a"]

    def test_an_interruption_leaves_the_old_file_too(self, tmp_path, monkeypatch):
        (tmp_path / "a").write_bytes(b"old")

        def interrupt(*_):
            raise KeyboardInterrupt

        monkeypatch.setattr(writing.os, "fsync", interrupt)
        with pytest.raises(KeyboardInterrupt):
            write_file(tmp_path / "a", b"new")
        assert (tmp_path / "a").read_bytes() == b"old"
        assert only(tmp_path) == ["a"]
