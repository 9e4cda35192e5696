from hypothesis import given
from hypothesis import strategies as st
from strategies import IDS, settings

from designer.drill.movement import Shot
from designer.drill.order import circles
from designer.drill.rules import Part
from designer.drill.setting import Setting


def shots(**after):
    return Setting(shots={id: Shot(id=id, by="A", after=before) for id, before in after.items()})


def test_a_tree_of_shots_has_no_circle():
    assert list(circles(shots(feed=None, one="feed", other="feed", last="one", loose="nowhere"))) == []


def test_a_circle_is_named_by_those_in_it_only():
    found = list(circles(shots(a="b", b="c", c="b", d="a")))
    assert [(kind, set(ids)) for kind, ids in found] == [("shots", {"b", "c"})]


def test_a_shot_after_itself_and_parts_in_a_circle_are_found():
    parts = {id: Part(id=id, kind="open", after=before) for id, before in (("x", "y"), ("y", "x"))}
    setting = Setting(shots=shots(a="a").shots, parts=parts)
    assert {(kind, frozenset(ids)) for kind, ids in circles(setting)} == {
        ("shots", frozenset("a")),
        ("parts", frozenset("xy")),
    }


@given(settings())
def test_settings_drawn_for_tests_have_none(setting):
    assert list(circles(setting)) == []


@given(st.dictionaries(st.sampled_from(IDS), st.none() | st.sampled_from(IDS)))
def test_the_circles_are_those_that_walking_back_for_ever_would_find(after):
    def comes_back(start):
        id = after.get(start)
        for _ in after:
            if id == start:
                return True
            id = after.get(id)
        return False

    found = {id for _, ids in circles(shots(**after)) for id in ids}
    assert found == {id for id in after if comes_back(id)}
