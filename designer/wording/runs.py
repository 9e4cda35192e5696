"""Where players run while a ball is in the air."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from designer.drill.movement import Run
from designer.play.sequence import Step
from designer.wording.names import letter, name_of
from designer.wording.sentence import Lead, Sentence, sentence, sentences_of
from designer.wording.telling import Telling
from designer.wording.tokens import own_text

_MOVES: Final = 0.5
"""A way shorter than this, in metres, is a step to the ball."""


def moving(told: Telling, step: Step, merged: set[str]) -> str:
    """Return "moves in and " where the hitter has run to this ball while it came; the run is then said."""
    before = told.sequence.step(told.sequence.before.get(step.shot.id) or "")
    if before is None or step.feed:
        return ""
    for run in before.runs:
        if run.by == step.hitter and run.purpose in (None, "reach") and run.id not in merged and not run.note:
            merged.add(run.id)
            return f"{_way(told, run)} and "
    return ""


def runs(told: Telling, step: Step, merged: set[str]) -> Iterator[Sentence]:
    """Yield the runs during a ball that are no part of reaching the next one."""
    takers = {following.hitter for following in told.sequence.following(step.shot.id) if not following.feed}
    for run in step.runs:
        reaches = run.purpose in (None, "reach") and not run.note and run.by in takers
        if run.id in merged or reaches:
            continue
        lead = Lead("recover" if run.purpose == "recover" else "run")
        words = sentences_of(run_words(told, run), own_text(told, run.note))
        yield sentence(f"run:{run.id}", words, run.id, lead=lead)


def run_words(told: Telling, run: Run) -> str:
    """Return a run as a clause: "A recovers to the tick", "A goes on to the net"."""
    who = letter(told, run.by)
    on = run.to.on
    if on is not None and on != run.by:
        goal = name_of(told, on)
        if goal is not None:
            return f"{who} {_goes(run)} to {goal}"
    if run.purpose == "recover":
        return f"{who} recovers{' to the start' if on == run.by else ''}"
    if run.purpose == "approach" and _ends_at_net(told, run):
        return f"{who} steps across" if _starts_at_net(told, run) else f"{who} goes on to the net"
    if run.purpose == "retreat":
        return f"{who} goes back"
    return f"{who} {_way(told, run)}"


def _goes(run: Run) -> str:
    if run.purpose == "recover":
        return "recovers"
    return "goes in" if run.purpose == "approach" else "goes back" if run.purpose == "retreat" else "goes"


def _way(told: Telling, run: Run) -> str:
    """Return which way a run goes: in, back, wide, across."""
    path = told.sequence.run_paths.get(run.id)
    if path is None:
        return "runs"
    across = abs(path[-1][0] - path[0][0])
    forward = abs(path[0][1]) - abs(path[-1][1])
    if max(across, abs(forward)) < _MOVES:
        return "steps to the ball"
    if forward > across:
        return "moves in"
    if -forward > across:
        return "goes back"
    outwards = abs(path[-1][0]) > abs(path[0][0])
    return "runs wide" if outwards and abs(path[-1][0]) > told.ground.singles * 2 / 3 else "moves across"


def _ends_at_net(told: Telling, run: Run) -> bool:
    path = told.sequence.run_paths.get(run.id)
    line = told.ground.service_line
    return path is not None and line is not None and abs(path[-1][1]) < line


def _starts_at_net(told: Telling, run: Run) -> bool:
    path = told.sequence.run_paths.get(run.id)
    line = told.ground.service_line
    return path is not None and line is not None and abs(path[0][1]) < line
