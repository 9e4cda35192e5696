"""Cautions: kinds and fields that this program does not know. They are kept and written back, but do nothing here."""

from __future__ import annotations

import json
from collections.abc import Iterator
from functools import partial
from typing import Any

from pydantic import TypeAdapter, ValidationError

from designer.drill.base import Record
from designer.drill.drill import Drill
from designer.drill.edits import with_changes
from designer.drill.items import KNOWN_FORMS, KNOWN_KINDS, Item, Unknown, UnknownShape
from designer.drill.rules import UnknownMust
from designer.drill.setting import At, addresses, changes_at
from designer.review.check import Check, Mend, check, hint, nearest
from designer.review.walk import Path, owner, replaced, value_at, values_in
from designer.wording.sentence import ref

_LOOSE = (Unknown, UnknownShape, UnknownMust)


def unknown_cautions(drill: Drill) -> Iterator[Check]:
    """Yield a caution for each kind, form and field that is not known, with the name that was likely meant."""
    yield from _in(drill, None)
    for at in addresses(drill):
        yield from _in(changes_at(drill, at), at)


def _in(root: Any, at: At | None) -> Iterator[Check]:
    for path, value in values_in(root, but="changes"):  # what a setting changes is looked at setting by setting
        if isinstance(value, Unknown):
            yield _kind(value, at, path)
        elif isinstance(value, UnknownShape):
            id = owner(root, path)
            text = (
                f"an area has the shape “{value.form}”, which is not known and not drawn{hint(value.form, KNOWN_FORMS)}"
            )
            yield check("caution", "unknown-kind", text, *([] if id is None else [id]), at=at)
        if isinstance(value, Record) and not isinstance(value, _LOOSE):
            for name in value.model_extra or {}:
                yield _field(root, path, value, name, at)


def _kind(item: Unknown, at: At | None, path: Path) -> Check:
    meant = nearest(item.kind, KNOWN_KINDS)
    text = f"{ref(item.id, 'an item')} is a “{item.kind}”, a kind that is not known and not drawn{hint(item.kind, KNOWN_KINDS)}"
    mend: Mend | None = None
    if meant is not None and at is not None:
        known = _as_kind(item, meant)
        mend = None if known is None else partial(_with_value, at=at, path=path, value=known)
    return check("caution", "unknown-kind", text, item.id, at=at, mend=mend)


def _as_kind(item: Unknown, kind: str) -> Any | None:
    data = json.loads(item.model_dump_json()) | {"kind": kind}
    try:
        return TypeAdapter[Any](Item).validate_json(json.dumps(data))
    except ValidationError:
        return None


def _field(root: Any, path: Path, record: Record, name: str, at: At | None) -> Check:
    fields = type(record).model_fields
    known = {field.alias or own for own, field in fields.items()}
    id = owner(root, path)
    where = ref(id, f"“{id}”") if id is not None else f"the {type(record).__name__.lower()}"
    text = f"{where} has a field “{name}” that is not known and does nothing here{hint(name, known - {'id', 'kind'})}"
    mend: Mend | None = None
    meant = nearest(name, known - {"id", "kind"})
    if meant is not None:
        renamed = _with_field(record, name, meant)
        mend = None if renamed is None else partial(_with_value, at=at, path=path, value=renamed)
    return check("caution", "unknown-field", text, *([] if id is None else [id]), at=at, mend=mend)


def _with_field(record: Record, name: str, meant: str) -> Record | None:
    """Return ``record`` with the field ``name`` under the name that was meant, None where it does not fit there."""
    data = json.loads(record.model_dump_json(exclude_unset=True))
    if meant in data:
        return None
    data[meant] = data.pop(name)
    try:
        return type(record).model_validate_json(json.dumps(data))
    except ValidationError:
        return None


def _with_value(drill: Drill, *, at: At | None, path: Path, value: Any) -> Drill:
    root: Any = drill if at is None else changes_at(drill, at)
    if not _fits(root, path, value):
        return drill
    mended = replaced(root, path, value)
    return mended if at is None else with_changes(drill, at, mended)


def _fits(root: Any, path: Path, value: Any) -> bool:
    """Whether the place is still there and still holds the record that the check was about."""
    try:
        return getattr(value_at(root, path), "id", None) == getattr(value, "id", None)
    except (AttributeError, IndexError, KeyError, TypeError):
        return False
