"""Keeping a long PDF small while it is made: each page packed as it is closed, and the drills attached at the end."""

from __future__ import annotations

import tempfile
import zlib
from collections.abc import Mapping
from datetime import UTC, date, datetime
from typing import TYPE_CHECKING, Any, BinaryIO

from designer.cards.attachment import MEDIA_TYPE, attachable

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas


def pack_pages(canvas: Canvas) -> None:
    """Let ``canvas`` pack each page when it is closed.

    reportlab keeps every page as plain text until it saves, which for a thousand pages is 60 MB, and then packs it
    twice, the second time into letters.
    """
    document: Any = canvas._doc  # type: ignore[attr-defined]  # noqa: SLF001  no public way to the page just closed
    canvas.setPageCallBack(lambda _: _pack(document))


def _pack(document: Any) -> None:
    from reportlab.pdfbase.pdfdoc import PDFArray, PDFDictionary, PDFName, PDFStream

    page = document.Pages.pages[-1]
    filters = PDFDictionary({"Filter": PDFArray([PDFName("FlateDecode")])})
    page.Contents = PDFStream(filters, zlib.compress(page.stream.encode()))
    page.stream = None


def completed(pdf: BinaryIO, *, dated: date | None, files: Mapping[str, bytes]) -> bytes:
    """Return the PDF in the file ``pdf`` with its dates and with ``files`` ({name: bytes of a drill}) attached.

    What is between stands in a scratch file, so that a long book is not held twice.

    Each is an associated file of relationship Source (ISO 32000-2, 7.11.4 and 14.13). The same input gives the same
    bytes.
    """
    import pikepdf

    moment = datetime(dated.year, dated.month, dated.day, tzinfo=UTC) if dated else datetime(2000, 1, 1, tzinfo=UTC)
    stamp = moment.strftime("D:%Y%m%d%H%M%SZ")
    with tempfile.TemporaryFile() as result, pikepdf.open(pdf) as document:
        document.docinfo["/CreationDate"] = pikepdf.String(stamp)
        document.docinfo["/ModDate"] = pikepdf.String(stamp)
        attached = []
        for name, data in files.items():
            file = pikepdf.AttachedFileSpec(
                document,
                attachable(data),
                description="A drill of this handbook",
                filename=name,
                mime_type=MEDIA_TYPE,
                creation_date=stamp,
                mod_date=stamp,
                relationship=pikepdf.Name.Source,
            )
            document.attachments[name] = file
            attached.append(file.obj)
        if attached:
            document.Root.AF = pikepdf.Array(attached)
        document.save(result, deterministic_id=True, object_stream_mode=pikepdf.ObjectStreamMode.preserve)
        result.seek(0)
        return result.read()
