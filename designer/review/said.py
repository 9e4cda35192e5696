"""What the author has said in words of his own, so that a check need not say it again, and a line more of it."""

from __future__ import annotations

from collections.abc import Iterable

from designer.drill.drill import Drill
from designer.wording.telling import Telling


def is_said(told: Telling, words: Iterable[str]) -> bool:
    """Whether a caution, a cue, what to watch for, the kit or a note of the setting has one of ``words`` in it."""
    drill, setting = told.drill, told.setting
    notes = (record.note for records in (setting.swaps, setting.shots, setting.runs) for record in records.values())
    texts = " ".join((*drill.safety, *drill.cues, *drill.watch_for, *drill.kit, *notes)).lower()
    return any(word in texts for word in words)


def with_safety(drill: Drill, *, text: str) -> Drill:
    """Return ``drill`` with one line more of what must be looked after."""
    return drill if text in drill.safety else drill.changed(safety=(*drill.safety, text))
