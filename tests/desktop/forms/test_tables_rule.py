"""A rule is stated in one short form: every rule of the typology and the samples, and what its first rows are."""

import json
from functools import cache
from pathlib import Path
from random import Random
from typing import get_args

import pytest

from designer.bundle import sample
from designer.desktop.forms.context import Context
from designer.desktop.forms.cost_box import OUTCOMES, RECEIVERS
from designer.desktop.forms.fields import Choice
from designer.desktop.forms.form import NESTED
from designer.desktop.forms.fresh import new_rule
from designer.desktop.forms.tables_rule import DEEDS, RULE
from designer.drill.conditions import In, Outcome
from designer.drill.rules import KNOWN_MUSTS, Aim, Height, Keep, Rule, UseStroke
from designer.drill.setting import addresses, setting_at
from designer.storage.reading import open_drill

TESTS = Path(__file__).parents[2]
ROWS = {field.name: field for field in RULE}


@cache
def contexts():
    return tuple(made())


def made():
    for path in (*sorted(sample().glob("*.drill.json")), *sorted((TESTS / "typology").glob("*.json"))):
        drill = open_drill(path).drill
        for at in addresses(drill):
            yield Context(drill, at, setting_at(drill, at), Random(7))


def stated(rule, context):
    """A rule like ``rule``, made from a new one by the rows of the form, from the first to the last."""
    made = new_rule(context, "keep").changed(id=rule.id)
    for field in RULE:
        if field.fits(made):
            made = field.put(made, field.get(rule), context)
    return made


def test_the_form_states_every_rule_of_the_samples_and_the_typology():
    seen = set()
    for context in contexts():
        for rule in context.setting.rules.values():
            assert stated(rule, context) == rule
            seen.add(rule.must.do)
    assert seen == set(KNOWN_MUSTS)


def test_all_rows_of_the_typology_that_are_rules_are_among_them():
    rows = json.loads((TESTS / "typology.json").read_text())
    rules = {id for context in contexts() for id in context.setting.rules}
    assert {row["row"] for row in rows if row["record"] in rules} >= {"C1", "C2", "C3", "C4", "C5", "C6", "C7"}


@pytest.fixture(scope="module")
def context():
    return contexts()[0]


def test_another_deed_keeps_the_place(context):
    rule = Rule(id="r", must=Keep(do="keep", where=(In(area="right half", judged="bounce", line="in"),)))
    feet = ROWS["must.deed"].put(rule, "both feet", context)
    assert feet.must.where == (In(area="right half", judged="both feet", line="in"),)
    timed = ROWS["must.time"].put(feet, "at the hit", context)
    assert ROWS["must.deed"].put(timed, "contact", context).must.time is None


@pytest.mark.parametrize(("deed", "made"), [("use stroke", UseStroke), ("aim", Aim), ("height", Height)])
def test_another_kind_of_deed_brings_its_own_rows(context, deed, made):
    rule = ROWS["must.deed"].put(Rule(id="r", must=Keep(do="keep", where=(In(area="right half"),))), deed, context)
    assert isinstance(rule.must, made)
    assert not ROWS["must.area"].fits(rule)
    assert ROWS["must.deed"].put(rule, deed, context) is rule


def test_the_usual_rule_is_one_short_form_without_nested_groups():
    usual = [field for field in RULE if not field.more and field.part is None]
    rule = Rule(id="r", must=Keep(do="keep", where=(In(area="right half", judged="bounce"),)))
    shown = [field for field in RULE if field.fits(rule) and field.shown(rule) and not field.more]
    assert len(shown) <= 9
    assert not any(isinstance(field.kind, NESTED) for field in (*usual, *shown))


def test_every_judge_every_outcome_and_whom_it_is_for_can_be_chosen():
    judged = set(get_args(get_args(In.model_fields["judged"].annotation)[0]))
    assert {value for value, _ in DEEDS} == judged | set(KNOWN_MUSTS) - {"keep"}
    assert {value for value, _ in OUTCOMES} == set(get_args(Outcome.model_fields["then"].annotation))
    assert {value for value, _ in RECEIVERS} == set(get_args(get_args(Outcome.model_fields["to"].annotation)[0]))


@pytest.mark.parametrize("name", ["must.line", "must.time", "must.volleyed", "must.wing", "must.direction", "must.at"])
def test_a_choice_offers_all_that_its_record_has(name):
    kind = {"line": In, "volleyed": In, "time": Keep, "wing": UseStroke, "direction": Aim, "at": Height}
    field = ROWS[name]
    assert isinstance(field.kind, Choice)
    annotation = kind[name[5:]].model_fields[name[5:]].annotation
    values = set(get_args(annotation)) - {type(None)}
    inner = next((each for each in values if get_args(each)), None)
    assert {value for value, _ in field.kind.options} == (set(get_args(inner)) if inner else values)
