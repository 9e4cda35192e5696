import pytest

from designer.bundle import sample
from designer.commands.files import setting_named, write
from designer.commands.status import WrongUsage
from designer.drill.setting import At
from designer.storage.reading import open_drill
from designer.storage.writing import Unwritable


def test_the_main_progression_is_taken_where_none_is_named():
    drill = open_drill(sample("wide-start.drill.json")).drill
    assert setting_named(drill, None, "x") == At(drill.main)
    assert setting_named(drill, "1", "x") == At(drill.progressions[0].id)
    with pytest.raises(WrongUsage, match=r"^x: there is no progression '9'; the drill has 1 \("):
        setting_named(drill, "9", "x")


def test_a_file_that_is_there_is_kept_unless_it_is_given_up(tmp_path):
    file = tmp_path / "a"
    write(str(file), b"one", force=False, read=())
    with pytest.raises(WrongUsage, match="is there already; --force overwrites it"):
        write(str(file), b"two", force=False, read=())
    assert file.read_bytes() == b"one"
    write(str(file), b"two", force=True, read=())
    assert file.read_bytes() == b"two"


@pytest.mark.parametrize("link", [False, True])
def test_the_file_that_is_read_is_never_written_over(tmp_path, link):
    file = tmp_path / "a"
    file.write_bytes(b"drill")
    output = tmp_path / "link"
    output.symlink_to(file)
    with pytest.raises(WrongUsage, match="is the file that is read"):
        write(str(output if link else file), b"card", force=True, read=(str(file),))
    assert file.read_bytes() == b"drill"


def test_a_folder_is_no_file_to_write(tmp_path):
    with pytest.raises(WrongUsage, match="is a folder"):
        write(str(tmp_path), b"x", force=True, read=())


def test_a_link_to_nothing_counts_as_there(tmp_path):
    (tmp_path / "link").symlink_to("none")
    with pytest.raises(WrongUsage, match="is there already"):
        write(str(tmp_path / "link"), b"x", force=False, read=())


def test_a_folder_that_is_not_there_is_told(tmp_path):
    with pytest.raises(Unwritable, match="the folder is not there"):
        write(str(tmp_path / "none" / "a"), b"x", force=False, read=())


def test_a_dash_is_standard_output_byte_for_byte(capfdbinary):
    data = bytes(range(256))
    write("-", data, force=False, read=())
    assert capfdbinary.readouterr().out == data
