"""Versions of a drill: mirrored, for the other wing, for one left-hander, from the other end, with jobs exchanged.

A version keeps ids, the order of corners, dates and title, notes itself in ``Drill.turned`` and turns words only where
they are tokens, so that applying it twice gives the first drill again.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, Final, Literal

from pydantic import BaseModel

from designer.court.standards import ground
from designer.drill.base import Point, Record
from designer.drill.conditions import In
from designer.drill.drill import Drill
from designer.drill.items import Area
from designer.drill.movement import SERVES, Shot
from designer.drill.places import is_letter
from designer.drill.rules import Rule, UseStroke
from designer.drill.setting import addresses, setting_at
from designer.play.shares import shares

Keep = Literal["strokes", "paths"]
Version = Literal["mirrored", "wing", "hand", "ends", "jobs"]
ORDER: Final[tuple[Version, ...]] = ("mirrored", "wing", "hand", "ends", "jobs")

SIDES: Final = {"left": "right", "right": "left", "deuce": "ad", "ad": "deuce"}
_TURNS: Final = SIDES | {"clockwise": "anticlockwise", "anticlockwise": "clockwise"}
WINGS: Final = {"forehand": "backhand", "backhand": "forehand"}
_ENDS: Final = {"near": "far", "far": "near"}
_HANDS: Final = {"left": "right", "right": "left"}
_TOKEN: Final = re.compile(r"\{\{|\{([A-Za-z][A-Za-z0-9-]{0,39})\}")

MOST_BACKHAND: Final = 50.0
"""A backhand side wider than this, in per cent of the singles court, is pointed out."""

_POINTS: Final = ("corners", "via")
_AREAS: Final = ("area", "in_play")
_AS_WRITTEN: Final = ("id", "title", "code", "author", "sources", "tags", "language")
"""Fields whose words a version never turns."""


class NoSingleAnswer(ValueError):
    """One player of another hand has no correct reflection; the text says what can be chosen."""


@dataclass(frozen=True, slots=True)
class Turned:
    """A version, and sentences on where it has turned silly or left something for its author to settle."""

    drill: Drill
    warnings: tuple[str, ...] = ()


Owners = tuple[BaseModel, ...]
Change = Callable[[str, Any, Owners], Any]


def mirror(drill: Drill) -> Turned:
    """Return the drill reflected about the centre line, every player's hand with it; wings stay as they are."""

    def change(field: str, value: Any, owners: Owners) -> Any:
        return _HANDS.get(value, value) if field == "hand" else _reflected(field, value, owners)

    return Turned(_noted(_rebuilt(drill, change), "mirrored"))


def switch_wing(drill: Drill) -> Turned:
    """Return the drill for the other wing: reflected, hands as they are, forehand and backhand exchanged."""

    def change(field: str, value: Any, owners: Owners) -> Any:
        if field == "wing":
            return WINGS.get(value, value)
        return _words(_reflected(field, value, owners), WINGS, field)

    turned = _noted(_rebuilt(drill, change), "wing")
    return Turned(turned, _silly_wings(turned))


def change_hand(drill: Drill, letter: str, keep: Keep | None = None) -> Turned:
    """Return the drill with the person in one job playing with the other hand.

    ``keep="strokes"``: what that player plays stays, so the picture is reflected and the others meet the ball on the
    other wing. ``keep="paths"``: the picture stays, so that player meets the ball on the other wing. Raises
    ``NoSingleAnswer`` where neither is chosen, ``KeyError`` where the drill has no such job.
    """
    _known(drill, letter)
    if keep is None:
        raise NoSingleAnswer(
            f"with {letter} of the other hand there is no single answer: a ball that met {letter}'s forehand now meets "
            f"the backhand. Keep {letter}'s strokes (the picture is reflected and the others' wings turn) or keep the "
            f"ball's paths (the picture stays and {letter}'s wings turn)"
        )
    whose = (lambda who: who == letter) if keep == "paths" else (lambda who: who != letter)

    def change(field: str, value: Any, owners: Owners) -> Any:
        if field == "hand":
            return _HANDS.get(value, value) if getattr(owners[-1], "letter", None) == letter else value
        if field == "wing":
            letters = _wing_of(owners)
            return WINGS.get(value, value) if letters and all(map(whose, letters)) else value
        return value if keep == "paths" else _reflected(field, value, owners)

    turned = _noted(_rebuilt(drill, change), "hand")
    return Turned(turned, _shared_wing_rules(turned, letter))


def swap_ends(drill: Drill) -> Turned:
    """Return the drill turned half round: who was near is far. Left and right stay, for they are each player's own."""

    def change(field: str, value: Any, owners: Owners) -> Any:
        del owners
        if field == "at" and isinstance(value, tuple):
            return _half_round(value)
        if field in _POINTS:
            return tuple(map(_half_round, value))
        if field == "facing" and value is not None:
            return (value + 180) % 360
        return _people(field, value, _ENDS)

    return Turned(_noted(_rebuilt(drill, change), "ends"))


def swap_jobs(drill: Drill, one: str, other: str) -> Turned:
    """Return the drill with two letters exchanged wherever they stand; raises ``KeyError`` for a letter it lacks."""
    for letter in (one, other):
        _known(drill, letter)
    letters = {one: other, other: one}

    def change(field: str, value: Any, owners: Owners) -> Any:
        del owners
        if field == "table":
            return tuple(_renamed_row(row, letters) for row in value)
        if isinstance(value, str) and field not in _AS_WRITTEN:
            return letters.get(value, value) if is_letter(value) else _words(value, letters, field)
        if isinstance(value, dict) and field in ("serves", "score", "moves"):
            return {letters.get(key, key): letters.get(item, item) for key, item in value.items()}
        return _people(field, value, letters)

    return Turned(_noted(_rebuilt(drill, change), "jobs"))


def _renamed_row(row: tuple[str, ...], letters: Mapping[str, str]) -> tuple[str, ...]:
    """Return a table's row, the people in the order of the jobs' letters, for jobs and people renamed alike."""
    people = {letters.get(job, job): letters.get(who, who) for job, who in zip(sorted(row), row, strict=True)}
    return tuple(people[job] for job in sorted(people))


def _known(drill: Drill, letter: str) -> None:
    if drill.job(letter) is None:
        letters = ", ".join(job.letter for job in drill.jobs) or "none"
        raise KeyError(f"the drill has no job {letter!r}; it has {letters}")


def _noted(drill: Drill, version: Version) -> Drill:
    """Return ``drill`` with ``version`` noted, or no longer noted where it was: a version undoes itself."""
    noted = set(drill.turned) ^ {version}
    return drill.changed(turned=tuple(name for name in ORDER if name in noted))


def _rebuilt(record: Any, change: Change, owners: Owners = ()) -> Any:
    """Return ``record`` with every field replaced by ``change(field, value, owners)``, from the leaves up."""
    inside = (*owners, record)
    values: dict[str, Any] = {}
    for field in type(record).model_fields:
        old = getattr(record, field)
        new = change(field, _within(old, change, inside), inside)
        if new is not old:
            values[field] = new
    return record.changed(**values) if values else record


def _within(value: Any, change: Change, owners: Owners) -> Any:
    if isinstance(value, Record):
        return _rebuilt(value, change, owners)
    if isinstance(value, tuple) and any(isinstance(part, Record) for part in value):
        return tuple(_within(part, change, owners) for part in value)
    return value


def _reflected(field: str, value: Any, owners: Owners) -> Any:
    """Return the value of ``field`` seen in a mirror that stands on the centre line."""
    del owners
    if field == "at" and isinstance(value, tuple):
        return _mirrored(value)
    if field in _POINTS:
        return tuple(map(_mirrored, value))
    if field == "facing" and value is not None:
        return -value % 360
    if field == "bend" and value is not None:
        return -value
    if field in _AREAS and isinstance(value, str) and " " in value:
        return " ".join(SIDES.get(word, word) for word in value.split(" "))
    if field == "courts":
        return SIDES.get(value, value)
    return _words(value, _TURNS, field)


def _mirrored(point: Point) -> Point:
    return (-point[0], point[1])


def _half_round(point: Point) -> Point:
    return (-point[0], -point[1])


def _words(value: Any, words: Mapping[str, str], field: str) -> Any:
    """Return ``value`` with its tokens turned by ``words``: in a text, a tuple of texts or translations."""
    if field in _AS_WRITTEN:
        return value
    if isinstance(value, str):
        return _turned_text(value, words) if "{" in value else value
    if isinstance(value, tuple) and any(isinstance(part, str) and "{" in part for part in value):
        return tuple(_turned_text(part, words) if isinstance(part, str) else part for part in value)
    if field == "translations":
        return {
            language: {_turned_text(key, words): _turned_text(text, words) for key, text in texts.items()}
            for language, texts in value.items()
        }
    return value


def _turned_text(text: str, words: Mapping[str, str]) -> str:
    def token(found: re.Match[str]) -> str:
        name = found[1]
        return found[0] if name is None else f"{{{words.get(name, name)}}}"

    return _TOKEN.sub(token, text)


def _people(field: str, value: Any, names: Mapping[str, str]) -> Any:
    """Return ``value`` with people renamed where ``field`` holds a tuple of them."""
    if field in ("by", "who", "called_by") and isinstance(value, tuple):
        return tuple(names.get(name, name) for name in value)
    if field in ("cues", "watch_for", "safety", "kit", "translations"):
        return _words(value, names, field)
    if field == "score" and isinstance(value, dict):
        return {names.get(key, key): score for key, score in value.items()}
    return value


def _wing_of(owners: Owners) -> tuple[str, ...]:
    """Return whose wing a field speaks of: the hitter's, those a rule binds, or those an event waits for."""
    for owner in reversed(owners):
        if isinstance(owner, Shot):
            return (owner.by,)
        if isinstance(owner, Rule):
            return owner.who
        by = getattr(owner, "by", ())
        if isinstance(by, tuple) and by:
            return by
    return ()


def _rules(drill: Drill) -> dict[str, Rule]:
    return {id: rule for at in addresses(drill) for id, rule in setting_at(drill, at).rules.items()}


def _shared_wing_rules(drill: Drill, letter: str) -> tuple[str, ...]:
    """Return a sentence for each rule about a wing that binds this player together with others."""
    return tuple(
        f"Rule {rule.id} asks for the {rule.must.wing} and binds more than {letter}: it is left as it was; say which "
        f"wing {letter} plays."
        for rule in _rules(drill).values()
        if isinstance(rule.must, UseStroke)
        and rule.must.wing is not None
        and rule.who != (letter,)
        and (letter in rule.who or not all(map(is_letter, rule.who)) or not rule.who)
    )


def _silly_wings(drill: Drill) -> tuple[str, ...]:
    """Return a sentence for each stroke that is not played off the wing that it has now, and each side that is too wide."""
    shots = {id: shot for at in addresses(drill) for id, shot in setting_at(drill, at).shots.items()}
    found = [
        f"Shot {shot.id}: a {shot.stroke} off the backhand is hardly played."
        for shot in shots.values()
        if shot.wing == "backhand" and (shot.stroke == "smash" or shot.stroke in SERVES)
    ]
    found += [
        f"Rule {rule.id} asks for a backhand {stroke}, which is hardly played."
        for rule in _rules(drill).values()
        if isinstance(rule.must, UseStroke) and rule.must.wing == "backhand"
        for stroke in rule.must.strokes
        if stroke == "smash" or stroke in SERVES
    ]
    return (*found, *_wide_backhands(drill))


def _wide_backhands(drill: Drill) -> tuple[str, ...]:
    """Return a sentence for each rule that asks for the backhand on more than half of the width.

    Common practice, no source: a player covers the greater part of the court with the forehand.
    """
    court, found = ground(drill.court), dict[str, float]()
    for at in addresses(drill):
        setting = setting_at(drill, at)
        for rule in setting.rules.values():
            if not isinstance(rule.must, UseStroke) or rule.must.wing != "backhand":
                continue
            areas = [setting.items.get(each.area) for each in rule.when if isinstance(each, In) and each.area]
            measured = [shares(court, area) for area in areas if isinstance(area, Area)]
            widest = max((each.width.per_cent for each in measured if each), default=0.0)
            if widest > MOST_BACKHAND:
                found[rule.id] = widest
    return tuple(
        f"Rule {id} asks for the backhand on {width:g} per cent of the width: the greater side is usually the "
        "forehand's; make the area smaller."
        for id, width in found.items()
    )
