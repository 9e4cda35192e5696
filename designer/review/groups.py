"""Cautions about the drill as a whole: too many people on a court, balls that do not add up, variations that change nothing."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import Final

from designer.drill.drill import Changes, Drill
from designer.drill.edits import remove_variation
from designer.drill.items import Basket
from designer.drill.setting import At, addresses, setting_at, variations
from designer.review.check import Check, check

MOST: Final = 12
"""Players to one coach, of 11 years and more: guidance on ratios of a national association."""
MOST_YOUNG: Final = 10
"""The same for under-tens."""
YOUNG: Final = 10


def group_cautions(drill: Drill) -> Iterator[Check]:
    """Yield what does not fit in the numbers of the drill."""
    young = drill.age is not None and drill.age[0] < YOUNG
    most = MOST_YOUNG if young else MOST
    if drill.players is not None and drill.players[1] > most:
        of = "under-tens" if young else "players"
        text = f"{drill.players[1]} players: with one coach {most} {of} at most are recommended"
        yield check("caution", "crowd", text, danger=True)
    yield from _balls(drill)
    yield from _empty_variations(drill)


def _balls(drill: Drill) -> Iterator[Check]:
    if drill.balls is None:
        return
    for at in addresses(drill):
        baskets = [item for item in setting_at(drill, at).items.values() if isinstance(item, Basket)]
        held = sum(basket.balls or 0 for basket in baskets)
        if held > drill.balls:

            def enough(whole: Drill, held: int = held) -> Drill:
                return whole.changed(balls=held)

            text = f"the basket holds {held} balls, and the drill is said to need {drill.balls}"
            yield check("suggestion", "balls-over", text, *(basket.id for basket in baskets), at=at, mend=enough)
            return


def _empty_variations(drill: Drill) -> Iterator[Check]:
    for progression in drill.progressions:
        for degree, variation in variations(progression):
            if variation.changes == Changes():
                at = At(progression.id, variation.id)
                name = " ".join(variation.name.split()) or degree
                text = f"“{name}” of {progression.name or 'a progression'} changes nothing"
                yield check("suggestion", "changes-nothing", text, at=at, mend=partial(remove_variation, at=at))
