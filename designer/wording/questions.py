"""What decides rallies and has not been settled: on paper a ruled line to write on, on screen a prompt, in the review a check.

Absent means unanswered, never a default. This is the one list of what is asked.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import partial
from typing import Any, Final

from designer.drill.base import Record
from designer.drill.conditions import Event, In
from designer.drill.movement import FEEDS, SERVES
from designer.drill.places import locate
from designer.drill.rules import Aim, Bounces, Finish, Keep, Rule, Start, UseStroke
from designer.play.rally import parts
from designer.wording.asking import Question, Section, ask
from designer.wording.counts import capital, listed
from designer.wording.misses import is_stop
from designer.wording.musts import demand
from designer.wording.names import letter, shot_name
from designer.wording.players_over import of_players_over
from designer.wording.rules import doer_of, is_about_feed, ordered, rule_words
from designer.wording.sentence import Sentence, unmarked
from designer.wording.telling import Telling, once
from designer.wording.where import area_name, bounces, is_feet, is_line

FIRST: tuple[str, ...] = ("question:start", "question:bad", "question:rules", "question:finish")
"""Keys, or beginnings of keys, of the three prompts that come first: bad feed, what breaks the rule, where it ends."""

STOP: Final = "Ball or person on court: anyone calls “stop”."
"""What holds whatever is settled: for safety it is no question who may stop play."""

_WHOLE: Final = ("singles court", "doubles court")
"""Parts of the court whose outer lines are in by the rules of the game."""


def of_start(told: Telling) -> tuple[Sentence, ...]:
    """Return what the start leaves open."""
    return _of(told, "start")


def of_steps(told: Telling) -> tuple[Sentence, ...]:
    """Return what the run of play leaves open."""
    return _of(told, "steps")


def of_rules(told: Telling) -> tuple[Sentence, ...]:
    """Return what the rules leave open: the cost of a breach, the edge, what judges, who decides in doubt."""
    return _of(told, "rules")


def of_points(told: Telling) -> tuple[Sentence, ...]:
    """Return what the points leave open: how a point ends, what two that fit both are worth, where it all ends."""
    return _of(told, "points")


def of_swap(told: Telling) -> tuple[Sentence, ...]:
    """Return what is open about who takes whose place."""
    return _of(told, "swap")


def of_care(told: Telling) -> tuple[Sentence, ...]:
    """Return what is open about stopping for a ball or a person on court."""
    return _of(told, "care")


def _of(told: Telling, section: Section) -> tuple[Sentence, ...]:
    return tuple(found.asked for found in questions(told) if found.section == section)


@once
def questions(told: Telling) -> tuple[Question, ...]:
    """Return every question that the setting leaves open, in the order of a card, each once."""
    groups = (_start, _steps, _rules, _edges, _calls, _points, _finish, of_players_over, _stop)
    found = {each.asked.key: each for group in groups for each in group(told)}
    return tuple(found.values())


def _sorted(records: Any) -> list[Any]:
    return [records[id] for id in sorted(records)]


def _played(told: Telling) -> bool:
    """Whether a ball is played, or nothing is drawn yet; shadow swings need neither a start nor points."""
    shots = told.setting.shots.values()
    return not shots or any(shot.stroke != "shadow swing" for shot in shots)


def _start(told: Telling) -> Iterator[Question]:
    if not told.setting.starts and _played(told):
        yield ask("start", "start", "How does it start, and what if the feed is bad?")
    letter_of = partial(letter, told)
    for start in _sorted(told.setting.starts):
        shot = told.setting.shots.get(start.shot or "")
        if start.bad is not None or shot is None:
            continue
        if shot.stroke in SERVES:
            yield ask("bad", "start", "A fault?", start.id, name=start.id)
        elif shot.stroke in FEEDS or start.good:
            which = f" (ball {told.digit(shot.id)})" if start.once is not None else ""
            who = f" by {listed(list(map(letter_of, told.feeders(start))), 'or')}" if _several_feeds(told) else ""
            yield ask("bad", "start", f"Bad feed{which or who}?", start.id, name=start.id, usual="replay")
    fed = [start.id for start in _sorted(told.setting.starts) if _can_be_bad(told, start)]
    if fed and told.drill.house.feed_played is None:
        yield ask("played-feed", "start", "A bad feed that is played?", *fed, usual="it counts as good")
    yield from _out_of_reach(told)


def _several_feeds(told: Telling) -> bool:
    """Whether balls are put in by different people, so that a bad feed must be said to be whose."""
    return len({told.feeders(start) for start in told.first_starts}) > 1


def _can_be_bad(told: Telling, start: Start) -> bool:
    """Whether it is said what a bad feed is to cost, so that somebody has to say which one is bad."""
    shot = told.setting.shots.get(start.shot or "")
    return start.bad is not None and shot is not None and shot.stroke in FEEDS


def _out_of_reach(told: Telling) -> Iterator[Question]:
    """Ask what a fed ball counts that its runner does not reach, where rallies are won and nothing says what a miss is."""
    setting = told.setting
    events = [event for points in setting.points.values() for event in points.on]
    if any(event.what == "missed" and event.untouched for event in events):
        return
    if any(part.failed is not None for part in setting.parts.values()) or not any(map(_is_plain_win, events)):
        return
    for run in _sorted(setting.runs):
        shot = setting.shots.get(run.during or "")
        if shot is not None and shot.stroke in FEEDS and run.purpose == "reach" and run.by != shot.by:
            text = f"{letter(told, run.by)} does not reach {shot_name(told, shot)}?"
            yield ask("unreached", "start", text, shot.id, run.id, name=shot.id, usual="replay")


def _steps(told: Telling) -> Iterator[Question]:
    if not told.setting.shots:
        return
    for run in _sorted(told.setting.runs):
        if run.during is None:
            yield ask("run", "steps", f"While which ball does {letter(told, run.by)} run?", run.id, name=run.id)


def _rules(told: Telling) -> Iterator[Question]:
    binding = [rule for rule in ordered(told) if not is_about_feed(told, rule)]
    if not binding and not told.setting.points and _played(told) and not _scores_itself(told.setting.finish):
        yield ask("rules", "rules", "What breaks the rule, and what does it cost?")
    for rule in ordered(told):
        if rule.breach is None:
            yield ask("cost", "rules", f"{_short(told, rule)}: what does it cost?", rule.id, name=rule.id)
    yield from _parts(told)
    for rule in binding:
        must = rule.must
        if isinstance(must, Aim) and must.direction in _A_LINE and must.from_middle is None:
            text = f"From the middle: which ball is {_A_LINE[must.direction]}?"
            yield ask("from-middle", "rules", text, rule.id, name=rule.id, usual="either")
    yield from _coming_in(told)


_A_LINE: Final = {"new line": "on a new line", "same line back": "back on its line"}


def _short(told: Telling, rule: Rule) -> str:
    """Return a rule as it stands before the question of its cost: what breaks it, else what it demands."""
    words = capital(unmarked(rule_words(told, rule)).removeprefix("not allowed: ")).rstrip(".")
    return words if demand(told, rule, doer_of(told, rule)).forbidden else f"{words}; if not"


def _parts(told: Telling) -> Iterator[Question]:
    order = parts(told.setting)
    for place, part in enumerate(order):
        if part.kind != "forced":
            continue
        if not part.until and not part.shots and place + 1 < len(order):
            yield ask("opens", "rules", "When does the point open?", part.id, name=part.id)
        if part.failed is None:
            yield ask("failed", "rules", "A miss before it opens, no rule broken?", part.id, name=part.id)


def _coming_in(told: Telling) -> Iterator[Question]:
    """Ask who may come to the net in a restricted part that is played from the back and says nothing of feet or volleys."""
    setting = told.setting
    restricted = [part for part in setting.parts.values() if part.kind == "forced" and _rallies(part.until)]
    if told.drill.house.come_in or not restricted or any(map(_speaks_of_the_net, setting.rules.values())):
        return
    if any(place.volleyed is not None for record in _records(told) for place in places_in(record)):
        return  # what is taken out of the air has been thought of
    if told.ground.service_line is not None and all(_stands_back(told, who) for who in told.playing):
        yield ask("come-in", "rules", "Who may come in before it opens?", restricted[0].id, usual="anyone")


def _rallies(until: Iterable[Event]) -> bool:
    return any(event.what in ("played", "landed") and (event.count or 1) > 2 for event in until)


def _speaks_of_the_net(rule: Rule) -> bool:
    must = rule.must
    if isinstance(must, Keep):
        return any(is_feet(place) for place in must.where)
    return isinstance(must, Bounces) or (isinstance(must, UseStroke) and "volley" in must.strokes)


def _stands_back(told: Telling, who: str) -> bool:
    spot = told.setting.spot_of(who)
    point = None if spot is None else locate(told.setting, spot.place)
    return point is not None and abs(point[1]) > (told.ground.service_line or 0.0)


def _records(told: Telling) -> Iterator[Any]:
    """Yield every record that judges a ball or feet by a place."""
    setting = told.setting
    yield from (*_sorted(setting.rules), *_sorted(setting.parts), *_sorted(setting.points), *_sorted(setting.starts))


def places_in(record: Any) -> Iterator[In]:
    """Yield every place that a record judges by; what a ball strikes is no such place."""
    if isinstance(record, In):
        yield record
    elif isinstance(record, Event) and record.what == "struck":
        for event in record.and_:
            yield from places_in(event)
    elif isinstance(record, Record):
        for field in type(record).model_fields:
            yield from places_in(getattr(record, field))
    elif isinstance(record, tuple):
        for value in record:
            yield from places_in(value)


def _edges(told: Telling) -> Iterator[Question]:
    for record in _records(told):
        for place in places_in(record):
            if " " not in place.area and told.setting.find(place.area) is None:
                continue  # an area that is not there is an error, not a question
            name = unmarked(area_name(told, place.area))
            about = (place.area, record.id)
            if place.judged is None:
                text = f"{capital(name)}: judged by the bounce, the contact or the feet?"
                yield ask("judged", "rules", text, *about, name=place.area, usual="the bounce")
            elif place.line is None and place.judged != "net" and _has_an_edge(told, place):
                edge = f"on {name}" if is_line(told, place.area) else f"on the edge of {name}"
                text = f"A foot {edge}?" if is_feet(place) else f"{capital(edge)}?"
                usual = "" if is_feet(place) or place.side is not None else "in"
                yield ask("edge", "rules", text, *about, name=place.area, usual=usual)
        if isinstance(record, Rule):
            yield from _volleys(told, record)


def _has_an_edge(told: Telling, place: In) -> bool:
    if place.area in _WHOLE and not is_feet(place):
        return False
    return getattr(told.setting.items.get(place.area), "care", None) not in ("about", "anywhere")


def _volleys(told: Telling, rule: Rule) -> Iterator[Question]:
    """Ask what a ball taken out of the air counts as, where the stroke depends on where it had bounced."""
    must = rule.must
    if not isinstance(must, UseStroke) or "volley" in must.strokes or _none_volley(told):
        return
    for place in rule.when:
        if isinstance(place, In) and place.judged == "bounce" and place.volleyed is None:
            text = f"Taken out of the air: as a ball {bounces(told, (place,))}?"
            yield ask("volleyed", "rules", text, place.area, rule.id, name=place.area)


def _none_volley(told: Telling) -> bool:
    """Whether every ball has to bounce anyway."""
    rules = told.setting.rules.values()
    return any(isinstance(rule.must, Bounces) and (rule.must.least or 0) > 0 and not rule.who for rule in rules)


def _needs_a_call(told: Telling, record: Any, field: str) -> bool:
    """Whether somebody has to judge something: where a ball bounced, where a foot was, whether a feed was good."""
    if isinstance(record, Start):
        return bool(record.good) or (field == "called_by" and _can_be_bad(told, record))
    return any(True for _ in places_in(record))


def _has(record: Any, field: str) -> bool:
    """Whether a record, or a record inside it, answers ``field``."""
    if isinstance(record, Record):
        own = field in type(record).model_fields and bool(getattr(record, field))
        return own or any(_has(getattr(record, name), field) for name in type(record).model_fields)
    return isinstance(record, tuple) and any(_has(value, field) for value in record)


def _open(told: Telling, field: str) -> list[str]:
    return [record.id for record in _records(told) if _needs_a_call(told, record, field) and not _has(record, field)]


def _calls(told: Telling) -> Iterator[Question]:
    """Ask who calls a breach and what doubt means, once for the whole drill."""
    house = told.drill.house
    ids = [] if house.called_by else _open(told, "called_by")
    if ids:
        yield ask("caller", "rules", "Who calls?", *ids, usual="players call their own lines")
    ids = [] if house.in_doubt is not None else _open(told, "in_doubt")
    if ids:
        yield ask("doubt", "rules", "In doubt?", *ids, usual="replay")


def _points(told: Telling) -> Iterator[Question]:
    setting = told.setting
    paying = [points for points in _sorted(setting.points) if points.gives.then == "points"]
    if not paying:
        if _played(told) and not _scores_itself(setting.finish):
            yield ask("points", "points", "How does a point end?")
        return
    plain = [points for points in paying if any(_is_plain_win(event) for event in points.on)]
    for points in paying if plain else ():
        if points not in plain and points.beside is None:
            text = "Both at once: added, instead, or the higher?"
            yield ask("beside", "points", text, points.id, plain[0].id, name=points.id)


def _scores_itself(finish: Finish | None) -> bool:
    """Whether the score is that of the game itself."""
    return finish is not None and finish.kind in ("game", "tie-break")


def _is_plain_win(event: Event) -> bool:
    several = (event.count or 1) > 1
    return (
        event.what == "won"
        and not several
        and not (event.and_ or event.when or event.where or event.strokes or event.of)
    )


def _finish(told: Telling) -> Iterator[Question]:
    finish = told.setting.finish
    if finish is None:
        yield ask("finish", "points", "Where does it end?")
        return
    if finish.kind in ("race", "goal") and finish.to is None:
        yield ask("to", "points", "How many does it take?", finish.id)
    if finish.kind == "total" and finish.to is None and finish.starts is None and finish.minutes is None:
        yield ask("to", "points", "How many starts, or how many minutes?", finish.id)
    if finish.minutes is not None and finish.last_rally is None:
        yield ask("last-rally", "points", "Time is up in a rally?", finish.id, usual="the last rally is played out")
    if _can_be_level(finish):
        yield ask("level", "points", "Totals level?", finish.id, usual="one more start each")


def _can_be_level(finish: Finish) -> bool:
    total = finish.kind == "total" and finish.to is None
    return total and finish.level is None and finish.scores != "all together"


def _stop(told: Telling) -> Iterator[Question]:
    if not told.setting.shots or told.drill.house.stopped is not None:
        return
    if not any(map(is_stop, told.setting.points.values())):
        yield ask("stop", "care", f"{STOP} Then?", usual="replay")
