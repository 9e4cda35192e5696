"""The rows for what rules and points are made of: places to be in, events, and what follows from them."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final, get_args

from designer.desktop.forms import context as here
from designer.desktop.forms.context import Context
from designer.desktop.forms.fields import Choice, Field, Flag, Line, Many, Number, Pick, Several, Table, words
from designer.drill.conditions import Direction, Event, In, Outcome
from designer.drill.movement import Stroke

WINGS: Final = words("forehand", "backhand")
STROKES: Final = words(*get_args(Stroke))
DIRECTIONS: Final = words(*get_args(Direction))
IN_DOUBT: Final = (("replay", "replay"), ("in", "it is in"), ("out", "it is out"))
EVENTS: Final = (
    ("played", "a ball is played"),
    ("landed", "a ball lands"),
    ("missed", "a ball is missed"),
    ("caught", "a ball is caught"),
    ("struck", "something is struck"),
    ("reached", "a place is reached"),
    ("called", "something is called"),
    ("won", "the rally is won"),
    ("starts", "after so many starts"),
    ("score", "a score is reached"),
    ("round", "a round is over"),
    ("game won", "a game is won"),
    ("minutes", "minutes are up"),
    ("finished", "it is finished"),
)
"""Every event, with the words of a coach."""


def strokes(_: Context) -> here.Options:
    """Return every stroke."""
    return STROKES


def new_in(context: Context) -> In:
    """Return being in the drill's last drawn area, else in the singles court."""
    drawn = [item.id for item in context.setting.items.values() if getattr(item, "kind", "") == "area"]
    return In(area=drawn[-1] if drawn else "singles court")


def outcome(then: Any, **values: Any) -> Callable[[Context], Outcome]:
    """Return what makes an outcome of this kind."""
    return lambda _: Outcome(then=then, **values)


def event(what: Any, **values: Any) -> Callable[[Context], Event]:
    """Return what makes an event of this kind."""
    return lambda _: Event(what=what, **values)


def _of(*whats: str) -> Callable[[Any], bool]:
    return lambda record: record.what in whats


_BALL = ("played", "landed", "missed", "caught", "struck")
_COUNTED = ("played", "landed", "missed", "caught", "reached", "starts", "score", "round", "game won", "minutes", "won")

IN: Final[Table] = (
    Field("area", "In or at", Pick(here.areas, optional=False)),
    Field("side", "Which side", Choice((("in front of", "in front"), ("behind", "behind")))),
    Field(
        "judged",
        "Judged by",
        Choice(words("bounce", "contact", "one foot", "both feet", "net", net="at the net"), usual="bounce"),
    ),
    Field(
        "line",
        "On the edge",
        Choice(words("in", "out"), usual="in"),
        offered=lambda r: r.side is None and r.judged not in ("one foot", "both feet"),
    ),
    Field("volleyed", "Volleyed", Choice((("in", "counts"), ("out", "does not"))), more=True),
    Field("outside", "", Flag("outside it, not in it"), more=True),
)

EVENT: Final[Table] = (
    Field("what", "When", Choice(EVENTS, optional=False)),
    Field("by", "By whom", Many(here.people, "anyone"), _of(*_BALL, "reached", "called", "won", "score", "game won")),
    Field("count", "How many", Number(1, 1000), _of(*_COUNTED)),
    Field("running", "", Flag("in a row"), _of("played", "landed"), more=True),
    Field("of", "Which", Many(here.shots_and_runs, "any"), _of(*_BALL, "reached")),
    Field("where", "Where", Several(new_in, "Add a place"), _of("landed", "caught", "struck", "reached", "played")),
    Field("call", "The call", Line("short", optional=True, follows=True), _of("called")),
    Field("within", "Within hits", Number(1, 1000), _of("called")),
    Field("strokes", "Strokes", Many(strokes, "any"), _of("played", "won"), more=True),
    Field("wing", "Off the", Choice(WINGS), _of("played", "won"), more=True),
    Field("aim", "Direction", Choice(DIRECTIONS), more=True),
    Field("untouched", "", Flag("and nobody touches it"), _of("won"), more=True),
    Field("when", "From a ball", Several(new_in, "Add where it came from"), more=True),
    Field("called_by", "Called by", Many(here.people), more=True),
    Field("in_doubt", "In doubt", Choice(IN_DOUBT), more=True),
    Field("and_", "And also", Several(event("played"), "Add what must hold too"), more=True),
)

TABLES: Final[dict[type, Table]] = {In: IN, Event: EVENT}
