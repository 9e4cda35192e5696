"""A text of the coach's own as it is read and typed, and as it is kept: with tokens for what follows the drill.

On the screen stand words ("B", "left", "the reply zone"), in the file tokens ("{B}", "{left}", "{reply-zone}"), so that
a version turns them and a new name is followed. Nobody needs to know of braces.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Collection
from dataclasses import dataclass
from typing import Final

from designer.drill.drill import Drill
from designer.drill.setting import At
from designer.wording.token_words import TOKEN, TURNED

_LETTER: Final = re.compile(r"(?<![\w’'-])([A-Z])(?![\w-])")
_BEGINS: Final = re.compile(r"(?:^|[.!?:;(“\"\n])\s*$")
"""What stands before the first word of a sentence, where a capital A may be an article."""

_DOES: Final = re.compile(
    r"^(?:['’]|[.,:;!?)]|\s+(?:and|or|then|to|is|may|must|can|cannot|never|only|also|alone|first|[a-z]+[^s\s]s)\b)",
)
"""What can follow a person at the start of a sentence and no article: what it does ("plays"), a comma, "and B"."""


@dataclass(frozen=True, slots=True)
class Span:
    """Letters from ``start`` to ``end`` of a text as it is read, and the token that they stand for."""

    start: int
    end: int
    token: str


@dataclass(frozen=True, slots=True)
class OwnWords:
    """A text as it is read, and which of its words are tokens, in order."""

    text: str = ""
    spans: tuple[Span, ...] = ()

    @property
    def kept(self) -> str:
        """Return the text as it is kept: with tokens, a brace of one's own doubled."""
        made, at = [], 0
        for span in self.spans:
            made += [self.text[at : span.start].replace("{", "{{"), f"{{{span.token}}}"]
            at = span.end
        return "".join((*made, self.text[at:].replace("{", "{{")))


def read(text: str, name: Callable[[str], str | None]) -> OwnWords:
    """Return the kept ``text`` as it is read; ``name`` returns the words for a token, None for one that names nothing."""
    words: list[str] = []
    spans: list[Span] = []
    at = length = 0
    for found in TOKEN.finditer(text):
        before, token = text[at : found.start()], found[1]
        said = "{" if token is None else token if token in TURNED else name(token) or token
        words += [before, said]
        length += len(before)
        if token is not None:
            spans.append(Span(length, length + len(said), token))
        length += len(said)
        at = found.end()
    return OwnWords("".join((*words, text[at:])), tuple(spans))


def typed(text: str, before: OwnWords, letters: Collection[str], *, sides: bool) -> OwnWords:
    """Return ``text``, typed over ``before``, with its tokens.

    Those that were not touched stay. A letter of the drill's own becomes one, and with ``sides`` (the text is English)
    a side or a wing; the article "A" does not.
    """
    spans = _untouched(text, before)
    spans += [span for span in _people(text, letters) if _free(span, spans)]
    if sides:
        spans += [span for span in _sides(text) if _free(span, spans)]
    return OwnWords(text, tuple(sorted(spans, key=lambda span: span.start)))


def _untouched(text: str, before: OwnWords) -> list[Span]:
    """Return the tokens of ``before`` that lie wholly in what was not typed at, moved along with it."""
    shorter = min(len(text), len(before.text))
    head = next((n for n in range(shorter) if text[n] != before.text[n]), shorter)
    most = shorter - head
    tail = next((n for n in range(most) if text[-1 - n] != before.text[-1 - n]), most)
    by = len(text) - len(before.text)
    kept = [span for span in before.spans if span.end <= head]
    end = len(before.text) - tail
    kept += [Span(span.start + by, span.end + by, span.token) for span in before.spans if span.start >= end]
    return [span for span in kept if _whole(text, span)]


def _whole(text: str, span: Span) -> bool:
    """Whether no letter was typed close to a word, which makes another word of it."""
    return not (
        (span.start > 0 and text[span.start - 1].isalnum() and text[span.start].isalnum())
        or (span.end < len(text) and text[span.end].isalnum() and text[span.end - 1].isalnum())
    )


def _free(span: Span, taken: list[Span]) -> bool:
    return all(span.end <= each.start or span.start >= each.end for each in taken)


def _people(text: str, letters: Collection[str]) -> list[Span]:
    return [
        Span(found.start(), found.end(), found[1])
        for found in _LETTER.finditer(text)
        if found[1] in letters and (found[1] != "A" or not _article(text, found))
    ]


def _article(text: str, found: re.Match[str]) -> bool:
    return bool(_BEGINS.search(text[: found.start()])) and not _DOES.match(text[found.end() :])


def _sides(text: str) -> list[Span]:
    """Return the side words as spans: those that the review would ask to be tokens."""
    from designer.review.sides import side_spans

    return [
        Span(start, end, text[start:end])
        for start, end in side_spans(text)
        if text[start:end] == text[start:end].lower()
    ]


def names(drill: Drill, at: At) -> Callable[[str], str | None]:
    """Return what tells the words for a token as the card of a setting says them."""
    from designer.wording.names import name_of
    from designer.wording.sentence import unmarked
    from designer.wording.telling import telling

    told = telling(drill, at)

    def name(token: str) -> str | None:
        words = name_of(told, token)
        return None if words is None else unmarked(words)

    return name


def letters_of(drill: Drill) -> frozenset[str]:
    """Return the letters of all jobs, drawn or listed."""
    from designer.drill.setting import addresses, setting_at

    drawn = {spot.job for at in addresses(drill) for spot in setting_at(drill, at).spots.values()}
    return frozenset({*(job.letter for job in drill.jobs), *drawn})


class Writing:
    """Reads and keeps the texts of a drill as it is in one setting; made anew when the drill is another."""

    def __init__(self, drill: Drill, at: At) -> None:
        self._drill, self._at = drill, at
        self._name: Callable[[str], str | None] | None = None
        self._letters: frozenset[str] | None = None

    def read(self, text: str) -> OwnWords:
        """Return a kept text as it is read."""
        if "{" not in text:
            return OwnWords(text)
        if self._name is None:
            self._name = names(self._drill, self._at)
        return read(text, self._name)

    def typed(self, text: str, before: OwnWords) -> OwnWords:
        """Return what was typed over ``before``."""
        if self._letters is None:
            self._letters = letters_of(self._drill)
        return typed(text, before, self._letters, sides=self._drill.language.partition("-")[0] == "en")
