"""Cautions: a side or a wing written out in a text, where a version of the drill could not turn it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import partial
from typing import Any, Final

from designer.drill.drill import Drill
from designer.drill.edits import with_changes
from designer.drill.setting import At, addresses, changes_at
from designer.review.check import Check, check
from designer.review.walk import Path, owner, replaced, values_in

_TEXTS: Final = frozenset(
    {
        "note",
        "text",
        "role",
        "name",
        "label",
        "call",
        "objective",
        "aim",
        "cues",
        "watch_for",
        "safety",
        "kit",
        "reason",
    }
)
"""Fields whose words a version turns. A title, an author or a source stays as it is."""

_SIDE: Final = re.compile(
    r"(?<![{\w])(left|right|deuce(?=\W+(?:court|box|side|and|or|then|to)\b)|ad|forehand|backhand|anticlockwise|clockwise)(?![}\w])",
    re.IGNORECASE,
)
_WINGS: Final = ("forehand", "backhand")

_NO_SIDE: Final = re.compile(
    # "right away", "all right", "if left", "the balls left over": other meanings of the same words.
    r"\b(?:all right|right (?:away|now|after|before|behind|at|in|on|up|over|through|then|there|here|beside|answer|time)"
    r"|(?:is|are|was|were|be|been|being|if|has|have|had|not|nobody|nothing) left|left (?:over|behind|alone|out|lying))\b",
    re.IGNORECASE,
)


def side_cautions(drill: Drill) -> Iterator[Check]:
    """Yield a caution for each text of an English drill in which a side word is no token, with the mend.

    A text that stands in several settings is told of once, and mended everywhere.
    """
    if drill.language.partition("-")[0] != "en":
        return
    seen: set[str] = set()
    for at, root, path, value in texts(drill):
        words = side_words(value)
        if words and value not in seen:
            seen.add(value)
            yield _caution(value, words, owner(root, path), at)


def texts(drill: Drill) -> Iterator[tuple[At | None, Any, Path, str]]:
    """Yield (setting, root, path, text) for every text whose words a version turns; the root is the drill or changes."""
    roots: list[tuple[At | None, Any]] = [(None, drill), *((at, changes_at(drill, at)) for at in addresses(drill))]
    for at, root in roots:
        # What a setting changes is looked at setting by setting.
        for path, value in values_in(root, but="changes"):
            if isinstance(value, str):
                field = next((step for step in reversed(path) if isinstance(step, str)), "")
                if field in _TEXTS:
                    yield at, root, path, value


def _caution(value: str, words: tuple[str, ...], id: str | None, at: At | None) -> Check:
    wings = all(word.lower() in _WINGS for word in words)
    tokens = " and ".join(f"{{{word.lower()}}}" for word in dict.fromkeys(words))
    plain = " and ".join(f"“{word}”" for word in dict.fromkeys(words))
    short = value if len(value) <= 60 else f"{value[:57]}…"
    version = "the drill is made for the other wing" if wings else "the drill is mirrored or turned"
    text = f"in “{short}” {plain} {'stay as they are' if ' and ' in plain else 'stays as it is'} when {version}: write {tokens}"
    about = [] if id is None else [id]
    mend = partial(_with_tokens, before=value)
    if wings:
        # A mirrored drill keeps its forehands; only a rarer version turns them.
        return check("suggestion", "wing-word", text, *about, at=at, mend=mend)
    return check("caution", "side-word", text, *about, at=at, mend=mend)


def side_spans(text: str) -> tuple[tuple[int, int], ...]:
    """Return from where to where each side word that stands in ``text`` as a plain word goes, in order."""
    others = [found.span() for found in _NO_SIDE.finditer(text)]
    return tuple(
        found.span(1)
        for found in _SIDE.finditer(text)
        if not any(start <= found.start() < end for start, end in others)
        and not (found[1].lower() == "ad" and found[1] != "ad")
    )


def side_words(text: str) -> tuple[str, ...]:
    """Return the side words that stand in ``text`` as plain words, in order."""
    return tuple(text[start:end] for start, end in side_spans(text))


def with_tokens(text: str) -> str:
    """Return ``text`` with its side words as tokens: "the left side" as "the {left} side"."""
    for start, end in reversed(side_spans(text)):
        text = f"{text[:start]}{{{text[start:end].lower()}}}{text[end:]}"
    return text


def _with_tokens(drill: Drill, *, before: str) -> Drill:
    after = with_tokens(before)
    for at, _, path, value in list(texts(drill)):
        if value != before:
            continue
        if at is None:
            drill = replaced(drill, path, after)
        else:
            drill = with_changes(drill, at, replaced(changes_at(drill, at), path, after))
    return drill
