"""One list of what is asked: each question once, in its place on the card, and silent where it is answered."""

import pytest
from review.situations import AT, END, FEED, RALLY, REPLY, START, WON, A, B, drill, told

from designer.bundle import sample
from designer.drill.conditions import In, Outcome
from designer.drill.drill import Drill, House
from designer.drill.items import Area, Rectangle
from designer.drill.rules import Keep, Part, Rule
from designer.drill.setting import addresses
from designer.review.questions import questions as checks
from designer.wording.card import card_words
from designer.wording.questions import FIRST, questions
from designer.wording.telling import telling

SAMPLES = sorted(path.name for path in sample().glob("*.drill.json"))
ZONE = Area(kind="area", id="zone", care="exact", shape=Rectangle(form="rectangle", corners=((0.0, 7.0), (4.0, 11.0))))
OPEN = Rule(id="rule", must=Keep(do="keep", where=(In(area="zone"), In(area="right half", judged="bounce"))))
ALL = (A, B, FEED, REPLY, START.changed(bad=None), WON, END, ZONE, OPEN, Part(id="part", kind="forced"))


def test_a_blank_court_is_asked_for_the_few_things_that_come_first():
    kinds = [found.kind for found in questions(told(jobs=""))]
    assert kinds == ["start", "rules", "points", "finish"]
    assert [key.removeprefix("question:") for key in FIRST] == ["start", "bad", "rules", "finish"]


@pytest.mark.parametrize("name", SAMPLES)
def test_the_academy_s_drills_leave_nothing_open(name):
    whole = Drill.model_validate_json(sample(name).read_bytes())
    for at in addresses(whole):
        assert [found.asked.text for found in questions(telling(whole, at))] == [], at


def test_every_question_stands_once_under_its_heading():
    whole = drill(*ALL, house=House())
    found = questions(told(*ALL, house=House()))
    assert len({each.asked.key for each in found}) == len(found) >= 8
    card = card_words(whole, AT, "coach")
    printed = {section.key: [s.key for s in section.sentences if s.missing] for section in card.sections}
    for each in found:
        assert each.asked.missing
        assert each.asked.text.endswith("?")
        if each.section != "drill":
            assert each.asked.key in printed[each.section]
    assert sum(map(len, printed.values())) == sum(each.section != "drill" for each in found)


def test_the_review_asks_what_the_card_asks():
    # One list: the same kinds in the same order, whatever the drill.
    scene = told(*ALL, house=House())
    assert [check.key for check in checks(scene)] == [each.kind for each in questions(scene)]


def test_an_area_is_asked_about_once_however_many_rules_name_it():
    twice = (OPEN, OPEN.changed(id="again", breach=Outcome(then="replay")))
    keys = [each.asked.key for each in questions(told(*RALLY, ZONE, *twice))]
    assert keys.count("question:judged:zone") == 1
    assert keys.count("question:edge:right-half") == 1
