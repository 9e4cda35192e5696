"""Of which drills a card has been made: until then a card asks three things, from then on all that is open."""

from __future__ import annotations

import json
from typing import Final

from designer.desktop.settings import settings

KEPT: Final = 300
"""So many drills are remembered, the latest first."""

_KEY: Final = "card/made"


def card_was_made(drill: str) -> bool:
    """Whether a card was ever made here of the drill of this id."""
    return drill in _made()


def remember_card(drill: str) -> None:
    """Remember that a card of the drill of this id was made."""
    made = [drill, *(other for other in _made() if other != drill)]
    settings().setValue(_KEY, json.dumps(made[:KEPT]))


def _made() -> tuple[str, ...]:
    try:
        names = json.loads(str(settings().value(_KEY, "[]", type=str)))
    except json.JSONDecodeError:
        return ()
    return tuple(name for name in names if isinstance(name, str)) if isinstance(names, list) else ()
