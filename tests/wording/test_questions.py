"""One list of what is asked: each question once, in its place on the card, and silent where it is answered."""

import pytest
from review.situations import AT, END, FEED, HOUSE, RALLY, REPLY, START, WON, A, B, drill, told

from designer.bundle import sample
from designer.drill.base import place
from designer.drill.conditions import Event, In, Outcome
from designer.drill.drill import Drill, House
from designer.drill.items import Area, Rectangle
from designer.drill.movement import Run
from designer.drill.people import Spot
from designer.drill.rules import Aim, Keep, Part, Points, Rule, Swap, UseStroke
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


# Who decides a rally, one case for each question that the trade has ready for a new rule (common practice, no source):
# what is open, what is asked of it on the card, and what settles it.
LOSE = Outcome(then="lose the point")
IN_ZONE = In(area="zone", judged="bounce", line="in")


def keeping(*where, **values):
    return Rule(id="keep", must=Keep(do="keep", where=where), **({"breach": LOSE} | values))


def wing(where):
    return Rule(id="wing", when=(where,), breach=LOSE, must=UseStroke(do="use stroke", wing="forehand"))


def turning(**values):
    return Rule(id="aim", breach=LOSE, must=Aim(do="aim", direction="new line", **values))


def bonus(**values):
    return Points(id="hit", on=(Event(what="landed", where=(IN_ZONE,)),), gives=PAID, **values)


PAID = Outcome(then="points", value=2)
FEET = In(area="the baseline", side="behind", judged="both feet")
TIMED = END.changed(kind="total", to=None, minutes=4, level="shared")
COUNTED = Part(id="forced", kind="forced", until=(Event(what="played", count=4),), failed=LOSE)
REACH = Run(id="reach", by="A", during="feed", to=place(3.0, -12.0), purpose="reach")
MISSED = Points(id="missed", on=(Event(what="missed", of=("feed",), untouched=True),), gives=Outcome(then="replay"))
WAITS = Spot(id="spot-c", job="C", place=place(-8.0, 0.0), task="waits")
RING = Swap(id="ring", on=(Event(what="starts", count=5),), moves={"A": "B", "B": "C", "C": "A"})
OPEN_QUESTIONS = {
    "judged by bounce, contact or feet": (
        "judged",
        "The reply zone: judged by the bounce, the contact or the feet?",
        keeping(In(area="zone")),
        keeping(IN_ZONE),
    ),
    "ball on the line": (
        "edge",
        "On the edge of the reply zone?",
        keeping(IN_ZONE.changed(line=None)),
        keeping(IN_ZONE),
    ),
    "foot on the line": ("edge", "A foot on the baseline?", keeping(FEET), keeping(FEET.changed(line="out"))),
    "a new line from the middle": (
        "from-middle",
        "From the middle: which ball is on a new line?",
        turning(),
        turning(from_middle="either"),
    ),
    "a bad feed": ("bad", "Bad feed?", START.changed(bad=None), START),
    "who calls a bad feed": ("caller", "Who calls?", {"called_by": ()}, {"called_by": ("receiver",)}),
    "a bad feed that is played": (
        "played-feed",
        "A bad feed that is played?",
        {"feed_played": None},
        {"feed_played": "not accepted"},
    ),
    "a ball on court": (
        "stop",
        "Ball or person on court: anyone calls “stop”. Then?",
        {"stopped": None},
        {"stopped": Outcome(then="no score")},
    ),
    "target hit and point won": (
        "beside",
        "Both at once: added, instead, or the higher?",
        bonus(),
        bonus(beside="instead"),
    ),
    "a volley into an area that asks for a stroke": (
        "volleyed",
        "Taken out of the air: as a ball in the reply zone?",
        wing(IN_ZONE),
        wing(IN_ZONE.changed(volleyed="out")),
    ),
    "who may come in": ("come-in", "Who may come in before it opens?", COUNTED, {"come_in": ("anyone",)}),
    "what a breach costs": (
        "cost",
        "Every ball lands in the reply zone; if not: what does it cost?",
        keeping(IN_ZONE, breach=None),
        keeping(IN_ZONE),
    ),
    "what doubt means": ("doubt", "In doubt?", {"in_doubt": None}, {"in_doubt": "in"}),
    "time is up in a rally": (
        "last-rally",
        "Time is up in a rally?",
        TIMED,
        TIMED.changed(last_rally="played out"),
    ),
    "the fed player cannot reach": ("unreached", "A does not reach the feed?", REACH, MISSED),
    "a player over": ("extra", "What does the third player do?", {"players": (2, 3)}, {"players": (2, 2)}),
    "somebody who waits": ("comes-in", "When does C come in?", WAITS, RING),
}


def given(*answers):
    """The drill of a rally with these records and answers of the house over those that settle everything."""
    zone = ZONE.changed(name="reply zone")
    records = {each.id: each for each in (*RALLY, zone, keeping(IN_ZONE))}
    house, values = HOUSE, {}
    for each in answers:
        if not isinstance(each, dict):
            records[each.id] = each
        elif "players" in each:
            values |= each
        else:
            house = house.changed(**each)
    # The run and who waits are in question only while they are there.
    return drill(*records.values(), house=house, jobs="ABC", **values)


@pytest.mark.parametrize("case", OPEN_QUESTIONS)
def test_each_open_question_is_a_check_and_a_ruled_line_until_it_is_answered(case):
    kind, text, open_, answer = OPEN_QUESTIONS[case]

    def found(whole):
        scene = telling(whole, AT)
        lines = [s.text for section in card_words(whole, AT, "coach").sections for s in section.sentences if s.missing]
        return [check for check in checks(scene) if check.key == kind], lines

    asked, lines = found(given(open_))
    (check,) = asked
    assert check.weight == "suggestion"
    assert check.sentence.text.startswith(text)
    assert [line for line in lines if line == text] == [text]
    if check.mend is not None:
        assert found(check.mend(given(open_)))[0] == []
    asked, lines = found(given(open_, answer))
    assert asked == []
    assert text not in lines
