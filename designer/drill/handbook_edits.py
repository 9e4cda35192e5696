"""Edits of a handbook: pure functions from one handbook to the next.

A number stays with its drill while it stays in its section; a drill that moves to another section takes the next number
that is free there. Numbers are given anew only by ``renumbered``.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from designer.drill.handbook import BookSection, Entry, Handbook


def with_section(book: Handbook, place: int, title: str) -> Handbook:
    """Return ``book`` with an empty section before the one at ``place``, at the end for a place beyond it."""
    sections = list(book.sections)
    sections.insert(place, BookSection(title=title))
    return book.changed(sections=tuple(sections))


def without_section(book: Handbook, place: int) -> Handbook:
    """Return ``book`` without the section at ``place`` and its drills' entries. Raises ``IndexError``."""
    sections = list(book.sections)
    del sections[place]
    return book.changed(sections=tuple(sections))


def with_section_moved(book: Handbook, place: int, to: int) -> Handbook:
    """Return ``book`` with the section at ``place`` moved so that it stands before the one now at ``to``."""
    sections = list(book.sections)
    moved = sections.pop(place)
    sections.insert(to - (to > place), moved)
    return book.changed(sections=tuple(sections))


def with_section_changed(book: Handbook, place: int, **values: Any) -> Handbook:
    """Return ``book`` with other values in the section at ``place``."""
    return _replaced(book, {place: book.sections[place].changed(**values)})


def with_drills(book: Handbook, section: int, place: int, files: Iterable[str]) -> Handbook:
    """Return ``book`` with an entry for each of ``files`` before the one at ``place`` of a section.

    A file that the book has already is left out.
    """
    known = {entry.file for entry in book.entries()}
    drills = list(book.sections[section].drills)
    for file in dict.fromkeys(files):
        if file in known:
            continue
        drills.insert(place, Entry(number=free_number(book, section, drills), file=file))
        place += 1
    return _replaced(book, {section: book.sections[section].changed(drills=tuple(drills))})


def without_drills(book: Handbook, numbers: Iterable[str]) -> Handbook:
    """Return ``book`` without the entries of these numbers; the files stay where they are."""
    gone = set(numbers)
    changed = {
        place: section.changed(drills=tuple(entry for entry in section.drills if entry.number not in gone))
        for place, section in enumerate(book.sections)
        if any(entry.number in gone for entry in section.drills)
    }
    return _replaced(book, changed)


def with_drills_moved(book: Handbook, numbers: Sequence[str], section: int, place: int) -> Handbook:
    """Return ``book`` with these drills, in their order, before the entry that is now at ``place`` of a section."""
    chosen = set(numbers)
    moved = [entry for entry in book.entries() if entry.number in chosen]
    own = book.sections[section].drills
    stays_before = sum(entry.number not in chosen for entry in own[:place])
    rest = without_drills(book, numbers)
    drills = list(rest.sections[section].drills)
    here = {entry.number for entry in own}
    for entry in moved:
        taken = entry if entry.number in here else entry.changed(number=free_number(book, section, drills))
        drills.insert(stays_before, taken)
        stays_before += 1
    return _replaced(rest, {section: rest.sections[section].changed(drills=tuple(drills))})


def with_entry_changed(book: Handbook, number: str, /, **values: Any) -> Handbook:
    """Return ``book`` with other values in the entry of this number. Raises ``KeyError`` where there is none."""
    for place, section in enumerate(book.sections):
        if any(entry.number == number for entry in section.drills):
            drills = tuple(entry.changed(**values) if entry.number == number else entry for entry in section.drills)
            return _replaced(book, {place: section.changed(drills=drills)})
    raise KeyError(number)


def renumbered(book: Handbook) -> Handbook:
    """Return ``book`` numbered 1.1, 1.2 … in its order; what an entry says to look at goes with the drills."""
    given = {
        entry.number: f"{place + 1}.{number + 1}"
        for place, section in enumerate(book.sections)
        for number, entry in enumerate(section.drills)
    }
    sections = tuple(
        section.changed(
            drills=tuple(
                entry.changed(number=given[entry.number], see=tuple(given.get(one, one) for one in entry.see))
                for entry in section.drills
            )
        )
        for section in book.sections
    )
    return book.changed(sections=sections)


def free_number(book: Handbook, section: int, drills: Sequence[Entry]) -> str:
    """Return the number for one more drill in a section of ``book`` that holds ``drills`` by now.

    It is one beyond the greatest that the section uses, so that a number which has gone is not given again at once.
    """
    own = {entry.number.partition(".")[0] for entry in (*drills, *book.sections[section].drills)}
    others = {
        entry.number.partition(".")[0]
        for place, one in enumerate(book.sections)
        if place != section
        for entry in one.drills
    }
    first = next(iter(sorted(own, key=int)), None) or _free_first(section + 1, others)
    used = [
        int(entry.number.partition(".")[2])
        for entry in (*drills, *book.entries())
        if entry.number.startswith(f"{first}.")
    ]
    return f"{first}.{max(used, default=0) + 1}"


def _free_first(wished: int, used: set[str]) -> str:
    while str(wished) in used:
        wished += 1
    return str(wished)


def _replaced(book: Handbook, sections: dict[int, BookSection]) -> Handbook:
    return book.changed(sections=tuple(sections.get(place, own) for place, own in enumerate(book.sections)))
