"""Who takes part: jobs, and where each stands at the start of a setting."""

from __future__ import annotations

from typing import Literal

from designer.drill.base import Degrees, Letter, Noted, Place, Record, Text

Hand = Literal["right", "left"]
Care = Literal["exact", "about", "anywhere"]
"""How exactly a thing must stand: a rule depends on it, about right, or anywhere near."""


class Job(Record):
    """What one person does in the drill. The letter is the job; its ``role`` is the word under it ("feeds")."""

    letter: Letter
    by: Literal["player", "coach", "machine"] = "player"
    hand: Hand = "right"
    role: Text = ""


class Spot(Noted):
    """Where the person in a job stands when the setting starts."""

    job: Letter
    place: Place
    facing: Degrees | None = None
    care: Care | None = None
    task: Literal["plays", "collects", "waits"] = "plays"
