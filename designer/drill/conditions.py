"""What rules and points are made of: people, places to be in, events, and what follows from them."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from designer.drill.base import Area, Count, Ids, Letter, Record, Text
from designer.drill.movement import Stroke, Wing

Person = (
    Letter
    | Literal[
        "server",
        "receiver",
        "serving side",
        "receiving side",
        "near",
        "far",
        "winner",
        "loser",
        "doer",
        "other",
        "others",
        "anyone",
    ]
)
Who = tuple[Person, ...]
InDoubt = Literal["replay", "in", "out"]
Direction = Literal["same line back", "new line", "cross-court", "down the line", "middle", "at a body"]


class In(Record):
    """One thing that must hold of a ball or of feet: in an area, or on one ``side`` of a line.

    ``judged`` says by what; ``line`` whether touching the edge counts as in; ``volleyed`` what a ball is that was
    taken before it bounced. What is absent has not been settled and is asked for.
    """

    area: Area
    side: Literal["in front of", "behind"] | None = None
    outside: bool = False
    judged: Literal["bounce", "contact", "one foot", "both feet", "net"] | None = None
    line: Literal["in", "out"] | None = None
    volleyed: Literal["in", "out"] | None = None


Where = tuple[In, ...]
"""All of them hold."""


class Event(Record):
    """Something that happens in a rally or in the score and that rules, points and swaps wait for."""

    what: Literal[
        "played",
        "landed",
        "missed",
        "caught",
        "struck",
        "reached",
        "called",
        "won",
        "starts",
        "score",
        "round",
        "game won",
        "minutes",
        "finished",
    ]
    by: Who = ()
    count: Count | None = None
    running: bool = False
    of: Ids = ()
    when: Where = ()
    where: Where = ()
    strokes: tuple[Stroke, ...] = ()
    wing: Wing | None = None
    aim: Direction | None = None
    untouched: bool = False
    within: Count | None = None
    call: Text | None = None
    called_by: Who = ()
    in_doubt: InDoubt | None = None
    and_: Annotated[tuple[Event, ...], Field(alias="and")] = ()


class Outcome(Record):
    """What follows. "lose the point" ends the rally; points never do."""

    then: Literal[
        "points",
        "lose the point",
        "replay",
        "no score",
        "opens",
        "count to zero",
        "start score",
        "warning",
        "do",
    ]
    value: int | None = None
    to: Literal["doer", "other", "side"] | None = None
    text: Text = ""
