"""The drill that a card carries."""

from __future__ import annotations


def is_pdf(data: bytes) -> bool:
    """Whether ``data`` begins as a PDF does."""
    return b"%PDF-" in data[:1024]


def extract(pdf: bytes, name: str) -> bytes:
    """Return the bytes of the drill file that the card ``pdf`` carries; ``name`` is what sentences call the card.

    Raises ``Unreadable`` where it carries none.
    """
    import io

    import pikepdf

    with pikepdf.open(io.BytesIO(pdf)) as document:
        file = next(iter(document.attachments.values()))
        return bytes(file.get_file().read_bytes())
