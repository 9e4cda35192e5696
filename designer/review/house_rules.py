"""What an academy asks of every drill in its handbook, and which drills do not have it yet."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from designer.drill.drill import Drill
from designer.drill.handbook import HouseRule
from designer.drill.setting import At, all_settings, main_setting, setting_at
from designer.review.checks import checks, dangers
from designer.wording.misses import is_stop
from designer.wording.questions import questions
from designer.wording.telling import telling

WORDS: Final[dict[HouseRule, str]] = {
    "objective": "says what it is for",
    "replay rule": "says what happens when a ball or a person comes on court",
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


def broken(drill: Drill, rules: tuple[HouseRule, ...], tags: tuple[str, ...]) -> tuple[HouseRule, ...]:
    """Return those of ``rules`` that ``drill`` does not keep; ``tags`` are its own and those of its handbook."""
    return tuple(rule for rule in rules if not _KEPT[rule](drill, tags))


Kept = Callable[[Drill, tuple[str, ...]], bool]


def _is_tagged(group: str) -> Kept:
    return lambda _, tags: any(tag.startswith(f"{group}:") for tag in tags)


def _has_replay(drill: Drill, _: tuple[str, ...]) -> bool:
    if drill.house.stopped is not None:
        return True
    return all(any(map(is_stop, setting.points.values())) for _, setting in all_settings(drill))


def _has_both_ways(drill: Drill, _: tuple[str, ...]) -> bool:
    return any(one.easier for one in drill.progressions) and any(one.harder for one in drill.progressions)


def _names_stroke(drill: Drill, tags: tuple[str, ...]) -> bool:
    return _is_tagged("stroke")(drill, tags) or bool(strokes(drill))


def _leaves_no_question(drill: Drill, _: tuple[str, ...]) -> bool:
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
    "level": lambda drill, tags: any(_is_tagged(group)(drill, tags) for group in ("level", "stage")),
    "intensity": _is_tagged("work"),
    "author": lambda drill, _: bool(drill.author.strip()),
    "no open question": _leaves_no_question,
    "no error": lambda drill, _: not any(found.weight == "error" for found in checks(drill)),
    "no caution left open": lambda drill, _: not dangers(drill, main_setting(drill)),
}
