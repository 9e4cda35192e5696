"""A setting of a drill as the numbers need it: who plays, on what, at which level, and which court a ball must land in."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from designer.court.regions import End, region
from designer.court.standards import Ground, ground
from designer.drill.base import Point
from designer.drill.drill import Drill
from designer.drill.movement import SERVES
from designer.drill.places import corners_of
from designer.drill.setting import At, Setting, setting_at
from designer.numbers.aiming import Box
from designer.numbers.balls import AIR_DENSITY, ball_in_words
from designer.numbers.levels import LEVELS, USUAL, Level, level, of_age
from designer.numbers.strike import Strike, Wanted, struck
from designer.numbers.surfaces import surface
from designer.numbers.surroundings import Surroundings
from designer.play.sequence import Sequence, Step, sequence

_DOUBLES: Final = 4
ON_THE_FULL: Final = ("volley", "smash")
_AT_SOMEBODY: Final = 1.2
"""An arrow that ends nearer than this, in metres, to where a volley is played ends at the racket. Common practice."""


@dataclass(frozen=True, slots=True)
class Situation:
    """One setting, read as play at one level. ``notices``: sentences on what had to be assumed."""

    drill: Drill
    setting: Setting
    ground: Ground
    sequence: Sequence
    level: Level
    around: Surroundings
    notices: tuple[str, ...]

    def box(self, step: Step) -> Box:
        """Return the part of the court that the ball of ``step`` must land in."""
        return landing_box(self, step)

    def wanted(self, step: Step) -> Wanted | None:
        """Return the ball of ``step`` as it is drawn, None where no landing is drawn or it is only a shadow swing."""
        shot = step.shot
        if step.landing is None or shot.stroke == "shadow swing":
            return None
        return Wanted(
            contact=step.contact,
            landing=step.landing,
            stroke=shot.stroke,
            wing=step.wing,
            hand=step.hand,
            height=shot.height,
            over_net=shot.over_net,
            pace=shot.pace,
            spin=shot.spin,
            box=self.box(step),
            level=self.level_of(step.hitter),
            around=self.around,
            arrives=self._arrives(step),
        )

    def level_of(self, letter: str) -> Level:
        """Return how ``letter`` hits: a coach or a machine at least as well as a club player."""
        job = self.drill.job(letter)
        if job is None or job.by == "player" or LEVELS.index(self.level.name) >= LEVELS.index(USUAL):
            return self.level
        return level(USUAL)

    def _arrives(self, step: Step) -> float | None:
        """Return how high the ball of ``step`` is to reach the end of its arrow, None where it bounces there.

        An arrow that ends at somebody who takes the ball on the full ends at the racket.
        """
        if step.landing is None or step.shot.bounces:
            return None
        for following in self.sequence.following(step.shot.id):
            shot = following.shot
            on_the_full = step.shot.bounces == 0 or shot.stroke in ON_THE_FULL
            if on_the_full and not following.feed and math.dist(step.landing, following.contact) < _AT_SOMEBODY:
                stroke = shot.stroke if shot.stroke in ON_THE_FULL else "volley"
                return self.level.habit(stroke).height.number if shot.height is None else shot.height
        return None

    def strike(self, step: Step) -> Strike | None:
        """Return how the ball of ``step`` is hit, None where none is drawn; raise ``Impossible`` where it cannot be."""
        wanted = self.wanted(step)
        return None if wanted is None else struck(wanted)


def situation(
    drill: Drill, at: At, players: Level, *, drag: float | None = None, density: float = AIR_DENSITY
) -> Situation:
    """Return the setting at ``at`` ready for numbers. ``drag``: a drag coefficient in place of the ball's own.

    The youngest age that the drill is for slows the players down to theirs. Raises ``ValueError`` with a sentence for
    shots in a circle, ``KeyError`` for a setting that is not there.
    """
    setting = setting_at(drill, at)
    own_ground = ground(drill.court)
    notices = []
    flown, understood = ball_in_words(setting.ball)
    if not understood:
        notices.append(f"The ball is called {setting.ball!r}; the numbers are those of the {flown.title.lower()}.")
    if drill.court.surface is None:
        notices.append("The surface is not said; the numbers are those of a hard court.")
    if drill.court.wet:
        notices.append("The court is wet; the numbers are those of a dry one.")
    if drag is not None:
        flown = flown.with_drag(drag)
    around = Surroundings(own_ground, flown, surface(drill.court.surface or "hard"), density)
    own_level = players if drill.age is None else of_age(players, drill.age[0])
    play = sequence(setting, own_ground, drill.jobs)
    return Situation(drill, setting, own_ground, play, own_level, around, tuple(notices))


def other_end(end: End) -> End:
    """Return the end across the net."""
    return "near" if end == "far" else "far"


def bounds(corners: Iterable[Point]) -> Box:
    """Return (left, right, low, high) of the smallest upright rectangle round ``corners``."""
    xs, ys = zip(*corners, strict=True)
    return (min(xs), max(xs), min(ys), max(ys))


def landing_box(here: Situation, step: Step) -> Box:
    """Return the box a ball must land in: the service box for a serve, else what is in play at the other end."""
    end = other_end(step.end)
    if step.shot.stroke in SERVES and step.landing is not None:
        side = "right" if (step.landing[0] > 0) == (end == "near") else "left"
        corners = region(here.ground, f"{side} service box", end)
        if corners is not None:
            return bounds(corners)
    return court_box(here, end)


def court_box(here: Situation, end: End) -> Box:
    """Return the box that is in play at ``end``: as the setting says, else the singles or doubles court by who plays."""
    setting = here.setting
    if setting.in_play is not None:
        corners = region(here.ground, setting.in_play, end)
        if corners is None:
            own = corners_of(setting.items.get(setting.in_play))
            corners = tuple(own) if own and (sum(y for _, y in own) > 0) == (end == "far") else None
        if corners is not None:
            return bounds(corners)
    players = sum(1 for spot in setting.spots.values() if spot.task == "plays")
    words = "doubles court" if players >= _DOUBLES else "singles court"
    corners = region(here.ground, words, end) or region(here.ground, "singles court", end)
    if corners is None:
        reach = here.ground.baseline
        return (-here.ground.singles, here.ground.singles, *((0.0, reach) if end == "far" else (-reach, 0.0)))
    return bounds(corners)


def inside_by(place: Point, box: Box) -> float:
    """Return how far inside the sidelines and the back line of ``box`` a place lies, in metres; negative outside."""
    left, right, low, high = box
    x, y = place
    ends = high - y if high > 0 else y - low
    return min(x - left, right - x, ends)


def half_width(here: Situation) -> float:
    """Return half the width of the court that is in play."""
    left, right, _, _ = court_box(here, "far")
    return max(abs(left), abs(right), 0.0) if math.isfinite(left) else here.ground.singles
