"""An academy's own words in place of ours, everywhere at once: "tramline" for "alley" in every sentence and label."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any, Final

from designer.drill.drill import Drill
from designer.wording.card import CardWords, Section
from designer.wording.sentence import Ref, Sentence

CALLED: Final = frozenset({"stop"})
"""Words that are plain verbs as well: they are terms only where they are called out, in quotes."""

_AUTHORED: Final = frozenset(
    [
        "title",
        "objective",
        "cues",
        "watch_for",
        "safety",
        "kit",
        "reason",
        "name",
        "aim",
        "note",
        "text",
        "role",
        "label",
        "call",
        "ball",
    ]
)
"""Fields of a drill that hold words to be read; the others hold names, keys and numbers."""


@dataclass(frozen=True)
class Vocabulary:
    """{our word: the academy's own}. A word is found whole, in the singular or plural, with a capital or without."""

    own: Mapping[str, str] = field(default_factory=dict)

    def said(self, text: str) -> str:
        """Return ``text`` in the academy's words. Tokens in braces are left alone."""
        return self._pattern.sub(self._replacement, text) if self.own else text

    def sentence(self, told: Sentence) -> Sentence:
        """Return ``told`` in the academy's words; what it refers to stays."""
        parts = tuple(
            self.said(part) if isinstance(part, str) else Ref(part.id, self.said(part.text)) for part in told.parts
        )
        return replace(told, parts=parts) if parts != told.parts else told

    def card(self, words: CardWords) -> CardWords:
        """Return the words of a card in the academy's words."""
        if not self.own:
            return words
        return replace(
            words,
            title=self.said(words.title),
            objective=self.said(words.objective),
            facts=tuple(replace(fact, text=self.said(fact.text)) for fact in words.facts),
            setting_name=self.said(words.setting_name),
            sections=tuple(
                Section(part.key, self.said(part.heading), tuple(map(self.sentence, part.sentences)))
                for part in words.sections
            ),
            left_handed=None if words.left_handed is None else self.sentence(words.left_handed),
        )

    def drill(self, drill: Drill) -> Drill:
        """Return ``drill`` with what its author wrote, the names on its diagram included, in the academy's words."""
        if not self.own:
            return drill
        text = drill.model_dump_json(by_alias=True)
        if self._pattern.search(text) is None:
            return drill
        return Drill.model_validate_json(json.dumps(self._written(json.loads(text))))

    def _written(self, value: Any, key: str = "") -> Any:
        if isinstance(value, dict):
            return {name: self._written(part, name) for name, part in value.items()}
        if isinstance(value, list):
            return [self._written(part, key) for part in value]
        return self.said(value) if isinstance(value, str) and key in _AUTHORED else value

    @cached_property
    def _pattern(self) -> re.Pattern[str]:
        words = sorted(self.own, key=len, reverse=True)
        plain = "|".join(re.escape(word) for word in words if word.lower() not in CALLED)
        called = "|".join(re.escape(word) for word in words if word.lower() in CALLED)
        parts = []
        if plain:
            parts.append(rf"(?P<article>\ban? )?(?<![\w{{-])(?P<word>{plain})(?P<plural>e?s)?(?![\w}}-])")
        if called:
            parts.append(rf"(?<=[“\"])(?P<called>{called})(?=[”\"])")
        return re.compile("|".join(parts), re.IGNORECASE)

    @cached_property
    def _lower(self) -> dict[str, str]:
        return {word.lower(): own for word, own in self.own.items()}

    def _replacement(self, found: re.Match[str]) -> str:
        groups = found.groupdict()
        if groups.get("called"):
            return self._lower[groups["called"].lower()]
        own = self._lower[groups["word"].lower()]
        if groups["plural"]:
            own = plural(own)
        if groups["word"][0].isupper():
            own = own[:1].upper() + own[1:]
        if not groups["article"]:
            return own
        return f"{groups['article'][0]}{'n' if own[:1].lower() in 'aeiou' else ''} {own}"


def plural(word: str) -> str:
    """Return the plural of an English word by the plain rules: boxes, bodies, tramlines."""
    if word.endswith("y") and word[-2:-1] not in ("a", "e", "i", "o", "u", ""):
        return f"{word[:-1]}ies"
    return f"{word}es" if word.endswith(("s", "x", "ch", "sh")) else f"{word}s"
