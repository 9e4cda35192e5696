import pytest

from designer.bundle import sample
from designer.storage.reading import open_drill
from designer.wording.describe import describe


@pytest.mark.parametrize("units", ["rackets", "metres", "feet"])
@pytest.mark.parametrize("at", [None, "1", "3", "2/harder"])
def test_it_is_what_the_wording_says_of_that_setting(call, wide, at, units):
    from designer.commands.files import setting_named

    drill = open_drill(wide).drill
    said = call("describe", wide, "--units", units, *(("--at", at) if at else ()))
    assert said.status == 0
    assert said.err == ""
    assert said.out == describe(drill, setting_named(drill, at, "x"), units)


def test_settings_and_units_make_a_difference(call, wide):
    texts = {
        call("describe", wide, *words).out
        for words in ((), ("--at", "1"), ("--at", "2/harder"), ("--units", "feet"), ("--units", "metres"))
    }
    assert len(texts) == 5


def test_a_setting_that_the_drill_has_not_is_wrong_usage(call, wide):
    said = call("describe", wide, "--at", "2/softer")
    assert said.status == 64
    assert said.out == ""
    said.one_sentence(wide, "'softer'", "easier", "harder2")


@pytest.mark.parametrize("name", sorted(path.name for path in sample().glob("*.drill.json")))
def test_every_sample_is_described_with_its_title_and_its_stop_word(call, name):
    said = call("describe", sample(name))
    assert said.status == 0
    assert said.out.splitlines()[0] == open_drill(sample(name)).drill.title
    assert "stop" in said.out.lower()
