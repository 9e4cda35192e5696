"""Targets against the rate that their purpose wishes for: where nobody has said what one is for, that is asked first."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import Final, get_args

from designer.drill.base import Purpose
from designer.drill.drill import Drill
from designer.drill.edits import put
from designer.drill.items import Area, Hoop
from designer.drill.rules import Points, Rule
from designer.drill.setting import At, setting_at
from designer.numbers.accuracy import PURPOSES
from designer.numbers.shots import SettingNumbers, ShotNumbers, TargetChance
from designer.numbers.situation import Situation
from designer.review.check import Answer, Check, check
from designer.review.fitting import larger_target
from designer.wording.counts import listed, number
from designer.wording.names import letter
from designer.wording.purposes import MEANT, wished_words
from designer.wording.telling import Telling
from designer.wording.where import bounces

FAR: Final = 0.25
"""A rate below so much of the least that is wished is far below it. How widely a level spreads is known no better."""

NEARLY_ALWAYS: Final = 0.85
"""A bonus that is hit more often than this is none. Common practice, no source."""

CHILDREN: Final = 12
"""Years under which no level knows how widely balls spread."""


def purpose_checks(told: Telling, here: Situation, numbers: SettingNumbers, players: str) -> Iterator[Check]:
    """Yield a question where a target may be too small and nobody says what it is for; where somebody does, a caution.

    One for each target, about the ball that hits it least. ``players``: what they are called, as in "at club level".
    """
    if told.drill.age is not None and told.drill.age[0] < CHILDREN:
        return
    least: dict[tuple[str, tuple[str, ...]], tuple[ShotNumbers, TargetChance]] = {}
    for shot in numbers.shots:
        for found in () if shot.problem else shot.targets:
            key = (found.target.by if found.target.by != shot.shot else "", found.target.areas)
            # What encloses nothing is said by another check.
            if found.target.area > 1e-6 and (key not in least or found.chance < least[key][1].chance):
                least[key] = shot, found
    for shot, found in least.values():
        yield from _of_target(told, here, shot, found, players)


def _of_target(told: Telling, here: Situation, shot: ShotNumbers, found: TargetChance, players: str) -> Iterator[Check]:
    rate = f"at {players} {_rate(found.chance)} of {letter(told, shot.by)} lands {bounces(told, found.target.where)}"
    about = _about(told, shot, found)
    if found.purpose is None:
        yield from _question(told, found, rate, about)
    elif found.chance < FAR * PURPOSES[found.purpose][0]:
        text = f"{rate}: {_WHY[found.purpose]}"
        mend = larger_target(here, told.at, shot.shot, found)
        yield check("caution", "target-rate", text, *about, at=told.at, mend=mend)
    elif found.purpose == "bonus" and found.chance > NEARLY_ALWAYS:
        text = f"{rate}: a bonus that nearly every ball earns is none; {wished_words('bonus')} is usual"
        yield check("suggestion", "bonus-easy", text, *about, at=told.at)


def _question(told: Telling, found: TargetChance, rate: str, about: tuple[str, ...]) -> Iterator[Check]:
    """Ask what a target is for, where the answer could be one that it is too small for."""
    keeper = _keeper(told, found)
    if keeper is None or found.chance >= FAR * PURPOSES["in a row"][0]:
        return
    answers = tuple(
        Answer(MEANT[purpose], partial(_with_purpose, at=told.at, id=keeper, purpose=purpose))
        for purpose in get_args(Purpose)
    )
    text = f"{rate}: what is that target for, {listed([answer.words for answer in answers], 'or')}?"
    yield check("suggestion", "target-purpose", text, *about, at=told.at, answers=answers)


def _keeper(told: Telling, found: TargetChance) -> str | None:
    """Return the id of the record that keeps what the target is for: what pays or demands it, else the target itself."""
    ids = (found.target.by, *found.target.areas[:1])
    return next((id for id in ids if isinstance(told.setting.find(id), Rule | Points | Area | Hoop)), None)


def _with_purpose(drill: Drill, *, at: At, id: str, purpose: Purpose) -> Drill:
    record = setting_at(drill, at).find(id)
    return put(drill, at, record.changed(purpose=purpose)) if isinstance(record, Rule | Points | Area | Hoop) else drill


def _about(told: Telling, shot: ShotNumbers, found: TargetChance) -> tuple[str, ...]:
    """Return what the check concerns: the ball, the target, and what asks for it."""
    ids = (shot.shot, *found.target.areas[:1], found.target.by)
    return tuple(dict.fromkeys(id for id in ids if told.setting.find(id) is not None))


def _rate(chance: float) -> str:
    if chance <= 0.01:
        return "fewer than one ball in 100"
    every = 1 / chance
    return f"about one ball in {number(round(every))}" if every >= 3.5 else f"about {_of_ten(chance)}"


def _of_ten(chance: float) -> str:
    count = round(chance * 10)
    return "every ball" if count >= 10 else f"{number(count)} balls in ten"


_WHY: Final[dict[str, str]] = {
    "in a row": f"a run in a row breaks off at once; it needs {wished_words('in a row')}",
    "together": f"a shared count hardly moves; it needs {wished_words('together')}",
    "restricted": f"most rallies end on it; a demand that costs something needs {wished_words('restricted')}",
    "normal aim": f"for the normal aim of a drill it is small; {wished_words('normal aim')} is usual",
    "bonus": f"even a bonus should come now and then; {wished_words('bonus')} is usual",
    "feed": "the feeder will need another try most times",
}
