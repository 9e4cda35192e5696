"""The answers that hold for every rule which does not answer for itself."""

from __future__ import annotations

from collections.abc import Iterator

from designer.wording.people import group
from designer.wording.sentence import Sentence, sentence, sentences_of
from designer.wording.settled import events
from designer.wording.telling import Telling

_DOUBT = {"replay": "replay", "in": "in", "out": "out"}
_CORD = {"by its bounce": "a net cord is judged by its bounce", "replay": "a net cord is replayed"}


def house(told: Telling) -> tuple[Sentence, ...]:
    """Return who calls the lines, what doubt means and, for the coach, what a net cord is."""
    text = list(_answers(told))
    return (sentence("house", sentences_of(*text)),) if text else ()


def _answers(told: Telling) -> Iterator[str]:
    own = told.drill.house
    other = any(event.in_doubt not in (None, own.in_doubt) for event in events(told))
    if own.called_by and not told.brief:
        who = group(told, own.called_by)
        lines = (
            "players call their own lines"
            if own.called_by in (("doer",), ("receiver",), ("other",))
            else f"lines: {who.words if who else 'anyone'} calls"
        )
        yield lines
    if own.in_doubt is not None and other:
        yield f"any other doubt: {_DOUBT[own.in_doubt]}"
    elif own.in_doubt is not None:
        yield "not sure?"
        yield _DOUBT[own.in_doubt]
    if own.net_cord is not None and not told.brief:
        yield _CORD[own.net_cord]
    # That anyone may come in is so in any point: a player need not be told.
    if own.come_in and not (told.brief and own.come_in == ("anyone",)):
        in_front = group(told, own.come_in, link="or")
        yield f"{in_front.words if in_front else 'anyone'} may come in"
