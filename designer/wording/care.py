"""What a card says to keep people from harm."""

from __future__ import annotations

from designer.drill.drill import Drill
from designer.drill.setting import At
from designer.wording.sentence import Sentence, sentence
from designer.wording.tokens import plain

NO_OTHER = "No other cautions from the drawing; inspect the court."
STOP = 'Ball or person on court: anyone calls "stop", replay.'


def care(drill: Drill, at: At, reader: str) -> tuple[Sentence, ...]:
    """Return the drill's cautions, the stop word, and for the coach what the drawing does not know."""
    own = tuple(sentence(f"care:{n}", plain(drill, at, text)) for n, text in enumerate(drill.safety, 1))
    stop = (sentence("care:stop", STOP),)
    return own + stop if reader == "player" else (*own, *stop, sentence("care:no-other", NO_OTHER))
