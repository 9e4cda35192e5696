"""The trade's usual way from a shadow swing to the match: progressions that wait to be filled.

Each has its parts, points and finish and nothing else of its own; what was laid out and drawn below stays.
Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Final, Literal

from designer.drill.conditions import Event, In, Outcome
from designer.drill.drill import Drill, Progression
from designer.drill.edits import add_progression
from designer.drill.ids import Chooser, new_id
from designer.drill.movement import FEEDS, SERVES, Shot
from designer.drill.rules import Finish, Height, Keep, Part, Points, Rule, Start
from designer.drill.setting import EMPTY, At, Setting, all_ids, difference, setting_at

RungKind = Literal["shadow", "fed", "cooperative", "restricted", "points", "match start", "rule off"]


@dataclass(frozen=True, slots=True)
class Rung:
    """One step of the usual way: the name it gets, and what happens in it."""

    kind: RungKind
    name: str
    about: str


_Id = Callable[[str], str]
_POINT: Final = Outcome(then="points", value=1)


def usual_way() -> tuple[Rung, ...]:
    """Return the steps of the usual way, from the first to the last."""
    return tuple(rung for rung, _ in _WAY.values())


def add_usual(drill: Drill, kind: RungKind, source: Chooser) -> Drill:
    """Return ``drill`` with one step of the usual way as its last progression, the others as they were.

    It lies on what was the last one: people, things, shots and rules stay, its parts, points and finish take the place
    of the ones below. Without shots there is no ball: "shadow" turns those of the players into shadow swings.
    """
    rung, fill = _WAY[kind]
    below = setting_at(drill, At(drill.progressions[-1].id)) if drill.progressions else EMPTY
    taken = set(all_ids(drill))

    def fresh(stem: str) -> str:
        taken.add(id := new_id(stem, source, taken))
        return id

    bare = below.without(*below.parts, *below.points, *(() if below.finish is None else (below.finish.id,)))
    filled = fill(_unparted(bare, below), fresh, drill)
    progression = Progression(id=fresh("progression"), name=rung.name, changes=difference(below, filled))
    return add_progression(drill, progression)


def _unparted(bare: Setting, below: Setting) -> Setting:
    """Return ``bare`` with rules that held in a part that is no longer there held in all of the rally."""
    rules = [
        rule.changed(parts=(), from_hit=1, to_hit=None) if rule.to_hit is not None else rule.changed(parts=())
        for rule in bare.rules.values()
        if set(rule.parts) & set(below.parts)
    ]
    return bare.having(*rules) if rules else bare


def _shadow(setting: Setting, fresh: _Id, drill: Drill) -> Setting:
    del drill
    feeds = [shot.id for shot in setting.shots.values() if shot.stroke in FEEDS | SERVES]
    swings = [
        shot.changed(stroke="shadow swing", after=None if shot.after in feeds else shot.after)
        for shot in setting.shots.values()
        if shot.id not in feeds
    ]
    runs = [
        run.changed(during=None if not swings else _first(swings).id)
        for run in setting.runs.values()
        if run.during in feeds
    ]
    gone = {*feeds, *setting.starts}
    still = setting.without(*gone, *(id for id, rule in setting.rules.items() if _needs_a_ball(rule, gone)))
    return still.having(
        *swings,
        *runs,
        Part(id=fresh("part"), kind="cooperative"),
        Finish(id=fresh("finish"), kind="total", starts=10, scores="all together"),
    )


def _needs_a_ball(rule: Rule, gone: set[str]) -> bool:
    """Whether a rule means nothing without a ball: what it asks of one, or what it says of shots that are gone."""
    named = {*rule.of, *(id for event in rule.when if isinstance(event, Event) for id in event.of)}
    return bool(named & gone) or not (_may_protect(rule) or _is_about_feet(rule))


def _may_protect(rule: Rule) -> bool:
    """Whether a rule may be there so that nobody is hurt: what is not allowed, and balls kept low."""
    return rule.never or (isinstance(rule.must, Height) and rule.must.most is not None)


def _is_about_feet(rule: Rule) -> bool:
    return isinstance(rule.must, Keep) and all(place.judged in ("one foot", "both feet") for place in rule.must.where)


def _first(shots: list[Shot]) -> Shot:
    return next((shot for shot in shots if shot.after is None), shots[0])


def _fed(setting: Setting, fresh: _Id, drill: Drill) -> Setting:
    del drill
    feeds = {shot.id for shot in setting.shots.values() if shot.stroke in FEEDS}
    hits = tuple(sorted(shot.id for shot in setting.shots.values() if shot.after in feeds and shot.id not in feeds))
    targets = tuple(place for rule in setting.rules.values() if not rule.never for place in _landings(rule))
    hit = Event(what="landed", of=hits, where=targets[:1])
    return setting.having(
        Part(id=fresh("part"), kind="cooperative", shots=hits),
        Points(id=fresh("points"), on=(hit,), gives=_POINT),
        Finish(id=fresh("finish"), kind="total", starts=10, scores="person", level="shared"),
    )


def _cooperative(setting: Setting, fresh: _Id, drill: Drill) -> Setting:
    del drill
    return setting.having(
        Part(id=fresh("part"), kind="cooperative", failed=Outcome(then="count to zero")),
        Points(id=fresh("points"), on=(Event(what="landed"),), gives=_POINT),
        Finish(id=fresh("finish"), kind="race", to=10, running=True, scores="all together"),
    )


def _restricted(setting: Setting, fresh: _Id, drill: Drill) -> Setting:
    del drill
    forced = fresh("part")
    rules = [rule.changed(parts=(forced,)) for rule in setting.rules.values()]
    return setting.having(
        Part(
            id=forced,
            kind="forced",
            until=(Event(what="played", count=4),),
            failed=Outcome(then="no score"),
        ),
        Part(id=fresh("part"), kind="open", after=forced),
        *rules,
        Points(id=fresh("points"), on=(Event(what="won"),), gives=_POINT),
        Finish(id=fresh("finish"), kind="race", to=7),
    )


def _open_points(setting: Setting, fresh: _Id) -> Setting:
    return setting.having(
        Part(id=fresh("part"), kind="open"), Points(id=fresh("points"), on=(Event(what="won"),), gives=_POINT)
    )


def _points(setting: Setting, fresh: _Id, drill: Drill) -> Setting:
    del drill
    return _open_points(setting, fresh).having(Finish(id=fresh("finish"), kind="race", to=11))


def _match_start(setting: Setting, fresh: _Id, drill: Drill) -> Setting:
    """Return the setting begun by a serve: who fed serves, two serves, from the deuce and the ad court in turn."""
    opened = _open_points(setting, fresh)
    feed, start = _fed_ball(setting)
    players = [job.letter for job in drill.jobs if job.by == "player" and setting.spot_of(job.letter) is not None]
    letter = players[0] if feed is None and players else None if feed is None else feed.by
    records: list[Any] = [Finish(id=fresh("finish"), kind="tie-break", to=7, margin=2)]
    if letter is not None:
        shot = feed or Shot(id=fresh("shot"), by=letter)
        shot = shot.changed(stroke="serve", to=None, contact=None, pace=None, bounces=None)
        serves = Start(id=start.id if start is not None else fresh("start"), shot=shot.id, by=(letter,))
        fault = Outcome(then="lose the point")
        records += [
            shot,
            serves.changed(serves={letter: 2}, courts="in turn", next="by the rules", bad=fault),
        ]
    later = [other.id for other in setting.starts.values() if other.once is not None or other is not start]
    kept = [id for id in later if start is None or id != start.id]
    return opened.without(*kept).having(*records)


def _fed_ball(setting: Setting) -> tuple[Shot | None, Start | None]:
    """Return the shot that a rally begins with, and the start that says so; None for what is not there."""
    for start in sorted(setting.starts.values(), key=lambda start: start.id):
        shot = setting.shots.get(start.shot or "")
        if start.once is None and shot is not None:
            return shot, start
    firsts = sorted(shot.id for shot in setting.shots.values() if shot.after is None)
    return (setting.shots[firsts[0]] if firsts else None), None


def _rule_off(setting: Setting, fresh: _Id, drill: Drill) -> Setting:
    """Return the setting without what its rules demand; what they asked of a ball is paid when the rally is won with it.

    What is not allowed stays so: it may be there so that nobody is hurt.
    """
    del drill
    bonuses = [
        Points(
            id=fresh("points"),
            on=(Event(what="won", by=rule.who, and_=(Event(what="landed", by=rule.who, where=_landings(rule)),)),),
            gives=Outcome(then="points", value=2),
            beside="instead",
        )
        for rule in setting.rules.values()
        if not rule.never and _landings(rule)
    ]
    demands = [id for id, rule in setting.rules.items() if not _may_protect(rule)]
    opened = _open_points(setting, fresh).without(*demands)
    return opened.having(*bonuses, Finish(id=fresh("finish"), kind="race", to=11))


def _landings(rule: Rule) -> tuple[In, ...]:
    """Return the places where a rule wants a ball to bounce."""
    if not isinstance(rule.must, Keep):
        return ()
    return tuple(place for place in rule.must.where if place.judged == "bounce" and not place.outside)


_WAY: Final[dict[RungKind, tuple[Rung, Callable[[Setting, _Id, Drill], Setting]]]] = {
    "shadow": (Rung("shadow", "Shadow", "No ball: the swing and the way to it."), _shadow),
    "fed": (Rung("fed", "Fed", "A feeder puts in one ball after another; hits are counted."), _fed),
    "cooperative": (Rung("cooperative", "Together", "Both work for one count in a row."), _cooperative),
    "restricted": (
        Rung("restricted", "Restricted, then open", "The rule holds for some hits; then the point is open."),
        _restricted,
    ),
    "points": (Rung("points", "Points", "The rule holds in points played out."), _points),
    "match start": (Rung("match start", "From the serve", "Serve and return begin the point."), _match_start),
    "rule off": (Rung("rule off", "Rule off", "No rule; doing what it asked is paid."), _rule_off),
}
