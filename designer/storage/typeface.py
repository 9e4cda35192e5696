"""A typeface from a file of unknown origin: looked at before any library reads it, so that none can be choked by it."""

from __future__ import annotations

import struct
from collections.abc import Iterator
from pathlib import Path
from typing import Final

from designer.storage.parsing import Unreadable
from designer.storage.reading import file_bytes

LARGEST: Final = 5_000_000
_TRUETYPE: Final = (b"\0\1\0\0", b"true")
_NEEDED: Final = (b"OS/2", b"cmap", b"glyf", b"head", b"hhea", b"hmtx", b"loca", b"maxp", b"name", b"post")
_MOST_TABLES: Final = 64
_MOST_MAPS: Final = 32
_MOST_CHARACTERS: Final = 200_000
"""No typeface has more: Unicode itself has about 150 000 signs."""


def checked_typeface(path: Path) -> bytes:
    """Return the bytes of the TrueType file at ``path``.

    Its tables lie in the file, and its maps of characters unpack to no more than there are characters: a map of a few bytes
    may claim four thousand million (ISO/IEC 14496-22, cmap, formats 12 and 13). Raises ``Unreadable`` with a sentence.
    """
    data = file_bytes(path, LARGEST, "a TrueType file")
    if data[:4] not in _TRUETYPE:
        raise Unreadable(f"{path}: is no TrueType face; expected a file that ends in .ttf.")
    try:
        tables = _tables(data)
        missing = [tag.decode() for tag in _NEEDED if tag not in tables]
        if missing:
            raise Unreadable(f"{path}: has no table {missing[0]!r}; expected a TrueType face with outlines.")
        start, length = tables[b"cmap"]
        characters = sum(_claimed(data[start : start + length]))
    except (struct.error, IndexError) as error:
        raise Unreadable(f"{path}: is damaged; expected a TrueType face.") from error
    if characters > _MOST_CHARACTERS:
        raise Unreadable(f"{path}: claims to have {characters} characters; expected a TrueType face.")
    return data


def _tables(data: bytes) -> dict[bytes, tuple[int, int]]:
    """Return {tag: (where it begins, its length)}. Raises ``IndexError`` for one that does not lie in the file."""
    count = struct.unpack_from(">H", data, 4)[0]
    if count > _MOST_TABLES:
        raise IndexError(count)
    found: dict[bytes, tuple[int, int]] = {}
    for place in range(count):
        tag, _, start, length = struct.unpack_from(">4sLLL", data, 12 + 16 * place)
        if start + length > len(data):
            raise IndexError(tag)
        found[tag] = (start, length)
    return found


def _claimed(cmap: bytes) -> Iterator[int]:
    """Yield how many characters each map in the table claims."""
    count = struct.unpack_from(">H", cmap, 2)[0]
    if count > _MOST_MAPS:
        raise IndexError(count)
    for place in range(count):
        start = struct.unpack_from(">HHL", cmap, 4 + 8 * place)[2]
        form = struct.unpack_from(">H", cmap, start)[0]
        if form in (12, 13):
            groups = struct.unpack_from(">L", cmap, start + 12)[0]
            if start + 16 + 12 * groups > len(cmap):
                raise IndexError(groups)
            for group in range(groups):
                first, last = struct.unpack_from(">LL", cmap, start + 16 + 12 * group)
                yield max(0, last - first + 1)
        elif form in (8, 10):
            raise IndexError(form)
