"""The review of a drill: what is wrong, what could hurt somebody, and what has not been said."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import chain
from typing import TYPE_CHECKING, Final

from designer.court.standards import ground
from designer.drill.acceptance import basis_of, holds, holds_anywhere
from designer.drill.drill import Accepted, Drill
from designer.drill.setting import At, addresses
from designer.review.barriers import barrier_cautions
from designer.review.check import Check, Mend, Weight
from designer.review.close_balls import close_ball_cautions
from designer.review.conflicts import conflict_checks, jobs_twice, letters_twice, reversed_ranges
from designer.review.dangers import danger_cautions, run_off_cautions
from designer.review.endings import ending_checks
from designer.review.flights import flight_checks
from designer.review.groups import group_cautions
from designer.review.landings import landing_checks
from designer.review.length import length_suggestions
from designer.review.questions import questions
from designer.review.references import drill_errors, reference_errors
from designer.review.retreats import retreat_cautions
from designer.review.room import room_cautions
from designer.review.shapes import shape_checks
from designer.review.sides import side_cautions
from designer.review.surfaces import age_cautions, surface_cautions
from designer.review.tokens import token_cautions
from designer.review.turns import turn_checks
from designer.review.unknown import unknown_cautions
from designer.wording.care import NO_OTHER
from designer.wording.telling import telling

if TYPE_CHECKING:
    from designer.numbers.levels import Level

__all__ = ["NO_OTHER", "Check", "Mend", "Weight", "accept", "accepted_checks", "checks", "dangers", "reviewed"]

_ORDER: Final[tuple[Weight, ...]] = ("error", "caution", "suggestion")


def checks(
    drill: Drill, at: At | None = None, *, players: Level | str | None = None, drag: float | None = None
) -> tuple[Check, ...]:
    """Return what the review finds, errors first, dangers before other cautions.

    With ``at``, what concerns that setting and the drill as a whole; without, all settings, each finding once, where it
    first appears. Cautions that the author has accepted are left out. ``players`` is a level, ``drag`` a drag coefficient, for the checks that need
    numbers, which take up to a second; without it they are not made. Whatever is found, whoever shows it ends with
    ``NO_OTHER``: the drawing does not know the court. Raises ``KeyError`` where there is no such setting.
    """
    return reviewed(drill, at, players=players, drag=drag)[0]


def dangers(drill: Drill, at: At) -> tuple[Check, ...]:
    """Return those of ``checks`` at ``at`` by which somebody could be hurt, without looking for the others."""
    told = telling(drill, at)
    found = chain(
        group_cautions(drill),
        run_off_cautions(drill, ground(drill.court)),
        shape_checks(told),
        danger_cautions(told),
        barrier_cautions(told),
        room_cautions(told),
        retreat_cautions(told),
        close_ball_cautions(told),
        surface_cautions(told),
    )
    return tuple(one for one in _once(found) if one.danger and _acceptance(drill, one) is None)


def accepted_checks(
    drill: Drill, at: At | None = None, *, players: Level | str | None = None, drag: float | None = None
) -> tuple[tuple[Check, Accepted], ...]:
    """Return the cautions that the author has accepted, each with its acceptance and so its reason."""
    return reviewed(drill, at, players=players, drag=drag)[1]


def reviewed(
    drill: Drill, at: At | None = None, *, players: Level | str | None = None, drag: float | None = None
) -> tuple[tuple[Check, ...], tuple[tuple[Check, Accepted], ...]]:
    """Return (``checks``, ``accepted_checks``) of one review."""
    found: list[Check] = []
    accepted: list[tuple[Check, Accepted]] = []
    for each in _all(drill, at, players, drag):
        acceptance = _acceptance(drill, each)
        if acceptance is None:
            found.append(each)
        else:
            accepted.append((each, acceptance))
    return tuple(found), tuple(accepted)


def accept(drill: Drill, found: Check, reason: str) -> Drill:
    """Return ``drill`` with a caution accepted for ``reason``; raise ``ValueError`` for anything but a caution.

    It lapses as soon as anything that the caution concerns, the version, the variation, the age or the court changes.
    """
    if found.weight != "caution":
        raise ValueError(f"{found.weight}s cannot be accepted; only cautions can")
    if not reason.strip():
        raise ValueError("say why the caution is accepted: the reason is printed")
    basis = basis_of(drill, found.at, found.about)
    words = found.sentence.text.replace("{", "{{")
    fresh = Accepted(check=found.key, about=found.about, caution=words, reason=reason, basis=basis)
    # What was accepted of the same and has lapsed everywhere makes room.
    same = (found.key, found.about)
    kept = (each for each in drill.accepted if (each.check, each.about) != same or holds_anywhere(drill, each))
    return drill.changed(accepted=(*kept, fresh))


def _acceptance(drill: Drill, found: Check) -> Accepted | None:
    """Return the acceptance that covers a caution: of its kind, of all that it concerns, and of that as it is now."""
    if found.weight != "caution":
        return None
    for acceptance in drill.accepted:
        same = acceptance.check == found.key and (not acceptance.about or set(found.about) <= set(acceptance.about))
        if same and holds(drill, acceptance, found.at):
            return acceptance
    return None


def _all(drill: Drill, at: At | None, players: Level | str | None = None, drag: float | None = None) -> list[Check]:
    order = {weight: number for number, weight in enumerate(_ORDER)}
    return sorted(_each_once(drill, at, players, drag), key=lambda found: (order[found.weight], not found.danger))


def _each_once(drill: Drill, at: At | None, players: Level | str | None, drag: float | None) -> Iterator[Check]:
    yield from _once(chain(_found(drill, at), _computed(drill, at, players, drag)))


def _once(checks: Iterable[Check]) -> Iterator[Check]:
    seen: set[tuple[str, tuple[str, ...], str]] = set()
    for found in checks:
        key = (found.key, found.about, found.sentence.text)
        if key not in seen:
            seen.add(key)
            yield found


def _computed(drill: Drill, at: At | None, players: Level | str | None, drag: float | None) -> Iterator[Check]:
    if players is not None:
        # The numbers are loaded only by whoever has the time for them.
        from designer.review.numbers import number_checks

        yield from number_checks(drill, at, players, drag=drag)


def _found(drill: Drill, at: At | None) -> Iterator[Check]:
    yield from drill_errors(drill)
    yield from jobs_twice(drill)
    yield from reversed_ranges(drill)
    yield from group_cautions(drill)
    yield from run_off_cautions(drill, ground(drill.court))
    for address in addresses(drill) if at is None else (at,):
        told = telling(drill, address)
        yield from reference_errors(told)
        yield from letters_twice(told)
        yield from shape_checks(told)
        yield from flight_checks(told)
        yield from conflict_checks(told)
        yield from ending_checks(told)
        yield from landing_checks(told)
        yield from turn_checks(told)
        yield from danger_cautions(told)
        yield from barrier_cautions(told)
        yield from room_cautions(told)
        yield from retreat_cautions(told)
        yield from close_ball_cautions(told)
        yield from surface_cautions(told)
        yield from age_cautions(told)
        yield from questions(told)
    yield from unknown_cautions(drill)
    yield from side_cautions(drill)
    yield from token_cautions(drill)
    yield from length_suggestions(drill, at)
