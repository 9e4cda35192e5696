"""A setting read as play: its shots in order, who is where at each, and where each ball is met and lands."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
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
    _setting: Setting = field(repr=False)
    _by_id: Mapping[str, Step] = field(repr=False)
    _after_run: Mapping[tuple[str, str], Point] = field(repr=False)

    def step(self, shot_id: str) -> Step | None:
        """Return the step of this shot, None where there is none."""
        return self._by_id.get(shot_id)

    def person_at(self, letter: str, shot_id: str) -> Point | None:
        """Return where ``letter`` is when this shot is hit: the end of the last run on its branch, else the spot."""
        return _person_at(self._setting, self.before, self._after_run, letter, shot_id)

    def person_after(self, letter: str, shot_id: str) -> Point | None:
        """Return where ``letter`` is when this shot has landed, runs during its flight included."""
        return self._after_run.get((letter, shot_id)) or self.person_at(letter, shot_id)

    def branch(self, shot_id: str) -> tuple[str, ...]:
        """Return the shots from the start of the rally to this one."""
        return tuple(reversed(tuple(_upwards(self.before, shot_id))))

    def following(self, shot_id: str) -> tuple[Step, ...]:
        """Return the steps that come next after this shot, alternatives of one another."""
        return tuple(step for step in self.steps if self.before[step.shot.id] == shot_id)


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
    setting: Setting,
    before: Mapping[str, str | None],
    after_run: Mapping[tuple[str, str], Point],
    letter: str,
    shot_id: str,
) -> Point | None:
    for earlier in _upwards(before, before.get(shot_id)):
        end = after_run.get((letter, earlier))
        if end is not None:
            return end
    spot = setting.spot_of(letter)
    return None if spot is None else locate(setting, spot.place)


class _Reading:
    """Reads one setting, shot by shot from the first, so that each finds what came before it."""

    def __init__(
        self, setting: Setting, ground: Ground, hands: Mapping[str, Hand], before: Mapping[str, str | None]
    ) -> None:
        self.setting = setting
        self.ground = ground
        self.hands = hands
        self.before = before
        self.after_run: dict[tuple[str, str], Point] = {}
        self.run_paths: dict[str, tuple[Point, ...]] = {}
        self.met: dict[str, Point] = {}
        self.landed: dict[str, Point | None] = {}
        self.runs_during: dict[str | None, list[Run]] = {}
        for run in sorted(setting.runs.values(), key=lambda run: run.id):
            during = run.during if run.during in setting.shots else None
            self.runs_during.setdefault(during, []).append(run)

    def sequence(self) -> Sequence:
        depth = {id: sum(1 for _ in _upwards(self.before, id)) for id in self.before}
        found = [self._step(id, digit) for digit, id in sorted((digit, id) for id, digit in depth.items())]
        for run in self.runs_during.get(None, ()):
            self._run(run, self._spot(run.by))
        order = _in_order(found, self.before)
        steps = tuple(_with_fan(step, order, self.before) for step in order)
        by_id = {step.shot.id: step for step in steps}
        return Sequence(steps, self.run_paths, self.before, self.ground, self.setting, by_id, self.after_run)

    def _spot(self, letter: str) -> Point | None:
        spot = self.setting.spot_of(letter)
        return None if spot is None else locate(self.setting, spot.place)

    def _at(self, letter: str, shot_id: str) -> Point | None:
        return _person_at(self.setting, self.before, self.after_run, letter, shot_id)

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
        runs = tuple(self.runs_during.get(id, ()))
        for run in runs:
            start = self.after_run.get((run.by, id)) or self._at(run.by, id)
            end = self._run(run, start)
            if end is not None:
                self.after_run[run.by, id] = end
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
        count = 0
        for earlier in _upwards(self.before, id):
            if self.setting.shots[earlier].stroke in NEW_BALL:
                return count
            count += 1
        return count

    def _place(self, place: Place, id: str, *, far: bool, arrives: bool = False) -> Point | None:
        """Return the point of ``place`` at the moment of the shot, or of its arrival: people have run meanwhile."""
        if place.on is not None and is_letter(place.on):
            stands = (self.after_run.get((place.on, id)) if arrives else None) or self._at(place.on, id)
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
    rank: dict[str | None, tuple[str, ...]] = {None: ()}
    for step in found:
        rank[step.shot.id] = (*rank[before[step.shot.id]], step.hitter, step.shot.id)
    return sorted(found, key=lambda step: (step.digit, rank[step.shot.id]))


def _with_fan(step: Step, steps: list[Step], before: Mapping[str, str | None]) -> Step:
    """Return ``step`` knowing its alternatives: shots after the same one; of first shots, those of the same letter."""
    first = before[step.shot.id]
    rivals = [
        other
        for other in steps
        if before[other.shot.id] == first and (first is not None or other.hitter == step.hitter)
    ]
    if len(rivals) == 1:
        return step
    fan = tuple(other.shot.id for other in rivals if other.hitter == step.hitter and other.contact == step.contact)
    return replace(step, alternatives=True, fan=fan, first_of_fan=fan[0] == step.shot.id)
