"""What a card says to keep people from harm: the author's cautions, the stop word, what the drawing cannot know."""

from __future__ import annotations

from typing import Final

from designer.drill.acceptance import holds
from designer.drill.drill import Accepted
from designer.wording.misses import is_stop
from designer.wording.outcomes import outcome
from designer.wording.people import group
from designer.wording.questions import STOP, of_care
from designer.wording.sentence import Sentence, sentence, sentences_of
from designer.wording.telling import Telling
from designer.wording.tokens import own_text
from designer.wording.units import height

NO_OTHER: Final = "No other cautions from the drawing; inspect the court."
"""Always the last words of a coach's cautions: the program never says that a court is without danger."""

FIRST: Final = "Local rules and a qualified coach’s judgement come first."


def care(told: Telling) -> tuple[Sentence, ...]:
    """Return the cautions of the drill, those accepted, and the stop word; for the coach what is only assumed."""
    found = [
        sentence(f"care:{number}", text)
        for number, words in enumerate(told.drill.safety, 1)
        if (text := own_text(told, words))
    ]
    stopped = stop(told)
    found += (stopped,) if stopped is not None else of_care(told) or (sentence("care:stop", STOP),)
    if told.brief:
        return tuple(found)
    for number, accepted in enumerate(told.drill.accepted, 1):
        words = accepted_words(told, accepted)
        if words and (holds(told.drill, accepted, told.at) or holds(told.drill, accepted, None)):
            found.append(sentence(f"care:accepted:{number}", words, *accepted.about))
    found += [*_surroundings(told), sentence("care:first", FIRST), sentence("care:no-other", NO_OTHER)]
    return tuple(found)


def accepted_words(told: Telling, accepted: Accepted) -> str:
    """Return an accepted caution and why it is accepted, the reason alone where no caution is kept; "" without a reason."""
    reason = own_text(told, accepted.reason)
    caution = own_text(told, accepted.caution)
    if not reason:
        return ""
    return f"{caution} Accepted by the author: {reason}" if caution else f"accepted by the author: {reason}"


def stop(told: Telling) -> Sentence | None:
    """Return what is done when a ball or a person comes on court: the drill's own rule, else the house's.

    None where neither says so: then that anyone calls "stop" stands with the question of what follows.
    """
    for points in told.setting.points.values():
        if is_stop(points):
            event = points.on[0]
            call = own_text(told, event.call or "stop") or "stop"
            callers = group(told, event.called_by, link="or")
            who = callers.words if callers is not None else "anyone"
            note = own_text(told, points.note).rstrip(".")
            why = "ball or person on court" if not note or "court" in note.lower() else note
            words = f"{why}: {who} calls “{call}”, {outcome(told, points.gives)}"
            return sentence("care:stop", words, points.id)
    stopped = told.drill.house.stopped
    if stopped is not None:
        return sentence("care:stop", f"ball or person on court: anyone calls “stop”, {outcome(told, stopped)}")
    return None


def _surroundings(told: Telling) -> list[Sentence]:
    ground = told.ground
    parts = []
    if ground.assumed_run_back:
        parts.append(f"{height(ground.run_back, told.units)} behind the baselines")
    if ground.assumed_side_run:
        parts.append(f"{height(ground.side_run, told.units)} beside the court")
    if not parts:
        return []
    text = f"The room round the court is not stated; the club minimum is assumed: {' and '.join(parts)}"
    return [sentence("care:room", sentences_of(text))]
