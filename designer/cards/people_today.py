"""The names of today's players, put among the words of a card and nowhere else."""

from __future__ import annotations

from dataclasses import replace

from designer.drill.drill import Drill
from designer.drill.today import Today
from designer.wording.card import CardWords, Reader, Section
from designer.wording.sentence import Sentence

KEY = "today"
"""The key of the sentence that names the players."""


def with_names(words: CardWords, drill: Drill, today: Today | None, reader: Reader) -> CardWords:
    """Return ``words`` with a sentence that says who has which letter today.

    On a player's card it stands after who the reader is, elsewhere before how the drill starts. Letters that the drill
    does not have are passed over.
    """
    jobs = {job.letter for job in drill.jobs}
    names = {letter: name for letter, name in today.names().items() if letter in jobs} if today else {}
    if not names or today is None:
        return words
    you = words.section("you") if reader == "player" else None
    reads = you.sentences[0].lead.text if you and you.sentences and you.sentences[0].lead else None
    left = {letter for letter in today.other_hands(drill) if today.people[letter].hand == "left"}
    said = [
        f"{'you are' if letter == reads else f'{letter} is'} {name}{' (left-handed)' if letter in left else ''}"
        for letter, name in names.items()
    ]
    sentence = Sentence(KEY, (f"Today {', '.join(said)}.",))
    found = you or words.section("start")
    if found is None:
        return replace(words, sections=(Section("start", "Start", (sentence,)), *words.sections))
    first = 1 if found.key == "you" else 0
    told = replace(found, sentences=(*found.sentences[:first], sentence, *found.sentences[first:]))
    return replace(words, sections=tuple(told if one is found else one for one in words.sections))
