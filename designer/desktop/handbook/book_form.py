"""The form of what belongs to the whole handbook: cover, pages, words, rules of the house, safety page."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any, Final

from pydantic import ValidationError

from designer.desktop.handbook.fields import Form, date_or_none, pairs
from designer.drill.conditions import Outcome
from designer.drill.handbook import HOUSE_RULES, STOP_WORD, Handbook, HouseRule, Safety, Term
from designer.review.house_rules import WORDS

Perform = Callable[[str, Handbook], None]

_CALLERS: Final = (
    ((), "not said"),
    (("receiver",), "who receives"),
    (("receiving side",), "the receiving side"),
    (("anyone",), "anyone"),
)
_DOUBTS: Final = ((None, "not said"), ("replay", "replay"), ("in", "in"), ("out", "out"))
_CORDS: Final = ((None, "not said"), ("by its bounce", "by its bounce"), ("replay", "replay"))
_STOPS: Final = ((None, "not said"), ("replay", "replay"), ("no score", "no score"))
_FEEDS: Final = ((None, "not said"), ("accepted", "accepted"), ("not accepted", "not accepted"))


class BookForm(Form):
    """Edits the handbook that ``book`` gives; each value given is one step of ``perform``."""

    def __init__(self, book: Callable[[], Handbook], perform: Perform) -> None:
        super().__init__("The whole handbook")
        self._book, self._perform = book, perform
        self._cover()
        self._pages()
        self._words()
        self._house()
        self._safety()
        self.end()

    def _set(self, label: str, **values: Any) -> None:
        self._perform(label, self._book().changed(**values))

    def _cover(self) -> None:
        self.heading("Cover")
        self.line("Title", lambda one: one.title, lambda text: self._set("Change the title", title=text))
        self.line("Edition", lambda one: str(one.edition), self._take_edition)
        self.line(
            "Date",
            lambda one: one.dated.isoformat() if one.dated else "",
            lambda text: self._set("Date the handbook", dated=date_or_none(text)),
            "2026-11-25",
        )
        self.line("Owner", lambda one: one.owner, lambda text: self._set("Change the owner", owner=text))
        self.line("Contact", lambda one: one.contact, lambda text: self._set("Change the contact", contact=text))
        self.line("Licence", lambda one: one.licence, lambda text: self._set("Change the licence", licence=text))
        self.line(
            "Language",
            lambda one: one.language,
            self._take_language,
            "that of your own words; the program writes English",
        )

    def _take_edition(self, text: str) -> None:
        if not text.strip().isdecimal() or not 1 <= int(text) <= 100_000:
            raise ValueError(f"{text!r} is no edition; write a whole number from 1.")
        self._set("Change the edition", edition=int(text))

    def _take_language(self, text: str) -> None:
        try:
            self._set("Change the language", language=text.strip() or "en")
        except ValidationError:
            raise ValueError(f"{text!r} is no language; write its code, such as en, de or pt-BR.") from None

    def _pages(self) -> None:
        self.heading("Pages")
        papers = (("a4", "A4"), ("letter", "Letter"))
        self.choice("Paper", papers, lambda one: one.paper, lambda paper: self._set("Change the paper", paper=paper))
        counts = tuple((count, str(count)) for count in (0, 1, 2, 4, 8, 12))
        self.choice(
            "Session plans",
            counts,
            lambda one: one.planners,
            lambda count: self._set("Change the plans", planners=count),
        )
        self.tick(
            "A leaf of its own for each drill",
            lambda one: one.own_leaves,
            lambda on: self._set("Give each drill its own leaf" if on else "Let page follow page", own_leaves=on),
        )
        self.line(
            "Brand file",
            lambda one: one.brand,
            lambda text: self._set("Change the brand", brand=text),
            "the nearest brand.json",
        )
        self.tick(
            "Attach the drills to the PDF",
            lambda one: one.attach,
            lambda on: self._set("Attach the drills" if on else "Leave the drills out of the PDF", attach=on),
        )

    def _words(self) -> None:
        self.heading("The academy’s own words")
        self.block(
            "Words",
            lambda one: "\n".join(f"{word} = {own}" for word, own in one.vocabulary.items()),
            lambda text: self._set("Change the words", vocabulary=pairs(text, "=")),
            "alley = tramline",
            lines=5,
        )
        self.block(
            "Glossary",
            lambda one: "\n".join(f"{term.word}: {term.means}" for term in one.glossary),
            lambda text: self._set(
                "Change the glossary",
                glossary=tuple(Term(word=word, means=means) for word, means in pairs(text, ":").items()),
            ),
            "word: what it means",
            lines=4,
        )

    def _house(self) -> None:
        self.heading("Where a drill does not say")
        for words, name, options in (
            ("Lines are called by", "called_by", _CALLERS),
            ("Doubt is", "in_doubt", _DOUBTS),
            ("A net cord is", "net_cord", _CORDS),
            ("A bad feed played is", "feed_played", _FEEDS),
        ):
            self.choice(
                words,
                options,
                partial(_house_value, name),
                partial(self._take_answer, name),
            )
        self.line("Stop word", _own_stop_word, self._take_stop_word, STOP_WORD)
        self.choice(
            "“Stop” is",
            _STOPS,
            lambda one: one.house.stopped.then if one.house.stopped else None,
            lambda then: self._set_house(stopped=Outcome(then=then) if then else None),
        )
        self.heading("Every drill …")
        for rule in HOUSE_RULES:
            self.tick(
                WORDS[rule],
                partial(_asks, rule),
                partial(self._take_rule, rule),
            )

    def _set_house(self, **values: Any) -> None:
        self._set("Change the house’s answers", house=self._book().house.changed(**values))

    def _take_answer(self, name: str, value: Any) -> None:
        self._set_house(**{name: value})

    def _take_stop_word(self, text: str) -> None:
        """Take the academy's word for “stop”, which is one of its words; none is "stop"."""
        words = {word: own for word, own in self._book().vocabulary.items() if word.lower() != STOP_WORD}
        word = text.strip(' “”"!.')
        own = {STOP_WORD: word} if word and word.lower() != STOP_WORD else {}
        self._set("Change the stop word", vocabulary=words | own)

    def _take_safety(self, name: str, text: str) -> None:
        self._set_safety(**{name: text})

    def _take_rule(self, rule: HouseRule, on: bool) -> None:  # noqa: FBT001 - what a box gives
        kept = {one for one in self._book().house_rules if one != rule} | ({rule} if on else set())
        self._set("Change the house rules", house_rules=tuple(one for one in HOUSE_RULES if one in kept))

    def _safety(self) -> None:
        self.heading("Safety page")
        self.block(
            "Look at, besides",
            lambda one: "\n".join(one.safety.before),
            lambda text: self._set_safety(before=tuple(line.strip() for line in text.splitlines() if line.strip())),
            "a line each",
        )
        for words, name in (
            ("First aid is kept at", "first_aid"),
            ("In an emergency", "emergency"),
            ("Too hot to play", "heat"),
            ("Lightning", "lightning"),
            ("Approved by", "approved_by"),
        ):
            self.line(
                words,
                partial(_safety_value, name),
                partial(self._take_safety, name),
                "a line to write on",
            )
        self.line(
            "Approved on",
            lambda one: one.safety.approved_on.isoformat() if one.safety.approved_on else "",
            lambda text: self._set_safety(approved_on=date_or_none(text)),
            "2026-11-25",
        )

    def _set_safety(self, **values: Any) -> None:
        safety: Safety = self._book().safety
        self._set("Change the safety page", safety=safety.changed(**values))


def _house_value(name: str, book: Handbook) -> Any:
    return getattr(book.house, name)


def _own_stop_word(book: Handbook) -> str:
    return "" if book.stop_word == STOP_WORD else book.stop_word


def _safety_value(name: str, book: Handbook) -> str:
    return str(getattr(book.safety, name))


def _asks(rule: HouseRule, book: Handbook) -> bool:
    return rule in book.house_rules
