"""A setting as plain text: everything that a coach's card says, to be read or spoken without the picture."""

from __future__ import annotations

from designer.drill.drill import Drill
from designer.drill.setting import At
from designer.wording.card import CardWords, Section, card_words
from designer.wording.sentence import Lead, Sentence
from designer.wording.units import Units


def describe(drill: Drill, at: At, units: Units = "rackets") -> str:
    """Return the setting at ``at`` as plain text, a heading and its sentences a section, ending with a line break."""
    return text_of(card_words(drill, at, "stand-in", units=units))


def text_of(card: CardWords) -> str:
    """Return a card's words as plain text."""
    head = [card.title or "Untitled drill", card.setting_name]
    if card.objective:
        head.append(f"“{card.objective}”")
    head.append(" · ".join(fact.text for fact in card.facts))
    blocks = ["\n".join(line for line in head if line)]
    blocks += [_section(section) for section in card.sections]
    blocks.append(" · ".join(card.footer))
    return "\n\n".join(block for block in blocks if block) + "\n"


def _section(section: Section) -> str:
    return "\n".join([section.heading, *(_line(found) for found in section.sentences)])


def _line(found: Sentence) -> str:
    line = f"  {_bullet(found.lead)}{found.text}"
    return f"{line} ________" if found.missing else line


def _bullet(lead: Lead | None) -> str:
    if lead is None:
        return ""
    if lead.kind in ("hit", "feed", "choice", "value", "number"):
        return f"{lead.text} "
    return {"open": "[open] ", "person": "", "caution": "! "}.get(lead.kind, "- ")
