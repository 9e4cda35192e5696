"""What tells one class of mark from another without any colour: the table that a grey copy lives by.

Any two classes differ in at least two of form, line, weight, ends, badge and inside; weights differ where one is at least 1.35
times the other. The ratio is a designer's choice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass, fields, replace
from typing import Final

HEAVIER: Final = 1.35


@dataclass(frozen=True, slots=True)
class Traits:
    """A class of mark in words; ``weight`` is its stroke in u, 0 for a mark without one."""

    form: str
    line: str
    weight: float
    ends: str = ""
    badge: str = ""
    inside: str = ""


_TRAITS: Final = {
    "ball path": Traits("line", "solid", 1.6, "solid head", "full tag"),
    "feed": Traits("line", "solid", 0.95, "hollow head, ring", "open tag"),
    "fan": Traits("line", "solid", 0.75, "small solid heads", "pill"),
    "bounce": Traits("dot", "none", 0, inside="full"),
    "contact": Traits("bar across a path", "solid", 2.3),
    "run": Traits("line", "dashes", 1.3, "open head"),
    "recovery run": Traits("line", "round dots", 1.5, "two feet"),
    "open flag": Traits("flag", "none", 0, "pointer", "reversed word", "full"),
    "person": Traits("disc with nose", "solid", 1.3, "racket", "bold letter", "paper"),
    "coach": Traits("disc with nose", "double", 1.3, "racket", "letter and word", "paper"),
    "waits": Traits("disc", "short dashes", 0.75, "", "thin letter and word", "paper"),
    "step digit": Traits("square", "solid", 0.95, "", "digit", "full or open"),
    "basket": Traits("square", "solid", 1.1, "", "", "nine dots"),
    "ball machine": Traits("wedge", "solid", 1.6, "mouth bar", "letter", "paper"),
    "cone": Traits("triangle", "none", 0, "foot bar", "", "full with a band"),
    "disc": Traits("ring", "solid", 1.9, inside="paper"),
    "hoop": Traits("ring", "double", 0.7),
    "painted line": Traits("line", "solid", 1.0),
    "throw-down line": Traits("line", "pieces", 2.8),
    "chalk line": Traits("line", "solid", 2.2, "bars"),
    "tape line": Traits("strip", "solid", 0.65, "closed", "", "paper"),
    "line of discs": Traits("line", "fine dots", 0.6, "discs"),
    "line in thought": Traits("line", "long gaps", 0.7),
    "barrier": Traits("line", "solid", 1.5, "rungs", "height"),
    "obstacle": Traits("shape", "solid", 1.3, "", "name", "grey"),
    "height cord": Traits("line", "dash and dot", 1.0, "open squares", "height"),
    "target area": Traits("shape", "solid", 1.3, "", "value", "strokes at 45"),
    "rule area": Traits("shape", "dashes", 0.9, "", "rule in words", "dots"),
    "paid area": Traits("shape", "long and short dashes", 1.3, "", "rule in words", "upright dashes"),
    "keep out area": Traits("shape", "solid", 2.1, "", "keep out", "crossed strokes"),
    "feed area": Traits("shape", "round dots", 1.15, "", "feed", "level dashes"),
    "share": Traits("text", "none", 0, "", "number with %"),
}


def style_table(*, switched: bool = False) -> dict[str, Traits]:
    """Return the traits of every class; ``switched``: the ball is the broken line and the run the solid one."""
    if not switched:
        return dict(_TRAITS)
    broken = {kind: replace(_TRAITS[kind], line="dashes") for kind in ("ball path", "feed", "fan")}
    return _TRAITS | broken | {"run": replace(_TRAITS["run"], line="solid", weight=1.5)}


def differences(one: Traits, other: Traits) -> tuple[str, ...]:
    """Return the names of the traits in which two classes differ."""
    return tuple(field.name for field in fields(Traits) if _differ(field.name, one, other))


def _differ(name: str, one: Traits, other: Traits) -> bool:
    if name != "weight":
        return bool(getattr(one, name) != getattr(other, name))
    low, high = sorted((one.weight, other.weight))
    return high > 0 and (low == 0 or high / low >= HEAVIER - 1e-9)
