"""What a setting changes over the one below it: for tabs, for progressions, for easier and harder."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from designer.drill.drill import Drill
from designer.drill.rules import Keep, Rule
from designer.drill.setting import At, progression_at
from designer.wording.differences import Change, changes
from designer.wording.finishes import finish_head
from designer.wording.points import points_words
from designer.wording.reading_time import word_count
from designer.wording.rules import rule_words, rules
from designer.wording.sentence import Lead, Ref, Sentence, sentence, sentences_of, typeset, unmarked
from designer.wording.telling import Telling, telling
from designer.wording.tokens import own_text

SHORT: Final = 45
"""As many characters as stand under a tab."""
BRIEF: Final = 38
"""As many words as say what another progression is about."""


def changes_in_words(drill: Drill, at: At) -> tuple[Sentence, ...]:
    """Return what the setting at ``at`` changes over the one below it; for the first progression what it is about."""
    told = telling(drill, at)
    found = _summary(told) if _is_first(drill, at) else list(changes(told))
    return tuple(
        sentence(f"change:{at.progression}:{at.variation or ''}:{number}", change.text, *change.about)
        for number, change in enumerate(found, 1)
    )


def short_changes(drill: Drill, at: At) -> str:
    """Return the changes that say most in one line for a tab, at most about 45 characters, without a full stop."""
    line = ""
    candidates = _by_rank(_brief(telling(drill, at)))
    for change in candidates:
        text = _for_tab(change)
        longer = f"{line}, {text}" if line else text
        if len(longer) <= SHORT:
            line = longer
    if not line and candidates:
        line = _cut(_for_tab(candidates[0]))
    return typeset(line)


def _for_tab(change: Change) -> str:
    return " ".join(unmarked(change.tab or change.gist or change.text).rstrip(".").split())


def _brief(told: Telling) -> list[Change]:
    """Return the changes that have a gist, all where none has."""
    found = _summary(told) if _is_first(told.drill, told.at) else list(changes(told))
    return [change for change in found if change.gist] or found


def _by_rank(found: Iterable[Change]) -> list[Change]:
    return sorted(found, key=lambda change: change.rank)


def _cut(text: str) -> str:
    """Return the words of ``text`` that fit a tab, ending at a sign where there is one."""
    for sign in (": ", "; ", ", "):
        head = text.split(sign, 1)[0]
        if head != text and len(head) <= SHORT:
            return head
    words = ""
    for word in text.rstrip(".").split():
        if len(words) + len(word) + 2 > SHORT:
            return f"{words} …"
        words = f"{words} {word}".strip()
    return words


def _is_first(drill: Drill, at: At) -> bool:
    return at.variation is None and at.progression == drill.progressions[0].id


def progressions(told: Telling) -> tuple[Sentence, ...]:
    """Return a sentence for each progression: its name as a reference, then what it changes; "This card." for ours."""
    found = []
    known: set[str] = set()
    for number, progression in enumerate(told.drill.progressions, 1):
        own = told.elsewhere(At(progression.id))
        name = unmarked(own_text(own, progression.name))
        here = progression.id == told.at.progression
        aim, note = own_text(own, progression.aim), own_text(own, progression.note)
        few = _few(own, known)
        known |= set(own.setting.rules) if here else {id for change in few for id in change.about}
        texts = [change.gist or change.text for change in few]
        said = ["this card"] if here else texts or ([] if aim or note else ["nothing is changed yet"])
        words = sentence("", sentences_of(aim, *said, note))
        parts = ((Ref(progression.id, name), ". ") if name else ()) + words.parts
        about = (progression.id, *(id for id in words.about if id != progression.id))
        found.append(Sentence(f"progression:{progression.id}", parts, about, Lead("number", str(number))))
    return tuple(found)


def _few(told: Telling, known: set[str]) -> list[Change]:
    """Return what a progression is about in some 40 words, what says most first to be chosen, in the order of a card.

    ``known`` are the rules said before: only of these can it be said that they are none any more.
    """
    found = [change for change in _brief(told) if known.issuperset(change.off)]
    chosen: list[Change] = []
    words = 0
    for change in _by_rank(found):
        length = word_count(unmarked(change.gist or change.text))
        if chosen and words + length > BRIEF:
            continue
        chosen.append(change)
        words += length
    return [change for change in found if change in chosen]


def variations_of(told: Telling, degree: str) -> tuple[Sentence, ...]:
    """Return what each easier, harder or other form of this progression changes, a bullet for each change."""
    found: list[Sentence] = []
    for variation in getattr(progression_at(told.drill, told.at), degree):
        own = told.elsewhere(At(told.at.progression, variation.id))
        texts = [(change.text, change.about) for change in changes(own)]
        note = own_text(own, variation.note)
        texts += [(note, ())] if note else []
        if not texts:
            texts = [(own_text(own, variation.name) or "nothing is changed yet", ())]
        found += [
            sentence(f"variation:{variation.id}:{number}", text, variation.id, *about, lead=Lead("bullet"))
            for number, (text, about) in enumerate(texts, 1)
        ]
    return tuple(found)


def _summary(told: Telling) -> list[Change]:
    """Return what the first progression is about: where it ends, what counts and what its rules are."""
    end = told.setting.finish
    found = [] if end is None else [Change(finish_head(told, end), (end.id,), 0, finish_head(told, end))]
    for record in told.setting.points.values():
        if record.gives.then == "points":
            text = f"counted: {points_words(told, [record])}"
            found.append(Change(text, (record.id,), 1, text))
    told_of = {found.about[0]: found.about for found in rules(told) if found.key.startswith("rule:")}
    for rule in told.setting.rules.values() if found else ():
        if rule.id in told_of and not _is_counted(told, rule):
            ids = tuple(id for id in told_of[rule.id] if id in told.setting.rules)
            # What is asked of two opponents alike is said once.
            text = rule_words(told, rule if len(ids) == 1 else rule.changed(who=()))
            found.append(Change(text, ids, 2, text))
    return found or [Change("nothing counts yet", (), 0)]


def _is_counted(told: Telling, rule: Rule) -> bool:
    """Whether a rule asks for no more than what counts, so that a summary that says what counts has said it."""
    if not isinstance(rule.must, Keep) or rule.never or rule.when or rule.of:
        return False
    counted = [event for record in told.setting.points.values() for event in record.on if event.what == "landed"]
    return any((event.by, event.where) == (rule.who, rule.must.where) for event in counted if not event.and_)
