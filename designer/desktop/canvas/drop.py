"""What is dragged onto the court and what a drop does: plain functions, so that no drag is needed to try them."""

from __future__ import annotations

import json
from typing import Final

from PySide6.QtCore import QMimeData

from designer.desktop.canvas.placing import NAMES, PLACED, STRETCHED, NoLetterLeft, fresh_id, placed, stretched
from designer.desktop.document import Document
from designer.desktop.view import View
from designer.drill.base import Point

MIME: Final = "application/x-drill-item+json"
FORMAT: Final = 1

HALF_SIZE: Final = {
    "line": (1.3716, 0.0),
    "barrier": (1.3716, 0.0),
    "area": (1.3716, 0.9144),
    "round area": (1.3716, 0.9144),
    "obstacle": (0.6858, 0.2286),
}
"""Half the size of what is dropped instead of drawn, in metres: a line of four rackets, an area of four by two."""


def item_mime(kind: str) -> QMimeData:
    """Return what a drag of a thing of ``kind`` carries."""
    mime = QMimeData()
    mime.setData(MIME, json.dumps({"format": FORMAT, "kind": kind}).encode("utf-8"))
    return mime


def kind_in(mime: QMimeData) -> str | None:
    """Return the kind of thing that ``mime`` carries, None where it is nothing that can be dropped on a court."""
    if not mime.hasFormat(MIME):
        return None
    try:
        carried = json.loads(bytes(mime.data(MIME).data()).decode("utf-8"))
    except (ValueError, RecursionError):
        return None
    if not isinstance(carried, dict) or carried.get("format") != FORMAT:
        return None
    kind = carried.get("kind")
    return kind if kind in PLACED or kind in STRETCHED else None


def drop_item(document: Document, view: View, kind: str, point: Point) -> str | None:
    """Put a thing of ``kind`` at ``point`` in the setting in view, as one step, and pick it.

    Returns its id, None where there is no letter left for another player or the drill cannot be changed.
    """
    if document.read_only:
        return None
    drill, at = document.drill, view.at
    id = fresh_id(drill, kind, document.source)
    if kind in STRETCHED:
        across, along = HALF_SIZE[kind]
        start, end = (point[0] - across, point[1] - along), (point[0] + across, point[1] + along)
        dropped = stretched(drill, at, kind, start, end, id)
    else:
        try:
            dropped = placed(drill, at, kind, point, id)
        except NoLetterLeft:
            return None
    document.perform(f"Add {NAMES[kind]}", dropped)
    view.select((id,))
    return id
