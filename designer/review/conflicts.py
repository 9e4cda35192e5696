"""Errors: rules that nobody can keep, because two of them or two halves of one ask for opposite things."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from itertools import combinations
from typing import Any, Final

from designer.court.regions import region_box
from designer.drill.base import ON_THE_LINE
from designer.drill.conditions import In
from designer.drill.drill import Drill
from designer.drill.edits import delete, put
from designer.drill.places import corners_of, is_letter
from designer.drill.rules import Aim, Bounces, Height, Keep, Rule, UseStroke
from designer.drill.setting import At, setting_at
from designer.review.check import Check, check, record_name
from designer.wording.sentence import unmarked
from designer.wording.telling import Telling

_SIDES: Final = (frozenset({"cross-court", "down the line", "middle"}), frozenset({"same line back", "new line"}))
"""Directions of which a ball has only one."""


def conflict_checks(told: Telling) -> Iterator[Check]:
    """Yield an error for each rule or pair of rules that cannot be kept, and what is said twice."""
    rules = [told.setting.rules[id] for id in sorted(told.setting.rules)]
    for rule in rules:
        yield from _reversed(told, rule)
        if _against_itself(told, rule):
            text = f"{record_name(told, rule)} asks for a place that is inside and outside at once"
            yield check("error", "contradiction", text, rule.id, at=told.at)
    for one, other in combinations(rules, 2):
        if _same(one, other):
            yield _twice(told, one.id, other.id, "the same rule stands twice")
        elif _hold_together(one, other) and (why := _opposed(told, one, other)):
            names = record_name(told, one), record_name(told, other)
            alike = unmarked(names[0]) == unmarked(names[1])
            both = unmarked(names[0]).replace("the rule", "two rules", 1) if alike else " and ".join(names)
            text = f"{both} cannot both be kept: {why}"
            yield check("error", "contradiction", text, one.id, other.id, at=told.at)
    points = [told.setting.points[id] for id in sorted(told.setting.points)]
    for first, second in combinations(points, 2):
        if _same(first, second):
            yield _twice(told, first.id, second.id, "the same line of the scoring stands twice: it is paid twice")


def _same(one: Any, other: Any) -> bool:
    return bool(one.changed(id="same", note="") == other.changed(id="same", note=""))


def _twice(told: Telling, kept: str, gone: str, text: str) -> Check:
    def without(drill: Drill) -> Drill:
        return delete(drill, told.at, [gone])

    return check("caution", "said-twice", text, kept, gone, at=told.at, mend=without)


def _reversed(told: Telling, rule: Rule) -> Iterator[Check]:
    """Yield an error for each "from … to" of a rule that runs backwards, with the edit that turns it round."""
    must = rule.must
    backwards = "its least is more than its most"
    values: dict[str, Any] | None = None
    if rule.to_hit is not None and rule.to_hit < rule.from_hit:
        values = {"from_hit": rule.to_hit, "to_hit": rule.from_hit}
        backwards = "it ends before it begins"
    elif isinstance(must, Bounces | Height) and _is_more(must.least, must.most):
        values = {"must": must.changed(least=must.most, most=must.least)}
    if values is not None:
        mend = partial(_with_values, at=told.at, id=rule.id, values=values)
        yield check(
            "error",
            "reversed",
            f"nobody can keep {record_name(told, rule)}: {backwards}",
            rule.id,
            at=told.at,
            mend=mend,
        )


def _is_more(least: Any, most: Any) -> bool:
    return isinstance(least, int | float) and isinstance(most, int | float) and least > most


def _with_values(drill: Drill, *, at: At, id: str, values: dict[str, Any]) -> Drill:
    record = setting_at(drill, at).find(id)
    return drill if record is None else put(drill, at, record.changed(**values))


def _against_itself(told: Telling, rule: Rule) -> bool:
    return isinstance(rule.must, Keep) and any(
        _apart(told, one, other) for one, other in combinations(rule.must.where, 2)
    )


def _hold_together(one: Rule, other: Rule) -> bool:
    """Whether there surely is a hit that both rules are about."""
    if one.when and other.when and one.when != other.when:
        return False
    hits = (one.to_hit is None or other.from_hit <= one.to_hit) and (
        other.to_hit is None or one.from_hit <= other.to_hit
    )
    return hits and all(_meet(getattr(one, field), getattr(other, field)) for field in ("who", "parts", "of"))


def _meet(one: tuple[str, ...], other: tuple[str, ...]) -> bool:
    """Whether two lists, of which an empty one means all, have something in common for sure."""
    return not one or not other or bool(set(one) & set(other))


def _opposed(told: Telling, one: Rule, other: Rule) -> str:
    """Return why two rules cannot both be kept, "" where they can."""
    if one.must == other.must:
        return "the one demands what the other forbids" if one.never != other.never else ""
    if one.never and other.never:
        return ""
    if one.never or other.never:
        forbids, demands = (one, other) if one.never else (other, one)
        return "the one demands what the other forbids" if _forbidden(forbids.must, demands.must) else ""
    return _demands_opposed(told, one.must, other.must)


def _forbidden(forbids: Any, demands: Any) -> bool:
    """Whether a rule that forbids leaves nothing of what another demands."""
    if isinstance(forbids, UseStroke) and isinstance(demands, UseStroke):
        wing = forbids.wing is None or forbids.wing == demands.wing
        strokes = not forbids.strokes or (bool(demands.strokes) and set(demands.strokes) <= set(forbids.strokes))
        return wing and strokes
    if isinstance(forbids, UseStroke) and isinstance(demands, Bounces):
        return "volley" in forbids.strokes and forbids.wing is None and demands.most == 0
    return False


def _demands_opposed(told: Telling, one: Any, other: Any) -> str:
    """Return why nothing meets two demands at once, "" where something does."""
    if isinstance(one, Bounces) and isinstance(other, UseStroke):
        one, other = other, one
    if isinstance(one, UseStroke) and isinstance(other, UseStroke):
        return _strokes_opposed(one, other)
    if isinstance(one, UseStroke) and isinstance(other, Bounces):
        volleys = set(one.strokes) == {"volley"} and (other.least or 0) > 0
        return "a volley has no bounce" if volleys else ""
    if isinstance(one, Bounces) and isinstance(other, Bounces):
        return "no number of bounces fits both" if _ranges_apart(one, other) else ""
    if isinstance(one, Height) and isinstance(other, Height):
        return "no height fits both" if one.at == other.at and _ranges_apart(one, other) else ""
    if isinstance(one, Aim) and isinstance(other, Aim):
        opposed = any({one.direction, other.direction} <= side for side in _SIDES)
        return f"a ball goes {one.direction} or {other.direction}" if opposed else ""
    if isinstance(one, Keep) and isinstance(other, Keep):
        opposed = any(_apart(told, here, there) for here in one.where for there in other.where)
        return "no place fits both" if opposed else ""
    return ""


def _strokes_opposed(one: UseStroke, other: UseStroke) -> str:
    if one.wing is not None and other.wing is not None and one.wing != other.wing:
        return f"a ball is played {one.wing} or {other.wing}"
    no_stroke = one.strokes and other.strokes and not set(one.strokes) & set(other.strokes)
    return "no stroke fits both" if no_stroke else ""


def _ranges_apart(one: Any, other: Any) -> bool:
    return _is_more(one.least, other.most) or _is_more(other.least, one.most)


def _apart(told: Telling, one: In, other: In) -> bool:
    """Whether nothing can be in both places when both are judged alike."""
    if one.judged is None or one.judged != other.judged or one.side is not None or other.side is not None:
        return False
    if one.area == other.area:
        return one.outside != other.outside
    if one.outside or other.outside:
        return False
    if (" " in one.area) != (" " in other.area):
        return False  # a region is at the end where the ball goes, a drawn area where it is drawn
    here, there = _box(told, one.area), _box(told, other.area)
    if here is None or there is None:
        return False
    (left, right, front, back), (other_left, other_right, other_front, other_back) = here, there
    across = min(right, other_right) - max(left, other_left)
    along = min(back, other_back) - max(front, other_front)
    return across <= ON_THE_LINE or along <= ON_THE_LINE


def _box(told: Telling, area: str) -> tuple[float, float, float, float] | None:
    """Return (left, right, front, back) of a region or of what is drawn; None for a line or what stands at both ends."""
    region = region_box(told.ground, area)
    if region is not None:
        return region
    item = told.setting.items.get(area)
    corners = () if item is None or getattr(item, "both_ends", False) else corners_of(item)
    if len(corners) < 3:
        return None
    across, along = [x for x, _ in corners], [y for _, y in corners]
    return min(across), max(across), min(along), max(along)


def reversed_ranges(drill: Drill) -> Iterator[Check]:
    """Yield an error for each range of the drill as a whole that runs backwards."""
    for field, what in (("players", "the number of players"), ("age", "the age")):
        value = getattr(drill, field)
        if value is not None and value[0] > value[1]:

            def turned(whole: Drill, field: str = field) -> Drill:
                low, high = sorted(getattr(whole, field))
                return whole.changed(**{field: (low, high)})

            yield check("error", "reversed", f"{what} goes from {value[0]} to {value[1]}", mend=turned)


def letters_twice(told: Telling) -> Iterator[Check]:
    """Yield an error for each letter that has two places in the setting."""
    first: dict[str, str] = {}
    for spot in told.setting.spots.values():
        if spot.job in first:
            mend = partial(_with_own_letter, at=told.at, spot=spot.id)
            text = f"{spot.job} has two places: a letter is one job, and one person holds it"
            yield check("error", "letter-twice", text, first[spot.job], spot.id, at=told.at, mend=mend)
        first.setdefault(spot.job, spot.id)


def _with_own_letter(drill: Drill, *, at: At, spot: str) -> Drill:
    """Return ``drill`` with a second place of a letter given to the next free one."""
    record = setting_at(drill, at).spots.get(spot)
    letter = _free_letter(drill)
    if record is None or letter is None:
        return drill
    job = drill.job(record.job)
    jobs = drill.jobs if job is None else (*drill.jobs, job.changed(letter=letter))
    return put(drill.changed(jobs=jobs), at, record.changed(job=letter))


def _free_letter(drill: Drill) -> str | None:
    taken = {job.letter for job in drill.jobs}
    return next((letter for letter in map(chr, range(ord("A"), ord("Z") + 1)) if letter not in taken), None)


def jobs_twice(drill: Drill) -> Iterator[Check]:
    """Yield an error for each job that is said twice: only the first is used."""
    seen: set[str] = set()
    for number, job in enumerate(drill.jobs):
        if job.letter in seen and is_letter(job.letter):

            def without(whole: Drill, number: int = number) -> Drill:
                return whole.changed(jobs=whole.jobs[:number] + whole.jobs[number + 1 :])

            text = f"there are two jobs {job.letter}: only the first one is used"
            yield check("error", "letter-twice", text, mend=without)
        seen.add(job.letter)
