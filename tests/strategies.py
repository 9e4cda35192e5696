"""Drills, settings and records of every kind for hypothesis, made from the fields that the records declare.

A field that a record gains is drawn from then on without a change here. Every drill drawn is one that a file can hold: ids
are unique in each setting, and no shots or parts come after one another in a circle.
"""

import types
from datetime import date
from functools import cache
from typing import Annotated, Literal, Union, get_args, get_origin

import annotated_types
from hypothesis import strategies as st
from pydantic import BaseModel, StringConstraints
from pydantic.fields import FieldInfo

from designer.drill.base import FARTHEST, ID_PATTERN, LETTER_PATTERN, Place
from designer.drill.conditions import Event
from designer.drill.drill import Drill, Progression, Variation
from designer.drill.items import (
    Area,
    BallMachine,
    Barrier,
    Basket,
    Cone,
    Disc,
    HeightCord,
    Hoop,
    Line,
    Note,
    Obstacle,
    Unknown,
)
from designer.drill.movement import Run, Shot
from designer.drill.people import Spot
from designer.drill.rules import Finish, Part, Points, Rule, Start, Swap
from designer.drill.setting import EMPTY, KINDS, Setting, difference

ITEMS = (Cone, Disc, Hoop, Basket, BallMachine, Note, Obstacle, HeightCord, Line, Barrier, Area, Unknown)
CLASSES = {
    "spots": (Spot,),
    "items": ITEMS,
    "shots": (Shot,),
    "runs": (Run,),
    "parts": (Part,),
    "rules": (Rule,),
    "points": (Points,),
    "starts": (Start,),
    "swaps": (Swap,),
    "finish": (Finish,),
}
IDS = (*(f"r-{number}" for number in range(1, 9)), "ball", "in-play")
"""Few, so that records are replaced, refer to one another and change their kind from one setting to the next."""
LETTERS = "ABCD"

AWKWARD = (
    "",
    " ",
    "<b>",
    "</para>",
    "<img src='file'> & <font size=99999>",
    "&copy; AT&T; %s {0} \\n",
    "{A} {left} {{ {nothing} }",
    "one\ttab\r\nand another line",
    "NUL \0 and bell \a",
    "\u200b\u202enerdlihc\u202c\u2028",
    "→ ✓ ≤ 🎾 👩‍🏫 𝔘",
    "ünïcödé ΑΒΓ Жж",
    "תרגיל تمرين 练习",
    "W" * 5000,
    "five thousand characters of words " * 147,
    "\ufeff￿\U0010ffff",
)
"""Texts that have broken a page, a file or a window before."""


@cache
def texts(longest=5000):
    """Any text that a coach could type or paste."""
    awkward = [text for text in AWKWARD if len(text) <= longest]
    return st.one_of(
        st.sampled_from(("Cross-court", "Push off, split, look.")), st.text(max_size=12), st.sampled_from(awkward)
    )


def metres(least=-FARTHEST, most=FARTHEST):
    """Distances in metres: of a court, of a racket, tiny, and as far as a drill reaches."""
    known = [value for value in (0.0, -0.0, 0.6858, -11.8872, 5.4864, 0.00004, least, most) if least <= value <= most]
    return st.one_of(st.sampled_from(known), st.floats(least, most))


def points():
    """Places on the court, in metres."""
    return st.tuples(metres(-10, 10), metres(-20, 20))


@cache
def ids():
    return st.sampled_from(IDS)


@cache
def letters():
    return st.sampled_from(LETTERS)


@cache
def json_values():
    """What a later format may put in a field that this one does not know."""
    whole = st.integers(-(2**70), 2**70)
    leaves = st.none() | st.booleans() | whole | st.floats(allow_nan=False, allow_infinity=False) | texts(40)
    return st.recursive(
        leaves, lambda inner: st.lists(inner, max_size=2) | st.dictionaries(texts(20), inner, max_size=2), max_leaves=4
    )


@cache
def extra_fields():
    """Fields that this format does not know, under names that Python might trip over too."""
    names = st.sampled_from(("later", "colour", "self", "values", "cls", "x y", "corners2", "é", ""))
    return st.dictionaries(names, json_values(), max_size=2)


def field_values(annotation, *metadata):
    """The values that a field of this type accepts."""
    if get_origin(annotation) is Annotated:
        inner, *own = get_args(annotation)
        return field_values(inner, *metadata, *own)
    if annotation is None or annotation is types.NoneType:
        return st.none()
    origin = get_origin(annotation)
    if origin is Literal:
        return st.sampled_from(get_args(annotation))
    if origin in (Union, types.UnionType):
        return st.one_of([field_values(branch) for branch in get_args(annotation)])
    limits = limits_of(metadata)
    if origin is tuple:
        return tuples(get_args(annotation), limits)
    if origin is dict:
        return st.dictionaries(*(field_values(part) for part in get_args(annotation)), max_size=2)
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return any_record(annotation)
    return plain_values(annotation, limits)


def plain_values(annotation, limits):
    if annotation is bool:
        return st.booleans()
    if annotation is int:
        return st.integers(limits.get("least", -50), limits.get("most", 1000))
    if annotation is float:
        return metres(limits.get("least", -FARTHEST), limits.get("most", FARTHEST))
    if annotation is date:
        return st.dates()
    if annotation is str:
        return strings(limits)
    raise TypeError(f"no strategy for {annotation}")


def strings(limits):
    if limits.get("unknown"):
        return st.sampled_from(("gate", "wobble board", "Cone", ""))
    pattern = limits.get("pattern")
    if pattern == ID_PATTERN.replace(r"\z", "$"):
        return ids()
    if pattern == LETTER_PATTERN.replace(r"\z", "$"):
        return letters()
    if pattern:
        return st.from_regex(pattern, fullmatch=True)
    if limits.get("shortest"):
        return st.sampled_from(("right half", "the net", *IDS))
    return texts(limits.get("longest", 5000))


def tuples(parts, limits):
    if parts[-1] is not Ellipsis:
        return st.tuples(*map(field_values, parts))
    # An event may lie in an event: without this the drawing would not end.
    fewest = limits.get("shortest", 0)
    most = max(fewest, 1 if parts[0] is Event else 2)
    return st.lists(st.deferred(lambda: field_values(parts[0])), min_size=fewest, max_size=most).map(tuple)


def limits_of(metadata):
    limits = {}
    for part in metadata:
        if isinstance(part, FieldInfo):
            extra = part.json_schema_extra or {}
            limits |= limits_of(part.metadata) | {"unknown": "not" in extra}
            limits |= {"pattern": extra["pattern"]} if "pattern" in extra else {}
        elif isinstance(part, StringConstraints):
            values = {"pattern": part.pattern, "shortest": part.min_length, "longest": part.max_length}
            limits |= {name: value for name, value in values.items() if value is not None}
        elif isinstance(part, annotated_types.Ge):
            limits["least"] = part.ge
        elif isinstance(part, annotated_types.Le):
            limits["most"] = part.le
        elif isinstance(part, annotated_types.MinLen):
            limits["shortest"] = part.min_length
    return limits


@cache
def values_of_field(cls, name):
    field = cls.model_fields[name]
    return field_values(field.annotation, field, *field.metadata)


@cache
def names_of_fields(cls, fixed):
    """The fields of a record to draw: all that it must have, and some of the others."""
    open_to_us = {name: field for name, field in cls.model_fields.items() if name not in fixed}
    required = [name for name, field in open_to_us.items() if field.is_required()]
    optional = [name for name in open_to_us if name not in required]
    some = st.lists(st.sampled_from(optional), max_size=3, unique=True) if optional else st.just([])
    return some.map(lambda names: [*required, *names])


@st.composite
def records(draw, cls, extras=True, **fixed):
    """A record of this class; ``fixed`` are its fields that are not drawn."""
    values = dict(fixed)
    for name in draw(names_of_fields(cls, frozenset(fixed))):
        values[name] = draw(values_of_field(cls, name))
    if extras and draw(st.integers(0, 7)) == 0:
        values |= {name: value for name, value in draw(extra_fields()).items() if name not in cls.model_fields}
    return cls(**values)


@cache
def any_record(cls):
    return records(cls)


@cache
@st.composite
def setting_records(draw, kind, id):
    """A record of a setting; it comes only after records whose ids are smaller, so that there is never a circle."""
    cls = draw(st.sampled_from(CLASSES[kind]))
    fixed = {"id": id}
    if "after" in cls.model_fields:
        smaller = [other for other in IDS if other < id]
        fixed["after"] = draw(st.none() | st.sampled_from(smaller)) if smaller else None
    return draw(records(cls, **fixed))


@st.composite
def settings(draw, parent=EMPTY):
    """A whole setting that shares some records with ``parent``, and may use an id for another kind of record."""
    setting = Setting(
        in_play=draw(st.sampled_from((parent.in_play, None, "right half", "r-1"))),
        ball=draw(st.sampled_from((parent.ball, None, "red", "orange"))),
    )
    made = []
    for id in draw(st.lists(ids(), max_size=5, unique=True)):
        old = parent.find(id)
        if old is not None and draw(st.booleans()):
            made.append(old)
        else:
            made.append(draw(setting_records(draw(st.sampled_from(KINDS)), id)))
    finishes = [record for record in made if isinstance(record, Finish)]
    if not finishes and draw(st.booleans()):
        made.append(draw(records(Finish, id="finish")))
    return setting.having(*made)


@st.composite
def changes_over(draw, parent):
    """(changes, setting): what a setting has of its own over ``parent``, at times more than it would need."""
    setting = draw(settings(parent))
    own = difference(parent, setting)
    values = {}
    if draw(st.booleans()):
        values["drop"] = (*own.drop, *(word for word in ("nothing-here", "r-8") if word not in setting.ids()))
    for kind in KINDS:
        listed = {record.id for record in getattr(own, kind)}
        again = tuple(
            record for id, record in getattr(setting, kind).items() if id not in listed and draw(st.booleans())
        )
        if again:
            values[kind] = (*getattr(own, kind), *again)
    extras = draw(extra_fields()) if draw(st.integers(0, 7)) == 0 else {}
    return own.changed(**values, **extras), setting


@st.composite
def drills(draw, most_progressions=3, fewest_progressions=1):
    """A drill with texts of any sort, progressions, easier and harder, and fields that this format does not know."""
    rungs = []
    parent = EMPTY
    for number in range(1, draw(st.integers(fewest_progressions, most_progressions)) + 1):
        changes, setting = draw(changes_over(parent))
        others = dict.fromkeys(("easier", "harder", "others"), ())
        for degree in draw(st.lists(st.sampled_from(("easier", "harder", "others")), max_size=2, unique=True)):
            own, _ = draw(changes_over(setting))
            others[degree] = (draw(records(Variation, id=f"v-{degree}", changes=own)),)
        rungs.append(draw(records(Progression, id=f"p-{number}", changes=changes, **others)))
        parent = setting
    return draw(records(Drill, format=1, id="d-drawn", progressions=tuple(rungs)))


def places(on=None):
    """A free place, or one tied to ``on``."""
    return st.builds(lambda point: Place(on=on, at=point), points())
