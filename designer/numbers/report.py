"""Everything that is known of one setting in one value: shots, finish, fairness, load."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from designer.numbers.contest import Gain
from designer.numbers.fairness import Fairness, fairness
from designer.numbers.finishes import FinishOdds, Pace, finish_odds
from designer.numbers.load import Load, load, success_of_a_hit
from designer.numbers.payoffs import EQUAL, gains, quick_rally
from designer.numbers.problems import Impossible
from designer.numbers.rallies import play_rallies
from designer.numbers.recovery import Recovery
from designer.numbers.shots import SettingNumbers, numbers_of, recoveries
from designer.numbers.situation import Situation

RALLIES: Final = 2000


@dataclass(frozen=True, slots=True)
class Report:
    """``finish`` is None where the setting has none, or where it cannot be worked out: then ``finish_problem`` says why.

    ``fairness`` is None where nobody plays against anybody.
    """

    here: Situation
    numbers: SettingNumbers
    recoveries: dict[str, Recovery]
    load: Load | None
    finish: FinishOdds | None
    finish_problem: str
    fairness: Fairness | None


def report(here: Situation, *, open_point: float = EQUAL, seed: int = 1, rallies: int = RALLIES) -> Report:
    """Return all numbers of a situation; takes a second where ``rallies`` have to be played out."""
    numbers = numbers_of(here)
    worked = load(here, numbers)
    found: FinishOdds | None = None
    even: Fairness | None = None
    problem = ""
    if here.setting.finish is not None and worked is not None:
        try:
            even = fairness(here, open_point=open_point, seed=seed, rallies=rallies)
            found = even.finish
        except Impossible:
            found, problem = together(here, numbers, worked, seed=seed, rallies=rallies)
    return Report(here, numbers, dict(recoveries(here)), worked, found, problem, even)


def together(
    here: Situation, numbers: SettingNumbers, worked: Load, *, seed: int = 1, rallies: int = RALLIES
) -> tuple[FinishOdds | None, str]:
    """Return the finish of people who play together, and why there is none."""
    finish = here.setting.finish
    assert finish is not None
    pace = Pace(worked.rally + worked.between, here.level.play.between_hits, worked.hits)
    players = sum(1 for job in here.drill.jobs if job.by == "player") or 1
    try:
        own = gains(here, numbers, quick_rally(here, numbers))
        if not any(gain.first or gain.second for gain in own):
            # Nothing is paid for by place: a start that comes off as drawn is what counts.
            rally = play_rallies(here, rallies, seed).rally
            done = rally.first + rally.second
            own = (Gain(done, 1), Gain(1 - done))
        return finish_odds(finish, own, success_of_a_hit(numbers), pace, people=players), ""
    except Impossible as impossible:
        return None, str(impossible)
