"""The numbers of a drill from the command line, over the samples."""

import json

import pytest

from designer.bundle import sample
from designer.commands import main

WIDE = str(sample("wide-start.drill.json"))


@pytest.fixture
def numbers(capsys):
    def ask(*words):
        status = main(["numbers", *map(str, words)])
        out, err = capsys.readouterr()
        return status, out, err

    return ask


def test_json_says_all_of_a_shot(numbers):
    status, out, _ = numbers(WIDE, "--at", "2", "--level", "tournament", "--json")
    found = json.loads(out)
    assert status == 0
    assert (found["format"], found["at"], found["level"], found["ball"]) == (1, "p-fed", "tournament", "yellow")
    feed, reply, second = found["shots"]
    assert [shot["digit"] for shot in found["shots"]] == [1, 2, 3]
    assert feed["next"][0]["spare_s"] == pytest.approx(
        feed["next"][0]["there_is_s"] - feed["next"][0]["needed_s"], abs=2e-4
    )
    assert reply["targets"][0]["areas"] == ["reply-zone"]
    assert 0 < reply["targets"][0]["chance"] < 1
    assert reply["window"]["low_deg"] < reply["angle_deg"] < reply["window"]["high_deg"]
    assert reply["net_clearance_m"] > 0
    assert second["problem"] is None
    assert found["fairness"]["first"] == ["A"]
    assert found["load"]["people"][0]["letter"] == "A"


def test_plain_text_has_a_block_for_each_shot(numbers):
    status, out, _ = numbers(WIDE, "--at", "2", "--level", "tournament")
    assert status == 0
    for words in ("1 B: racket feed (feed)", "clears the net by", "A (reply): there are", "Finish: about", "Load: "):
        assert words in out
    assert "A against B" in out
    assert "both are assumed" in out


def test_the_same_call_says_the_same(numbers):
    assert numbers(WIDE, "--json") == numbers(WIDE, "--json")


def test_a_group_of_ones_own(numbers):
    words = (str(sample("shared-target.drill.json")), "--at", "1", "--hits", "4/10", "--of", "reply", "--json")
    found = json.loads(numbers(*words)[1])
    assert found["spread_fitted_to"] == "4 of 10"
    reply = next(shot for shot in found["shots"] if shot["shot"] == "reply")
    assert reply["targets"][0]["chance"] == pytest.approx(0.4, abs=0.02)


def test_the_level_and_the_air_change_the_numbers(numbers):
    def speed(*words):
        found = json.loads(numbers(WIDE, "--at", "2", *words, "--json")[1])
        return found["shots"][1]["speed_mps"], found["shots"][1]["angle_deg"]

    assert speed("--level", "tour")[0] > speed("--level", "club")[0]
    assert speed("--altitude", "2000") != speed()
    assert speed("--drag", "0.65") != speed()


@pytest.mark.parametrize("name", ["doubles-six", "hoop-red", "shared-target", "volley-four"])
def test_other_samples(numbers, name):
    status, out, err = numbers(sample(f"{name}.drill.json"), "--level", "tournament", "--json")
    assert (status, err) == (0, "")
    assert json.loads(out)["shots"]


@pytest.mark.parametrize(
    ("words", "status", "says"),
    [
        ((WIDE, "--level", "expert"), 64, "invalid choice: 'expert'"),
        ((WIDE, "--at", "9"), 64, "there is no progression '9'"),
        ((WIDE, "--drag", "nan"), 64, "A drag coefficient must be a number"),
        ((WIDE, "--altitude", "90000"), 64, "An altitude of 90000 m"),
        ((WIDE, "--open-point", "2"), 64, "The chance of an open point of 2 cannot be"),
        ((WIDE, "--hits", "four"), 64, "expected how many of how many, such as 4/10"),
        ((WIDE, "--hits", "4/10", "--of", "gone"), 64, "There is no shot 'gone'"),
        (("gone.drill.json",), 2, "gone.drill.json"),
    ],
)
def test_what_cannot_be_is_one_sentence(numbers, words, status, says):
    found, out, err = numbers(*words)
    assert (found, out) == (status, "")
    assert says in err
    assert len(err.strip().splitlines()) == 1
