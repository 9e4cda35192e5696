"""Counting what can come about: how often each, at the least and at the most."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

Span = tuple[int, int]
"""The least and the most that it can come to; both are the same where nothing depends on who wins."""

Pair = tuple[str, str]


@dataclass(frozen=True, slots=True)
class Tally:
    """How often each person held each job (person, job), and how often two people were at one end."""

    jobs: Mapping[Pair, Span]
    partners: Mapping[Pair, Span]

    def plus(self, other: Tally) -> Tally:
        """Return both counted together."""
        return Tally(_sum(self.jobs, other.jobs), _sum(self.partners, other.partners))

    @staticmethod
    def either(several: Iterable[Tally]) -> Tally:
        """Return the least and the most of what can come."""
        found = list(several)
        return Tally(_widest([each.jobs for each in found]), _widest([each.partners for each in found]))


def _sum(one: Mapping[Pair, Span], two: Mapping[Pair, Span]) -> dict[Pair, Span]:
    return {
        key: (one.get(key, (0, 0))[0] + two.get(key, (0, 0))[0], one.get(key, (0, 0))[1] + two.get(key, (0, 0))[1])
        for key in {**one, **two}
    }


def _widest(several: Sequence[Mapping[Pair, Span]]) -> dict[Pair, Span]:
    keys = {key for each in several for key in each}
    return {
        key: (min(each.get(key, (0, 0))[0] for each in several), max(each.get(key, (0, 0))[1] for each in several))
        for key in keys
    }
