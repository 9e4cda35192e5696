"""A setting read as play: its shots in order, who is where at each, and where each ball is met and lands."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from itertools import groupby
from typing import Final

from designer.court.regions import RACKET, End, as_player, from_player
from designer.court.standards import Ground
from designer.drill.base import Place, Point
from designer.drill.movement import FEEDS, SERVES, Run, Shot, Wing
from designer.drill.people import Hand, Job
from designer.drill.places import is_letter, locate, moved
from designer.drill.setting import Setting
from designer.play.layout import located_at_end

REACH: Final = RACKET
"""How far beside the hitter a ball is met when its contact is not given: a racket's length. Common practice, no source."""

NEW_BALL: Final = FEEDS | SERVES
"""Strokes that bring a new ball into play wherever they stand."""

OVERHEAD: Final = SERVES | {"smash", "hand feed", "drop feed", "machine feed"}
"""Strokes whose ball is met or let go at the person's own place, not beside it."""


@dataclass(frozen=True, slots=True)
class Step:
    """One shot in play. Points are metres.

    ``digit``: its place in the count, the same for alternatives. ``hit``: how many hits since the ball was put in, 0 for
    the feed or serve. ``alternatives``: another shot may be played in its stead. ``fan``: the alternatives from the same
    contact, itself included. ``contact_drawn``: the contact is given and is not where the hitter stands.
    ``placed``: whether anything says where it is hit from. ``wing``: as given, else as the incoming ball suggests.
    """

    shot: Shot
    digit: int
    hit: int
    alternatives: bool
    first_of_fan: bool
    fan: tuple[str, ...]
    contact: Point
    contact_drawn: bool
    placed: bool
    landing: Point | None
    feed: bool
    runs: tuple[Run, ...]
    hitter: str
    hand: Hand
    wing: Wing | None

    @property
    def end(self) -> End:
        """Which end it is hit from."""
        return "far" if self.contact[1] > 0 else "near"


@dataclass(frozen=True, slots=True)
class Sequence:
    """The play of one setting. ``run_paths`` gives each run's id the points from its start over its via to its end."""

    steps: tuple[Step, ...]
    run_paths: Mapping[str, tuple[Point, ...]]
    before: Mapping[str, str | None]
    ground: Ground = field(repr=False)
    _by_id: Mapping[str, Step] = field(repr=False)
    _next: Mapping[str | None, tuple[Step, ...]] = field(repr=False)
    _starts: Mapping[str, Point] = field(repr=False)
    _ends: Mapping[str, Mapping[str, Point]] = field(repr=False)

    def step(self, shot_id: str) -> Step | None:
        """Return the step of this shot, None where there is none."""
        return self._by_id.get(shot_id)

    def person_at(self, letter: str, shot_id: str) -> Point | None:
        """Return where ``letter`` is when this shot is hit: the end of the last run on its branch, else the spot."""
        return self._at(letter, self.before.get(shot_id))

    def person_after(self, letter: str, shot_id: str) -> Point | None:
        """Return where ``letter`` is when this shot has landed, runs during its flight included."""
        return self._at(letter, shot_id)

    def _at(self, letter: str, landed: str | None) -> Point | None:
        return _person_at(self._starts, self._ends, letter, landed)

    def branch(self, shot_id: str) -> tuple[str, ...]:
        """Return the shots from the start of the rally to this one."""
        return tuple(reversed(tuple(_upwards(self.before, shot_id))))

    def following(self, shot_id: str) -> tuple[Step, ...]:
        """Return the steps that come next after this shot, alternatives of one another."""
        return self._next.get(shot_id, ())


def sequence(setting: Setting, ground: Ground, jobs: Iterable[Job]) -> Sequence:
    """Return the shots of ``setting`` in order of play.

    Raises ``ValueError`` with a sentence where shots come after one another in a circle.
    """
    before = predecessors(setting)
    _refuse_circle(before)
    reading = _Reading(setting, ground, {job.letter: job.hand for job in jobs}, before)
    return reading.sequence()


def predecessors(setting: Setting) -> dict[str, str | None]:
    """Return, for each shot, the shot it is played after: None for the first of a rally.

    A ball that a start brings in "once" something has happened comes after the shot in which that happens.
    """
    later = {start.shot: start.once for start in setting.starts.values() if start.shot and start.once is not None}
    before: dict[str, str | None] = {}
    for shot in setting.shots.values():
        after = shot.after if shot.after in setting.shots else None
        event = later.get(shot.id)
        if after is None and event is not None:
            after = _happens_in(setting, (*event.of, *(id for inner in event.and_ for id in inner.of)), shot.id)
        before[shot.id] = after
    return before


def _happens_in(setting: Setting, ids: Iterable[str], not_this: str) -> str | None:
    for id in ids:
        run = setting.runs.get(id)
        shot = id if run is None else run.during
        if shot in setting.shots and shot != not_this:
            return shot
    return None


def circle(setting: Setting) -> tuple[str, ...]:
    """Return shots that come after one another in a circle, () where there are none."""
    return _circle(predecessors(setting))


def _circle(before: Mapping[str, str | None]) -> tuple[str, ...]:
    done: set[str] = set()
    for first in before:
        trail: dict[str, None] = {}
        id: str | None = first
        while id is not None and id not in done:
            if id in trail:
                passed = list(trail)
                return tuple(passed[passed.index(id) :])
            trail[id] = None
            id = before[id]
        done.update(trail)
    return ()


def _depths(before: Mapping[str, str | None]) -> dict[str, int]:
    """Return which shot of its rally each is, the first 1; each way up is gone once."""
    depth: dict[str, int] = {}
    for id in before:
        trail = []
        up: str | None = id
        while up is not None and up not in depth:
            trail.append(up)
            up = before[up]
        above = 0 if up is None else depth[up]
        depth.update((each, above + number) for number, each in enumerate(reversed(trail), 1))
    return depth


def _starts(setting: Setting) -> dict[str, Point]:
    """Return where each letter stands before the first shot."""
    first: dict[str, Place] = {}
    for spot in setting.spots.values():
        first.setdefault(spot.job, spot.place)
    located = ((letter, locate(setting, place)) for letter, place in first.items())
    return {letter: at for letter, at in located if at is not None}


def _refuse_circle(before: Mapping[str, str | None]) -> None:
    found = _circle(before)
    if found:
        raise ValueError(
            f"the shots {', '.join(sorted(found))} come after one another in a circle; one of them must be first"
        )


def _upwards(before: Mapping[str, str | None], shot_id: str | None) -> Iterator[str]:
    while shot_id is not None:
        yield shot_id
        shot_id = before.get(shot_id)


def _person_at(
    starts: Mapping[str, Point], ends: Mapping[str, Mapping[str, Point]], letter: str, landed: str | None
) -> Point | None:
    """Return where ``letter`` is once the shot ``landed`` has landed, before the first shot where that is None."""
    run_to = None if landed is None else ends.get(landed, {}).get(letter)
    return starts.get(letter) if run_to is None else run_to


class _Reading:
    """Reads one setting, shot by shot from the first, so that each finds what came before it."""

    def __init__(
        self, setting: Setting, ground: Ground, hands: Mapping[str, Hand], before: Mapping[str, str | None]
    ) -> None:
        self.setting = setting
        self.ground = ground
        self.hands = hands
        self.before = before
        self.starts = _starts(setting)
        self.ends: dict[str, Mapping[str, Point]] = {}
        """By shot: where everybody who has run on its branch is once it has landed. Shots without a run share one map."""
        self.hits: dict[str, int] = {}
        self.run_paths: dict[str, tuple[Point, ...]] = {}
        self.met: dict[str, Point] = {}
        self.landed: dict[str, Point | None] = {}
        self.runs_during: dict[str | None, list[Run]] = {}
        for run in sorted(setting.runs.values(), key=lambda run: run.id):
            during = run.during if run.during in setting.shots else None
            self.runs_during.setdefault(during, []).append(run)

    def sequence(self) -> Sequence:
        depth = _depths(self.before)
        found = [self._step(id, digit) for digit, id in sorted((digit, id) for id, digit in depth.items())]
        for run in self.runs_during.get(None, ()):
            self._run(run, self.starts.get(run.by))
        steps = _with_fans(_in_order(found, self.before), self.before)
        following: dict[str | None, list[Step]] = {}
        for step in steps:
            following.setdefault(self.before[step.shot.id], []).append(step)
        return Sequence(
            steps=steps,
            run_paths=self.run_paths,
            before=self.before,
            ground=self.ground,
            _by_id={step.shot.id: step for step in steps},
            _next={id: tuple(after) for id, after in following.items()},
            _starts=self.starts,
            _ends=self.ends,
        )

    def _at(self, letter: str, shot_id: str) -> Point | None:
        return _person_at(self.starts, self.ends, letter, self.before.get(shot_id))

    def _runs(self, id: str) -> tuple[Run, ...]:
        """Return the runs during the shot ``id``, and note where they end."""
        before = self.before[id]
        ends: Mapping[str, Point] = {} if before is None else self.ends[before]
        runs = tuple(self.runs_during.get(id, ()))
        for run in runs:
            end = self._run(run, ends.get(run.by) or self.starts.get(run.by))
            if end is not None:
                ends = {**ends, run.by: end}
        self.ends[id] = ends
        return runs

    def _run(self, run: Run, start: Point | None) -> Point | None:
        far = (start or run.to.at)[1] > 0
        end = located_at_end(self.setting, run.to, far)
        if start is not None and end is not None:
            self.run_paths[run.id] = (start, *run.via, end)
        return end

    def _step(self, id: str, digit: int) -> Step:
        shot = self.setting.shots[id]
        stands = self._at(shot.by, id)
        wing = shot.wing or self._guess(shot, stands)
        given = (
            None if shot.contact is None else self._place(shot.contact, id, far=stands is not None and stands[1] > 0)
        )
        contact = given or self._contact(shot, stands, wing)
        self.met[id] = contact
        runs = self._runs(id)
        landing = None if shot.to is None else self._place(shot.to, id, far=contact[1] <= 0, arrives=True)
        self.landed[id] = landing
        fed = shot.stroke in NEW_BALL
        return Step(
            shot=shot,
            digit=digit,
            hit=self._hit(id),
            alternatives=False,
            first_of_fan=True,
            fan=(id,),
            contact=contact,
            contact_drawn=given is not None and given != stands,
            placed=given is not None or stands is not None,
            landing=landing,
            feed=fed,
            runs=runs,
            hitter=shot.by,
            hand=self._hand(shot.by),
            wing=wing,
        )

    def _hand(self, letter: str) -> Hand:
        return self.hands.get(letter, "right")

    def _hit(self, id: str) -> int:
        """Return how many hits have been made with this ball, this one counted; the ball put in is hit 0."""
        earlier = self.before[id]
        fed = self.setting.shots[id].stroke in NEW_BALL
        self.hits[id] = 0 if fed else 1 if earlier is None else self.hits[earlier] + 1
        return self.hits[id]

    def _place(self, place: Place, id: str, *, far: bool, arrives: bool = False) -> Point | None:
        """Return the point of ``place`` at the moment of the shot, or of its arrival: people have run meanwhile."""
        if place.on is not None and is_letter(place.on):
            stands = _person_at(self.starts, self.ends, place.on, id if arrives else self.before[id])
            return None if stands is None else moved(stands, place.at)
        return located_at_end(self.setting, place, far)

    def _incoming(self, shot: Shot) -> tuple[Point, Point] | None:
        """Return where the ball that the shot answers was hit and landed; None for a new ball."""
        earlier = self.before[shot.id]
        if earlier is None or shot.stroke in NEW_BALL:
            return None
        landing = self.landed.get(earlier)
        return None if landing is None else (self.met[earlier], landing)

    def _guess(self, shot: Shot, stands: Point | None) -> Wing | None:
        """Return the wing on whose side the ball passes the hitter; a ball at the body is taken as a forehand."""
        if shot.stroke in OVERHEAD:
            return None
        incoming = self._incoming(shot)
        if incoming is None or stands is None:
            return "forehand"
        end: End = "far" if stands[1] > 0 else "near"
        right = _passes(incoming, stands, end)
        return "backhand" if right * _forehand_side(self._hand(shot.by)) < -ON_THE_BODY else "forehand"

    def _contact(self, shot: Shot, stands: Point | None, wing: Wing | None) -> Point:
        if stands is None:
            incoming = self._incoming(shot)
            return incoming[1] if incoming is not None else (0.0, -self.ground.baseline)
        if wing is None or shot.stroke in OVERHEAD:
            return stands
        end: End = "far" if stands[1] > 0 else "near"
        side = _forehand_side(self._hand(shot.by)) * (1 if wing == "forehand" else -1)
        return moved(stands, from_player(side * REACH, 0.0, end))


ON_THE_BODY: Final = 0.15
"""A ball that passes nearer than this to the hitter's middle, in metres, is at the body. Common practice, no source."""


def _forehand_side(hand: Hand) -> int:
    return 1 if hand == "right" else -1


def _passes(incoming: tuple[Point, Point], stands: Point, end: End) -> float:
    """Return how far to the hitter's right, in metres, the ball passes when it goes on straight after its bounce."""
    (x0, y0), (x1, y1) = incoming
    at = x1 if abs(y1 - y0) < 1e-6 else x0 + (x1 - x0) * (stands[1] - y0) / (y1 - y0)
    right, _ = as_player((at, stands[1]), end)
    own, _ = as_player(stands, end)
    return right - own


def _in_order(found: list[Step], before: Mapping[str, str | None]) -> list[Step]:
    """Return the steps in order of play: by digit; those of one digit by branch, alternatives by their ids.

    Where a ball goes does not count: a mirrored drill is told in the same order.
    """
    rank: dict[str | None, int] = {None: 0}
    ordered: list[Step] = []
    for _, level in groupby(found, key=lambda step: step.digit):
        steps = sorted(level, key=lambda step: (rank[before[step.shot.id]], step.hitter, step.shot.id))
        rank.update((step.shot.id, number) for number, step in enumerate(steps))
        ordered += steps
    return ordered


def _with_fans(steps: list[Step], before: Mapping[str, str | None]) -> tuple[Step, ...]:
    """Return ``steps`` knowing their alternatives: shots after the same one; of first shots, those of the same letter."""

    def rivalry(step: Step) -> tuple[str | None, str]:
        first = before[step.shot.id]
        return (first, step.hitter if first is None else "")

    rivals = Counter(map(rivalry, steps))
    fans: dict[tuple[object, ...], list[str]] = {}
    for step in steps:
        fans.setdefault((rivalry(step), step.hitter, step.contact), []).append(step.shot.id)
    whole = {key: tuple(ids) for key, ids in fans.items()}

    def known(step: Step) -> Step:
        if rivals[rivalry(step)] == 1:
            return step
        fan = whole[rivalry(step), step.hitter, step.contact]
        return replace(step, alternatives=True, fan=fan, first_of_fan=fan[0] == step.shot.id)

    return tuple(map(known, steps))
