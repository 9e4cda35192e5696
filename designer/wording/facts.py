"""The row of facts under the objective, and the foot of a card."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from designer.wording.kit import kit_of
from designer.wording.names import name_of
from designer.wording.sentence import typeset, unmarked
from designer.wording.telling import Telling
from designer.wording.tokens import own_text

FactIcon = Literal["people", "court", "clock", "ball", "kit"]


_ANY_AGE: Final = 90


@dataclass(frozen=True, slots=True)
class Fact:
    """One entry of the row under the objective: the icon that stands before it and its words."""

    icon: FactIcon
    text: str


def facts(told: Telling) -> tuple[Fact, ...]:
    """Return people, court, minutes and balls, and for the coach the kit; what is not known is left out."""
    found = [Fact("people", _people(told)), Fact("court", _court(told))]
    minutes = _minutes(told)
    if minutes is not None:
        # A player must not take it for the end of play.
        found.append(Fact("clock", f"{'about ' if told.brief else ''}{minutes} min"))
    balls = _balls(told)
    if balls:
        found.append(Fact("ball", balls))
    things = kit_of(told)
    if things and not told.brief:
        found.append(Fact("kit", unmarked(", ".join(things))))
    return tuple(Fact(fact.icon, typeset(fact.text)) for fact in found if fact.text)


def _people(told: Telling) -> str:
    who = _players(told)
    coach = any(job.by == "coach" for job in told.drill.jobs) or told.drill.coach_needed
    words = [f"{who} and a coach" if coach and who else who]
    if told.drill.age is not None and not told.brief:
        least, most = told.drill.age
        words.append(f"from age {least}" if most >= _ANY_AGE else f"ages {least} to {most}")
    return ", ".join(word for word in words if word)


def _players(told: Telling) -> str:
    if told.drill.players is None:
        count = len([job for job in told.drill.jobs if job.by == "player"]) or len(told.playing)
        return str(count) if count else ""
    least, most = told.drill.players
    if least == most:
        return str(least)
    return f"{least} or {most}" if most == least + 1 else f"{least} to {most}"


def _court(told: Telling) -> str:
    standard = told.ground.standard
    prefix = "" if standard.name == "tennis" else standard.title.lower()
    in_play = told.setting.in_play
    if in_play is None:
        part = "" if prefix else "doubles" if len(told.playing) > 2 else "singles"
    else:
        named = name_of(told, in_play)
        words = {"singles court": "singles", "doubles court": "doubles"}
        part = (
            unmarked(named).removeprefix("the ").removeprefix("court ")
            if named is not None
            else words.get(in_play, in_play)
        )
        if in_play in ("right half", "left half"):
            part = f"singles, {in_play}"
    if prefix:
        return prefix if part in ("", "singles") else f"{prefix}, {part}"
    return part


def _minutes(told: Telling) -> int | None:
    own = next((p.minutes for p in told.drill.progressions if p.id == told.at.progression), None)
    return own if own is not None else told.drill.minutes


def _balls(told: Telling) -> str:
    kind = unmarked(own_text(told, told.setting.ball or ""))
    kind = "" if kind == "yellow" else kind
    count = "" if told.drill.balls is None else str(told.drill.balls)
    noun = "" if not told.brief or told.drill.balls is None else "ball" if told.drill.balls == 1 else "balls"
    return " ".join(word for word in (count, kind, noun) if word)


def footer(told: Telling) -> tuple[str, ...]:
    """Return the code, the edition, the date, and what versions of the drill have been made to get to this one."""
    drill = told.drill
    dated = drill.dated
    date = "" if dated is None else f"{dated.day} {dated:%b} {dated.year}"
    turned = ", ".join(drill.turned)
    parts = (drill.code, f"edition {drill.edition}", date, turned)
    return tuple(part for part in parts if part)
