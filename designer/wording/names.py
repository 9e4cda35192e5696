"""What a card calls each thing and each shot."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable
from typing import Any, Final

from designer.drill.items import Barrier, Hoop, Line
from designer.drill.movement import SERVES, Run, Shot
from designer.drill.people import Spot
from designer.drill.places import corners_of, is_letter, locate
from designer.wording.counts import listed
from designer.wording.sentence import one_line, ref, unmarked
from designer.wording.telling import Telling

TICK: Final = 1.0
"""A line shorter than this, in metres, is called a tick."""

_LINES: Final = {
    "chalk": "the chalk line",
    "tape": "the tape line",
    "throw-down": "the throw-down line",
    "discs": "the line of discs",
    None: "the line",
}
_ALREADY_NAMED: Final = ("the ", "a ", "an ", "own ")


def with_article(name: str) -> str:
    """Return a name as it stands in a sentence: "reply zone" as "the reply zone", "A's box" as it is."""
    first, _, _ = name.partition(" ")
    if name.lower().startswith(_ALREADY_NAMED) or first.endswith(("'s", "’s")):
        return name
    return f"the {name}"


def without_article(name: str) -> str:
    """Return "reply zone" for "the reply zone"; marks of ``ref`` stay."""
    return name.replace("the ", "", 1) if unmarked(name).startswith("the ") else name


def name_of(told: Telling, id: str) -> str | None:
    """Return what a card calls the record or person ``id``, marked by ``ref``; None where there is no such thing."""
    if is_letter(id):
        return letter(told, id) if told.drill.job(id) is not None or told.setting.spot_of(id) is not None else None
    record = told.setting.find(id)
    if record is None:
        return None
    if isinstance(record, Spot):
        return letter(told, record.job)
    if isinstance(record, Shot):
        return shot_name(told, record)
    if isinstance(record, Run):
        # A run to the end of another run has no name of its own; two that end at one another must not go on for ever.
        on = record.to.on
        return None if on is None or on in told.setting.runs else name_of(told, on)
    words = thing_name(told, record)
    return None if words is None else ref(id, words)


def letter(told: Telling, job: str) -> str:
    """Return the letter of a job, marked by its spot where it has one."""
    spot = told.setting.spot_of(job)
    return job if spot is None else ref(spot.id, job)


def thing_name(told: Telling, item: Any) -> str | None:
    """Return what a card calls an item, with its article, unmarked; None for a record that is no item."""
    own = one_line(getattr(item, "name", ""))
    if own:
        return with_article(own)
    if isinstance(item, Line):
        return _line_name(item)
    if isinstance(item, Hoop):
        return _hoop_name(told, item)
    kind = getattr(item, "kind", None)
    if not isinstance(kind, str) or not kind:
        return None
    return _NAMES.get(kind, f"the {kind}")


_NAMES: Final = {"area": "the marked area", "ball machine": "the machine", "height cord": "the cord"}


def _line_name(line: Line) -> str:
    if length_of(line) < TICK and line.marked in ("chalk", "tape", None):
        return "the tick"
    if line.marked == "painted":
        return "the painted line"
    return _LINES.get(line.marked, "the imagined line")


def length_of(line: Line | Barrier) -> float:
    """Return how long a line is from corner to corner, in metres."""
    corners = corners_of(line)
    return sum(math.dist(a, b) for a, b in itertools.pairwise(corners))


def _hoop_name(told: Telling, hoop: Hoop) -> str:
    others = [item for item in told.setting.items.values() if isinstance(item, Hoop) and item.id != hoop.id]
    here = locate(told.setting, hoop.place)
    if not others or here is None:
        return "the hoop"
    places = [locate(told.setting, other.place) for other in others]
    if any(place is not None and math.isclose(place[0], here[0]) for place in places):
        return "the hoop"
    end = "far" if here[1] > 0 else "near"
    across = told.team("near" if end == "far" else "far")
    hitters = {step.hitter for step in told.sequence.steps if told.sequence.before.get(step.shot.id) is not None}
    facing = [one for one in across if one in hitters]
    side = "right" if (here[0] > 0) == (end == "far") else "left"
    return f"the hoop on {facing[0]}'s {side}" if len(facing) == 1 else f"the {side} hoop"


def shot_name(told: Telling, shot: Shot) -> str:
    """Return what a card calls a shot: "the feed", "the serve", "the return", "the approach", else "ball 3"."""
    digit = told.digit(shot.id)
    label = choice_word(told, shot)
    if label is not None:
        return ref(shot.id, f"a {label}")
    own = _shot_word(told, shot)
    if own is None:
        return ref(shot.id, f"ball {digit}" if digit is not None else "that ball")
    clash = any(
        told.digit(other.id) != digit and _shot_word(told, other) == own for other in told.setting.shots.values()
    )
    return ref(shot.id, f"ball {digit}" if clash and digit is not None else f"the {own}")


NOUNS: Final = frozenset({"pass", "lob", "volley", "smash", "drop shot", "approach", "slice", "winner", "drive"})
"""Words at the tip of an arrow that name a kind of ball; any other says where it goes."""


def choice_word(told: Telling, shot: Shot) -> str | None:
    """Return the word for one of several balls that may be played at this point: "pass", "lob"; None for no choice."""
    step = told.sequence.step(shot.id)
    if step is None or not step.alternatives or step.feed:
        return None
    label = one_line(shot.label).lower()
    word = label if label in NOUNS else shot.stroke if shot.stroke in NOUNS else None
    return None if word in (None, "drive") else word


def _shot_word(told: Telling, shot: Shot) -> str | None:
    if shot.stroke in SERVES:
        return "serve"
    if shot.stroke == "hand feed":
        return "throw"
    if told.is_new_ball(shot):
        return "feed"
    before = told.setting.shots.get(shot.after or "")
    if before is not None and before.stroke in SERVES:
        return "return"
    if any(
        run.during == shot.id and run.by == shot.by and run.purpose == "approach" for run in told.setting.runs.values()
    ):
        return "approach"
    return None


def shots_named(told: Telling, ids: Iterable[str], link: str = "or") -> str:
    """Return the names of several shots, each name once: "the return", "ball 2 or ball 3"; "" where none exists."""
    names: dict[str, str] = {}
    for id in ids:
        shot = told.setting.shots.get(id)
        if shot is not None:
            name = shot_name(told, shot)
            names.setdefault(unmarked(name), name)
    first, *rest = names.values() or ("",)
    shared = unmarked(first).split(" ", 1)[0]
    # "ball 2 or 3", "a pass or lob": what they have in common is said once.
    short = [_without(name, f"{shared} ") if shared in ("ball", "a") else name for name in rest]
    return listed([first, *short], link)


def _without(name: str, head: str) -> str:
    return name.replace(head, "", 1) if unmarked(name).startswith(head) else name
