"""The rules of a rally: who, when, what, and what a breach costs."""

from __future__ import annotations

from collections.abc import Iterator

from designer.drill.conditions import Event, In
from designer.drill.rules import Aim, Part, Rule
from designer.wording.branches import branch_words, branches_apart
from designer.wording.counts import listed, ordinal
from designer.wording.events import AIM, clause
from designer.wording.misses import in_play, is_plain_miss, miss_words, misses, off_and_out, replays
from designer.wording.musts import at_own_hit, demand, is_next_hit
from designer.wording.names import choice_word, letter, shots_named
from designer.wording.outcomes import outcome
from designer.wording.people import Group, calls, group
from designer.wording.scope import drawn_shots, first_hits, in_hits, in_parts
from designer.wording.sentence import Sentence, sentence, sentences_of, unmarked
from designer.wording.settled import settled
from designer.wording.telling import Telling, once
from designer.wording.tokens import own_text
from designer.wording.where import bounces, feet, is_feet


@once
def rules(told: Telling) -> tuple[Sentence, ...]:
    """Return the rules of the rally, feeds left out: they stand under the start."""
    found: list[Sentence] = [*settled(told), *in_play(told)]
    for rule, twin, part in told_together(told):
        found.append(rule_sentence(told, rule, missed=part) if twin is None else _for_both(told, rule, twin))
    return (*found, *misses_left(told), *replays(told))


@once
def told_together(told: Telling) -> Iterator[tuple[Rule, Rule | None, Part | None]]:
    """Yield each rule of the rally once, with the rule that asks the same of the opponent, and the part whose miss costs the same."""
    binding = _binding(told)
    joined = joined_misses(told, binding)
    said: set[str] = set()
    for rule in binding:
        if rule.id in said:
            continue
        twin = None
        if rule.id not in joined:
            twin = next((other for other in binding if other.id not in said and _are_twins(told, rule, other)), None)
        said |= {rule.id} if twin is None else {rule.id, twin.id}
        yield rule, twin, joined.get(rule.id)


def misses_left(told: Telling) -> Iterator[Sentence]:
    """Yield what misses cost that no rule has said."""
    binding = _binding(told)
    yield from misses(told, binding, joined_misses(told, binding).values())


def _binding(told: Telling) -> list[Rule]:
    return [rule for rule in ordered(told) if not is_about_feed(told, rule)]


def joined_misses(told: Telling, binding: list[Rule]) -> dict[str, Part]:
    """Return, by rule, the part whose miss costs what a breach of the rule does, so that both are said at once."""
    found: dict[str, Part] = {}
    for part in told.parts:
        if not is_plain_miss(told, part):
            continue
        alike = [rule for rule in binding if _costs_as_a_miss(told, rule, part)]
        # A miss is anybody's: it goes with a rule for all, or with the only one there is.
        chosen = [rule for rule in alike if not rule.who] or (alike if len(alike) == 1 else [])
        if chosen:
            found[chosen[-1].id] = part
    return found


def _costs_as_a_miss(told: Telling, rule: Rule, part: Part) -> bool:
    plain = rule.breach is not None and not (rule.never or rule.of or rule.when or rule.called_by)
    whole = rule.parts == (part.id,) or (not rule.parts and told.parts == (part,))
    return plain and whole and rule.breach == part.failed and bool(_if_not(told, rule))


def ordered(told: Telling) -> list[Rule]:
    """Return the rules in the order of the parts they hold in, then as the file has them."""
    order = {part.id: place for place, part in enumerate(told.parts)}
    return sorted(
        told.setting.rules.values(),
        key=lambda rule: min((order.get(id, len(order)) for id in rule.parts), default=-1),
    )


def is_about_feed(told: Telling, rule: Rule) -> bool:
    """Whether a rule is only about balls that are put in, so that it belongs to the start."""
    shots = [told.setting.shots[id] for id in rule.of if id in told.setting.shots]
    if shots:
        return all(told.is_new_ball(shot) for shot in shots)
    if not _only_touches(rule):
        return False
    named = [told.setting.shots.get(id) for event in rule.when if isinstance(event, Event) for id in event.of]
    return bool(named) and all(shot is not None and told.is_new_ball(shot) for shot in named)


def _only_touches(rule: Rule) -> bool:
    """Whether the rule says that somebody leaves a ball alone; then its demand names that ball."""
    must = rule.must
    any_stroke = must.do == "use stroke" and not getattr(must, "strokes", ()) and getattr(must, "wing", None) is None
    return rule.never and any_stroke


def doer_of(told: Telling, rule: Rule) -> Group | None:
    """Return whom a rule binds, None for everyone; a rule about drawn shots binds their hitters."""
    named = group(told, rule.who)
    if named is not None:
        return named
    shooters = tuple(dict.fromkeys(told.setting.shots[id].by for id in rule.of if id in told.setting.shots))
    return group(told, shooters) if len(shooters) == 1 else None


def rule_sentence(told: Telling, rule: Rule, *, missed: Part | None = None) -> Sentence:
    """Return the whole rule as a sentence: scope, demand, cost, who calls, and its note.

    ``missed``: the part in which a miss costs the same, said with it.
    """
    also = () if missed is None else (missed.id,)
    words = _all_of_it(told, rule, "" if missed is None else miss_words(told, missed))
    return sentence(f"rule:{rule.id}", words, rule.id, *rule.of, *also)


def _all_of_it(told: Telling, rule: Rule, missed: str = "") -> str:
    merged = off_and_out(told, rule, doer_of(told, rule))
    text = [merged] if merged else [rule_words(told, rule), _if_not(told, rule, missed), *from_middle(rule)]
    return sentences_of(*text, *remarks(told, rule))


def remarks(told: Telling, rule: Rule) -> tuple[str, ...]:
    """Return what is said after a rule and its cost: who calls, what doubt means, its note."""
    return (_calls(told, rule), *_doubt(told, rule), own_text(told, rule.note))


def _are_twins(told: Telling, rule: Rule, other: Rule) -> bool:
    """Whether two rules ask the same of two opponents, each of the other's letters."""
    if rule.id == other.id or len(rule.who) != 1 or len(other.who) != 1:
        return False
    (one,), (two,) = rule.who, other.who
    if told.opponents(one) != (two,) or rule.of or other.of:
        return False
    return _with_signs(told, rule, one, two) == _with_signs(told, other, two, one)


def _with_signs(told: Telling, rule: Rule, one: str, two: str) -> str:
    """Return a rule's words with its own person and the opponent as signs, so that two rules can be compared."""
    text = _all_of_it(told, rule).replace(letter(told, one), "\x04").replace(letter(told, two), "\x05")
    return unmarked(text)


def _for_both(told: Telling, rule: Rule, twin: Rule) -> Sentence:
    words = _all_of_it(told, rule.changed(who=()))
    if any(isinstance(condition, In) for condition in rule.when):
        words = words.replace("\x02the ", "\x02your own ", 1)
    return sentence(f"rule:{rule.id}", words, rule.id, twin.id)


def rule_words(told: Telling, rule: Rule, *, cost: bool = True) -> str:
    """Return what a rule demands; ``cost``: with what it costs where that stands in the same sentence."""
    doer = doer_of(told, rule)
    asked = demand(told, rule, doer)
    scope, condition = scope_of(told, rule), condition_of(told, rule)
    head = ", ".join(words for words in (*scope, condition) if words)
    text = f"{head}, {asked.text}" if head else asked.text
    if asked.forbidden and condition.startswith("from ") and not scope:
        text = f"{asked.text}{'' if 'hit' in asked.text else ', hit'} {condition}"
    if asked.forbidden:
        if rule.breach is None:
            return f"not allowed: {text}"
        return f"{text}: {outcome(told, rule.breach, doer)}" if cost else text
    return text


def scope_of(told: Telling, rule: Rule) -> tuple[str, ...]:
    """Return during which parts and for which hits a rule holds, () for all: ("until open", "after the return")."""
    found = (_parts_words(told, rule, doer_of(told, rule)), _hits_words(told, rule))
    return tuple(words for words in found if words)


def condition_of(told: Telling, rule: Rule) -> str:
    """Return after what a rule holds, or after which choice; "" for always."""
    return "" if _only_touches(rule) else when(told, rule) or _branch(told, rule)


def _branch(told: Telling, rule: Rule) -> str:
    """Return after which choice the balls of a rule are played, where others of their digit follow another choice."""
    found = [step for id in rule.of if (step := told.sequence.step(id)) is not None]
    words = {branch_words(told, step).removesuffix(", ") for step in found if branches_apart(told, step)}
    return words.pop() if len(words) == 1 and found else ""


def _parts_words(told: Telling, rule: Rule, doer: Group | None) -> str:
    named = rule.of or (_only_touches(rule) and bool(rule.when)) or len(drawn_shots(told, rule, doer)) == 1
    return "" if named or first_hits(told, rule, doer) is not None else in_parts(told, rule.parts)


def _hits_words(told: Telling, rule: Rule) -> str:
    return "" if is_next_hit(rule) else in_hits(told, rule)


def _if_not(told: Telling, rule: Rule, missed: str = "") -> str:
    doer = doer_of(told, rule)
    if rule.breach is None or demand(told, rule, doer).forbidden:
        return ""
    return f"if not{missed and f', {missed}'}: {outcome(told, rule.breach, doer)}"


def _calls(told: Telling, rule: Rule) -> str:
    doer = doer_of(told, rule)
    if not rule.called_by or rule.called_by == told.drill.house.called_by:
        return ""
    return calls(told, rule.called_by, doer, feet=demand(told, rule, doer).feet)


def _doubt(told: Telling, rule: Rule) -> Iterator[str]:
    if rule.in_doubt is not None and rule.in_doubt != told.drill.house.in_doubt:
        yield f"in doubt: {rule.in_doubt}"


def from_middle(rule: Rule) -> Iterator[str]:
    """Yield what a ball hit from the middle counts as, where a rule asks for its line and says so."""
    lines = {"new line": "on a new line", "same line back": "back on its line"}
    if isinstance(rule.must, Aim) and rule.must.from_middle is not None and rule.must.direction in lines:
        any_or_no = "any" if rule.must.from_middle == "either" else "no"
        yield f"from the middle {any_or_no} ball is {lines[rule.must.direction]}"


def when(told: Telling, rule: Rule) -> str:
    """Return after what a rule holds: "after a bounce in the eight-racket side", "after the return"; "" for always."""
    places = tuple(item for item in rule.when if isinstance(item, In))
    doer = doer_of(told, rule)
    if places:
        on_feet = [place for place in places if is_feet(place)]
        if on_feet:
            return f"from {feet(told, on_feet[0])}"
        own = doer.own if doer is not None and doer.one is not None else None
        head = "after playing a ball that bounced" if is_next_hit(rule) else "after a bounce"
        return f"{head} {bounces(told, places, own)}"
    words = [_after(told, event, rule, doer) for event in rule.when if isinstance(event, Event)]
    return listed(words, "or")


def _unless(told: Telling, ids: tuple[str, ...]) -> str:
    """Return which balls that may be played instead are not meant: " (not a lob)"."""
    first = told.sequence.step(ids[0])
    if first is None or not first.alternatives:
        return ""
    before = told.sequence.before.get(ids[0])
    others = [
        step.shot.id
        for step in told.sequence.steps
        if step.alternatives and told.sequence.before.get(step.shot.id) == before and step.shot.id not in ids
    ]
    named = [id for id in others if choice_word(told, told.setting.shots[id]) is not None]
    return f" (not {shots_named(told, named)})" if named else ""


def _after(told: Telling, event: Event, rule: Rule, doer: Group | None) -> str:
    hit = event.what in ("played", "landed")
    if at_own_hit(rule) and doer is not None and event.count:
        served = ", the serve counted" if "serving side" in event.by or "server" in event.by else ""
        return f"at {doer.own} {ordinal(event.count)} hit{served}"
    if hit and event.of and not event.where:
        return f"after {shots_named(told, event.of)}{_unless(told, event.of)}"
    if hit and event.aim is not None and not event.of and not event.where:
        return f"after a ball {AIM[event.aim]}"
    if hit and event.where and not event.of:
        on_feet = [place for place in event.where if is_feet(place)]
        if on_feet:
            return f"from {feet(told, on_feet[0])}"
        return f"after a ball {bounces(told, event.where)}"
    if event.strokes and not event.where:
        return f"after a {listed([str(stroke) for stroke in event.strokes], 'or')}"
    return f"once {clause(told, event)}"
