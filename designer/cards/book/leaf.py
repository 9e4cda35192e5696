"""A drill of a handbook: what is kept of it for the pages round the drills, and how it is read again to be set."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Final

from designer.cards.attachment import carried
from designer.cards.book.signs import declined
from designer.drill.acceptance import holds_anywhere
from designer.drill.drill import Drill, House
from designer.drill.handbook import Entry, Handbook, HouseRule
from designer.drill.setting import main_setting, setting_at
from designer.review.house_rules import broken, strokes
from designer.wording.care import accepted_words
from designer.wording.kit import counted
from designer.wording.sentence import typeset, unmarked
from designer.wording.telling import Telling, telling
from designer.wording.tokens import own_text
from designer.wording.vocabulary import Vocabulary

GROUPS: Final = ("situation", "phase", "stroke", "level", "work")
"""Groups of tags that are counted and listed; "stage" counts as a level."""


@dataclass(frozen=True, slots=True)
class Summary:
    """What the pages round the drills need of one: so little that hundreds of them take no room.

    ``aim`` is the objective as it is looked up, by what is done.
    """

    title: str
    objective: str
    aim: str
    code: str
    id: str
    edition: int
    tags: tuple[str, ...]
    parts: tuple[str, ...]
    players: tuple[int, ...]
    kit: tuple[str, ...]
    minutes: int | None
    coach: bool
    accepted: tuple[str, ...]
    broken: tuple[HouseRule, ...]

    def tagged(self, group: str) -> tuple[str, ...]:
        """Return what the drill is tagged with in ``group``, in words."""
        groups = ("level", "stage") if group == "level" else (group,)
        found = (tag.partition(":") for tag in self.tags)
        return tuple(name.replace("-", " ") for own, _, name in found if own in groups and name)


@dataclass(frozen=True, slots=True)
class Leaf:
    """An entry with its drill, or the reason why there is none.

    ``read`` gives the drill as it is printed; it is read anew for it, so that a book of hundreds holds one at a time.
    ``source`` are the bytes of its file, which are attached, ``digest`` their SHA-256; ``carried`` is what to know of them.
    """

    entry: Entry
    summary: Summary | None
    reason: str = ""
    digest: str = ""
    source: bytes = field(default=b"", repr=False)
    read: Callable[[], Drill] | None = None
    carried: tuple[str, ...] = ()

    @property
    def title(self) -> str:
        """The drill's title, else its file."""
        return (self.summary.title or "Untitled drill") if self.summary else self.entry.file

    @property
    def is_stale(self) -> bool:
        """Whether the drill has changed since its state was given."""
        return bool(self.entry.seen and self.digest and self.entry.seen != self.digest)


def leaf(book: Handbook, entry: Entry, drill: Drill, source: bytes, digest: str, read: Callable[[], Drill]) -> Leaf:
    """Return the leaf of ``drill``, which ``read`` gives again as it is in its file ``source``.

    A drill in a script that cannot be set has a reason instead of a summary.
    """
    if reason := declined(drill):
        return without(entry, f"{entry.file}: {reason}")
    return Leaf(
        entry,
        summary(book, entry, as_printed(book, drill)),
        digest=digest,
        source=source,
        read=lambda: as_printed(book, read()),
        carried=carried(drill) if book.attach else (),
    )


def without(entry: Entry, reason: str) -> Leaf:
    """Return the leaf of an entry that has no drill, for ``reason``."""
    return Leaf(entry, None, reason)


def cannot_be_set(leaf: Leaf, error: Exception) -> str:
    """Return the reason why a drill that was read cannot be printed."""
    return f"{leaf.entry.file}: cannot be set: {str(error).rstrip('.')}."


def without_failed(leaves: Sequence[Leaf], failed: Mapping[str, str]) -> list[Leaf]:
    """Return ``leaves`` without the drills of ``failed``, {number: reason}: nothing counts or names them any more."""
    return [without(leaf.entry, failed[leaf.entry.number]) if leaf.entry.number in failed else leaf for leaf in leaves]


def as_printed(book: Handbook, drill: Drill) -> Drill:
    """Return ``drill`` with the house's answers where it has none, and in the academy's words."""
    own = drill.house
    answers = {
        name: getattr(book.house, name)
        for name in House.model_fields
        if getattr(own, name) == House.model_fields[name].default
    }
    if any(value != House.model_fields[name].default for name, value in answers.items()):
        drill = drill.changed(house=own.changed(**answers))
    return Vocabulary(book.vocabulary).drill(drill)


def summary(book: Handbook, entry: Entry, drill: Drill) -> Summary:
    """Return what is kept of ``drill``, which is as it is printed."""
    at = main_setting(drill)
    said = Vocabulary(book.vocabulary).said
    told = telling(drill, at)
    least, most = drill.players or (0, 0)
    tags = (*drill.tags, *entry.tags, *(f"stroke:{name.replace(' ', '-')}" for name in strokes(drill, at)))
    return Summary(
        title=_read(told, drill.title),
        objective=(objective := _read(told, drill.objective)),
        aim=looked_up(objective) if drill.language.partition("-")[0] == "en" else objective,
        code=drill.code,
        id=drill.id,
        edition=drill.edition,
        tags=tuple(dict.fromkeys(tags)),
        parts=tuple(sorted({part.kind for part in setting_at(drill, at).parts.values()})),
        players=tuple(range(max(least, 1), most + 1)),
        kit=tuple(dict.fromkeys(map(said, _things(told)))),
        minutes=drill.minutes,
        coach=drill.coach_needed or any(job.by == "coach" for job in drill.jobs),
        accepted=tuple(
            _on_one_line(words)
            for one in drill.accepted
            if (words := accepted_words(told, one)) and holds_anywhere(drill, one)
        ),
        broken=broken(drill, book.house_rules, tags, book.stop_word),
    )


def looked_up(objective: str) -> str:
    """Return an English objective by what the player does: "return deep (against a second serve)"; else as it is.

    Of "Against a second serve I return deep." that is what a coach looks for, and all begin with the same "I".
    """
    found = _DOES.fullmatch(objective.strip().removesuffix("."))
    if found is None:
        return objective
    when = found["when"].rstrip(" ,;:")
    first, semicolon, rest = found["does"].partition(";")
    return f"{first} ({when[:1].lower()}{when[1:]}){semicolon}{rest}" if when else found["does"]


_DOES: Final = re.compile(r"(?P<when>(?:[^\s.;:?!]+ ){0,6}?)(?:I|[Ww]e) (?P<does>[^\s].*)")


def _things(told: Telling) -> Iterator[str]:
    """Yield what a drill needs, each thing in one form however many of it: "flat discs", "basket", "eye guards".

    What the author adds in more than a few words says how to use it, or what will do as well, and is no thing.
    """
    for words in counted(told):
        count, _, thing = words.partition(" ")
        if count.isdecimal():
            yield thing if count != "1" else f"{thing}s"
        else:
            yield words
    for text in told.drill.kit:
        words = _QUANTITY.sub("", _read(told, text).rstrip("."))
        if 1 <= len(words.split()) <= _FEW_WORDS and not words.startswith("or "):
            yield words


_QUANTITY: Final = re.compile(r"^(?:\d+|an?|one|two|three|four|five|six|eight|ten|twelve)\s+", re.IGNORECASE)
_FEW_WORDS: Final = 3


def _read(told: Telling, text: str) -> str:
    """Return what an author wrote as it is read: its tokens in words, on one line."""
    return _on_one_line(own_text(told, text))


def _on_one_line(words: str) -> str:
    return " ".join(typeset(unmarked(words)).split())
