"""Who: the people of a rule or an event as a card names them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from designer.drill.base import Letter
from designer.drill.conditions import Person, Who
from designer.drill.places import is_letter
from designer.wording.counts import listed
from designer.wording.names import letter
from designer.wording.telling import Telling

_WORDS: Final = {
    "server": "the server",
    "receiver": "the receiver",
    "serving side": "the serving pair",
    "receiving side": "the receiving pair",
    "near": "the near player",
    "far": "the far player",
    "winner": "the winner",
    "loser": "the loser",
    "doer": "the hitter",
    "other": "the opponent",
    "others": "everyone else",
    "anyone": "anyone",
}


@dataclass(frozen=True, slots=True)
class Group:
    """Some people: their letters where the drawing tells them, the words for them, and whether they are several."""

    letters: tuple[Letter, ...]
    words: str
    several: bool = False

    @property
    def one(self) -> Letter | None:
        """The one letter that is meant, None where it may be more than one."""
        return self.letters[0] if len(self.letters) == 1 else None

    @property
    def own(self) -> str:
        """The words as an owner: "A's", "the server's"."""
        return f"{self.words}'" if self.several and self.words.endswith("s") else f"{self.words}'s"

    @property
    def either(self) -> str:
        """The words for any one of them: "A or C"."""
        return self.words.replace(" and ", " or ")

    def verb(self, one: str, several: str) -> str:
        """Return the form of a verb that fits."""
        return several if self.several else one


def group(told: Telling, who: Who, doer: Group | None = None, link: str = "and") -> Group | None:
    """Return the people of ``who``, None where nobody is named, which means everyone.

    ``doer`` is who the rule or event is about; "doer" and "other" are read from it.
    """
    if not who:
        return None
    groups = [_person(told, person, doer) for person in who]
    letters = tuple(dict.fromkeys(letter for group in groups for letter in group.letters))
    words = listed(list(dict.fromkeys(group.words for group in groups)), link)
    return Group(letters, words, several=(len(groups) > 1 and link == "and") or any(g.several for g in groups))


def _person(told: Telling, person: Person, doer: Group | None) -> Group:
    if is_letter(person):
        return Group((person,), letter(told, person))
    letters = _letters(told, person, doer)
    if len(letters) == 1:
        return Group(letters, letter(told, letters[0]))
    if person in ("near", "far") and len(letters) > 1:
        return Group(letters, f"the {person} pair")
    if person == "other":
        return Group(letters, "the other pair" if len(told.playing) > 2 else "the opponent")
    if person in ("serving side", "receiving side") and len(told.playing) == 2:
        return Group(letters, "the server" if person == "serving side" else "the receiver")
    if person == "others" and len(told.playing) == 2:
        # Of two, everyone else is the opponent.
        across = opponents(told, doer.letters) if doer is not None else ()
        return Group(across, letter(told, across[0]) if len(across) == 1 else "the opponent")
    if person == "anyone":
        return Group((), "either player" if len(told.playing) == 2 and len(told.drill.jobs) == 2 else "anyone")
    return Group(letters, _WORDS[person])


def _letters(told: Telling, person: Person, doer: Group | None) -> tuple[Letter, ...]:
    if person in ("near", "far"):
        return told.team(person)
    if person == "doer":
        return () if doer is None else doer.letters
    if person == "other":
        return () if doer is None else opponents(told, doer.letters)
    server = told.server
    if server is None:
        return ()
    if person == "server":
        return (server,)
    if person == "serving side":
        return told.team(told.ends[server]) if server in told.ends else (server,)
    across = told.opponents(server)
    if person == "receiving side" or (person == "receiver" and len(across) == 1):
        return across
    return ()


def opponents(told: Telling, letters: Iterable[Letter]) -> tuple[Letter, ...]:
    """Return those who stand at the other end from all of ``letters``, () where these are at both ends."""
    found = {told.opponents(letter) for letter in letters}
    return found.pop() if len(found) == 1 else ()


def everyone(told: Telling) -> Group:
    """Return all who play: "both" of two, "all" of more."""
    return Group(told.playing, "both" if len(told.playing) == 2 else "all", several=True)


def owner(told: Telling, letters: Iterable[Letter]) -> str | None:
    """Return the owner of the end where the ball of ``letters`` lands: "B's"; None where that is more than one."""
    across = opponents(told, letters)
    return f"{letter(told, across[0])}'s" if len(across) == 1 else None


def calls(told: Telling, called_by: Who, doer: Group | None, *, feet: bool = False) -> str:
    """Return who calls: "A calls", "A calls own feet; B may ask"; "" where nobody is named.

    The first of several calls, the others may ask.
    """
    if not called_by:
        return ""
    groups = [found for person in called_by if (found := group(told, (person,), doer)) is not None]
    first, *others = groups
    own = called_by[0] == "doer"
    if feet and own and doer is None:
        said = "players call their own feet"
    else:
        said = f"{first.words} {first.verb('calls', 'call')}{f' {first.own} feet' if feet and own else ''}"
    if not others:
        return said
    return f"{said}; {listed([other.words for other in others], 'or')} may ask"
