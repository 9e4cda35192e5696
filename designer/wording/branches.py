"""Choices: one of several balls that may be played at a point, and what then follows only after it."""

from __future__ import annotations

from designer.play.sequence import Step
from designer.wording.names import shot_name
from designer.wording.sentence import unmarked
from designer.wording.strokes import CHOICE_VERBS, NOT_A_WAY, deed, serve_aim
from designer.wording.telling import Telling
from designer.wording.tokens import own_text


def branches_apart(told: Telling, step: Step) -> bool:
    """Whether other balls of the same digit follow another choice, so that it must be said which is meant."""
    before = told.sequence.before.get(step.shot.id)
    return any(
        other.digit == step.digit and told.sequence.before.get(other.shot.id) != before for other in told.sequence.steps
    )


def branch_words(told: Telling, step: Step) -> str:
    """Return after which choice this ball is played: "after a wide serve, "; "" where nothing was chosen before it."""
    for id in reversed(told.sequence.branch(step.shot.id)[:-1]):
        earlier = told.sequence.step(id)
        if earlier is not None and earlier.alternatives:
            return f"after {option_noun(told, earlier)}, "
    return ""


def option_noun(told: Telling, step: Step) -> str:
    """Return one of several balls as a noun: "a wide serve", "a serve to the T", "a lob", "ball 2 down the line"."""
    if step.feed and "serve" in str(step.shot.stroke):
        aim = serve_aim(told, step)
        return "a wide serve" if aim == "wide" else f"a serve {aim}" if aim else "the serve"
    name = shot_name(told, step.shot)
    if unmarked(name).startswith("a "):
        return name
    _, _, rest = option_words(told, step).partition(" ")
    return f"a ball {rest}" if rest else name


def option_words(told: Telling, step: Step) -> str:
    """Return what the hitter does with one of several balls: "passes", "plays cross-court", "throws to the hand side"."""
    label = unmarked(own_text(told, step.shot.label)).strip().lower()
    if label and step.feed and label.endswith(("side", "half", "court")):
        return f"{deed(told, step, with_pace=False).split(' ', 1)[0]} to the {label}"
    if not label or step.shot.stroke not in (None, "drive") or step.shot.wing is not None:
        return deed(told, step)
    if label in CHOICE_VERBS:
        return CHOICE_VERBS[label]
    return deed(told, step) if step.feed or label in NOT_A_WAY else f"plays {label}"
