"""All the words of a card, section by section, in the order in which it is read."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from designer.drill.base import Letter
from designer.drill.drill import Drill
from designer.drill.setting import At, progression_at, variation_at
from designer.wording import changes, questions
from designer.wording.bounds import bounds, no_bounds, other_rules
from designer.wording.care import care
from designer.wording.facts import Fact, FactIcon, facts, footer
from designer.wording.finishes import finish, finish_later
from designer.wording.halves import halves
from designer.wording.hands import left_handed
from designer.wording.house import house
from designer.wording.layout import layout_of
from designer.wording.names import letter
from designer.wording.own_place import own_place
from designer.wording.own_sides import own_sides
from designer.wording.points import points, points_later
from designer.wording.purposes import purposes
from designer.wording.rotations import shared_out
from designer.wording.rules import rules
from designer.wording.sentence import Lead, Sentence, one_line, sentence, sentences_of, typeset, unmarked
from designer.wording.shares import share_line
from designer.wording.starts import starts
from designer.wording.steps import steps
from designer.wording.swaps import swaps
from designer.wording.telling import Reader, Telling, telling
from designer.wording.tokens import own_text
from designer.wording.turns import changes_job, own_swaps, swaps_later
from designer.wording.units import Units

__all__ = ["CardWords", "Fact", "FactIcon", "Reader", "Section", "Units", "card_words"]


@dataclass(frozen=True, slots=True)
class Section:
    """A heading and its sentences. ``key`` is one of "you", "layout", "start", "steps" … and never changes."""

    key: str
    heading: str
    sentences: tuple[Sentence, ...]


@dataclass(frozen=True, slots=True)
class CardWords:
    """Everything a card says, apart from what stands on the diagram."""

    title: str
    objective: str
    facts: tuple[Fact, ...]
    setting_name: str
    sections: tuple[Section, ...]
    footer: tuple[str, ...]
    left_handed: Sentence | None = None

    def section(self, key: str) -> Section | None:
        """Return the section of this key, None where the card has none."""
        return next((section for section in self.sections if section.key == key), None)


def card_words(
    drill: Drill,
    at: At,
    reader: Reader,
    *,
    player: Letter | None = None,
    units: Units = "rackets",
) -> CardWords:
    """Return the words of the card of the setting at ``at`` for ``reader``.

    ``player`` is the job a player's card speaks to; without it the first job that plays. Raises ``KeyError`` where
    the drill has no such setting.
    """
    told = telling(drill, at, reader, player, units)
    sections = tuple(section for section in _sections(told) if section.sentences)
    return CardWords(
        title=typeset(unmarked(own_text(told, drill.title))),
        objective=typeset(unmarked(own_text(told, drill.objective))),
        facts=facts(told),
        setting_name=setting_name(drill, at),
        sections=sections,
        footer=footer(told),
        left_handed=left_handed(told),
    )


def setting_name(drill: Drill, at: At) -> str:
    """Return "2 Fed, then open", with ", harder" where a variation is meant."""
    progression = progression_at(drill, at)
    number = [p.id for p in drill.progressions].index(progression.id) + 1
    name = one_line(f"{number} {progression.name}")
    variation = variation_at(drill, at)
    if variation is None:
        return name
    for degree in ("easier", "harder"):
        if any(own.id == variation.id for own in getattr(progression, degree)):
            return f"{name}, {degree}"
    return f"{name}, {one_line(variation.name) or 'another form'}"


def _sections(told: Telling) -> Iterator[Section]:
    """Yield the sections in card order; those without sentences are left out later."""
    yield from _of_player(told) if told.brief else _of_coach(told)


def _of_player(told: Telling) -> Iterator[Section]:
    """Yield what a player asks, in that order: who am I, what do I do, what may I not do, how do we score, when do we swap."""
    start = _first_job(told)
    yield Section("you", "You", tuple(_you(told, start)))
    yield from _played(told)
    asked = questions.of_rules(told)
    costs = tuple(each for each in asked if each.key.startswith("question:cost"))
    others = tuple(each for each in asked if each not in costs)
    yield Section("bounds", "Not allowed", (*(bounds(told) or (() if asked else no_bounds(told))), *costs))
    yield Section("points", "Points", _points(told))
    yield Section("swap", "Swap", (*own_swaps(told, start), *shared_out(told), *questions.of_swap(told)))
    later = (*finish_later(told), *swaps_later(told, start))
    yield Section("rules", "Rules", (*other_rules(told), *points_later(told), *house(told), *later, *others))
    yield Section("cues", "Remember", tuple(_texts(told, "cue", told.drill.cues)))
    yield Section("care", "Take care", care(told))


def _of_coach(told: Telling) -> Iterator[Section]:
    """Yield the coach's sections: all that is laid out and played, then the other settings and what to look for."""
    played = (
        *_played(told),
        Section("rules", "Rules", (*rules(told), *house(told), *questions.of_rules(told))),
        Section("points", "Points", _points(told)),
        Section("swap", "Swap", (*swaps(told), *shared_out(told), *questions.of_swap(told))),
    )
    after = tuple(_beside_play(told))
    yield Section("layout", "Lay out", tuple(_laid_out(told, (*played, *after))))
    yield from played
    yield from after


def _played(told: Telling) -> Iterator[Section]:
    """Yield how a rally starts and goes on."""
    # Under "You start as A" a player takes "Start" for where to stand.
    heading = "First ball" if told.brief else "Start"
    yield Section("start", heading, (*starts(told), *questions.of_start(told)))
    yield Section("steps", "What happens", (*steps(told), *questions.of_steps(told)))


def _points(told: Telling) -> tuple[Sentence, ...]:
    """Return what is paid and where it ends, and for the coach what a target is for."""
    end = finish(told)
    ending = (end,) if end is not None else ()
    aims = () if told.brief else purposes(told)
    return (*points(told), *ending, *aims, *questions.of_points(told))


def _beside_play(told: Telling) -> Iterator[Section]:
    """Yield a coach's sections after those of the play."""
    yield Section("progressions", "Progressions", changes.progressions(told))
    yield Section("easier", "Easier", changes.variations_of(told, "easier"))
    yield Section("harder", "Harder", changes.variations_of(told, "harder"))
    if told.reader == "stand-in":
        yield Section("others", "Other forms", changes.variations_of(told, "others"))
    yield Section("cues", "Say", tuple(_texts(told, "cue", told.drill.cues)))
    yield Section("watch", "Watch for", tuple(_texts(told, "watch", told.drill.watch_for)))
    hand = left_handed(told)
    yield Section("left-handed", "Left-handed", (hand,) if hand is not None else ())
    yield Section("care", "Take care", care(told))


def _laid_out(told: Telling, rest: tuple[Section, ...]) -> Iterator[Sentence]:
    """Yield the layout list with the parts of the court that the ``rest`` names, before what a stride is."""
    laid = layout_of(told)
    text = " ".join(found.text for section in rest for found in section.sentences)
    yield from (found for found in laid if found.key != "layout:key")
    yield from halves(told, text)
    yield from share_line(told)
    yield from (found for found in laid if found.key == "layout:key")


def _texts(told: Telling, key: str, texts: tuple[str, ...]) -> Iterator[Sentence]:
    limit = 2 if told.brief and key == "cue" else len(texts)
    for number, text in enumerate(texts[:limit], 1):
        words = own_text(told, text)
        if words:
            found = sentence(f"{key}:{number}", words)
            yield found if told.brief else replace(found, lead=Lead("bullet"))


def _first_job(told: Telling) -> Letter | None:
    """Return the job in which the reader of a player's card starts, None where nobody plays."""
    jobs = [job.letter for job in told.drill.jobs if job.by == "player"]
    return told.player or next((job for job in jobs if job in told.ends), None) or next(iter(told.playing), None)


def _you(told: Telling, start: Letter | None) -> Iterator[Sentence]:
    """Yield which job the reader starts in and where that is, so that nobody looks for it among the steps."""
    if start is None:
        return
    spot = told.setting.spot_of(start)
    about = (spot.id,) if spot is not None else ()
    head = f"you {'start as' if changes_job(told, start) else 'are'} {letter(told, start)}"
    yield sentence("you", sentences_of(head), *about, lead=Lead("person", start))
    place = "" if spot is None else own_place(told, spot)
    if spot is not None and spot.task != "plays":
        task = "you wait first" if spot.task == "waits" else "you collect first"
        place = f"{task}: {place}" if place else task
    rest = sentences_of(place, own_sides(told, start))
    if rest:
        yield sentence("you:next", rest, *about)
