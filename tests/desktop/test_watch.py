"""A file that another program changes: noticed once for each change, our own saves never."""

import hashlib

import pytest

from designer.desktop.watch import Watch


@pytest.fixture
def watch(qapp):
    made = Watch()
    made.told = []
    made.changed.connect(lambda: made.told.append(True))
    yield made
    made.stop()


def digest(path):
    return hashlib.sha256(path.read_bytes()).digest()


def test_only_another_content_is_a_change(watch, tmp_path):
    file = tmp_path / "a.drill.json"
    file.write_text("one")
    watch.follow(file, digest(file))
    watch.look()
    file.write_text("one")
    watch.look()
    assert watch.told == []
    file.write_text("two")
    watch.look()
    watch.look()
    assert watch.told == [True]


def test_a_file_that_is_gone_says_nothing_and_one_that_comes_back_does(watch, tmp_path):
    file = tmp_path / "a.drill.json"
    file.write_text("one")
    watch.follow(file, digest(file))
    file.unlink()
    watch.look()
    assert watch.told == []
    file.write_text("two")
    watch.look()
    assert watch.told == [True]


def test_the_system_s_own_signal_is_heard(watch, tmp_path, qtbot):
    file = tmp_path / "a.drill.json"
    file.write_text("one")
    watch.follow(file, digest(file))
    with qtbot.waitSignal(watch.changed):
        file.write_text("two")


def test_after_stopping_nothing_is_heard(watch, tmp_path):
    file = tmp_path / "a.drill.json"
    file.write_text("one")
    watch.follow(file, digest(file))
    watch.stop()
    file.write_text("two")
    watch.look()
    assert watch.told == []
