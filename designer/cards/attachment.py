"""The last touch on a card's PDF: its dates, and the drill it carries."""

from __future__ import annotations

import io
import json
from datetime import UTC, date, datetime
from typing import Any, Final

from designer.drill.base import Record
from designer.drill.drill import Drill
from designer.drill.setting import addresses, changes_at
from designer.review.walk import values_in

MEDIA_TYPE: Final = "application/json"

_NAMES: Final = "people"
"""Where a record of today has the names of players. It is none of a drill's fields, and is never attached."""


def attachable(source: bytes) -> bytes:
    """Return the drill file ``source`` as it is attached: as it is, but for names of players that were put into it."""
    if f'"{_NAMES}"'.encode() not in source:
        return source
    raw: Any = json.loads(source)
    if not isinstance(raw, dict) or _NAMES not in raw:
        return source
    return json.dumps({key: value for key, value in raw.items() if key != _NAMES}, indent=2).encode()


def carried(drill: Drill) -> tuple[str, ...]:
    """Return what to know of fields in the file of ``drill`` that this program does not know, () where it knows all.

    They are kept for the program that wrote them, and so attached; names of players are not.
    """
    roots = (drill, *(changes_at(drill, at) for at in addresses(drill)))
    records = (value for root in roots for _, value in values_in(root, but="changes") if isinstance(value, Record))
    unknown = dict.fromkeys(name for record in records for name in record.model_extra or {})
    told = []
    if _NAMES in (drill.model_extra or {}):
        told.append(
            f"The file's “{_NAMES}” are left out of the attached drill: names stand in a record of today alone."
        )
        unknown.pop(_NAMES)
    if unknown:
        names = ", ".join(f"“{name}”" for name in list(unknown)[:_MOST])
        more = f" and {len(unknown) - _MOST} more" if len(unknown) > _MOST else ""
        told.append(
            f"The file has what this program does not know, {names}{more}, and it is attached as it is: see that it names no "
            "child, or leave the drill out of the PDF."
        )
    return tuple(told)


_MOST: Final = 5
"""Unknown fields that are named at most."""


def finished(pdf: bytes, *, dated: date | None, source: bytes | None, file_name: str) -> bytes:
    """Return ``pdf`` with its dates taken from the drill and, where given, the drill file ``source`` attached.

    The attachment is an associated file of relationship Source (ISO 32000-2, 7.11.4 and 14.13), so that a card can
    be opened as a drill again. The same input gives the same bytes.
    """
    import pikepdf

    moment = datetime(dated.year, dated.month, dated.day, tzinfo=UTC) if dated else datetime(2000, 1, 1, tzinfo=UTC)
    stamp = moment.strftime("D:%Y%m%d%H%M%SZ")
    with pikepdf.open(io.BytesIO(pdf)) as document:
        document.docinfo["/CreationDate"] = pikepdf.String(stamp)
        document.docinfo["/ModDate"] = pikepdf.String(stamp)
        if source is not None:
            attached = pikepdf.AttachedFileSpec(
                document,
                attachable(source),
                description="The drill this card was made from",
                filename=file_name,
                mime_type=MEDIA_TYPE,
                creation_date=stamp,
                mod_date=stamp,
                relationship=pikepdf.Name.Source,
            )
            document.attachments[file_name] = attached
            document.Root.AF = pikepdf.Array([attached.obj])
        result = io.BytesIO()
        document.save(result, deterministic_id=True, object_stream_mode=pikepdf.ObjectStreamMode.preserve)
    return result.getvalue()
