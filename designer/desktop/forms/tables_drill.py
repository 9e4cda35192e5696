"""The rows for what is said once for the whole drill, for its progressions and its variations."""

from __future__ import annotations

from typing import Any, Final

from designer.court.standards import court_names
from designer.desktop.forms import context as here
from designer.desktop.forms.context import Context, Options
from designer.desktop.forms.fields import (
    Block,
    Choice,
    Cost,
    Day,
    Field,
    Flag,
    Line,
    Lines,
    Many,
    Measure,
    Number,
    Pick,
    Several,
    Span,
    Table,
    Translations,
    words,
)
from designer.desktop.forms.tables_conditions import IN_DOUBT, outcome
from designer.drill.drill import Accepted, Court, Drill, House, Progression, Variation
from designer.drill.people import Job


def courts(_: Context) -> Options:
    """Return the courts that the program knows."""
    return [(name, name) for name in court_names()]


FACTS: Final[Table] = (
    Field("players", "Players", Span(1, 100)),
    Field("minutes", "Minutes", Number(1, 600)),
    Field("balls", "Balls", Number(0, 2000)),
    Field("kit", "More kit", Lines("what is not drawn, one a line")),
    Field("age", "Age", Span(1, 120)),
    Field("coach_needed", "", Flag("needs a coach")),
    Field("tags", "Tags", Lines("situation:rally, one a line", follows=False), more=True),
)

PAPER: Final[Table] = (
    Field("code", "Short code", Line("wide-start")),
    Field("author", "Author", Line()),
    Field("edition", "Edition", Number(1, 100_000, optional=False)),
    Field("dated", "Dated", Day()),
    Field("language", "Language", Line("en")),
    Field("main", "Main one", Pick(here.progressions, "the first progression")),
    Field("sources", "Sources", Lines(follows=False)),
    Field("tags", "Tags", Lines("situation:rally, one a line", follows=False)),
    Field("turned", "Is turned", Many(lambda _: here.words_of("mirrored", "wing", "hand", "ends", "jobs"), "not")),
    Field("accepted", "Accepted", Several(lambda _: Accepted(check="caution", reason=""), "Accept a caution")),
    Field("translations", "In other words", Translations()),
)

WORDS: Final[Table] = (
    Field("title", "Title", Line()),
    Field("objective", "Objective", Block("what a player sets out to do")),
    Field("cues", "Cues", Lines("three to six words each")),
    Field("watch_for", "Watch for", Lines()),
    Field("safety", "Take care", Lines()),
)

COURT: Final[Table] = (
    Field("standard", "Court", Pick(courts, optional=False)),
    Field("surface", "Surface", Choice(words("hard", "clay", "grass", "carpet", "artificial grass"))),
    Field("run_back", "Run-back", Measure()),
    Field("side_run", "Side run", Measure()),
    Field("supports", "Net on", Choice((("posts", "posts"), ("sticks", "singles sticks")), optional=False)),
    Field("wet", "Wet", Flag("wet", asked=True)),
    Field("neighbour", "Court next door", Choice(words("left", "right", "both")), more=True),
    Field("hosted_on", "Laid on", Pick(courts, "a court of its own"), more=True),
)

HOUSE: Final[Table] = (
    Field("called_by", "Called by", Many(here.people, "own lines", usual=("receiver",))),
    Field("in_doubt", "In doubt", Choice(IN_DOUBT, usual="replay")),
    Field("net_cord", "Net cord", Choice(words("by its bounce", "replay"), usual="by its bounce")),
    Field("stopped", "“Stop”", Cost(outcome("replay"), usual="replay")),
    Field(
        "feed_played",
        "Feed played",
        Choice((("accepted", "accepted"), ("not accepted", "not accepted")), usual="accepted"),
    ),
    Field("come_in", "May come in", Many(here.people, "anyone", usual=("anyone",))),
)

JOB: Final[Table] = (
    Field("role", "Does", Line("feeds", follows=True)),
    Field("hand", "Plays", Choice((("right", "right-handed"), ("left", "left-handed")), optional=False)),
    Field("by", "Is a", Choice(words("player", "coach", "machine"), optional=False)),
)

PROGRESSION: Final[Table] = (
    Field("name", "Name", Line("Together", follows=True)),
    Field("aim", "Aim", Block()),
    Field("minutes", "Minutes", Number(1, 600)),
    Field("note", "Also say", Block()),
)

VARIATION: Final[Table] = (
    Field("name", "Name", Line("Wider feed", follows=True)),
    Field("note", "Also say", Block()),
)

ACCEPTED: Final[Table] = (
    Field("check", "Caution", Line()),
    Field("about", "About", Many(here.records, "the drill")),
    Field("caution", "Its words", Line(follows=True), more=True),
    Field("reason", "Reason", Line(follows=True)),
)

TABLES: Final[dict[type, Any]] = {
    Drill: (*FACTS, *(field for field in (*WORDS, *PAPER) if field.name != "tags")),
    Court: COURT,
    House: HOUSE,
    Job: JOB,
    Progression: PROGRESSION,
    Variation: VARIATION,
    Accepted: ACCEPTED,
}
