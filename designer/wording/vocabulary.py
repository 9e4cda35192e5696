"""An academy's own words in place of ours, everywhere at once: "tramline" for "alley" in every sentence and label."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any, Final

from designer.drill.drill import Drill
from designer.numbers.levels import LEVELS
from designer.wording.card import CardWords, Section
from designer.wording.sentence import Ref, Sentence

CALLED: Final = frozenset({"stop"})
"""Words that are plain verbs as well: they are terms only where they are called out, in quotes."""

STAGES: Final = ("red", "orange", "green")
NAMES: Final = frozenset(
    [
        *STAGES,
        *LEVELS,
        *("serving", "returning", "both back", "coming in", "opponent at net", "both at net", "one in one back"),
        *("defence", "neutral", "attack", "finish"),
        *("recovery", "open pattern", "accuracy", "two on one", "closed", "point play", "match play"),
    ]
)
"""Levels, situations, phases and kinds of work. They are plain words as well ("the club minimum", "they are both back"), and
so are terms only where one of them is told by itself, as a name: in indexes, counts, facts and the glossary."""

PLAIN: Final = frozenset(
    [
        *(
            "open",
            "opens",
            "forced",
            "exact",
            "cooperative",
            "pass",
            "middle",
            "target",
            "reply",
            "tick",
            "tape",
            "recover",
        ),
        *(
            "replay",
            "clear",
            "approach",
            "line",
            "court",
            "left",
            "right",
            "half",
            "side",
            "ball",
            "point",
            "points",
            "game",
        ),
        *("start", "rules", "hit", "run", "shot", "player", "winner", "bounce", "swap", "easier", "harder"),
    ]
)
"""Words that the program uses for one thing alone and people for many: what somebody has typed keeps them ("face open")."""

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
        """Return ``text`` in the academy's words. Tokens in braces are left alone, and so are names among other words."""
        return self._pattern.sub(self._replacement, text) if self._pattern else text

    def written(self, text: str) -> str:
        """Return what somebody has typed in the academy's words for things of the trade: words that are plain ones stay."""
        return self._of_the_trade.said(text)

    def named(self, name: str) -> str:
        """Return the academy's word for a level, a situation, a phase or whatever else is told as a name, by itself."""
        return self._lower.get(name.lower()) or self.said(name)

    def explained(self, text: str) -> str:
        """Return what an owner explains a word with, as it is ``written``; what it quotes is spoken of, and stays."""
        return "".join(part if part[:1] in '“"‘' else self.written(part) for part in _QUOTED.split(text) if part)

    def sentence(self, told: Sentence) -> Sentence:
        """Return ``told`` in the academy's words; what it refers to stays."""
        said = self.written if _TYPED.match(told.key) else self.said
        parts = tuple(
            said(part) if isinstance(part, str) else Ref(part.id, self.written(part.text)) for part in told.parts
        )
        lead = told.lead
        if lead is not None and lead.kind == "open":
            lead = replace(lead, text=self.said(lead.text or "open"))
        return replace(told, parts=parts, lead=lead) if (parts, lead) != (told.parts, told.lead) else told

    def card(self, words: CardWords) -> CardWords:
        """Return the words of a card in the academy's words."""
        if not self.own:
            return words
        return replace(
            words,
            title=self.written(words.title),
            objective=self.written(words.objective),
            facts=tuple(replace(fact, text=self.said(fact.text)) for fact in words.facts),
            setting_name=self.written(words.setting_name),
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
        pattern = self._of_the_trade._pattern  # noqa: SLF001  another of the same kind
        if pattern is None or pattern.search(text) is None:
            return drill
        return Drill.model_validate_json(json.dumps(self._written(json.loads(text))))

    def _written(self, value: Any, key: str = "") -> Any:
        if isinstance(value, dict):
            return {name: self._written(part, name) for name, part in value.items()}
        if isinstance(value, list):
            return [self._written(part, key) for part in value]
        return self.written(value) if isinstance(value, str) and key in _AUTHORED else value

    @cached_property
    def _of_the_trade(self) -> Vocabulary:
        return Vocabulary({word: own for word, own in self.own.items() if word.lower() not in PLAIN})

    @cached_property
    def _pattern(self) -> re.Pattern[str] | None:
        """What is replaced in a text: None where nothing is.

        The academy's own words come first and stay: what is said once can be said again, also "ball basket" for "basket".
        """
        words = sorted(self.own, key=len, reverse=True)
        kept = _any_of(
            sorted({own for own in self.own.values() if own.lower() not in self._lower}, key=len, reverse=True)
        )
        plain = _any_of(word for word in words if word.lower() not in CALLED | NAMES)
        called = _any_of(word for word in words if word.lower() in CALLED)
        levels = _any_of(word for word in words if word.lower() in LEVELS)
        parts = []
        if plain and kept:
            parts.append(rf"(?<![\w{{-])(?:{kept})(?:e?s)?(?![\w}}-])")
        if plain:
            parts.append(rf"(?P<article>\ban? )?(?<![\w{{-])(?P<word>{plain})(?P<plural>e?s)?(?![\w}}-])")
        if called:
            parts.append(rf"(?<=[“\"])(?P<called>{called})(?=[”\"])")
        if levels:
            parts.append(rf"(?<![\w{{-])(?P<level>{levels})(?= level\b)")
        return re.compile("|".join(parts), re.IGNORECASE) if parts else None

    @cached_property
    def _lower(self) -> dict[str, str]:
        return {word.lower(): own for word, own in self.own.items()}

    def _replacement(self, found: re.Match[str]) -> str:
        groups = found.groupdict()
        alone = groups.get("called") or groups.get("level")
        if alone:
            return self._lower[alone.lower()]
        if not groups.get("word"):
            return found[0]
        own = self._lower[groups["word"].lower()]
        if groups["plural"]:
            own = plural(own)
        if groups["word"][0].isupper():
            own = own[:1].upper() + own[1:]
        if not groups["article"]:
            return own
        return f"{groups['article'][0]}{'n' if own[:1].lower() in 'aeiou' else ''} {own}"


_TYPED: Final = re.compile(r"(?:cue|watch|care):\d")
"""Keys of sentences that are nothing but what the author typed."""
_QUOTED: Final = re.compile(r"(“[^”]*”|\"[^\"]*\"|‘[^’]*’)")


def _any_of(words: Iterable[str]) -> str:
    return "|".join(map(re.escape, words))


def plural(word: str) -> str:
    """Return the plural of an English word by the plain rules: boxes, bodies, tramlines."""
    if word.endswith("y") and word[-2:-1] not in ("a", "e", "i", "o", "u", ""):
        return f"{word[:-1]}ies"
    return f"{word}es" if word.endswith(("s", "x", "ch", "sh")) else f"{word}s"
