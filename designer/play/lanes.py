"""Two rallies on one court: who plays in which."""

from __future__ import annotations

from collections.abc import Mapping

from designer.drill.setting import Setting


def lanes(setting: Setting, ends: Mapping[str, str]) -> dict[str, str]:
    """Return the lane of each job that hits in one, called by a job in it; empty where all play one ball.

    Whoever answers a ball plays with who hit it. Jobs that hit drawn balls form lanes where there are two groups or more
    that never answer one another, each with somebody at both ends (``ends``: "near" or "far" of each job).
    """
    with_whom: dict[str, set[str]] = {}
    for shot in setting.shots.values():
        before = setting.shots.get(shot.after) if shot.after else None
        both = {shot.by} if before is None else {shot.by, before.by}
        for group in [with_whom[job] for job in both if job in with_whom]:
            both |= group
        for job in both:
            with_whom[job] = both
    groups = {min(group): group for group in with_whom.values()}
    whole = {name: group for name, group in groups.items() if {ends.get(job) for job in group} >= {"near", "far"}}
    return {job: name for name, group in whole.items() for job in group} if len(whole) > 1 else {}
