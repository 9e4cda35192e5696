"""How people of a level hit, run and miss: read from ``resources/levels``, each value with what it rests on."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from typing import Any, Final

from designer.drill.movement import FEEDS, SERVES, Wing
from designer.numbers.problems import Impossible
from designer.numbers.values import Value, read, value

LEVELS: Final = ("starter", "social", "club", "tournament", "tour")
"""From the first months to full-time professionals."""

USUAL: Final = "club"
"""The level that numbers are worked out for unless another is asked for."""


@dataclass(frozen=True, slots=True)
class Habit:
    """How a stroke is usually hit: m/s, rpm of topspin (below nothing is slice), metres above the ground.

    ``clearance``: how far it passes over the net where its speed is chosen to bring it down in time.
    """

    speed: Value
    topspin: Value
    height: Value
    clearance: Value


@dataclass(frozen=True, slots=True)
class Movement:
    """How somebody runs: metres a second, seconds, metres. ``reaction`` holds with a split step if ``split_step``.

    ``without_split_step`` is what is lost, in seconds, without one.
    """

    top_speed: float
    time_constant: float
    reaction: float
    split_step: bool
    without_split_step: float
    reach: float

    @property
    def delay(self) -> float:
        """Seconds from the opponent's hit to the first step."""
        return self.reaction + (0.0 if self.split_step else self.without_split_step)


@dataclass(frozen=True, slots=True)
class Spread:
    """How far balls land from where they were aimed: standard deviations in metres for a ball of ``at_distance``.

    ``across`` is to the sides of its line, ``along`` short and long; both grow with the distance.
    """

    across: float
    along: float
    at_distance: float

    def at(self, distance: float) -> Spread:
        """Return the spread of a ball of ``distance`` metres."""
        share = distance / self.at_distance
        return Spread(self.across * share, self.along * share, distance)

    def times(self, factor: float) -> Spread:
        """Return a spread ``factor`` times as wide."""
        return Spread(self.across * factor, self.along * factor, self.at_distance)


@dataclass(frozen=True, slots=True)
class Play:
    """What rallies of this level are like: hits in an open point, seconds between hits and rallies, metres run a hit."""

    hits: float
    between_hits: float
    metres: float
    between_rallies: float


@dataclass(frozen=True, slots=True)
class Level:
    """A level of play. ``values`` holds every number with its source, by name, for whoever wants to show them."""

    name: str
    title: str
    about: str
    habits: Mapping[str, Habit] = field(repr=False, hash=False, compare=False)
    movement: Movement
    spread: Spread
    feed_share: float
    serve_share: float
    play: Play
    fitted: str = ""
    values: tuple[tuple[str, Value], ...] = field(repr=False, compare=False, default=())

    def habit(self, stroke: str | None, wing: Wing | None = None) -> Habit:
        """Return how this level hits ``stroke``; a stroke that is not said is a drive, a wing that is not a forehand."""
        if stroke is None or stroke == "drive":
            return self.habits["backhand drive" if wing == "backhand" else "forehand drive"]
        return self.habits[stroke]

    def spread_of(self, stroke: str | None, distance: float) -> Spread:
        """Return the spread of a ball of ``stroke`` that lands ``distance`` metres away.

        Feeds and serves, for which nobody has to run, are steadier than other hits.
        """
        found = self.spread.at(distance)
        if stroke in FEEDS:
            return found.times(self.feed_share)
        return found.times(self.serve_share) if stroke in SERVES else found

    def with_spread(self, factor: float, words: str) -> Level:
        """Return this level with a spread ``factor`` times as wide, fitted to one's own group as ``words`` say."""
        return replace(self, spread=self.spread.times(factor), fitted=words)

    def with_movement(self, movement: Movement) -> Level:
        """Return this level moving as ``movement`` says."""
        return replace(self, movement=movement)


def _habit(data: Mapping[str, Any]) -> Habit:
    return Habit(*(value(data[key]) for key in ("speed_mps", "topspin_rpm", "height_m", "clearance_m")))


@cache
def level(name: str = USUAL) -> Level:
    """Return the level called ``name``; raise ``NoSuch`` with a sentence that lists the levels there are."""
    data = read("levels", name, LEVELS)
    numbers = {
        f"{group}: {key}": value(found)
        for group in ("movement", "spread", "play")
        for key, found in data[group].items()
    }
    strokes = {
        f"{stroke}: {key}": value(found) for stroke, habit in data["strokes"].items() for key, found in habit.items()
    }

    def number(group: str, key: str) -> float:
        return numbers[f"{group}: {key}"].number

    return Level(
        name=data["name"],
        title=data["title"],
        about=data["about"],
        habits={stroke: _habit(habit) for stroke, habit in data["strokes"].items()},
        movement=Movement(
            top_speed=number("movement", "top_speed_mps"),
            time_constant=number("movement", "time_constant_s"),
            reaction=number("movement", "reaction_s"),
            split_step=bool(number("movement", "split_step")),
            without_split_step=number("movement", "without_split_step_s"),
            reach=number("movement", "reach_m"),
        ),
        spread=Spread(*(number("spread", key) for key in ("across_m", "along_m", "at_distance_m"))),
        feed_share=number("spread", "of_a_feed"),
        serve_share=number("spread", "of_a_serve"),
        play=Play(
            *(
                number("play", key)
                for key in ("hits_in_an_open_point", "seconds_between_hits", "metres_a_hit", "seconds_between_rallies")
            )
        ),
        values=tuple((strokes | numbers).items()),
    )


@cache
def _ages() -> tuple[dict[str, Any], ...]:
    return tuple(read("levels", "ages", ("ages",))["ages"])


def of_age(players: Level, years: float) -> Level:
    """Return ``players`` as they move at ``years`` of age: never faster than their age group, grown-ups as they are.

    Raises ``Impossible`` for an age that nobody has.
    """
    if not 1 <= years <= 120:
        raise Impossible(f"An age of {years:g} cannot be; expected 1 to 120 years.")
    group = next((group for group in _ages() if years < group["under"]), None)
    if group is None:
        return players
    own = players.movement
    top, constant, reach = (value(group[key]).number for key in ("top_speed_mps", "time_constant_s", "reach_m"))
    if own.top_speed <= top:
        top, constant = own.top_speed, own.time_constant
    return players.with_movement(replace(own, top_speed=top, time_constant=constant, reach=min(own.reach, reach)))


def is_feed(stroke: str | None) -> bool:
    """Whether ``stroke`` puts a ball into play without being a serve."""
    return stroke in FEEDS


def is_serve(stroke: str | None) -> bool:
    """Whether ``stroke`` is a serve of any kind."""
    return stroke in SERVES
