"""What a target is for stands on the coach's card and not on a player's. The rates are common practice, no source."""

from designer.drill.base import place
from designer.drill.drill import Changes, Drill, Progression
from designer.drill.items import Hoop
from designer.drill.rules import Keep, Rule
from designer.drill.setting import At
from designer.wording.card import card_words

HOOP = Hoop(kind="hoop", id="hoop", place=place(2.0, 9.0), purpose="bonus")
RULE = Rule(id="aim", who=("A",), must=Keep(do="keep", where=({"area": "right half"},)), purpose="in a row")


def said(reader):
    own = Changes(items=(HOOP,), rules=(RULE,))
    card = card_words(Drill(id="d-t", progressions=(Progression(id="p", changes=own),)), At("p"), reader)
    return [s for section in card.sections for s in section.sentences if s.key.startswith("purpose:")]


def test_the_coach_reads_what_each_target_is_for_and_may_open_it():
    assert [(sentence.text, sentence.about) for sentence in said("coach")] == [
        ("The right half is for a run in a row: eight to ten balls in ten should hit it.", ("aim",)),
        ("The hoop is a bonus: two to four balls in ten should hit it.", ("hoop",)),
    ]
    assert said("player") == []
