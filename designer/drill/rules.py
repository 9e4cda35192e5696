"""How a rally starts, its parts, its rules, its points, its finish and its swaps, as data."""

from __future__ import annotations

from typing import Annotated, Any, Final, Literal

from pydantic import Discriminator, Field, Tag

from designer.drill.base import Count, Id, Ids, Letter, Metres, Noted, Purpose, Record
from designer.drill.conditions import Direction, Event, InDoubt, Outcome, Person, Where, Who
from designer.drill.movement import Stroke, Wing


class Part(Noted):
    """A part of a rally: its shots in turn, until something happens. ``failed`` is a rally that ends in it, no rule broken."""

    after: Id | None = None
    kind: Literal["cooperative", "forced", "open"]
    shots: Ids = ()
    until: tuple[Event, ...] = ()
    failed: Outcome | None = None


class UseStroke(Record):
    """Play it with one of these strokes, or off this wing. Neither given: any stroke at all."""

    do: Literal["use stroke"]
    strokes: tuple[Stroke, ...] = ()
    wing: Wing | None = None


class Aim(Record):
    """Send it in a direction that depends on the ball that came in.

    ``from_middle``: hit from the middle, "either" ball does for a new line or for the line back, or "neither".
    """

    do: Literal["aim"]
    direction: Direction
    from_middle: Literal["either", "neither"] | None = None


class Keep(Record):
    """Be there, or put it there: ``time`` says when feet are judged."""

    do: Literal["keep"]
    where: Annotated[Where, Field(min_length=1)]
    time: Literal["at the hit", "at the next hit", "all the time"] | None = None


BodyHeight = Literal["knee", "waist", "shoulder", "raised racket", "net"]


class Height(Record):
    """Keep the ball between two heights, in metres or as tall as a part of the body."""

    do: Literal["height"]
    at: Literal["contact", "net", "highest", "arrival"]
    least: Metres | BodyHeight | None = None
    most: Metres | BodyHeight | None = None


class Bounces(Record):
    """Let it bounce so often before the hit; ``rising`` asks for a hit before the top of the bounce."""

    do: Literal["bounces"]
    least: Annotated[int, Field(ge=0, le=3)] | None = None
    most: Annotated[int, Field(ge=0, le=3)] | None = None
    rising: bool = False


KNOWN_MUSTS: Final = ("use stroke", "aim", "keep", "height", "bounces")


class UnknownMust(Record):
    """A demand that this program does not know: kept, written back, and printed as unknown."""

    do: Annotated[str, Field(json_schema_extra={"not": {"enum": list(KNOWN_MUSTS)}})]


def _do(value: Any) -> str:
    do = value.get("do") if isinstance(value, dict) else getattr(value, "do", None)
    return do if do in KNOWN_MUSTS else "unknown"


Must = Annotated[
    Annotated[UseStroke, Tag("use stroke")]
    | Annotated[Aim, Tag("aim")]
    | Annotated[Keep, Tag("keep")]
    | Annotated[Height, Tag("height")]
    | Annotated[Bounces, Tag("bounces")]
    | Annotated[UnknownMust, Tag("unknown")],
    Discriminator(_do),
]


class Rule(Noted):
    """What ``who`` must do, or with ``never`` must not do, and what a breach costs.

    ``purpose``: what a target is for, where neither the cost nor the finish says so; so for ``Points``.
    """

    who: Who = ()
    parts: Ids = ()
    of: Ids = ()
    from_hit: Count = 1
    to_hit: Count | None = None
    when: tuple[Event, ...] | Where = ()
    never: bool = False
    called_by: Who = ()
    in_doubt: InDoubt | None = None
    breach: Outcome | None = None
    must: Must
    purpose: Purpose | None = None


class Points(Noted):
    """What is paid or replayed when one of ``on`` happens; ``beside`` says how it adds to other points."""

    on: Annotated[tuple[Event, ...], Field(min_length=1)]
    gives: Outcome
    beside: Literal["added", "instead", "the higher"] | None = None
    purpose: Purpose | None = None
    grows_by: int | None = None
    cap: int | None = None
    parts: Ids = ()
    from_hit: Count = 1
    called_by: Who = ()


class Start(Noted):
    """The first ball of a rally, or a later ball fed in the same rally (``once`` says when).

    ``next`` says who puts in the next one; "anyone" is whoever of ``by`` holds a ball.
    """

    shot: Id | None = None
    by: tuple[Letter, ...] = ()
    once: Event | None = None
    good: Where = ()
    bad: Outcome | None = None
    called_by: Who = ()
    next: Literal["same", "in turn", "every two", "winner", "loser", "by the rules", "anyone"] | None = None
    courts: Literal["as drawn", "deuce", "ad", "in turn", "either"] | None = None
    serves: dict[Letter, Annotated[int, Field(ge=1, le=2)]] = {}
    score: dict[Person, int] = {}


class Finish(Noted):
    """Where it ends: a race to a score, a total over so many starts, a shared goal, a game or a tie-break."""

    kind: Literal["race", "total", "goal", "game", "tie-break"]
    to: Annotated[int, Field(ge=1, le=1000)] | Literal["own best"] | None = None
    margin: Annotated[int, Field(ge=1, le=20)] = 1
    cap: Annotated[int, Field(ge=1, le=1000)] | None = None
    floor: int | None = None
    running: bool = False
    each: bool = False
    minutes: Annotated[int, Field(ge=1, le=600)] | None = None
    starts: Count | None = None
    rounds: Count = 1
    scores: Literal["person", "pair", "side", "all together"] | None = None
    totals: Literal["person", "pair", "side", "all together"] | None = None
    level: Literal["shared", "one more each", "next point"] | None = None
    last_rally: Literal["played out", "stops"] | None = None


Move = Literal["winner", "loser", "court up", "court down"]


class Swap(Noted):
    """Who takes whose job, and when. ``table`` gives the people in job order round by round, where rounds differ.

    ``take_over``: points in a row that take the place of whoever stays; ``most_stays``: so many games at most.
    """

    on: Annotated[tuple[Event, ...], Field(min_length=1)]
    moves: dict[Letter | Move, Letter | Move] = {}
    table: tuple[tuple[Letter, ...], ...] = ()
    ends: bool = False
    mirrored: bool = False
    take_over: Count | None = None
    most_stays: Count | None = None
