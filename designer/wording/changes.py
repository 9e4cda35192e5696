"""What a setting changes over the one below it: for tabs, for progressions, for easier and harder."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from designer.drill.drill import Drill
from designer.drill.setting import At, progression_at, variation_at
from designer.play.rally import opening_part
from designer.wording.counts import listed
from designer.wording.events import trigger
from designer.wording.finishes import finish_head
from designer.wording.layout import layout_of
from designer.wording.moves import moved_items, moved_people
from designer.wording.names import letter, shot_name, thing_name, without_article
from designer.wording.outcomes import outcome
from designer.wording.points import points_sentence
from designer.wording.rules import doer_of, rule_sentence, rule_words
from designer.wording.sentence import Lead, Ref, Sentence, sentence, sentences_of, unmarked
from designer.wording.starts import put_in
from designer.wording.strokes import deed
from designer.wording.swaps import swap_words
from designer.wording.telling import Telling, telling
from designer.wording.tokens import own_text

SHORT = 45
"""As many characters as stand under a tab."""


@dataclass(frozen=True, slots=True)
class Change:
    """One difference: its words, the records it speaks of, and how much it says about the setting (0 says most)."""

    text: str
    about: tuple[str, ...]
    rank: int


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
    told = telling(drill, at)
    found = _summary(told) if _is_first(drill, at) else sorted(changes(told), key=lambda change: change.rank)
    line = ""
    for change in found:
        text = unmarked(change.text).rstrip(".")
        longer = f"{line}, {text}" if line else text
        if len(longer) <= SHORT:
            line = longer
    if not line and found:
        line = _cut(unmarked(found[0].text))
    return line


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
    for number, progression in enumerate(told.drill.progressions, 1):
        at = At(progression.id)
        name = " ".join(progression.name.split())
        if progression.id == told.at.progression:
            text = "This card."
        else:
            text = " ".join(change.text for change in changes_in_words(told.drill, at))
        aim = own_text(telling(told.drill, at), progression.aim)
        note = own_text(telling(told.drill, at), progression.note)
        words = sentence("", sentences_of(aim, text, note))
        parts = ((Ref(progression.id, f"{name}"), ". ") if name else ()) + words.parts
        found.append(Sentence(f"progression:{progression.id}", parts, (progression.id,), Lead("number", str(number))))
    return tuple(found)


def variations_of(told: Telling, degree: str) -> tuple[Sentence, ...]:
    """Return what each easier, harder or other form of this progression changes, a bullet for each change."""
    found: list[Sentence] = []
    for variation in getattr(progression_at(told.drill, told.at), degree):
        at = At(told.at.progression, variation.id)
        own = replace(told, at=at, setting=telling(told.drill, at).setting)
        made = [
            sentence(f"variation:{variation.id}:{n}", c.text, variation.id, *c.about)
            for n, c in enumerate(changes(own), 1)
        ]
        note = own_text(own, variation.note)
        if not made:
            text = own_text(own, variation.name) or "nothing is changed yet"
            made = [sentence(f"variation:{variation.id}", text, variation.id)]
        if note:
            made.append(sentence(f"variation:{variation.id}:note", note, variation.id))
        found += [one.led_by(Lead("bullet")) for one in made]
    return tuple(found)


def changes(told: Telling) -> Iterator[Change]:
    """Yield what a setting changes, in the order of a card."""
    yield from _court(told)
    yield from _items(told)
    for ids, words in moved_people(told):
        yield Change(words, ids, 4)
    yield from _starts(told)
    yield from _shots(told)
    yield from _parts(told)
    yield from _rules(told)
    yield from _points(told)
    yield from _finish(told)
    yield from _swaps(told)


def _court(told: Telling) -> Iterator[Change]:
    old, new = told.below.setting, told.setting
    if old.in_play != new.in_play and new.in_play is not None:
        item = new.items.get(new.in_play)
        name = without_article(thing_name(told, item) or "") if item is not None else new.in_play
        yield Change(f"in play: {name}", (), 3)
    if old.ball != new.ball and new.ball is not None:
        ball = own_text(told, new.ball)
        yield Change(ball if ball.endswith("ball") else f"{ball} ball", (), 2)


def _items(told: Telling) -> Iterator[Change]:
    for ids, words in moved_items(told):
        yield Change(words, ids, 3)
    old, new = told.below.setting.items, told.setting.items
    added = [id for id in new if id not in old]
    for found in layout_of(told):
        if found.about and found.about[0] in added:
            yield Change(_keep_marks(found), found.about, 6)
    names = [without_article(thing_name(told.below, item) or "thing") for id, item in old.items() if id not in new]
    if names:
        yield Change(f"no {listed(list(dict.fromkeys(names)), 'or')}", (), 7)


def _keep_marks(found: Sentence) -> str:
    return found.text


def _starts(told: Telling) -> Iterator[Change]:
    old, new = told.below.setting, told.setting
    for start in (*told.first_starts, *told.later_starts):
        before = old.starts.get(start.id)
        words = put_in(told, start)
        if start.once is None and (before is None or put_in(told.below, before) != words):
            yield Change(words, (start.id,), 0)
        elif before is not None and before.bad != start.bad and start.bad is not None:
            yield Change(f"bad feed: {outcome(told, start.bad)}", (start.id,), 5)
    del new


def _shots(told: Telling) -> Iterator[Change]:
    old, new = told.below.setting.shots, told.setting.shots
    started = {start.shot for start in told.setting.starts.values() if start.once is None}
    for step in told.sequence.steps:
        before = told.below.sequence.step(step.shot.id)
        if step.shot.id in started or not old:
            continue
        words = deed(told, step)
        if before is None:
            later = any(start.shot == step.shot.id for start in told.later_starts)
            said = f"{letter(told, step.hitter)} {'hits a second ball' if later else words}"
            yield Change(said, (step.shot.id,), 2 if later else 5)
        elif before.shot != step.shot and deed(told.below, before) != words:
            yield Change(f"{letter(told, step.hitter)} {words}", (step.shot.id,), 2)
    for id, shot in old.items():
        if id in new:
            continue
        if any(start.shot == id for start in told.below.later_starts):
            yield Change("no second ball", (), 1)
        elif shot.stroke in ("lob", "drop shot", "smash") and not _forbidden(told, shot.stroke):
            yield Change(f"no {shot.stroke}", (), 4)


def _forbidden(told: Telling, stroke: str) -> bool:
    return any(rule.never and stroke in getattr(rule.must, "strokes", ()) for rule in told.setting.rules.values())


def _parts(told: Telling) -> Iterator[Change]:
    old, new = told.below.setting, told.setting
    was, now = opening_part(old), opening_part(new)
    if now is not None and (was is None or was[0].until != now[0].until):
        whens = [trigger(told, event) for event in now[0].until]
        text = f"the point opens {listed(whens, 'or')}" if whens else "then the point is open"
        yield Change(text, (now[0].id, now[1].id), 1)
    elif (now is None and was is not None and any(part.kind == "open" for part in new.parts.values())) or (
        now is None and told.below.cooperative and any(part.kind == "open" for part in new.parts.values())
    ):
        yield Change("the point is open from the first hit", (), 1)
    for id, part in new.parts.items():
        before = old.parts.get(id)
        if before is not None and before.failed != part.failed and part.failed is not None:
            yield Change(f"a miss: {outcome(told, part.failed)}", (id,), 3)
        if (
            before is not None
            and part.kind != "open"
            and (now is None or now[0].id != id)
            and before.until != part.until
        ):
            yield Change(f"{listed([trigger(told, event) for event in part.until], 'or')} it goes on", (id,), 3)


def _rules(told: Telling) -> Iterator[Change]:
    old, new = told.below.setting.rules, told.setting.rules
    for id, rule in new.items():
        before = old.get(id)
        words = rule_sentence(told, rule).text
        if before is None:
            yield Change(words, (id,), 2)
        elif before != rule and rule_sentence(told.below, before).text != words:
            same = rule_words(told.below, before) == rule_words(told, rule)
            if same and rule.breach is not None and before.breach != rule.breach:
                yield Change(
                    f"{unmarked(rule_words(told, rule))}: {outcome(told, rule.breach, doer_of(told, rule))}", (id,), 4
                )
            else:
                yield Change(words, (id,), 3)
    for id, rule in old.items():
        if id not in new and not _part_gone(told, rule.parts) and not _shots_gone(told, rule.of):
            yield Change(f"rule off: {unmarked(rule_words(told.below, rule)).rstrip('.')}", (), 2)


def _part_gone(told: Telling, ids: tuple[str, ...]) -> bool:
    return bool(ids) and all(id not in told.setting.parts for id in ids)


def _shots_gone(told: Telling, ids: tuple[str, ...]) -> bool:
    return bool(ids) and all(id not in told.setting.shots for id in ids)


def _points(told: Telling) -> Iterator[Change]:
    old, new = told.below.setting.points, told.setting.points
    for id, record in new.items():
        before = old.get(id)
        if record.gives.then != "points" or before == record:
            continue
        found = points_sentence(told, [record])
        value = found.lead.text if found.lead is not None else ""
        rank = 3 if record.beside is not None else 5
        yield Change(f"{value} {found.text[0].lower()}{found.text[1:]}", (id,), rank)


def _finish(told: Telling) -> Iterator[Change]:
    old, new = told.below.setting.finish, told.setting.finish
    if new is None or new == old:
        return
    words = finish_head(told, new)
    if old is not None and old.kind == new.kind and old.changed(to=new.to) == new and old.to is not None:
        words = f"{words}, not {old.to}"
    yield Change(words, (new.id,), 4)


def _swaps(told: Telling) -> Iterator[Change]:
    for id, swap in told.setting.swaps.items():
        before = told.below.setting.swaps.get(id)
        if before != swap:
            words = swap_words(told, swap) or own_text(told, swap.note)
            if words:
                yield Change(words, (id,), 6)


def _summary(told: Telling) -> list[Change]:
    """Return what the first progression is about: what counts and where it ends."""
    found: list[Change] = []
    for record in told.setting.points.values():
        if record.gives.then == "points":
            found.append(
                Change(
                    f"counts: {unmarked(points_sentence(told, [record]).text)[0].lower()}{points_sentence(told, [record]).text[1:]}",
                    (record.id,),
                    1,
                )
            )
    end = told.setting.finish
    if end is not None:
        found.append(Change(finish_head(told, end), (end.id,), 0))
    found.sort(key=lambda change: change.rank)
    return found or [Change(", ".join(shot_name(told, s.shot) for s in told.sequence.steps) or "not yet drawn", (), 0)]


def own_name(drill: Drill, at: At) -> str:
    """Return the name of a variation or progression as it stands on a tab."""
    variation = variation_at(drill, at)
    return " ".join((variation or progression_at(drill, at)).name.split())
