"""What a form needs to know of the drill it stands in: who and what there is to choose from, and how each is called."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, Final

from designer.court.regions import line_words, region_words
from designer.court.standards import ground
from designer.desktop.forms.wish import Court
from designer.desktop.names import name_of
from designer.drill.drill import Drill
from designer.drill.ids import Chooser, new_id
from designer.drill.setting import At, Setting
from designer.wording.units import Units

Options = Sequence[tuple[Any, str]]

ROLES: Final = (
    "anyone",
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
)
_ROLE_WORDS: Final = {
    "near": "whoever is near",
    "far": "whoever is far",
    "doer": "whoever did it",
    "other": "the other player",
    "others": "all others",
    "winner": "the winner",
    "loser": "the loser",
    "server": "the server",
    "receiver": "the receiver",
    "serving side": "the serving side",
    "receiving side": "the receiving side",
}


@dataclass(frozen=True, slots=True)
class Context:
    """The drill, the setting in view and the source of new ids.

    ``court`` is where things can be picked, None where there is none; ``units`` are what distances are read in;
    ``about`` is the id of the record that the form is about, which nothing in it can be tied to.
    """

    drill: Drill
    at: At
    setting: Setting
    source: Chooser
    court: Court | None = None
    units: Units = "rackets"
    about: str | None = None

    def new_id(self, kind: str) -> str:
        """Return an id that no record of this setting has."""
        return new_id(kind, self.source, self.setting.ids())

    @property
    def letters(self) -> tuple[str, ...]:
        """Return the letters of the jobs, with those that only stand on the court."""
        spots = (spot.job for spot in self.setting.spots.values())
        return tuple(sorted({*(job.letter for job in self.drill.jobs), *spots}))


def letters(context: Context) -> Options:
    """Return the jobs to choose from."""
    return [(letter, letter) for letter in context.letters]


def people(context: Context) -> Options:
    """Return everyone a rule can bind: letters, then what they can be called by the state of play."""
    return [*letters(context), *((role, _ROLE_WORDS.get(role, role)) for role in ROLES)]


def movers(context: Context) -> Options:
    """Return who can move at a swap."""
    return [*letters(context), *words_of("winner", "loser", "court up", "court down")]


def words_of(*values: str) -> Options:
    """Return options whose words are the values."""
    return [(value, _ROLE_WORDS.get(value, value)) for value in values]


def areas(context: Context) -> Options:
    """Return what a ball or a foot can be in: the drawn areas, lines and hoops, the court's own, then what can be struck."""
    drawn = [
        (item.id, name_of(context.setting, item))
        for item in context.setting.items.values()
        if getattr(item, "kind", "") in ("area", "line", "hoop", "barrier")
    ]
    struck = [
        (item.id, f"{name_of(context.setting, item)}, struck")
        for item in context.setting.items.values()
        if getattr(item, "kind", "") in ("cone", "disc", "basket", "obstacle")
    ]
    here = ground(context.drill.court)
    return [*drawn, *((word, word) for word in (*region_words(here), *line_words(here))), *struck]


def regions(context: Context) -> Options:
    """Return what can be in play: drawn areas and the court's own regions."""
    drawn = [
        (item.id, name_of(context.setting, item))
        for item in context.setting.items.values()
        if getattr(item, "kind", "") == "area"
    ]
    return [*drawn, *((word, word) for word in region_words(ground(context.drill.court)))]


def shots(context: Context) -> Options:
    """Return the balls that are drawn."""
    return [(shot.id, name_of(context.setting, shot)) for shot in context.setting.shots.values()]


def shots_and_runs(context: Context) -> Options:
    """Return the balls and runs that are drawn."""
    runs = [(run.id, name_of(context.setting, run)) for run in context.setting.runs.values()]
    return [*shots(context), *runs]


def parts(context: Context) -> Options:
    """Return the parts of a rally, with when each is played."""
    when = {"open": "once open", "forced": "until it opens", "cooperative": "before it counts"}
    return [
        (part.id, f"{name_of(context.setting, part)}: {when[part.kind]}") for part in context.setting.parts.values()
    ]


def anchors(context: Context) -> Options:
    """Return what a place can be tied to: people, and things on the court."""
    here = context.setting
    things = [
        (item.id, name_of(here, item))
        for item in here.items.values()
        if getattr(item, "kind", "") not in ("height cord", "unknown")
    ]
    people_here = [(spot.job, spot.job) for spot in here.spots.values()]
    return [*people_here, *things, *shots(context)]


def progressions(context: Context) -> Options:
    """Return the progressions in order of play."""
    return [(p.id, f"{number} {p.name}".strip()) for number, p in enumerate(context.drill.progressions, 1)]


def records(context: Context) -> Options:
    """Return every record of the setting."""
    return [(record.id, name_of(context.setting, record)) for _, record in context.setting.records()]


ON_COURT: Final = (letters, people, movers, areas, regions, shots, shots_and_runs, anchors)
"""Choices of which some lie on the court and can be picked there."""
