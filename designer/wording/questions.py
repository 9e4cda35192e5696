"""What has not been settled yet: on paper a ruled line to write on, on screen a prompt."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from designer.drill.rules import Points, Rule
from designer.wording.counts import capital
from designer.wording.musts import demand
from designer.wording.rules import doer_of, is_about_feed, ordered, rule_words
from designer.wording.sentence import Sentence, sentence, unmarked
from designer.wording.settled import events, places_judged
from designer.wording.starts import is_serve
from designer.wording.telling import Telling
from designer.wording.where import area_name, is_feet, is_line

FIRST: tuple[str, ...] = ("question:start", "question:bad", "question:rules", "question:finish")
"""Keys, or beginnings of keys, of the three prompts that come first: bad feed, what breaks the rule, where it ends."""


def of_start(told: Telling) -> tuple[Sentence, ...]:
    """Return what the start leaves open."""
    return tuple(_start(told))


def _start(told: Telling) -> Iterator[Sentence]:
    if not told.first_starts:
        yield _question("start", "How does it start, and what if the feed is bad?")
        return
    for start in told.setting.starts.values():
        if start.bad is None:
            step = told.sequence.step(start.shot or "")
            which = f" (ball {step.digit})" if step is not None and start.once is not None else ""
            text = "A fault?" if is_serve(told, start) else f"Bad feed{which}?"
            yield _question(f"bad:{start.id}", text, start.id)


def of_rules(told: Telling) -> tuple[Sentence, ...]:
    """Return what the rules leave open: the cost of a breach, the edge, what judges, who decides in doubt."""
    return tuple(_rules(told))


def _rules(told: Telling) -> Iterator[Sentence]:
    binding = [rule for rule in ordered(told) if not is_about_feed(told, rule)]
    if not binding and not told.setting.points:
        yield _question("rules", "What breaks the rule, and what does it cost?")
    for rule in binding:
        if rule.breach is None:
            yield _question(f"cost:{rule.id}", f"{_short(told, rule)}: what does it cost?", rule.id)
    yield from _edges(told)
    if _doubt_is_open(told):
        yield _question("doubt", "In doubt?")


def _short(told: Telling, rule: Rule) -> str:
    if demand(told, rule, doer_of(told, rule)).forbidden:
        return capital(unmarked(rule_words(told, rule)).removeprefix("not allowed: ")).rstrip(".")
    return "If not"


def _edges(told: Telling) -> Iterator[Sentence]:
    asked: set[str] = set()
    for place in places_judged(told):
        name = unmarked(area_name(told, place.area))
        if place.judged is None and f"judged {place.area}" not in asked:
            asked.add(f"judged {place.area}")
            text = f"{capital(name)}: judged by the bounce, the contact or the feet?"
            yield _question(f"judged:{place.area.replace(' ', '-')}", text, place.area)
        if place.line is None and place.judged is not None and place.judged != "net" and place.area not in asked:
            asked.add(place.area)
            edge = f"On {name}" if is_line(told, place.area) else f"On the edge of {name}"
            touching = f"A foot {edge[0].lower()}{edge[1:]}" if is_feet(place) else edge
            yield _question(f"edge:{place.area.replace(' ', '-')}", f"{touching}?", place.area)


def _doubt_is_open(told: Telling) -> bool:
    if told.drill.house.in_doubt is not None:
        return False
    binding = told.setting.rules.values()
    found = list(events(told))
    answered = any(rule.in_doubt for rule in binding) or any(event.in_doubt for event in found)
    return bool(binding or found) and not answered


def of_points(told: Telling) -> tuple[Sentence, ...]:
    """Return what the points leave open: how a point ends, what two that fit both are worth, where it all ends."""
    return tuple(_points(told))


def _points(told: Telling) -> Iterator[Sentence]:
    paying = [points for points in told.setting.points.values() if points.gives.then == "points"]
    if not paying and (told.setting.finish is None or told.setting.finish.kind not in ("game", "tie-break")):
        yield _question("points", "How does a point end?")
    for points in paying:
        if len(paying) > 1 and points.beside is None and _needs_beside(points, paying):
            yield _question(f"beside:{points.id}", "Both at once: added, instead, or the higher?", points.id)
    if told.setting.finish is None:
        yield _question("finish", "Where does it end?")


def _needs_beside(points: Points, paying: list[Points]) -> bool:
    """Whether two ways to score can fit at once and neither says how they stand together."""
    if any(other.beside is not None for other in paying):
        return False
    return points is paying[-1]


def _question(key: str, text: str, *about: str) -> Sentence:
    return sentence(f"question:{key}", text, *about, missing=True)


@dataclass(frozen=True, slots=True)
class Question:
    """An open question: its kind, the card's section it stands in, how it is asked, and the usual answer or ""."""

    kind: str
    section: str
    asked: Sentence
    usual: str = ""


def questions(told: Telling) -> tuple[Question, ...]:
    """Return every open question in card order."""
    found = (("start", of_start(told)), ("rules", of_rules(told)), ("points", of_points(told)))
    return tuple(Question(asked.key.split(":")[1], section, asked) for section, group in found for asked in group)
