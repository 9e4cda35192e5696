"""What an academy asks of every drill in its handbook, and which drills do not have it yet."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from designer.drill.drill import Drill
from designer.drill.handbook import STOP_WORD, HouseRule
from designer.drill.setting import At, all_settings, main_setting, setting_at
from designer.review.checks import checks, dangers
from designer.wording.misses import is_stop
from designer.wording.questions import questions
from designer.wording.telling import telling

WORDS: Final[dict[HouseRule, str]] = {
    "objective": "says what it is for",
    "replay rule": "says what happens when a ball or a person comes on court",
    "stop word": "is stopped by a call, the stop word of the house",
    "who calls": "says who calls the lines",
    "doubt": "says what doubt means",
    "safety": "has a caution of its own",
    "cues": "has a cue to say",
    "minutes": "says how long it takes",
    "players": "says how many players it is for",
    "finish": "says in its main progression where it ends",
    "swap": "says in its main progression how jobs change",
    "easier and harder": "has an easier and a harder form",
    "situation": "has a situation of the game",
    "stroke": "names a stroke",
    "level": "names a level",
    "intensity": "says how hard it works its players",
    "author": "names its author",
    "no open question": "leaves no question open in its main progression",
    "no error": "has no error that the review finds",
    "no caution left open": "has no caution that is not accepted with a reason",
}
"""Each rule as what every drill does."""


def broken(
    drill: Drill, rules: tuple[HouseRule, ...], tags: tuple[str, ...], stop_word: str = STOP_WORD
) -> tuple[HouseRule, ...]:
    """Return those of ``rules`` that ``drill`` does not keep.

    ``tags`` are its own and those of its handbook, ``stop_word`` is what stops every drill of that handbook.
    """
    house = _House(tags, stop_word)
    return tuple(rule for rule in rules if not _KEPT[rule](drill, house))


@dataclass(frozen=True, slots=True)
class _House:
    tags: tuple[str, ...]
    stop_word: str


Kept = Callable[[Drill, _House], bool]


def _is_tagged(group: str) -> Kept:
    return lambda _, house: any(tag.startswith(f"{group}:") for tag in house.tags)


def _has_replay(drill: Drill, _: _House) -> bool:
    if drill.house.stopped is not None:
        return True
    return all(any(map(is_stop, setting.points.values())) for _, setting in all_settings(drill))


def _has_stop_word(drill: Drill, house: _House) -> bool:
    """Whether every setting says that a call stops play, and its card no other word for it than the house's."""
    for _, setting in all_settings(drill):
        call = next((points.on[0].call or STOP_WORD for points in setting.points.values() if is_stop(points)), None)
        if call is None and drill.house.stopped is None:
            return False
        if call is not None and call.strip(' “”"!.').lower() not in (STOP_WORD, house.stop_word.lower()):
            return False
    return True


def _has_both_ways(drill: Drill, _: _House) -> bool:
    return any(one.easier for one in drill.progressions) and any(one.harder for one in drill.progressions)


def _names_stroke(drill: Drill, house: _House) -> bool:
    return _is_tagged("stroke")(drill, house) or bool(strokes(drill))


def _leaves_no_question(drill: Drill, _: _House) -> bool:
    return not any(True for _ in questions(telling(drill, main_setting(drill))))


def strokes(drill: Drill, at: At | None = None) -> tuple[str, ...]:
    """Return the strokes that the drawing names at ``at``, else in any setting, feeds not counted, in order of their names."""
    found = set()
    for setting in [setting_at(drill, at)] if at else [setting for _, setting in all_settings(drill)]:
        for shot in setting.shots.values():
            stroke = shot.stroke or ""
            if "feed" in stroke or stroke == "shadow swing":
                continue
            found |= {word for word in (stroke.replace("second serve", "serve"), shot.wing or "") if word}
    return tuple(sorted(found - {"drive"}))


_KEPT: Final[dict[HouseRule, Kept]] = {
    "objective": lambda drill, _: bool(drill.objective.strip()),
    "replay rule": _has_replay,
    "stop word": _has_stop_word,
    "who calls": lambda drill, _: bool(drill.house.called_by),
    "doubt": lambda drill, _: drill.house.in_doubt is not None,
    "safety": lambda drill, _: any(words.strip() for words in drill.safety),
    "cues": lambda drill, _: any(words.strip() for words in drill.cues),
    "minutes": lambda drill, _: drill.minutes is not None,
    "players": lambda drill, _: drill.players is not None,
    "finish": lambda drill, _: setting_at(drill, main_setting(drill)).finish is not None,
    "swap": lambda drill, _: bool(setting_at(drill, main_setting(drill)).swaps),
    "easier and harder": _has_both_ways,
    "situation": _is_tagged("situation"),
    "stroke": _names_stroke,
    "level": lambda drill, house: any(_is_tagged(group)(drill, house) for group in ("level", "stage")),
    "intensity": _is_tagged("work"),
    "author": lambda drill, _: bool(drill.author.strip()),
    "no open question": _leaves_no_question,
    "no error": lambda drill, _: not any(found.weight == "error" for found in checks(drill)),
    "no caution left open": lambda drill, _: not dangers(drill, main_setting(drill)),
}
