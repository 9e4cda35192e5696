"""The rows for how a rally starts, its parts, rules, points, finish and swaps."""

from __future__ import annotations

from typing import Any, Final

from designer.desktop.forms import context as here
from designer.desktop.forms.fields import (
    Block,
    Choice,
    Cost,
    Field,
    Flag,
    Many,
    Number,
    One,
    Pairs,
    Pick,
    Rounds,
    Several,
    Table,
    words,
)
from designer.desktop.forms.tables_conditions import IN_DOUBT, event, new_in, outcome
from designer.drill.rules import (
    Finish,
    Part,
    Points,
    Start,
    Swap,
)

NOTE: Final = Field("note", "Also say", Block("printed after the sentence"), more=True)

PURPOSE: Final = Field(
    "purpose",
    "The target is",
    Choice((("in a row", "for a run in a row"), ("normal aim", "the normal aim"), ("bonus", "a bonus"))),
    more=True,
)
"""What a target is for, on which the rate to wish for depends."""

CALLED: Final = Field("called_by", "Called by", Many(here.people, "as the house says"), more=True)
DOUBT: Final = Field("in_doubt", "In doubt", Choice(IN_DOUBT, usual="replay"), more=True)


PART: Final[Table] = (
    Field("kind", "The rally is", Choice(words("cooperative", "forced", "open"), optional=False)),
    Field("after", "After", Pick(here.parts, "the start")),
    Field("shots", "Its balls", Many(here.shots, "any"), lambda r: r.kind != "open"),
    Field("until", "Until", Several(event("played"), "Add what ends it"), lambda r: r.kind != "open"),
    Field(
        "failed",
        "If it fails",
        Cost(outcome("lose the point")),
        lambda r: r.kind != "open",
    ),
    NOTE,
)

POINTS: Final[Table] = (
    Field("on", "", Several(event("won"), "Add another way", least=1), spoken="When"),
    Field("gives", "It gives", Cost(outcome("points", value=1), optional=False)),
    Field(
        "beside",
        "With others",
        Choice((("added", "added"), ("instead", "in their place"), ("the higher", "the higher counts"))),
        more=True,
    ),
    PURPOSE,
    Field("grows_by", "Grows by", Number(-100, 100), more=True),
    Field("cap", "At most", Number(-1000, 1000), more=True),
    Field("parts", "In the part", Many(here.parts, "all parts"), more=True),
    Field("from_hit", "From hit", Number(1, 1000, optional=False), more=True),
    CALLED,
    NOTE,
)


def _serves(start: Start) -> bool:
    return bool(start.serves) or start.courts is not None


START: Final[Table] = (
    Field("shot", "First ball", Pick(here.shots, "not drawn")),
    Field("by", "Who", Many(here.letters)),
    Field("good", "A good one", Several(new_in, "Say where it must land")),
    Field(
        "bad",
        "A bad one",
        Cost(outcome("replay"), usual="replay"),
        offered=lambda r: not _serves(r),
    ),
    Field(
        "next",
        "Who next",
        Choice(
            words(
                "same",
                "in turn",
                "every two",
                "winner",
                "loser",
                "by the rules",
                "anyone",
                same="the same",
                every_two="change every two",
                winner="the winner",
                loser="the loser",
                anyone="whoever holds a ball",
            ),
        ),
    ),
    Field(
        "courts",
        "Courts",
        Choice(words("as drawn", "deuce", "ad", "in turn", "either", in_turn="deuce and ad in turn")),
        more=True,
    ),
    Field("once", "Once", One(event("reached"), "Say when, for a later ball"), more=True),
    Field("called_by", "Called by", Many(here.people, "as the house says")),
    Field("serves", "Serves each", Pairs(here.letters, None, "has"), more=True),
    Field("score", "Starts at", Pairs(here.people, None, "has"), more=True),
    NOTE,
)

_COUNTED: Final = words("person", "pair", "side", "all together")
FINISH: Final[Table] = (
    Field(
        "kind",
        "It is",
        Choice(
            words(
                "race",
                "total",
                "goal",
                "game",
                "tie-break",
                race="first to a score",
                total="highest total",
                goal="a goal together",
                game="a game",
                **{"tie-break": "a tie-break"},
            ),
            optional=False,
        ),
    ),
    Field("to", "To", Number(1, 1000, word="own best"), lambda r: r.kind in ("race", "goal", "tie-break")),
    Field("margin", "Win by", Number(1, 20, optional=False), lambda r: r.kind in ("race", "tie-break")),
    Field("starts", "Starts", Number(1, 1000), lambda r: r.kind in ("total", "goal")),
    Field("minutes", "Minutes", Number(1, 600), lambda r: r.kind in ("total", "goal")),
    Field(
        "level",
        "If level",
        Choice(words("shared", "one more each", "next point"), usual="one more each"),
        lambda r: r.kind == "total" or (r.kind == "race" and r.minutes is not None),
        offered=lambda r: r.kind == "total" and r.to is None and r.scores != "all together",
    ),
    Field(
        "last_rally",
        "At the call",
        Choice((("played out", "play it out"), ("stops", "stop at once")), usual="played out"),
        lambda r: r.minutes is not None,
    ),
    Field("running", "", Flag("in a row"), lambda r: r.kind == "goal"),
    Field("each", "", Flag("each player on their own"), more=True),
    Field("rounds", "Rounds", Number(1, 1000, optional=False), more=True),
    Field("cap", "At most", Number(1, 1000), more=True),
    Field("floor", "Loses at", Number(-1000, 1000), more=True),
    Field("scores", "Who scores", Choice(_COUNTED), more=True),
    Field("totals", "Who is totalled", Choice(_COUNTED), more=True),
    NOTE,
)

SWAP: Final[Table] = (
    Field("on", "", Several(event("starts", count=5), "Add another time", least=1), spoken="When"),
    Field("moves", "Who becomes", Pairs(here.movers, here.movers, "becomes")),
    Field("ends", "", Flag("change ends too")),
    Field("mirrored", "", Flag("everything from the other side"), more=True),
    Field("take_over", "Wins to take over", Number(1, 1000), more=True),
    Field("most_stays", "Stays at most", Number(1, 1000), more=True),
    Field("table", "Round by round", Rounds(), more=True),
    NOTE,
)

TABLES: Final[dict[type, Any]] = {
    Part: PART,
    Points: POINTS,
    Start: START,
    Finish: FINISH,
    Swap: SWAP,
}
