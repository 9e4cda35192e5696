"""The whole drill: what is said once, and its progressions with what each changes."""

from __future__ import annotations

from datetime import date
from typing import Annotated, Final, Literal

from pydantic import Field, StringConstraints

from designer.drill.base import Area, Id, Ids, Length, Letter, Noted, Record, Text
from designer.drill.conditions import InDoubt, Outcome, Who
from designer.drill.items import Item
from designer.drill.movement import Run, Shot
from designer.drill.people import Job, Spot
from designer.drill.rules import Finish, Part, Points, Rule, Start, Swap

FORMAT: Final = 1
"""The newest file format that this program writes and fully reads."""

CLUB_RUN_BACK: Final = 5.4864
CLUB_SIDE_RUN: Final = 3.048
"""Club and recreational minimum run-off, 18 ft and 10 ft: ITF Technical Booklet 2015, table 5, notes d and e."""

Drop = Id | Literal["in-play", "ball"]
Tag = Annotated[str, StringConstraints(pattern=r"^[a-z][a-z0-9-]{0,39}(:[a-z0-9-]{1,40})?$")]
Language = Annotated[str, StringConstraints(pattern=r"^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$")]
Code = Annotated[str, StringConstraints(max_length=40)]


class Changes(Record):
    """What a setting has of its own: whole records added or replaced by id, and the ids it drops."""

    drop: tuple[Drop, ...] = ()
    in_play: Area | None = None
    ball: Text | None = None
    spots: tuple[Spot, ...] = ()
    items: tuple[Item, ...] = ()
    shots: tuple[Shot, ...] = ()
    runs: tuple[Run, ...] = ()
    parts: tuple[Part, ...] = ()
    rules: tuple[Rule, ...] = ()
    points: tuple[Points, ...] = ()
    starts: tuple[Start, ...] = ()
    finish: Finish | None = None
    swaps: tuple[Swap, ...] = ()


class Variation(Noted):
    """A named easier, harder or other form of one progression."""

    name: Text = ""
    changes: Changes = Changes.model_construct()


class Progression(Noted):
    """A rung of the way from fed or cooperative to points and match start; it lies on the one before it."""

    name: Text = ""
    aim: Text = ""
    minutes: Annotated[int, Field(ge=1, le=600)] | None = None
    changes: Changes = Changes.model_construct()
    easier: tuple[Variation, ...] = ()
    harder: tuple[Variation, ...] = ()
    others: tuple[Variation, ...] = ()


class Court(Record):
    """The court the drill is drawn on. Absent run-off means unknown: the club minimum is assumed and said to be.

    ``neighbour``: at which side, as seen from the near end, another court lies with no fence between.
    """

    standard: Annotated[str, StringConstraints(min_length=1, max_length=40)] = "tennis"
    hosted_on: Annotated[str, StringConstraints(min_length=1, max_length=40)] | None = None
    supports: Literal["posts", "sticks"] = "posts"
    run_back: Length | None = None
    side_run: Length | None = None
    surface: Literal["hard", "clay", "grass", "carpet", "artificial grass"] | None = None
    wet: bool | None = None
    neighbour: Literal["left", "right", "both"] | None = None


class House(Record):
    """Answers given once for every rule that does not answer for itself.

    ``come_in``: who may come to the net where no rule says anything of feet or volleys.
    """

    called_by: Who = ()
    in_doubt: InDoubt | None = None
    net_cord: Literal["by its bounce", "replay"] | None = None
    stopped: Outcome | None = None
    feed_played: Literal["accepted", "not accepted"] | None = None
    come_in: Who = ()


class Accepted(Record):
    """A caution that the author has accepted, with the reason; both are printed.

    ``caution``: its words, "" where somebody wrote it by hand. ``basis``: a fingerprint of what it rested on then, see ``acceptance``; where that has changed the caution comes back.
    """

    check: Annotated[str, StringConstraints(min_length=1, max_length=80)]
    about: Ids = ()
    caution: Text = ""
    reason: Text
    basis: Annotated[str, StringConstraints(pattern=r"^([0-9a-f]{16})?$")] = ""


class Drill(Record):
    """A drill as it is saved. A value: an edit returns another one."""

    format: Annotated[int, Field(ge=1)] = FORMAT
    id: Id
    code: Code = ""
    title: Text = ""
    objective: Text = ""
    language: Language = "en"
    edition: Annotated[int, Field(ge=1, le=100_000)] = 1
    dated: date | None = None
    turned: tuple[Literal["mirrored", "wing", "hand", "ends", "jobs"], ...] = ()
    court: Court = Court.model_construct()
    players: tuple[Annotated[int, Field(ge=1, le=100)], Annotated[int, Field(ge=1, le=100)]] | None = None
    minutes: Annotated[int, Field(ge=1, le=600)] | None = None
    balls: Annotated[int, Field(ge=0, le=2000)] | None = None
    age: tuple[Annotated[int, Field(ge=1, le=120)], Annotated[int, Field(ge=1, le=120)]] | None = None
    coach_needed: bool = False
    jobs: tuple[Job, ...] = ()
    cues: tuple[Text, ...] = ()
    watch_for: tuple[Text, ...] = ()
    safety: tuple[Text, ...] = ()
    kit: tuple[Text, ...] = ()
    house: House = House.model_construct()
    accepted: tuple[Accepted, ...] = ()
    author: Text = ""
    sources: tuple[Text, ...] = ()
    tags: tuple[Tag, ...] = ()
    translations: dict[Language, dict[str, Text]] = {}
    main: Id | None = None
    progressions: Annotated[tuple[Progression, ...], Field(min_length=1)]

    def job(self, letter: Letter) -> Job | None:
        """Return the job with this letter, or None."""
        return next((job for job in self.jobs if job.letter == letter), None)
