"""The last touch on a card's PDF: its dates, and the drill it carries."""

from __future__ import annotations

import io
from datetime import UTC, date, datetime
from typing import Final

MEDIA_TYPE: Final = "application/json"


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
                source,
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
