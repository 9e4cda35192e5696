"""What only the numbers show: balls that cannot be hit as drawn, no time, targets too small, baskets too few, odds too long.

All of it holds for a level of play and says which. The numbers are a model, so nothing here that rests on a level is an
error, and what is near the edge is not said.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from designer.drill.drill import Drill
from designer.drill.items import Basket
from designer.drill.setting import At, main_setting
from designer.numbers.fairness import Fairness, fairness
from designer.numbers.levels import Level, level
from designer.numbers.load import Load, load
from designer.numbers.problems import Impossible
from designer.numbers.shots import SettingNumbers, ShotNumbers, numbers_of
from designer.numbers.situation import Situation, situation
from designer.numbers.strike import Strike
from designer.numbers.timing import Meeting
from designer.review.barriers import barriers_for_starters
from designer.review.check import Check, Mend, check
from designer.review.fitting import shorter_finish, start_score
from designer.review.purposes import purpose_checks
from designer.wording.counts import listed, number
from designer.wording.names import letter, name_of, shot_name
from designer.wording.sentence import unmarked
from designer.wording.telling import Telling, telling

LATE: Final = 0.2
"""Seconds too late that are said; nearer than that the model of running cannot tell. Common practice, no source."""

BESIDE: Final = 2.0
"""Metres that a ball may pass from the drawn contact before it is said: two steps are a drawing's licence."""

LONG_ODDS: Final = 0.9
"""A side is strongly favoured when even the least of its chance to win is more than this."""

LONG: Final = 2.0
"""A finish that takes so many times the minutes there are is too long: how long rallies last is known no better."""

NEAR: Final = 1.1
"""A ball that takes so many times the usual speed, or less, is not beyond a level: people differ."""

RALLIES: Final = 1200
"""Rallies played out for the odds: enough to tell strongly favoured from even."""


def number_checks(drill: Drill, at: At | None, players: Level | str, *, drag: float | None = None) -> Iterator[Check]:
    """Yield what the numbers of one setting show, for players of a level: its balls, its basket, its finish.

    ``drag``: a drag coefficient in place of the ball's own.

    Without ``at`` all progressions as set are looked at, and the finish of the main one.
    """
    main = main_setting(drill)
    settings = (At(each.id) for each in drill.progressions) if at is None else (at,)
    for address in settings:
        told = telling(drill, address)
        try:
            here = situation(drill, address, level(players) if isinstance(players, str) else players, drag=drag)
            numbers = numbers_of(here)
        except (ValueError, KeyError):
            continue  # shots in a circle and the like, which other checks say
        if here.level.name == "starter":
            yield from barriers_for_starters(told)
        yield from _launches(told, here, numbers)
        for shot in numbers.shots:
            if not shot.problem:
                yield from _of_shot(told, here, shot)
        yield from purpose_checks(told, here, numbers, _players(here))
        if at is not None or address == main:
            yield from _of_setting(told, here, numbers)


# one ball


def _of_shot(told: Telling, here: Situation, shot: ShotNumbers) -> Iterator[Check]:
    for meeting in shot.meetings:
        yield from _meeting(told, here, shot, meeting)


def _named(told: Telling, shot: ShotNumbers) -> str:
    return shot_name(told, told.setting.shots[shot.shot])


def _launches(told: Telling, here: Situation, numbers: SettingNumbers) -> Iterator[Check]:
    """Yield what stands in the way of balls that cannot be hit as they are drawn; those beyond the level once."""
    beyond = []
    for shot in numbers.shots:
        hit = shot.strike
        if hit is None and shot.problem:
            text = f"{_named(told, shot)} cannot be hit as it is drawn: {_clause(shot.problem)}"
            yield check("error", "no-launch", text, shot.shot, at=told.at)
        elif hit is not None and hit.clearance is not None and hit.clearance < 0:
            text = (
                f"{_named(told, shot)} does not clear the net as it is drawn: at {_players(here)} it is"
                f" {-hit.clearance:.1f} m too low"
            )
            yield check("caution", "net-not-cleared", text, shot.shot, at=told.at)
        elif hit is not None and shot.problem and _is_beyond(shot, hit):
            beyond.append(shot)
    if beyond:
        names = {unmarked(name): name for name in (_named(told, shot) for shot in beyond)}
        why = _clause(beyond[0].problem).removesuffix(f" ({here.level.title.lower()})")
        verb = "are" if len(names) > 1 else "is"
        text = f"{listed(list(names.values()))} {verb} beyond {_players(here)} as drawn: {why}"
        yield check("caution", "beyond-level", text, *(shot.shot for shot in beyond), at=told.at)


def _is_beyond(shot: ShotNumbers, hit: Strike) -> bool:
    """Whether a ball is clearly beyond the level; one drawn out is said by checks that know what it is for."""
    drawn_out = shot.inside is not None and shot.inside < 0
    return not drawn_out and not hit.usual < hit.speed <= NEAR * hit.most


def _clause(problem: str) -> str:
    return problem[:1].lower() + problem[1:].rstrip(".")


def _players(here: Situation) -> str:
    return f"{here.level.name} level" + (f" with your {here.level.fitted}" if here.level.fitted else "")


def _meeting(told: Telling, here: Situation, shot: ShotNumbers, meeting: Meeting) -> Iterator[Check]:
    who, name = letter(told, meeting.hitter), _named(told, shot)
    if meeting.hitter == shot.by:
        return  # one person hits twice running, which another check says
    if meeting.spare is not None and meeting.spare < -LATE:
        text = (
            f"{who} gets to {name} {-meeting.spare:.1f} s too late at {_players(here)}:"
            f" {meeting.run:.1f} m to run in {meeting.there_is:.1f} s"
        )
        ids = (shot.shot, meeting.shot, *(run.run for run in shot.runs if run.by == meeting.hitter))
        yield check("caution", "out-of-reach", text, *ids, at=told.at)
    elif meeting.aside > BESIDE and meeting.bounces == 1:
        text = (
            f"after its bounce {name} passes {meeting.aside:.0f} m from where {who} is drawn to meet it"
            f" at {_players(here)}"
        )
        yield check("suggestion", "passes-by", text, shot.shot, meeting.shot, at=told.at)


# the whole setting


def _of_setting(told: Telling, here: Situation, numbers: SettingNumbers) -> Iterator[Check]:
    worked = load(here, numbers)
    if worked is not None:
        yield from _basket(told, worked)
    try:
        even = fairness(here, rallies=RALLIES, games=0)
    except (Impossible, ValueError):
        return  # people who play together, or nothing is drawn
    yield from _too_long(told, here, even)
    yield from _favoured(told, here, even)


def _minutes(told: Telling) -> int | None:
    own = next((each.minutes for each in told.drill.progressions if each.id == told.at.progression), None)
    return own or told.drill.minutes


def _basket(told: Telling, worked: Load) -> Iterator[Check]:
    """Yield a suggestion where a counted basket is empty long before the time is up and nothing says who collects."""
    baskets = [item for item in told.setting.items.values() if isinstance(item, Basket) and item.balls]
    minutes, last = _minutes(told), worked.empty_after
    if not baskets or minutes is None or last is None or last >= minutes / 2 or _is_picked_up(told, worked):
        return
    if any(spot.task == "collects" for spot in told.setting.spots.values()):
        return
    balls = sum(basket.balls or 0 for basket in baskets)
    text = (
        f"the {balls} balls of {listed([name_of(told, basket.id) or 'the basket' for basket in baskets])} last about"
        f" {_about(last)} of {minutes}: say when they are picked up, or bring more"
    )
    yield check("suggestion", "basket-empty", text, *(basket.id for basket in baskets), at=told.at)


def _is_picked_up(told: Telling, worked: Load) -> bool:
    """Whether there are balls for all starts up to the next swap or the end: then they are picked up in between."""
    finish = told.setting.finish
    counts = [event.count for swap in told.setting.swaps.values() for event in swap.on if event.what == "starts"]
    counts.append(None if finish is None else finish.starts)
    stretch = min((count for count in counts if count), default=None)
    if stretch is None or worked.in_play is None:
        return False
    return stretch * worked.balls / worked.starts <= worked.in_play + 1e-6


def _about(minutes: float) -> str:
    return "a minute" if minutes < 1.5 else f"{number(round(minutes))} minutes"


def _too_long(told: Telling, here: Situation, even: Fairness) -> Iterator[Check]:
    finish, minutes = even.finish, _minutes(told)
    own = told.setting.finish
    if minutes is None or own is None or own.minutes is not None or finish.minutes <= LONG * minutes:
        return
    text = (
        f"at {_players(here)} the finish takes about {round(finish.minutes)} minutes, and {minutes} are planned:"
        " play to fewer, or start with a score"
    )
    mend = shorter_finish(here, told.at, minutes, finish.minutes)
    yield check("suggestion", "finish-too-long", text, own.id, at=told.at, mend=mend)


def _favoured(told: Telling, here: Situation, even: Fairness) -> Iterator[Check]:
    """Yield a suggestion where one side wins nearly always and nothing evens that out."""
    if even.evens_out or even.in_turn or not (even.least > LONG_ODDS or even.most < 1 - LONG_ODDS):
        return
    side = even.sides.first if even.win > 0.5 else even.sides.second
    other = even.sides.second if even.win > 0.5 else even.sides.first
    often = max(even.win, 1 - even.win)
    text = (
        f"at {_players(here)} {listed([letter(told, each) for each in side])} {'win' if len(side) > 1 else 'wins'} this about"
        f" {number(min(round(often * 10), 9))} times in ten, if an open point is even"
    )
    mend: Mend | None = None
    points = 0 if even.even_start is None else even.even_start[1 if even.win > 0.5 else 0]
    if points > 0:
        mend = start_score(here, told.at, other, points)
        text += (
            f": swap the jobs half-way, or let {listed([letter(told, each) for each in other])} start with"
            f" {number(points)} point{'s' if points > 1 else ''}"
        )
    else:
        text += ": swap the jobs half-way"
    finish = told.setting.finish
    about = (finish.id,) if finish is not None else ()
    yield check("suggestion", "side-favoured", text, *about, at=told.at, mend=mend)
