"""What follows: "point to B", "replay", "the point is on"."""

from __future__ import annotations

from typing import Final

from designer.drill.conditions import Outcome
from designer.wording.counts import halves, lowered
from designer.wording.names import letter
from designer.wording.people import Group, opponents
from designer.wording.telling import Telling
from designer.wording.tokens import own_text

_WORDS: Final = {
    "replay": "replay",
    "no score": "no score",
    "opens": "the point is on",
    "count to zero": "the count goes back to zero",
    "start score": "the score goes back to the start",
    "warning": "a warning",
}
_BRIEF: Final = {"count to zero": "back to zero"}
"""Shorter words for a player, who reads a cost behind each breach."""


def outcome(told: Telling, result: Outcome, doer: Group | None = None) -> str:
    """Return what follows, as it stands after a colon. ``doer`` is who broke the rule or made the hit."""
    text = own_text(told, result.text)
    if result.then == "lose the point":
        words = _lost(told, doer)
    elif result.then == "points":
        words = _points(told, result, doer)
    elif result.then == "start score" and result.value is not None:
        loser = "the loser" if result.to == "other" else "the winner"
        ahead = f"{abs(result.value)} {'ahead' if result.value > 0 else 'behind'}"
        words = f"{loser} starts the next one {ahead}"
    elif result.then == "do":
        return lowered(text) or "something to do, not yet said"
    else:
        words = _BRIEF.get(result.then, _WORDS[result.then]) if told.brief else _WORDS[result.then]
    return f"{words}; {text}" if text else words


def _across(told: Telling, doer: Group | None) -> str | None:
    across = opponents(told, doer.letters) if doer is not None and doer.letters else ()
    if len(across) == 1:
        return letter(told, across[0])
    return "the other pair" if across else None


def _lost(told: Telling, doer: Group | None) -> str:
    winner = _across(told, doer)
    if winner is None and doer is not None and len(told.playing) > 2:
        return "point lost" if told.brief else "point to the other pair"
    return "point lost" if winner is None else f"point to {winner}"


def _points(told: Telling, result: Outcome, doer: Group | None) -> str:
    value = 1 if result.value is None else result.value
    amount = f"{halves(abs(value))} point{'' if abs(value) == 1 else 's'}"
    if value < 0:
        loser = _across(told, doer) if result.to == "other" else doer.words if doer is not None and doer.one else None
        return f"{amount} off {loser}" if loser is not None else f"{amount} off"
    if result.to == "other":
        return f"{amount} to {_across(told, doer) or 'the opponent'}"
    if result.to == "side":
        return f"{amount} to each of the pair"
    return f"{amount} to {doer.words}" if doer is not None and doer.one is not None else amount
