"""A new drill, and the players that a coach usually begins with."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from designer.court.standards import ground
from designer.drill import edits
from designer.drill.base import Place, Point, to_tenth_millimetre
from designer.drill.drill import Court, Drill, Progression
from designer.drill.ids import Chooser, new_id
from designer.drill.people import Hand, Job, Spot
from designer.drill.setting import At

STRIDE: Final = 0.9144
"""A long step of one yard. Common practice, no source: it makes the court whole strides along."""

LETTERS: Final = "ABCD"


def blank(source: Chooser, court: str = "tennis", *, language: str = "en", author: str = "") -> Drill:
    """Return a drill with an empty court and one progression.

    It is not validated: that would build the validators of all records, and a window can take its first key without.
    """
    return Drill.model_construct(
        id=new_id("d", source),
        language=language,
        author=author,
        court=Court.model_construct(standard=court),
        progressions=(Progression.model_construct(id=new_id("p", source)),),
    )


def build_records() -> None:
    """Build the validators of all records now, so that the first edit need not wait for them."""
    Drill(id="d", progressions=(Progression(id="p"),))


def usual_places(court: Court, count: int) -> tuple[Point, ...]:
    """Return where ``count`` players (1 to 4) usually stand: a stride behind the baselines, pairs side by side."""
    here = ground(court)
    back = to_tenth_millimetre(here.baseline + STRIDE)
    half = to_tenth_millimetre(here.singles / 2)
    singles = ((0.0, -back), (0.0, back))
    if count <= 2:
        return singles[:count]
    near, far = ((-half, -back), (half, -back)), ((half, back), (-half, back))
    return (*near, (0.0, back)) if count == 3 else (near[0], far[0], near[1], far[1])


def with_players(drill: Drill, at: At, count: int, source: Chooser, hand: Hand = "right") -> Drill:
    """Return ``drill`` with ``count`` players where they usually stand; those that are new play with ``hand``."""
    taken: set[str] = set()
    spots: list[Spot] = []
    letters: Sequence[str] = LETTERS[:count]
    for letter, point in zip(letters, usual_places(drill.court, count), strict=True):
        id = new_id("spot", source, taken)
        taken.add(id)
        spots.append(Spot(id=id, job=letter, place=Place(at=point)))
    known = {job.letter for job in drill.jobs}
    jobs = (*drill.jobs, *(Job(letter=letter, hand=hand) for letter in letters if letter not in known))
    least = drill.players or (count, count)
    return edits.put(drill.changed(jobs=jobs, players=least), at, *spots)
