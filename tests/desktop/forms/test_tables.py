"""Every record of the model can be edited: no field of any is left out, and every choice offers all there is."""

import types
import typing

import pytest
from pydantic import BaseModel

from designer.desktop.forms.fields import Choice
from designer.desktop.forms.tables import table_of, tables
from designer.drill import base, conditions, items, movement, people, rules
from designer.drill import drill as drill_module

TOLD_BY_THE_TYPE = {"kind", "do", "form", "id"}
ELSEWHERE = {
    # Each has a form, a tab or a place of its own.
    drill_module.Drill: {"format", "jobs", "court", "house", "progressions"},
    drill_module.Progression: {"changes", "easier", "harder", "others"},
    drill_module.Variation: {"changes"},
    people.Job: {"letter"},
    # What a caution rested on when it was accepted is worked out, not typed.
    drill_module.Accepted: {"basis"},
}
OF_A_RULE = {rules.UseStroke, rules.Aim, rules.Keep, rules.Height, rules.Bounces}
"""What a rule asks for stands in the rule's own rows; `test_tables_rule.py` states every one of them."""
HELD = {
    *OF_A_RULE,
    # An outcome is one row of what it follows from.
    conditions.Outcome,
    # Changes are what the forms edit, a place has a control of its own; the others are what records have in common, or
    # are unknown to us.
    base.Place,
    drill_module.Changes,
    base.Record,
    base.Noted,
    items.Thing,
    items.Unknown,
    items.UnknownShape,
    rules.UnknownMust,
}


def record_types():
    modules = (base, conditions, items, movement, people, rules, drill_module)
    found = {
        each
        for module in modules
        for each in vars(module).values()
        if isinstance(each, type) and issubclass(each, base.Record) and each is not BaseModel
    }
    return sorted(found - HELD, key=lambda each: each.__name__)


def fields_of(record):
    """The names a form must show: but for what the type itself says."""
    return {
        name
        for name in record.model_fields
        if name not in ELSEWHERE.get(record, ())
        and not (name in TOLD_BY_THE_TYPE and not (record is rules.Part or record is rules.Finish))
        and name != "id"
    }


@pytest.mark.parametrize("record", record_types(), ids=lambda record: record.__name__)
def test_no_field_of_a_record_is_left_out(record):
    assert record in tables(), f"{record.__name__} has no form"
    shown = {name for field in tables()[record] for name in field.holds}
    assert shown == fields_of(record)


def literals(annotation):
    """All values that an annotation lists, however deep."""
    found = set()
    if typing.get_origin(annotation) is typing.Literal:
        return set(typing.get_args(annotation))
    for inner in typing.get_args(annotation):
        if isinstance(inner, types.GenericAlias | type) or typing.get_origin(inner) is not None:
            found |= literals(inner)
    return found


def choices():
    return [
        pytest.param(record, field, id=f"{record.__name__}.{field.name}")
        for record, table in tables().items()
        for field in table
        if isinstance(field.kind, Choice) and field.part is None and field.name != "never"
    ]


@pytest.mark.parametrize(("record", "field"), choices())
def test_a_choice_offers_every_value_once_and_in_words(record, field):
    values = [value for value, _ in field.kind.options]
    assert len(set(values)) == len(values)
    assert set(values) == literals(record.model_fields[field.name].annotation)
    assert all(words.strip() for _, words in field.kind.options)


@pytest.mark.parametrize(("record", "field"), choices())
def test_what_may_be_left_open_can_be_left_open_again(record, field):
    may_be_none = type(None) in typing.get_args(record.model_fields[field.name].annotation)
    assert field.kind.optional == may_be_none


def test_an_unknown_kind_has_an_empty_form():
    assert table_of(items.Unknown(kind="drone", id="drone-1")) == ()
