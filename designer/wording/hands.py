"""What a left-hander does with the drill."""

from __future__ import annotations

from designer.drill.rules import UseStroke
from designer.wording.counts import listed
from designer.wording.sentence import Sentence, sentence, sentences_of
from designer.wording.telling import Telling


def left_handed(told: Telling) -> Sentence | None:
    """Return what changes for a left-hander, None where nobody hits a ball."""
    players = [job for job in told.drill.jobs if job.by == "player" and job.letter in told.ends]
    if not players or not told.setting.shots:
        return None
    left = [job.letter for job in players if job.hand == "left"]
    if left and len(left) < len(players):
        # In the order of the letters, so that a mirrored drill is told in the same order.
        first, second = dict.fromkeys(job.hand for job in sorted(players, key=lambda job: job.letter))
        of = {hand: listed([job.letter for job in players if job.hand == hand]) for hand in (first, second)}
        hands = f"{of[first]} {first}-handed, {of[second]} {second}-handed"
        if any(getattr(item, "hand_of", None) is not None for item in told.setting.items.values()):
            text = "other hand: mirror that end"
        else:
            text = "" if told.brief else "for another pair the sides of the hand change: mirror or turn the hand first"
        return sentence("left-handed", sentences_of(f"drawn for {hands}", text))
    own, other = ("left", "right") if left else ("right", "left")
    # A coach's card has a heading that says for whom.
    head = f"{other}-handed: " if told.brief or own == "left" else ""
    if not _depends_on_hand(told):
        return sentence("left-handed", f"{head}same places")
    if told.brief:
        return sentence("left-handed", f"{head}same places, the other wing")
    keep = f"{head}same places with the other wing, or mirror everything to keep the strokes"
    mixed = (
        f"a {own}-hander against a {other}-hander: no mirror fits; say which stroke is meant"
        if len(players) > 1
        else ""
    )
    return sentence("left-handed", sentences_of(keep, mixed))


def _depends_on_hand(told: Telling) -> bool:
    """Whether any shot or rule names a wing, or anything stands on a hand's side."""
    setting = told.setting
    return (
        any(shot.wing is not None for shot in setting.shots.values())
        or any(isinstance(rule.must, UseStroke) and rule.must.wing is not None for rule in setting.rules.values())
        or any(event.wing is not None for points in setting.points.values() for event in points.on)
        or any(getattr(item, "hand_of", None) is not None for item in setting.items.values())
    )
