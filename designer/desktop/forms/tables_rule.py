"""The rows of a rule: one short form whatever it asks for, with what is rare behind "More"."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any, Final, get_args

from designer.desktop.forms import context as here
from designer.desktop.forms.context import Context
from designer.desktop.forms.fields import (
    Choice,
    Cost,
    Either,
    Field,
    Flag,
    Hits,
    Kind,
    Many,
    Measure,
    Number,
    Part,
    Pick,
    Several,
    Table,
    always,
    words,
)
from designer.desktop.forms.kinds_of_rule import KINDS_OF_RULE
from designer.desktop.forms.tables_conditions import DIRECTIONS, WINGS, event, new_in, outcome, strokes
from designer.desktop.forms.tables_rules import CALLED, DOUBT, NOTE, PURPOSE
from designer.drill.conditions import In
from designer.drill.rules import Aim, BodyHeight, Bounces, Height, Keep, Rule, UseStroke


def _use_stroke(_: Context) -> UseStroke:
    return UseStroke(do="use stroke", wing="forehand")


def _aim(_: Context) -> Aim:
    return Aim(do="aim", direction="cross-court")


def _keep(context: Context) -> Keep:
    return Keep(do="keep", where=(new_in(context),))


def _height(_: Context) -> Height:
    return Height(do="height", at="net")


def _bounces(_: Context) -> Bounces:
    return Bounces(do="bounces", least=1, most=1)


_FIRST: Final[dict[str, Callable[[Context], Any]]] = {
    "keep": _keep,
    "use stroke": _use_stroke,
    "aim": _aim,
    "height": _height,
    "bounces": _bounces,
}
MUSTS: Final = tuple((name, said, _FIRST[name]) for name, said in KINDS_OF_RULE)
"""What a rule can ask for: its name in the file, a coach's words, and a first one of its kind."""

_JUDGED: Final = words(
    "bounce",
    "both feet",
    "one foot",
    "contact",
    "net",
    bounce="land the ball",
    both_feet="keep both feet",
    one_foot="have a foot",
    contact="hit the ball",
    net="cross the net",
)
DEEDS: Final = (
    *_JUDGED,
    ("use stroke", "play a stroke or a wing"),
    ("aim", "send it in a direction"),
    ("height", "play it at a height"),
    ("bounces", "let it bounce"),
)
"""What somebody must or may not do: a place is judged by the bounce, by feet, where the ball is hit or crosses the net."""

_FEET: Final = ("one foot", "both feet")
SIDES: Final = (("in", "in"), ("outside", "outside"), ("in front of", "in front of"), ("behind", "behind"))


def _is(do: str) -> Callable[[Any], bool]:
    return lambda rule: rule.must.do == do


def _deed(rule: Rule) -> Any:
    """Return what is done; None where it is not settled by what a place is judged."""
    return rule.must.where[0].judged if isinstance(rule.must, Keep) else rule.must.do


def _with_deed(rule: Rule, deed: Any, context: Context) -> Rule:
    """Return ``rule`` about another deed; the places are kept from one that has them to another."""
    if deed is not None and deed not in dict(_JUDGED):
        return rule if rule.must.do == deed else rule.changed(must=_FIRST[deed](context))
    must = rule.must if isinstance(rule.must, Keep) else _keep(context)
    where = (must.where[0].changed(judged=deed), *must.where[1:])
    time = must.time if any(each.judged in _FEET for each in where) else None
    return rule.changed(must=must.changed(where=where, time=time))


def _side(place: In) -> str:
    return "outside" if place.outside else place.side or "in"


def _beside(place: In, side: str) -> In:
    return place.changed(outside=side == "outside", side=side if side in ("in front of", "behind") else None)


def _of_must(
    name: str,
    label: str,
    kind: Kind,
    do: str,
    *,
    row: str = "",
    empty: Any = None,
    shown: Callable[[Any], bool] = always,
) -> Field:
    """Return the row for the field ``name`` of what is asked for, of the kind ``do``; called ``row`` where names meet."""

    def put(rule: Rule, value: Any, _: Context) -> Rule:
        return rule.changed(must=rule.must.changed(**{name: value}))

    part = Part(lambda rule: getattr(rule.must, name), put, ("must",), _is(do), empty)
    return Field(f"must.{row or name}", label, kind, shown, part=part)


def _of_place(
    name: str,
    label: str,
    kind: Kind,
    get: Callable[[In], Any],
    put: Callable[[In, Any], In],
    *,
    more: bool = False,
    shown: Callable[[Any], bool] = always,
    offered: Callable[[Any], bool] = always,
) -> Field:
    """Return the row for something of the first place that a rule about a place names."""

    def put_in_rule(rule: Rule, value: Any, _: Context) -> Rule:
        must: Any = rule.must
        return rule.changed(must=must.changed(where=(put(must.where[0], value), *must.where[1:])))

    part = Part(lambda rule: get(rule.must.where[0]), put_in_rule, ("must",), _is("keep"))
    return Field(f"must.{name}", label, kind, shown, more=more, part=part, offered=offered)


def _place(rule: Any) -> In:
    place: In = rule.must.where[0]
    return place


def _other_places(rule: Rule, others: tuple[In, ...], _: Context) -> Rule:
    must: Any = rule.must
    return rule.changed(must=must.changed(where=(must.where[0], *others)))


def _hits(rule: Rule, hits: tuple[int, int | None], _: Context) -> Rule:
    return rule.changed(from_hit=hits[0], to_hit=hits[1])


_PLACE: Final[Table] = (
    _of_place(
        "side",
        "Where",
        Choice(SIDES, optional=False),
        _side,
        _beside,
    ),
    replace(
        _of_place(
            "area",
            "",
            Pick(here.areas, optional=False),
            lambda place: place.area,
            lambda place, area: place.changed(area=area),
        ),
        spoken="Which place",
    ),
    _of_place(
        "line",
        "On the edge",
        Choice(words("in", "out"), usual="in"),
        lambda place: place.line,
        lambda place, line: place.changed(line=line),
        shown=lambda rule: _place(rule).side is None or _place(rule).line is not None,
        offered=lambda rule: _place(rule).side is None and _place(rule).judged not in _FEET,
    ),
    _of_must(
        "time",
        "Feet judged",
        Choice(words("at the hit", "at the next hit", "all the time")),
        "keep",
        shown=lambda rule: any(each.judged in _FEET for each in rule.must.where),
    ),
    _of_place(
        "volleyed",
        "Volleyed",
        Choice((("in", "counts"), ("out", "does not"))),
        lambda place: place.volleyed,
        lambda place, volleyed: place.changed(volleyed=volleyed),
        more=True,
    ),
    Field(
        "must.others",
        "And also",
        Several(new_in, "Add another place"),
        more=True,
        part=Part(lambda rule: rule.must.where[1:], _other_places, ("must",), _is("keep"), ()),
    ),
)

_LINES: Final = ("new line", "same line back")


def _with_direction(rule: Rule, direction: Any, _: Context) -> Rule:
    """Return ``rule`` with another direction; what a ball from the middle counts as is only asked where lines are judged."""
    must: Any = rule.must
    kept = must.from_middle if direction in _LINES else None
    return rule.changed(must=must.changed(direction=direction, from_middle=kept))


_PLAY: Final[Table] = (
    _of_must("wing", "Off the", Choice(WINGS), "use stroke"),
    _of_must("strokes", "Strokes", Many(strokes, "any"), "use stroke", empty=()),
    replace(
        _of_must("direction", "Direction", Choice(DIRECTIONS, optional=False), "aim"),
        part=Part(lambda rule: rule.must.direction, _with_direction, ("must",), _is("aim")),
    ),
    _of_must(
        "from_middle",
        "From the middle",
        Choice((("either", "either counts"), ("neither", "neither counts")), usual="either"),
        "aim",
        shown=lambda rule: rule.must.direction in _LINES,
    ),
    _of_must(
        "at",
        "Measured",
        Choice(
            words(
                "contact",
                "net",
                "highest",
                "arrival",
                contact="at contact",
                net="over the net",
                highest="at its highest",
                arrival="where it arrives",
            ),
            optional=False,
        ),
        "height",
    ),
    _of_must("least", "At least", Measure(words=get_args(BodyHeight)), "height"),
    _of_must("most", "At most", Measure(words=get_args(BodyHeight)), "height"),
    _of_must("least", "At least", Number(0, 3), "bounces", row="least_bounces"),
    _of_must("most", "At most", Number(0, 3), "bounces", row="most_bounces"),
    _of_must("rising", "", Flag("hit it on the rise"), "bounces", empty=False),
)
RULE: Final[Table] = (
    Field("who", "Who", Many(here.people, "everyone")),
    Field("never", "", Choice(((False, "must"), (True, "may not")), optional=False), spoken="Must or may not"),
    Field(
        "must.deed",
        "What",
        Choice(DEEDS, usual="bounce"),
        part=Part(_deed, _with_deed, ("must",)),
        offered=_is("keep"),
    ),
    *_PLACE,
    *_PLAY,
    Field(
        "parts",
        "In the part",
        Many(here.parts, "always, in all parts", none_yet="“Only until …” under these rows makes parts"),
    ),
    Field(
        "hits",
        "Hits",
        Hits(),
        part=Part(lambda rule: (rule.from_hit, rule.to_hit), _hits, ("from_hit", "to_hit"), empty=(1, None)),
    ),
    Field("breach", "If not", Cost(outcome("lose the point"))),
    PURPOSE,
    Field(
        "when",
        "When",
        Either(
            Several(event("landed"), "Add an event"),
            "after an event",
            Several(new_in, "Add a place"),
            "for a ball in",
            lambda each: isinstance(each, In),
        ),
        more=True,
    ),
    Field("of", "Only balls", Many(here.shots_and_runs, "all"), more=True),
    CALLED,
    DOUBT,
    NOTE,
)
