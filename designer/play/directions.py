"""Where a ball is sent, in the words of the trade: derived from places, ends and hands, never stored."""

from __future__ import annotations

from typing import Final, Literal

from designer.court.regions import RACKET, as_player
from designer.court.standards import Ground
from designer.drill.movement import SERVES, Wing
from designer.play.sequence import Sequence, Step

Direction = Literal["cross-court", "down the line", "middle"]

FROM_THE_MIDDLE: Final = RACKET
"""From a contact nearer than this to the middle there is neither a line nor a cross-court. Common practice, no source."""


def middle_strip(ground: Ground) -> float:
    """Return half the width of the strip that counts as the middle: two rackets of the tennis court's six."""
    return ground.singles / 3


def direction(step: Step, sequence: Sequence, ground: Ground) -> Direction | None:
    """Return where the ball is sent: across the lengthwise middle, along a side, or through the middle strip.

    None for a serve, for a ball without a landing, for one that stays on the hitter's side, and from a contact in the
    middle, where both answers would do.
    """
    del sequence  # every direction is asked for in one way; this one depends on the shot alone
    if step.landing is None or step.shot.stroke in SERVES or step.landing[1] * step.contact[1] > 0:
        return None
    start, _ = as_player(step.contact, step.end)
    end, _ = as_player(step.landing, step.end)
    if abs(end) <= middle_strip(ground) + 1e-9:
        return "middle"
    if abs(start) <= FROM_THE_MIDDLE + 1e-9:
        return None
    return "cross-court" if start * end < 0 else "down the line"


def inside(step: Step, sequence: Sequence, ground: Ground) -> Literal["inside-out", "inside-in"] | None:
    """Return the word for a stroke played from the other wing's side: away across the body, or straight up the line."""
    found = direction(step, sequence, ground)
    if step.wing is None or found not in ("cross-court", "down the line"):
        return None
    right, _ = as_player(step.contact, step.end)
    forehand_side = 1 if step.hand == "right" else -1
    own_side = forehand_side if step.wing == "forehand" else -forehand_side
    if right * own_side >= 0:
        return None
    return "inside-out" if found == "cross-court" else "inside-in"


def line_back(step: Step, sequence: Sequence, ground: Ground) -> Literal["same line back", "new line"] | None:
    """Return whether the ball goes back on the line it came on: to the third of the court it was hit from.

    None for a ball that answers nothing, or where either end of its line is not known.
    """
    earlier = sequence.before.get(step.shot.id)
    incoming = None if earlier is None or step.feed else sequence.step(earlier)
    if incoming is None or step.landing is None:
        return None
    apart = abs(step.landing[0] - incoming.contact[0])
    return "same line back" if apart <= 2 * middle_strip(ground) else "new line"


def wing(step: Step) -> Wing | None:
    """Return the wing a ball is hit with: as given, else guessed from the ball that comes in; None for a serve or throw."""
    return step.wing
