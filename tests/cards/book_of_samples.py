"""The academy's handbook as leaves, for the tests of the book."""

from __future__ import annotations

import functools
import hashlib

from designer.bundle import sample
from designer.cards.book.leaf import Leaf, leaf, without
from designer.cards.handbook import Book, make_handbook
from designer.drill.drill import Drill
from designer.drill.handbook import Entry, Handbook

LOGO = sample("alder-quay.svg").read_text(encoding="utf-8")


def drill(name: str = "wide-start") -> Drill:
    return Drill.model_validate_json(sample(f"{name}.drill.json").read_bytes())


def book(**values) -> Handbook:
    whole = Handbook.model_validate_json(sample("alder-quay.handbook.json").read_bytes())
    return whole.changed(**values)


def short(**values) -> Handbook:
    """The book with only its first two and its last two drills: quicker to set."""
    whole = book()
    first, _, last = whole.sections
    return whole.changed(sections=(first.changed(drills=first.drills[:2]), last), **values)


def leaf_of(own: Drill, *, number: str = "3.12", handbook: Handbook | None = None, **values) -> Leaf:
    source = own.model_dump_json().encode()
    entry = Entry(number=number, file=f"{own.code}.drill.json", **values)
    return leaf(
        handbook or Handbook(title="X", sections=()),
        entry,
        own,
        source,
        hashlib.sha256(source).hexdigest(),
        lambda: own,
    )


def leaves(whole: Handbook, missing: str = "") -> list[Leaf]:
    return [without(one, "is not there") if one.number == missing else _leaf(whole, one) for one in whole.entries()]


def _leaf(whole: Handbook, entry: Entry) -> Leaf:
    source = sample(entry.file).read_bytes()

    def read() -> Drill:
        return Drill.model_validate_json(source)

    return leaf(whole, entry, read(), source, hashlib.sha256(source).hexdigest(), read)


@functools.cache
def made(missing: str = "") -> Book:
    return make_handbook(book(), leaves(book(), missing), logo=LOGO)
