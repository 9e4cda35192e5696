"""What has not been settled yet: on paper a ruled line to write on, on screen a prompt, in the review a suggestion.

Each question is asked once, under the heading where its answer will stand.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any, Final

from designer.drill.conditions import Event, In
from designer.drill.movement import FEEDS
from designer.drill.places import locate
from designer.drill.rules import Aim, Bounces, Finish, Keep, Rule, Start, UseStroke
from designer.wording.counts import capital, number, ordinal
from designer.wording.musts import demand
from designer.wording.names import letter, shot_name
from designer.wording.rules import doer_of, ordered, rule_words
from designer.wording.sentence import Sentence, sentence, unmarked
from designer.wording.starts import is_serve
from designer.wording.telling import Telling, once
from designer.wording.where import area_name, bounces, is_feet, is_line

FIRST: Final = ("question:start", "question:bad", "question:rules", "question:finish")
"""Keys, or beginnings of keys, of the prompts that come first: bad feed, what breaks the rule, where it ends."""

_WHOLE: Final = ("singles court", "doubles court")
"""Parts of the court whose outer lines are in by the rules of the game."""


@dataclass(frozen=True, slots=True)
class Question:
    """One open question: its kind, the card's section it stands in, how it is asked, the usual answer ("" for none).

    The section "drill" is on no card: the answer is said once for the drill.
    """

    kind: str
    section: str
    asked: Sentence
    usual: str = ""


@once
def questions(told: Telling) -> Iterator[Question]:
    """Return every open question in the order of a card, each once."""
    asked: set[str] = set()
    for found in (*_start(told), *_steps(told), *_rules(told), *_points(told), *_swap(told), *_drill(told)):
        if found.asked.key not in asked:
            asked.add(found.asked.key)
            yield found


def _in(told: Telling, section: str) -> tuple[Sentence, ...]:
    return tuple(found.asked for found in questions(told) if found.section == section)


def of_start(told: Telling) -> tuple[Sentence, ...]:
    """Return what the start leaves open."""
    return _in(told, "start")


def of_steps(told: Telling) -> tuple[Sentence, ...]:
    """Return what the steps leave open."""
    return _in(told, "steps")


def of_rules(told: Telling) -> tuple[Sentence, ...]:
    """Return what the rules leave open: the cost of a breach, the edge, what judges, who decides in doubt."""
    return _in(told, "rules")


def of_points(told: Telling) -> tuple[Sentence, ...]:
    """Return what the points leave open: how a point ends, what two that fit both are worth, where it all ends."""
    return _in(told, "points")


def of_swap(told: Telling) -> tuple[Sentence, ...]:
    """Return what the swaps leave open."""
    return _in(told, "swap")


def _ask(section: str, kind: str, text: str, *about: str, key: str = "", usual: str = "") -> Question:
    full = f"question:{kind}{f':{key}' if key else ''}"
    return Question(kind, section, sentence(full, capital(text), *about, missing=True), usual)


def _sorted(records: Any) -> list[Any]:
    return [records[id] for id in sorted(records)]


def _is_played(told: Telling) -> bool:
    """Whether a ball is or will be played: shadow swings need neither a start nor points."""
    shots = told.setting.shots.values()
    return not shots or any(shot.stroke != "shadow swing" for shot in shots)


def _start(told: Telling) -> Iterator[Question]:
    if not told.setting.starts and _is_played(told):
        yield _ask("start", "start", "how does it start, and what if the feed is bad?")
    for start in (*told.first_starts, *told.later_starts):
        shot = told.setting.shots.get(start.shot or "")
        put_in = (shot is not None and told.is_new_ball(shot)) or bool(start.good) or shot is None
        if start.bad is None and put_in:
            digit = told.digit(start.shot)
            which = f" (ball {digit})" if digit is not None and start.once is not None else ""
            serve = is_serve(told, start)
            text = "a fault?" if serve else f"bad feed{which}?"
            yield _ask("start", "bad", text, start.id, key=start.id, usual="" if serve else "replay")
    yield from _unreached(told)


def _unreached(told: Telling) -> Iterator[Question]:
    """Yield what a fed ball is that its runner does not reach, where no miss and no end of a part says it."""
    setting = told.setting
    missed = {id for p in setting.points.values() for event in p.on if event.what == "missed" for id in event.of}
    if any(part.kind == "forced" and part.failed is not None for part in setting.parts.values()):
        return
    for run in _sorted(setting.runs):
        shot = setting.shots.get(run.during or "")
        if shot is None or run.purpose != "reach" or shot.stroke not in FEEDS or shot.id in missed:
            continue
        text = f"{letter(told, run.by)} does not reach {shot_name(told, shot)}?"
        yield _ask("start", "unreached", unmarked(text), shot.id, run.id, key=shot.id, usual="replay")


def _steps(told: Telling) -> Iterator[Question]:
    order = told.parts
    for place, part in enumerate(order):
        if part.kind == "forced" and not part.until and not part.shots and place + 1 < len(order):
            yield _ask("steps", "opens", "when is the point open?", part.id, key=part.id)
    for run in _sorted(told.setting.runs) if told.setting.shots else ():
        if run.during is None:
            text = f"while which ball does {letter(told, run.by)} run?"
            yield _ask("steps", "run", unmarked(text), run.id, key=run.id)


def _rules(told: Telling) -> Iterator[Question]:
    setting = told.setting
    if not setting.rules and not setting.points and not _scores_itself(setting.finish) and _is_played(told):
        yield _ask("rules", "rules", "what breaks the rule, and what does it cost?")
    for rule in ordered(told):
        if rule.breach is None:
            yield _ask("rules", "cost", f"{_short(told, rule)}: what does it cost?", rule.id, key=rule.id)
    for part in told.parts:
        if part.kind == "forced" and part.failed is None:
            yield _ask("rules", "failed", "a miss before it opens?", part.id, key=part.id)
    yield from _places(told)
    for rule in ordered(told):
        must = rule.must
        if isinstance(must, Aim) and must.direction in ("new line", "same line back") and must.from_middle is None:
            text = "a ball hit from the middle: which direction counts?"
            yield _ask("rules", "from-middle", text, rule.id, key=rule.id, usual="either")
    yield from _house(told)


def _short(told: Telling, rule: Rule) -> str:
    if demand(told, rule, doer_of(told, rule)).forbidden:
        return unmarked(rule_words(told, rule)).removeprefix("not allowed: ").rstrip(".")
    return "if not"


def _places(told: Telling) -> Iterator[Question]:
    """Yield what is open about the places that records judge by: what decides, the edge, a ball taken before its bounce."""
    records = (*ordered(told), *_sorted(told.setting.points), *_sorted(told.setting.starts))
    for record in records:
        for place in _judged(record):
            name = unmarked(area_name(told, place.area))
            key = place.area.replace(" ", "-")
            if place.judged is None:
                text = f"{name}: judged by the bounce, the contact or the feet?"
                yield _ask("rules", "judged", text, place.area, record.id, key=key, usual="the bounce")
            elif place.line is None and _has_an_edge(told, place):
                edge = f"on {name}" if is_line(told, place.area) else f"on the edge of {name}"
                feet = is_feet(place)
                text = f"a foot {edge}?" if feet else f"{edge}?"
                usual = "in" if place.judged == "bounce" else ""
                yield _ask("rules", "edge", text, place.area, record.id, key=key, usual=usual)
    for rule in ordered(told):
        for condition in rule.when:
            if isinstance(condition, In) and _volley_is_open(told, rule, condition):
                where = unmarked(bounces(told, (condition,)))
                text = f"taken out of the air: as a ball {where}?"
                yield _ask("rules", "volleyed", text, condition.area, rule.id, key=condition.area.replace(" ", "-"))


def _volley_is_open(told: Telling, rule: Rule, place: In) -> bool:
    """Whether a stroke is asked for by where the ball bounced, and a ball that did not bounce may be played."""
    if not isinstance(rule.must, UseStroke) or place.judged != "bounce" or place.volleyed is not None:
        return False
    return not any(isinstance(r.must, Bounces) and (r.must.least or 0) > 0 for r in told.setting.rules.values())


def _judged(record: Rule | Points | Start) -> Iterator[In]:
    """Yield the places by which a record judges a ball or feet; what a ball strikes needs no judging."""
    if isinstance(record, Rule):
        for condition in record.when:
            yield from (condition,) if isinstance(condition, In) else _of_event(condition)
        if isinstance(record.must, Keep):
            yield from record.must.where
    elif isinstance(record, Start):
        yield from record.good
        if record.once is not None:
            yield from _of_event(record.once)
    else:
        for event in record.on:
            yield from _of_event(event)


def _of_event(event: Event) -> Iterator[In]:
    if event.what != "struck":
        yield from (*event.where, *event.when)
    for inner in event.and_:
        yield from _of_event(inner)


def _has_an_edge(told: Telling, place: In) -> bool:
    if place.area in _WHOLE or place.judged in (None, "net"):
        return False
    return getattr(told.setting.items.get(place.area), "care", None) not in ("about", "anywhere")


def _house(told: Telling) -> Iterator[Question]:
    """Yield what is best said once for the whole drill: who calls, what doubt means, who may come in."""
    house = told.drill.house
    open_calls = () if house.called_by else tuple(_unanswered(told, "called_by"))
    if open_calls:
        yield _ask("rules", "caller", "who calls?", *open_calls, usual="players call their own lines")
    open_doubts = () if house.in_doubt is not None else tuple(_unanswered(told, "in_doubt"))
    if open_doubts:
        yield _ask("rules", "doubt", "in doubt?", *open_doubts, usual="replay")
    if not house.come_in and _may_come_in_is_open(told):
        yield _ask("rules", "come-in", "who may come in before it opens?", usual="anyone")


def _unanswered(told: Telling, field: str) -> Iterator[str]:
    """Yield the records in which somebody must judge something and nobody is named, or no doubt is settled."""
    setting = told.setting
    for record in (*_sorted(setting.rules), *_sorted(setting.points), *_sorted(setting.starts)):
        judged = bool(record.good) if isinstance(record, Start) else next(_judged(record), None) is not None
        if judged and not any(getattr(value, field, None) for value in (record, *_events(record))):
            yield record.id


def _events(record: Rule | Points | Start) -> Iterator[Event]:
    if isinstance(record, Start):
        outer: Iterable[Any] = () if record.once is None else (record.once,)
    else:
        outer = record.when if isinstance(record, Rule) else record.on
    waiting = [event for event in outer if isinstance(event, Event)]
    while waiting:
        event = waiting.pop()
        yield event
        waiting += event.and_


def _may_come_in_is_open(told: Telling) -> bool:
    """Whether hits are counted before the point opens, from the back, and no rule speaks of feet or volleys."""
    counted = any(part.kind == "forced" and any(e.count and not e.of for e in part.until) for part in told.parts)
    opens = any(part.kind == "open" for part in told.parts)
    line = told.ground.service_line
    if not counted or not opens or line is None:
        return False
    for spot in told.setting.spots.values():
        point = locate(told.setting, spot.place)
        if spot.task == "plays" and point is not None and abs(point[1]) < line:
            return False
    return not any(_speaks_of_feet_or_volleys(rule) for rule in told.setting.rules.values())


def _speaks_of_feet_or_volleys(rule: Rule) -> bool:
    if isinstance(rule.must, Keep):
        return any(is_feet(place) for place in rule.must.where)
    return isinstance(rule.must, Bounces)


def _points(told: Telling) -> Iterator[Question]:
    setting = told.setting
    paying = [points for points in _sorted(setting.points) if points.gives.then == "points"]
    if not paying and not _scores_itself(setting.finish) and _is_played(told):
        yield _ask("points", "points", "how does a point end?")
    plain = [points for points in paying if any(_is_plain_win(event) for event in points.on)]
    for points in paying if plain else ():
        if points not in plain and points.beside is None:
            text = "both at once: added, instead, or the higher?"
            yield _ask("points", "beside", text, points.id, plain[0].id, key=points.id)
    yield from _finish(setting.finish)


def _is_plain_win(event: Event) -> bool:
    return event.what == "won" and not (event.and_ or event.when or event.where or event.strokes or event.of)


def _scores_itself(finish: Finish | None) -> bool:
    """Whether the score is that of the game itself."""
    return finish is not None and finish.kind in ("game", "tie-break")


def _finish(finish: Finish | None) -> Iterator[Question]:
    if finish is None:
        yield _ask("points", "finish", "where does it end?")
        return
    if finish.kind in ("race", "goal") and finish.to is None:
        yield _ask("points", "to", "how many does it take?", finish.id)
    if finish.minutes is not None and finish.last_rally is None:
        text = "when time is called: is the last rally played out?"
        yield _ask("points", "last-rally", text, finish.id, usual="yes")
    if finish.kind == "total" and finish.to is None and finish.level is None and finish.scores != "all together":
        yield _ask("points", "level", "level totals?", finish.id, usual="one more start each")


_MORE_PEOPLE: Final = re.compile(
    r"\b(second|third|fourth|fifth|sixth|another|three|four|five|six) (player|child|pair|people)", re.IGNORECASE
)


def _swap(told: Telling) -> Iterator[Question]:
    """Yield what those do for whom there is no place, where the drill can take more than it has places for."""
    if told.drill.players is None or not told.setting.spots:
        return
    _, most = told.drill.players
    jobs = {spot.job for spot in told.setting.spots.values()}
    coaches = {job.letter for job in told.drill.jobs if job.by != "player"}
    places = len(jobs - coaches)
    if most <= places or _MORE_PEOPLE.search(told.drill.model_dump_json()):
        return
    first = places + 1
    text = f"what does the {ordinal(first)} player do?"
    if most > first:
        text = f"what do players {number(first)} to {number(most)} do?"
    yield _ask("swap", "extra", text)


def _drill(told: Telling) -> Iterator[Question]:
    """Yield what a ball or a person on court means, where neither the drill nor its house says so."""
    called = any(e.what == "called" and p.gives.then == "replay" for p in told.setting.points.values() for e in p.on)
    if told.setting.shots and told.drill.house.stopped is None and not called:
        yield _ask("drill", "stop", "a ball or a person on court?", usual="anyone calls “stop”, replay")
