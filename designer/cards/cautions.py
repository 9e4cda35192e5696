"""Dangers that the review sees in the drawing, put among the words of a card."""

from __future__ import annotations

from dataclasses import replace

from designer.drill.drill import Drill
from designer.drill.setting import At
from designer.review.checks import dangers
from designer.wording.card import CardWords, Section
from designer.wording.sentence import Sentence

NO_OTHER = "care:no-other"
"""The key of the sentence that ends the cautions: no other ones from the drawing."""


def with_dangers(words: CardWords, drill: Drill, at: At) -> CardWords:
    """Return ``words`` with a sentence under "Take care" for each danger at ``at`` that the author has not accepted."""
    found = tuple(check.sentence for check in dangers(drill, at))
    care = words.section("care")
    if not found:
        return words
    if care is None:
        return replace(words, sections=(*words.sections, Section("care", "Take care", found)))
    told = replace(care, sentences=_before_the_end(care.sentences, found))
    return replace(words, sections=tuple(told if section is care else section for section in words.sections))


def _before_the_end(said: tuple[Sentence, ...], dangers: tuple[Sentence, ...]) -> tuple[Sentence, ...]:
    last = tuple(sentence for sentence in said if sentence.key == NO_OTHER)
    return (*(sentence for sentence in said if sentence.key != NO_OTHER), *dangers, *last)
