import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import CLASSES, records

from designer.drill.base import Place
from designer.drill.kinds import kind_of


@given(st.data())
@pytest.mark.parametrize("kind", CLASSES)
def test_every_record_of_a_setting_has_its_list(kind, data):
    record = data.draw(records(data.draw(st.sampled_from(CLASSES[kind]))))
    assert kind_of(record) == kind


def test_what_is_no_record_of_a_setting_has_none():
    with pytest.raises(TypeError, match="Place"):
        kind_of(Place())
