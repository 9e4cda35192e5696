"""The least and the most of several ways it can go."""

from designer.play.tally import Tally


def tally(**jobs):
    return Tally({("A", job): (times, times) for job, times in jobs.items()}, {})


def test_what_comes_after_is_added():
    assert tally(feeds=1).plus(tally(feeds=2, hits=1)).jobs == {("A", "feeds"): (3, 3), ("A", "hits"): (1, 1)}


def test_of_several_ways_the_least_and_the_most_count():
    # Whoever does not do it at all in one of them does it no times at the least.
    found = Tally.either([tally(feeds=3), tally(feeds=1, hits=2)])
    assert found.jobs == {("A", "feeds"): (1, 3), ("A", "hits"): (0, 2)}
