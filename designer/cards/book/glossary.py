"""The glossary: the terms that the book uses, each with what it means."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any, Final

from designer.bundle import MissingFile, resource
from designer.drill.handbook import Handbook, Term
from designer.wording.vocabulary import Vocabulary


@dataclass(frozen=True, slots=True)
class Meaning:
    """A word with what it means, and the other forms in which it is met.

    A ``listed`` one is the name of a situation, a phase or a kind of work: in a sentence it may be a plain word.
    """

    word: str
    means: str
    also: tuple[str, ...] = ()
    listed: bool = False


@lru_cache(maxsize=4)
def meanings(language: str) -> tuple[Meaning, ...]:
    """Return the bundled terms in ``language``, those in English where there are none."""
    try:
        file = resource("glossary", f"{language.partition('-')[0]}.json")
    except MissingFile:
        file = resource("glossary", f"{PROGRAM_LANGUAGE}.json")
    raw: dict[str, Any] = json.loads(file.read_text("utf-8"))
    return tuple(
        Meaning(term["word"], term["means"], tuple(term.get("also", ())), term.get("listed", False))
        for term in raw["terms"]
    )


PROGRAM_LANGUAGE: Final = "en"
"""What the program's own sentences and headings are in."""


def in_one_language(book: Handbook) -> bool:
    """Whether all words of a book, the program's among them, are in the book's language."""
    return book.language.partition("-")[0] == PROGRAM_LANGUAGE


class Glossary:
    """Watches for terms in what is printed, and explains them in the academy's words."""

    def __init__(self, language: str, own: Sequence[Term], vocabulary: Vocabulary) -> None:
        said, named = vocabulary.said, vocabulary.named
        self._own = {named(term.word): vocabulary.explained(term.means) for term in own}
        self._meanings = {named(one.word): replace(one, means=said(one.means)) for one in meanings(language)}
        forms: dict[str, str] = {}
        for shown, one in self._meanings.items():
            for form in () if one.listed else (shown, *map(said, one.also), f"{shown}s"):
                forms.setdefault(form.lower(), shown)
        self._forms = forms
        words = sorted(forms, key=len, reverse=True)
        self._pattern = re.compile(rf"(?<![\w-])(?:{'|'.join(map(re.escape, words))})(?![\w-])", re.IGNORECASE)
        self._used: set[str] = set()
        self._named = named

    def notice(self, text: str) -> None:
        """Remember the terms in ``text``."""
        self._used |= {self._forms[found.lower()] for found in self._pattern.findall(text)}

    def name(self, names: Iterable[str]) -> None:
        """Remember the situations, phases and kinds of work that are named in indexes and counts."""
        self._used |= {self._named(name) for name in names} & self._meanings.keys()

    def entries(self) -> Iterator[tuple[str, str, str]]:
        """Yield (word, what it means, what it is called in other books) of each term in use and of the academy's own.

        They come in the order of the alphabet; "" is a word that is called the same elsewhere.
        """
        found = [(word, means, "") for word, means in self._own.items()]
        for shown in self._used:
            one = self._meanings[shown]
            elsewhere = one.word if one.word.lower() != shown.lower() else ""
            if shown not in self._own:
                found.append((shown, one.means, elsewhere))
        yield from sorted(found, key=lambda entry: entry[0].lower())
