"""Errors and cautions: a swap that loses somebody, and turns that are not shared out evenly."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from designer.drill.drill import Drill
from designer.drill.edits import put
from designer.drill.places import is_letter
from designer.drill.rules import Swap
from designer.drill.setting import At, setting_at
from designer.play.rotation import LosesPerson, NotWorkedOut, fairness, full_turn, group_of
from designer.review.check import Check, Mend, check, record_name
from designer.wording.counts import number
from designer.wording.players_over import of_players_over
from designer.wording.rotations import TRIED, settles, uneven_words
from designer.wording.telling import Telling


def turn_checks(told: Telling) -> Iterator[Check]:
    """Yield what is wrong with who takes whose place, for the smallest and the largest group."""
    places = len(group_of(told.setting, told.drill.jobs))
    if not told.setting.swaps or places < 2:
        return
    asked = any(question.kind == "comes-in" for question in of_players_over(told))
    least = places if told.drill.players is None else min(places, max(2, told.drill.players[0]))
    found: dict[str, Check] = {}
    for people in dict.fromkeys((places, *range(least, places))):
        for each in _of_group(told, people, whole=people == places):
            # Who never comes in is asked already; the turns are looked at when that is answered.
            if not (asked and each.key == "turns-uneven"):
                found.setdefault(each.key, each)
    yield from found.values()


def _of_group(told: Telling, people: int, *, whole: bool) -> Iterator[Check]:
    setting, jobs = told.setting, told.drill.jobs
    try:
        turn = full_turn(setting, jobs, people=people)
        played = fairness(setting, jobs, turn or TRIED, people=people)
    except LosesPerson as lost:
        yield _lost(told, lost, people, whole=whole)
        return
    except NotWorkedOut:
        return
    if turn is not None and played.uneven and not settles(told):
        ids = sorted(swap.id for swap in setting.swaps.values() if swap.moves or swap.table)
        head = "" if whole else f"with {number(people)} players "
        text = f"{head}the turns are not even: {uneven_words(told, played.uneven[0], played.rounds)}"
        yield check("caution", "turns-uneven", text, *ids, at=told.at)


def _lost(told: Telling, lost: LosesPerson, people: int, *, whole: bool) -> Check:
    swap = told.setting.swaps[lost.swap]
    head = "" if whole else f"with {number(people)} players "
    if swap.table and people < len(swap.table[0]):
        said = f"the table of rounds is for {number(len(swap.table[0]))}: say what {number(people)} do"
        return check("suggestion", "table-size", said, swap.id, at=told.at)
    if swap.table:
        named = " and ".join(dict.fromkeys((*lost.twice, *lost.left)))
        text = f"{head}the table loses somebody: {named} {'stand' if ' and ' in named else 'stands'} in a row twice or not at all"
    else:
        text = f"{head}{record_name(told, swap)} puts two people into {' and '.join(lost.twice)}"
        text += f" and leaves {' and '.join(lost.left)} to nobody" if lost.left else ""
    return check("error", "swap-loses", text, swap.id, at=told.at, mend=_closing(told, swap))


def _closing(told: Telling, swap: Swap) -> Mend | None:
    """Return the edit that sends whoever is pushed out to the place that is left, where there is one such pair."""
    names = (*swap.moves, *swap.moves.values())
    if swap.table or not all(map(is_letter, names)):
        return None
    goals = list(swap.moves.values())
    pushed = [job for job in goals if job not in swap.moves]
    left = [job for job in swap.moves if job not in goals]
    if len(set(goals)) != len(goals) or len(pushed) != 1 or len(left) != 1:
        return None
    return partial(_closed, at=told.at, id=swap.id, pushed=pushed[0], left=left[0])


def _closed(drill: Drill, *, at: At, id: str, pushed: str, left: str) -> Drill:
    swap = setting_at(drill, at).swaps.get(id)
    return drill if swap is None else put(drill, at, swap.changed(moves={**swap.moves, pushed: left}))
