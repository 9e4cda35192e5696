"""What is asked about players whom the drawing has no work for: those over, and those who wait."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from designer.drill.people import Spot
from designer.drill.setting import At, addresses, setting_at
from designer.wording.asking import Question, ask
from designer.wording.counts import capital, listed, number, ordinal
from designer.wording.events import trigger
from designer.wording.names import letter
from designer.wording.sentence import unmarked
from designer.wording.telling import Telling


def of_players_over(told: Telling) -> Iterator[Question]:
    """Ask what a player does for whom no setting of the drill has a place, and when somebody comes in who waits."""
    players = told.drill.players
    setting = told.setting
    said = any(says_who(swap.note) for swap in setting.swaps.values())
    others = {job.letter for job in told.drill.jobs if job.by != "player"}
    for spot in sorted(setting.spots.values(), key=lambda spot: spot.id):
        if spot.task == "waits" and spot.job not in others and not said and not _comes_in(told, spot.job):
            text = f"When does {letter(told, spot.job)} come in?"
            yield ask("comes-in", "swap", text, spot.id, *sorted(setting.swaps), name=spot.id)
    for swap in sorted(setting.swaps.values(), key=lambda swap: swap.id):
        if not (swap.moves or swap.table or swap.ends or swap.mirrored or swap.note.strip()):
            when = capital(unmarked(listed([trigger(told, event) for event in swap.on], "or")))
            yield ask("moves", "swap", f"{when}: who goes where?", swap.id, name=swap.id)
    if players is None or not setting.spots or said:
        return
    most = max(len({spot.job for spot in _spots(told, at)} - others) for at in addresses(told.drill))
    if most < players[1]:
        text = f"What does the {ordinal(most + 1)} player do?"
        if players[1] > most + 1:
            link = "and" if players[1] == most + 2 else "to"
            text = f"What do players {number(most + 1)} {link} {number(players[1])} do?"
        yield ask("extra", "swap", text)


def _comes_in(told: Telling, job: str) -> bool:
    """Whether a swap names somebody's job."""
    return any(
        job in (*swap.moves, *swap.moves.values()) or any(job in row for row in swap.table)
        for swap in told.setting.swaps.values()
    )


def _spots(told: Telling, at: At) -> Iterable[Spot]:
    return setting_at(told.drill, at).spots.values()


def says_who(note: str) -> bool:
    """Whether a note of a swap speaks of a player over, so that what such a player does is said."""
    return any(word in note.lower() for word in ("player", "third", "fourth", "fifth", "sixth", "extra", "odd"))
