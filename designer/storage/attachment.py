"""The drill that a card carries, taken out of a PDF of unknown origin."""

from __future__ import annotations

import io
import zlib
from collections.abc import Iterator
from itertools import islice
from typing import TYPE_CHECKING, Any, Final

from designer.storage.parsing import LARGEST, Unreadable, too_large

if TYPE_CHECKING:
    import pikepdf

ENDING: Final = ".drill.json"
_MOST_FILES: Final = 1000


def is_pdf(data: bytes) -> bool:
    """Whether ``data`` begins as a PDF does: a reader looks for its mark in the first 1024 bytes (ISO 32000-1, H.3)."""
    return b"%PDF-" in data[:1024]


def extract(pdf: bytes, name: str) -> bytes:
    """Return the bytes of the drill file that the card ``pdf`` carries; ``name`` is what sentences call the card.

    Nothing that the PDF says is used as a path. Of several drills the one marked as the card's source is taken.
    Raises ``Unreadable`` where the PDF carries no drill, several, or one that is too large.
    """
    if not is_pdf(pdf):
        raise Unreadable(f"{name}: is no PDF; expected a card.")
    import pikepdf

    try:
        with pikepdf.open(io.BytesIO(pdf)) as document:
            drills = [_content(file, name) for file in _drills(document)]
    except pikepdf.PasswordError as error:
        raise Unreadable(f"{name}: is locked with a password; expected a card that opens without one.") from error
    except (
        pikepdf.PdfError,
        ArithmeticError,
        AttributeError,
        LookupError,
        RuntimeError,
        TypeError,
        ValueError,
    ) as error:
        raise Unreadable(f"{name}: is a damaged PDF; expected a card.") from error
    if not drills:
        raise Unreadable(f"{name}: carries no drill; expected a card that was made with its source.")
    if len(set(drills)) > 1:
        raise Unreadable(f"{name}: carries {len(drills)} different drills; expected one.")
    return drills[0]


def _drills(document: pikepdf.Pdf) -> list[Any]:
    """Return the file specifications of the drills attached to ``document``, only its sources where there are any."""
    import pikepdf

    found = [spec for spec in islice(_specifications(document), _MOST_FILES) if _file_name(spec).endswith(ENDING)]
    sources = [spec for spec in found if spec.get("/AFRelationship") == pikepdf.Name.Source]
    return sources or found


def _specifications(document: pikepdf.Pdf) -> Iterator[Any]:
    import pikepdf

    names = document.Root.get("/Names")
    if names is None or "/EmbeddedFiles" not in names:
        return
    for spec in pikepdf.NameTree(names["/EmbeddedFiles"]).values():
        if isinstance(spec, pikepdf.Dictionary):
            yield spec


def _file_name(spec: Any) -> str:
    return str(spec.get("/UF", spec.get("/F", ""))).casefold()


def _content(spec: Any, name: str) -> bytes:
    """Return the attached bytes; never unpacks more than a drill file may have."""
    import pikepdf

    files = spec["/EF"]
    stream = files.get("/UF", files.get("/F"))
    data = bytes(stream.read_raw_bytes())
    packed = stream.get("/Filter", pikepdf.Array())
    for filter in packed if isinstance(packed, pikepdf.Array) else [packed]:
        if str(filter) not in ("/FlateDecode", "/Fl") or "/DecodeParms" in stream:
            raise Unreadable(f"{name}: the drill in it is packed as {filter}; expected /FlateDecode or none.")
        data = _unpacked(data, name)
    if len(data) > LARGEST:
        raise Unreadable(too_large(f"{name}: the drill in it", LARGEST))
    return data


def _unpacked(data: bytes, name: str) -> bytes:
    unpacking = zlib.decompressobj()
    try:
        unpacked = unpacking.decompress(data, LARGEST + 1)
    except zlib.error as error:
        raise Unreadable(f"{name}: the drill in it is damaged; expected a drill file.") from error
    if not unpacking.eof and len(unpacked) <= LARGEST:
        raise Unreadable(f"{name}: the drill in it is cut short; expected a drill file.")
    return unpacked
