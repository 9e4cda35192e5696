"""What a sentence names can be opened, and what is written back changes that and nothing else."""

import pytest

from designer.bundle import sample
from designer.desktop.forms.subjects import SHEETS, InPlay, job, progression, record, subject_of, variation
from designer.drill.drill import Court, House
from designer.drill.people import Job
from designer.drill.setting import At, addresses, main_setting, setting_at
from designer.storage.reading import open_drill
from designer.wording.card import card_words

SAMPLES = sorted(path.name for path in sample().glob("*.drill.json"))


@pytest.fixture(scope="module")
def drill():
    return open_drill(sample("wide-start.drill.json")).drill


@pytest.mark.parametrize("name", SAMPLES)
@pytest.mark.parametrize("reader", ["player", "coach"])
def test_everything_a_card_is_about_can_be_opened(name, reader):
    drill = open_drill(sample(name)).drill
    for progression_ in drill.progressions:
        at = At(progression_.id)
        for section in card_words(drill, at, reader).sections:
            for sentence in section.sentences:
                for about in sentence.about[:1]:
                    subject = subject_of(drill, at, about)
                    assert subject is not None, (section.key, sentence.text, about)
                    assert subject.read(drill, at) is not None


def test_a_record_is_written_into_the_setting_in_view_alone(drill):
    at = At("p-fed", "v-one-racket")
    subject = record("reply")
    edited = subject.write(drill, at, subject.read(drill, at).changed(wing="backhand"))
    assert subject.read(edited, at).wing == "backhand"
    for other in addresses(drill):
        if other != at:
            assert setting_at(edited, other) == setting_at(drill, other)


def test_the_sheets_read_and_write_the_drill(drill):
    at = main_setting(drill)
    court = SHEETS["drill:court"].write(drill, at, Court(surface="clay"))
    assert court.court == Court(surface="clay")
    assert court.changed(court=drill.court) == drill
    house = SHEETS["drill:house"].write(drill, at, House(in_doubt="in"))
    assert house.house.in_doubt == "in"
    facts = SHEETS["drill:facts"]
    assert facts.write(drill, at, facts.read(drill, at).changed(minutes=7)).minutes == 7


def test_what_is_in_play_belongs_to_the_setting(drill):
    at = At("p-points")
    sheet = SHEETS["drill:in play"]
    edited = sheet.write(drill, at, InPlay(in_play="right half", ball="red"))
    assert (setting_at(edited, at).in_play, setting_at(edited, at).ball) == ("right half", "red")
    assert setting_at(edited, At("p-fed")) == setting_at(drill, At("p-fed"))


def test_a_job_that_is_not_listed_yet_is_added(drill):
    at = main_setting(drill)
    subject = job("D")
    assert subject.read(drill, at) == Job(letter="D")
    edited = subject.write(drill, at, Job(letter="D", hand="left"))
    assert edited.job("D").hand == "left"
    assert edited.jobs[:-1] == drill.jobs


def test_progressions_and_variations_are_named(drill):
    at = At("p-fed", "v-one-racket")
    named = progression("p-fed").write(drill, at, progression("p-fed").read(drill, at).changed(name="Fed"))
    assert [p.name for p in named.progressions][1] == "Fed"
    subject = variation(at)
    renamed = subject.write(drill, at, subject.read(drill, at).changed(name="Narrow"))
    assert subject.read(renamed, at).name == "Narrow"
    assert setting_at(renamed, at) == setting_at(drill, at)


def test_what_is_not_there_has_no_form(drill):
    at = main_setting(drill)
    assert subject_of(drill, at, "cone-zzzzz") is None
    assert record("cone-zzzzz").read(drill, at) is None
    assert progression("p-zzz").read(drill, at) is None
    assert variation(At("p-fed", "v-zzz")).read(drill, at) is None
