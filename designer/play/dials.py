"""The usual dials of a drill: what a coach turns to make it easier or harder, each one press away.

A turned dial is a new variation of a progression, which holds the changed records and nothing else.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from typing import Any, Final, Literal

from designer.court.regions import STRIDE
from designer.court.standards import Ground, ground
from designer.drill.conditions import In, Outcome
from designer.drill.drill import Drill, Variation
from designer.drill.edits import add_variation
from designer.drill.ids import Chooser, new_id
from designer.drill.items import Area, Hoop, Line
from designer.drill.movement import FEEDS, Pace
from designer.drill.places import locate
from designer.drill.rules import Bounces, Finish, Keep, Part, Rule
from designer.drill.setting import At, Setting, all_ids, difference, setting_at
from designer.play.pruning import without_shots
from designer.play.rally import area_roles, parts
from designer.play.resizing import corner_discs_with, resized, shifted
from designer.play.sequence import sequence

Degree = Literal["easier", "harder"]
DialKey = Literal[
    "target size",
    "target distance",
    "count to open",
    "feed",
    "court width",
    "bounces",
    "choices",
    "score to win",
    "margin",
]


@dataclass(frozen=True, slots=True)
class Dial:
    """One dial: its name, and what each degree does in a few words; None where it cannot be turned that way."""

    key: DialKey
    name: str
    easier: str | None
    harder: str | None

    def words(self, degree: Degree) -> str | None:
        """Return what ``degree`` does, None where it cannot be had."""
        return self.easier if degree == "easier" else self.harder


@dataclass(frozen=True, slots=True)
class _Scene:
    """What a dial looks at, and the source of new ids."""

    drill: Drill
    setting: Setting
    ground: Ground
    source: Chooser

    def id(self, kind: str) -> str:
        return new_id(kind, self.source, all_ids(self.drill) | self.setting.ids())


Turn = Callable[[_Scene, bool], Setting | None]
"""Returns the setting turned one notch, harder where the second value says so; None where it cannot be."""


class _First:
    """A source of ids for a dial that is only looked at."""

    def choice(self, seq: str, /) -> str:
        return seq[0]


def dials(drill: Drill, at: At) -> tuple[Dial, ...]:
    """Return the dials that the setting at ``at`` has, in a steady order; raise ``KeyError`` where there is no such setting."""
    scene = _scene(drill, at, _First())
    found = []
    for key, (name, easier, harder, turn) in _DIALS.items():
        possible = [_turns(scene, turn, way) for way in (False, True)]
        if any(possible):
            found.append(Dial(key, name, easier if possible[0] else None, harder if possible[1] else None))
    return tuple(found)


def turned(drill: Drill, at: At, dial: DialKey, degree: Degree, source: Chooser) -> Drill:
    """Return ``drill`` with a new variation, last among the easier or harder ones: ``at`` with one dial turned a notch.

    Raises ``ValueError`` where the setting has no such dial or it goes no further, ``KeyError`` where there is no such
    setting.
    """
    name, easier, harder, turn = _DIALS[dial]
    scene = _scene(drill, at, source)
    after = turn(scene, degree == "harder")
    if after is None or after == scene.setting:
        raise ValueError(f"the {name.lower()} cannot be made {degree} here")
    changes = difference(setting_at(drill, At(at.progression)), after)
    id = new_id(degree, source, all_ids(drill) | after.ids())
    words = harder if degree == "harder" else easier
    return add_variation(drill, at.progression, degree, Variation(id=id, name=words, changes=changes))


def _scene(drill: Drill, at: At, source: Chooser) -> _Scene:
    return _Scene(drill, setting_at(drill, at), ground(drill.court), source)


def _turns(scene: _Scene, turn: Turn, harder: bool) -> bool:  # noqa: FBT001
    after = turn(scene, harder)
    return after is not None and after != scene.setting


def _targets(scene: _Scene) -> list[Any]:
    """Return the areas and hoops that a ball is to be put in, in a steady order."""
    roles = area_roles(scene.setting)
    named = [scene.setting.items[id] for id, role in sorted(roles.items()) if role == "target"]
    rows = {_row(scene, item) for item in named if isinstance(item, Hoop)} - {None}
    # Hoops in one row go together: which one is used depends on the hitter's hand.
    hoops = [item for item in scene.setting.items.values() if isinstance(item, Hoop) and _row(scene, item) in rows]
    return [*(item for item in named if isinstance(item, Area)), *hoops]


def _row(scene: _Scene, hoop: Hoop) -> float | None:
    place = locate(scene.setting, hoop.place)
    return None if place is None else round(place[1], 2)


def _depth_lines(scene: _Scene) -> list[Line]:
    """Return the lines across the court that a ball has to land behind."""
    behind = {
        place.area
        for rule in scene.setting.rules.values()
        if isinstance(rule.must, Keep) and not rule.never
        for place in rule.must.where
        if _is_depth(place)
    }
    behind |= {
        place.area
        for paid in scene.setting.points.values()
        for event in paid.on
        for place in event.where
        if _is_depth(place)
    }
    items = (scene.setting.items.get(id) for id in sorted(behind))
    return [item for item in items if isinstance(item, Line)]


def _is_depth(place: In) -> bool:
    return place.side == "behind" and place.judged in (None, "bounce")


def _target_size(scene: _Scene, harder: bool) -> Setting | None:  # noqa: FBT001
    areas = [target for target in _targets(scene) if isinstance(target, Area)]
    pairs = [(old, resized(scene.ground, old, areas, larger=not harder)) for old in areas]
    return _replaced(scene.setting, pairs)


def _target_distance(scene: _Scene, harder: bool) -> Setting | None:  # noqa: FBT001
    by = STRIDE if harder else -STRIDE
    pairs = [(old, shifted(scene.ground, scene.setting, old, by)) for old in (*_targets(scene), *_depth_lines(scene))]
    return _replaced(scene.setting, pairs)


def _replaced(setting: Setting, pairs: Iterable[tuple[Any, Any]]) -> Setting | None:
    """Return ``setting`` with the new record of each pair for the old one, and the discs on its corners carried along."""
    changed = [(old, new) for old, new in pairs if new is not None and new != old]
    if not changed:
        return None
    discs = [disc for old, new in changed for disc in corner_discs_with(setting, old, new)]
    return setting.having(*(new for _, new in changed), *discs)


def _count_to_open(scene: _Scene, harder: bool) -> Setting | None:  # noqa: FBT001
    restricted = [part for part in parts(scene.setting) if part.kind != "open" and part.until]
    for part in reversed(restricted):
        counted = [event for event in part.until if event.count is not None and event.what in ("played", "landed")]
        if counted and counted[0].count is not None:
            count = counted[0].count
            new = count + 2 if harder else max(1, count - 2)
            return None if new == count else _opened_after(scene.setting, part, count, new)
    return None


def _opened_after(setting: Setting, part: Part, count: int, new: int) -> Setting:
    """Return ``setting`` with a part that lasts for ``new`` hits, and the rules that count to the same hit with it."""
    until = tuple(event.changed(count=new) if event.count == count else event for event in part.until)
    people = {event.by for event in part.until if event.count == count}
    rules = [
        rule.changed(to_hit=max(new, rule.from_hit))
        for rule in setting.rules.values()
        if rule.to_hit == count and rule.who in people
    ]
    return setting.having(part.changed(until=until), *rules)


_PACES: Final[tuple[Pace, ...]] = ("soft", "half", "medium", "full")


def _feed(scene: _Scene, harder: bool) -> Setting | None:  # noqa: FBT001
    feeds = [shot for shot in scene.setting.shots.values() if shot.stroke in FEEDS]
    changed = []
    for shot in feeds:
        place = _PACES.index(shot.pace or "medium") + (1 if harder else -1)
        if 0 <= place < len(_PACES):
            changed.append(shot.changed(pace=_PACES[place]))
    return scene.setting.having(*changed) if changed else None


_WIDER: Final = {
    "right half": "singles court",
    "left half": "singles court",
    "right doubles half": "doubles court",
    "left doubles half": "doubles court",
    "singles court": "doubles court",
}
_NARROWER: Final = {"doubles court": "singles court", "singles court": " half"}


def _court_width(scene: _Scene, harder: bool) -> Setting | None:  # noqa: FBT001
    width = scene.setting.in_play
    if width is None:
        return None
    new = _NARROWER.get(width) if harder else _WIDER.get(width)
    if new == " half":
        side = _half_played(scene)
        new = None if side is None else f"{side} half"
    if new == "doubles court" and scene.ground.doubles is None:
        return None
    return None if new is None else replace(scene.setting, in_play=new)


def _half_played(scene: _Scene) -> str | None:
    """Return the half that all drawn balls land in, as whoever is there faces the net; None where they use both."""
    landings = [step.landing for step in _steps(scene) if step.landing is not None]
    sides = {"right" if (x > 0) == (y < 0) else "left" for x, y in landings if abs(x) > 0.35}
    return sides.pop() if len(sides) == 1 and len(landings) > 1 else None


def _steps(scene: _Scene) -> tuple[Any, ...]:
    try:
        return sequence(scene.setting, scene.ground, scene.drill.jobs).steps
    except ValueError:
        return ()  # shots in a circle have no order; the review says so


def _bounces(scene: _Scene, harder: bool) -> Setting | None:  # noqa: FBT001
    rules = [rule for rule in scene.setting.rules.values() if isinstance(rule.must, Bounces) and not rule.never]
    if rules:
        changed = [rule.changed(must=new) for rule in rules if (new := _bounced(rule.must, harder=harder)) is not None]
        return scene.setting.having(*changed) if changed else None
    if harder or not any(not step.feed for step in _steps(scene)):
        return None
    cost = Outcome(then="no score" if _is_cooperative(scene.setting) else "lose the point")
    return scene.setting.having(Rule(id=scene.id("rule"), breach=cost, must=Bounces(do="bounces", most=2)))


def _bounced(must: Any, *, harder: bool) -> Bounces | None:
    """Return a demand about bounces one bounce stricter or milder, None where it goes no further."""
    if not isinstance(must, Bounces):
        return None
    if harder:
        if must.most is not None and must.most > max(1, must.least or 0):
            return must.changed(most=must.most - 1)
        return must.changed(rising=True) if must.most == 1 and not must.rising else None
    if must.rising:
        return must.changed(rising=False)
    most = 1 if must.most is None else must.most
    return must.changed(most=most + 1) if most < 2 else None


def _is_cooperative(setting: Setting) -> bool:
    return bool(setting.parts) and all(part.kind == "cooperative" for part in setting.parts.values())


def _choices(scene: _Scene, harder: bool) -> Setting | None:  # noqa: FBT001
    """Return the setting with the last of the alternatives taken out; a choice more can only be drawn."""
    choices = [step for step in _steps(scene) if step.alternatives and not step.feed and step.digit > 1]
    if harder or not choices:
        return None
    last = choices[-1]
    rivals = [step for step in choices if step.digit == last.digit and step.hitter == last.hitter]
    return without_shots(scene.setting, {last.shot.id}) if len(rivals) > 1 else None


_RACES: Final = (3, 5, 7, 9, 11, 15, 21)


def _score_to_win(scene: _Scene, harder: bool) -> Setting | None:  # noqa: FBT001
    finish = scene.setting.finish
    if finish is None or not isinstance(finish.to, int) or finish.kind not in ("race", "goal", "tie-break"):
        return None
    new = _score(finish, finish.to, harder=harder)
    if new is None:
        return None
    cap = None if finish.cap is None else finish.cap + new - finish.to
    return scene.setting.having(finish.changed(to=new, cap=cap))


def _score(finish: Finish, to: int, *, harder: bool) -> int | None:
    if finish.kind == "goal" or finish.running:
        step = max(1, round(to / 4))
        new = to + step if harder else to - step
        if harder and finish.starts is not None:
            new = min(new, max(to, finish.starts))
        return new if 1 <= new <= 1000 and new != to else None
    found = [score for score in _RACES if (score > to if harder else score < to)]
    return None if not found else found[0] if harder else found[-1]


def _margin(scene: _Scene, harder: bool) -> Setting | None:  # noqa: FBT001
    finish = scene.setting.finish
    if finish is None or finish.kind != "race" or finish.running or finish.to is None:
        return None
    margin = 2 if harder else 1
    return None if finish.margin == margin or (harder and finish.margin > 2) else _with_margin(scene, finish, margin)


def _with_margin(scene: _Scene, finish: Finish, margin: int) -> Setting:
    return scene.setting.having(finish.changed(margin=margin, cap=None if margin == 1 else finish.cap))


_DIALS: Final[dict[DialKey, tuple[str, str, str, Turn]]] = {
    "target size": ("Target size", "Larger target", "Smaller target", _target_size),
    "target distance": ("Target distance", "Nearer target", "Deeper target", _target_distance),
    "count to open": ("Count to open", "Opens sooner", "Opens later", _count_to_open),
    "feed": ("Feed", "Softer feed", "Faster feed", _feed),
    "court width": ("Court width", "Wider court", "Narrower court", _court_width),
    "bounces": ("Bounces", "One more bounce", "Fewer bounces", _bounces),
    "choices": ("Choices", "One choice fewer", "One choice more", _choices),
    "score to win": ("Score to win", "Shorter game", "Longer game", _score_to_win),
    "margin": ("Margin", "No margin", "By two", _margin),
}
