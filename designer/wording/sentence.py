"""A sentence as data: its words, what stands before it as a bullet, and the records it is made from."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from typing import Final, Literal

LeadKind = Literal[
    "hit", "feed", "choice", "run", "recover", "open", "value", "bullet", "number", "person", "caution", "bound"
]


@dataclass(frozen=True, slots=True)
class Ref:
    """Words that name one record of the drill, so that a screen can light it up: its id and the words."""

    id: str
    text: str


Part = str | Ref


@dataclass(frozen=True, slots=True)
class Lead:
    """What stands as a sentence's bullet: the mark of a step, a value, a number, a letter or a plain dot.

    ``text`` is what is written in or as the mark: "2" for a digit, "+1" for a value, "A" for a person, "" for none.
    """

    kind: LeadKind
    text: str = ""


@dataclass(frozen=True, slots=True)
class Sentence:
    """One or a few short sentences made from data.

    ``key`` stays the same while the records do, so that a screen can keep its place. ``about`` holds the ids of the
    records the words are made from, the first being the one to open. ``missing`` marks an unanswered question: a
    ruled line on paper, a prompt on screen.
    """

    key: str
    parts: tuple[Part, ...]
    about: tuple[str, ...] = ()
    lead: Lead | None = None
    missing: bool = False

    @property
    def text(self) -> str:
        """The words in one line of plain text."""
        return "".join(part if isinstance(part, str) else part.text for part in self.parts)


_REF: Final = re.compile("\x01([^\x02]*)\x02([^\x03]*)\x03")
_BEFORE_A_SIGN: Final = re.compile(r" ([,;:.])(?=\s|$)")
_SPACES: Final = re.compile(r"[^\S\N{NO-BREAK SPACE}]+")
"""A space that keeps a number and its sign on one line stays."""
_FIRST_LETTER: Final = re.compile('^((?:\x01[^\x02]*\x02|["“(])*)([a-z])')
_NO_SIGN_OF_OURS: Final = str.maketrans("", "", "\x01\x02\x03")
_APOSTROPHE: Final = re.compile("(?<=[\\w\x03])'")
ENDINGS: Final = (".", "?", "!", '."', '?"', '!"', ".”", "?”", "!”", ".)")


def ref(id: str, text: str) -> str:
    """Return ``text`` marked as the name of the record ``id``, to be put into a sentence that is still being made."""
    return f"\x01{id}\x02{text}\x03"


def one_line(text: str) -> str:
    """Return a name or label as somebody typed it on one line, without what would be taken for the marks of ``ref``."""
    return " ".join(text.translate(_NO_SIGN_OF_OURS).split())


def typeset(text: str) -> str:
    """Return ``text`` with apostrophes as a printer sets them."""
    return _APOSTROPHE.sub("’", text)


@lru_cache(4096)  # the same clauses are read again and again while settings are compared
def unmarked(text: str) -> str:
    """Return ``text`` without the marks of ``ref``, as it reads."""
    if "\x02" not in text and "\x01" not in text and "\x03" not in text:
        return text
    return _REF.sub(r"\2", text).translate(_NO_SIGN_OF_OURS)


def sentences_of(*texts: str) -> str:
    """Return ``texts`` as sentences one after another: each with a capital, a full stop and single spaces."""
    spaced = (_BEFORE_A_SIGN.sub(r"\1", _SPACES.sub(" ", text).strip()) for text in texts if text)
    return " ".join(_stopped(text) for text in spaced if unmarked(text))


def _stopped(text: str) -> str:
    text = _FIRST_LETTER.sub(lambda found: found[1] + found[2].upper(), text)
    read = unmarked(text)
    return text if read.endswith(ENDINGS) else f"{text.rstrip(':;,')}."


def marked(made: Sentence) -> str:
    """Return a sentence's words with the marks of ``ref``, to be put into another sentence."""
    return "".join(part if isinstance(part, str) else ref(part.id, part.text) for part in made.parts)


def sentence(key: str, text: str, *about: str, lead: Lead | None = None, missing: bool = False) -> Sentence:
    """Return ``text`` as a sentence made from the records ``about``; names marked by ``ref`` become its references."""
    text = typeset(text if missing else sentences_of(text))
    parts: list[Part] = []
    end = 0
    for found in _REF.finditer(text):
        parts += [text[end : found.start()], Ref(found[1], found[2])]
        end = found.end()
    parts.append(text[end:])
    ids = [*about, *(part.id for part in parts if isinstance(part, Ref))]
    return Sentence(key, tuple(part for part in parts if part), tuple(dict.fromkeys(ids)), lead, missing)
