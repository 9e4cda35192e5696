"""A small handbook of the academy's drills, for the tests of the book: one of its entries has no drill."""

from __future__ import annotations

import functools
import hashlib
from datetime import date

from designer.bundle import sample
from designer.cards.book.leaf import Leaf, leaf, without
from designer.cards.handbook import Book, make_handbook
from designer.drill.brand import Brand
from designer.drill.drill import Drill
from designer.drill.handbook import BookSection, Entry, Handbook, Remembered

LOGO = sample("alder-quay.svg").read_text(encoding="utf-8")
MISSING = "1.3"
BEFORE = {
    "1.1": Remembered(digest="another", title="Wide", id="d-7h2kq"),
    "9.9": Remembered(digest="x", title="Gone With the Ball", id="d-gone"),
}


def drill(name: str = "wide-start") -> Drill:
    return Drill.model_validate_json(sample(f"{name}.drill.json").read_bytes())


def entry(number: str, name: str, **values) -> Entry:
    return Entry(number=number, file=f"{name}.drill.json", **values)


def book(**values) -> Handbook:
    approved = {"state": "approved", "by": "Ines Vale", "on": date(2026, 11, 3), "seen": "0" * 64}
    first = BookSection(
        title="From the back",
        introduction="Both are back.",
        drills=(entry("1.1", "wide-start", **approved), entry("1.2", "a-chooses"), entry(MISSING, "nowhere")),
    )
    last = BookSection(title="Serve", drills=(entry("2.1", "serve-open", see=("1.2",), tags=("level:club",)),))
    whole = Handbook(
        title="Drills of Alder Quay",
        edition=2,
        owner="Alder Quay",
        own_leaves=True,
        sections=(first, last),
        house_rules=("level", "cues"),
    )
    return whole.changed(**values)


def alone(name: str = "wide-start", **values) -> Handbook:
    """A handbook of one drill, its first sheet alone: the quickest there is."""
    drills = (entry("1.1", name, prints="first sheet"),)
    return Handbook(title="X", sections=(BookSection(title="S", drills=drills),)).changed(**values)


def leaf_of(own: Drill, *, number: str = "3.12", handbook: Handbook | None = None, **values) -> Leaf:
    source = own.model_dump_json().encode()
    whole = handbook or Handbook(title="X", sections=())
    digest = hashlib.sha256(source).hexdigest()
    return leaf(whole, Entry(number=number, file="a.drill.json", **values), own, source, digest, lambda: own)


def leaves(whole: Handbook) -> list[Leaf]:
    return [_leaf(whole, one) for one in whole.entries()]


def _leaf(whole: Handbook, one: Entry) -> Leaf:
    if one.number == MISSING:
        return without(one, "is not there")
    source = sample(one.file).read_bytes()

    def read() -> Drill:
        return Drill.model_validate_json(source)

    return leaf(whole, one, read(), source, hashlib.sha256(source).hexdigest(), read)


@functools.cache
def made() -> Book:
    whole = book()
    brand = Brand(name="Alder Quay", colour="#1C5049", second_colour="#B8622B")
    return make_handbook(whole, leaves(whole), before=BEFORE, brand=brand, logo=LOGO)
