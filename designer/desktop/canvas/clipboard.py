"""Things on the clipboard: a small drill under a type of our own, for another court, and words for everything else."""

from __future__ import annotations

from collections.abc import Collection
from typing import Any, Final

from pydantic import ValidationError
from PySide6.QtCore import QMimeData

from designer.desktop.canvas.bench import Bench
from designer.desktop.canvas.deeds import COPY_BY, on_court, take_away
from designer.desktop.canvas.names import called, description, full_name
from designer.desktop.canvas.placing import NoLetterLeft, fresh_id, new_job
from designer.drill.base import Point
from designer.drill.drill import Changes, Drill, Progression
from designer.drill.edits import delete, moved_record, put
from designer.drill.ids import Chooser
from designer.drill.people import Spot
from designer.drill.places import is_letter
from designer.drill.references import renamed
from designer.drill.setting import At, Setting, main_setting, setting_at
from designer.storage.parsing import Unreadable
from designer.storage.reading import read_drill
from designer.storage.writing import drill_bytes

MIME: Final = "application/x-drill-part+json"
MOST_BYTES: Final = 2_000_000
"""More than this is no part of a drill that a hand has picked."""

MOST_THINGS: Final = 2000


def part_of(drill: Drill, at: At, ids: Collection[str]) -> Drill:
    """Return a drill that holds ``ids`` and nothing else; what was tied to anything else stands where it stood."""
    setting = setting_at(drill, at)
    kept = frozenset(ids) & on_court(setting)
    rest = setting_at(delete(drill, at, on_court(setting) - kept), at)
    changes = Changes(
        **{kind: tuple(getattr(rest, kind)[id] for id in getattr(rest, kind) if id in kept) for kind in KINDS}  # type: ignore[arg-type]
    )
    letters = _letters(rest, kept)
    jobs = tuple(job for job in drill.jobs if job.letter in letters)
    return Drill(id="d-part", jobs=jobs, court=drill.court, progressions=(Progression(id="p-part", changes=changes),))


KINDS: Final = ("spots", "items", "shots", "runs")


def _letters(setting: Setting, ids: Collection[str]) -> frozenset[str]:
    records = (setting.find(id) for id in ids)
    return frozenset(
        record.job if isinstance(record, Spot) else getattr(record, "by", "")
        for record in records
        if record is not None
    )


def copied_mime(bench: Bench) -> QMimeData | None:
    """Return what is picked as the clipboard takes it, None where nothing on the court is."""
    ids = bench.view.selection & on_court(bench.setting)
    if not ids:
        return None
    mime = QMimeData()
    mime.setData(MIME, drill_bytes(part_of(bench.drill, bench.at, ids)))
    setting, units = bench.setting, bench.view.units
    lines = []
    for id in sorted(ids, key=lambda id: full_name(setting, id)):
        where = description(setting, bench.ground, id, units)
        lines.append(f"{full_name(setting, id)}: {where}." if where else f"{full_name(setting, id)}.")
    mime.setText("\n".join(lines))
    return mime


def cut_picked(bench: Bench) -> QMimeData | None:
    """Delete what is picked and return it as the clipboard takes it, None where nothing on the court is."""
    mime = copied_mime(bench)
    if mime is not None:
        ids = bench.view.selection & on_court(bench.setting)
        take_away(bench, f"Cut {called(bench.setting, ids)}", ids)
    return mime


def paste(bench: Bench, mime: QMimeData) -> bool:
    """Put what ``mime`` holds on the court as one step and pick it; else say why not. Return whether anything was put."""
    try:
        part = _read(mime)
        drill, ids = pasted(bench.drill, bench.at, part, bench.source)
    except Unreadable as reason:
        bench.said.emit(f"That cannot be pasted: {reason}")
        return False
    except (NoLetterLeft, ValidationError, ValueError) as reason:
        words = "there is no room for it" if isinstance(reason, ValidationError) else str(reason)
        bench.said.emit(f"That cannot be pasted: {words}.")
        return False
    if not ids:
        bench.said.emit("There is nothing on the clipboard that could stand on a court.")
        return False
    bench.perform(f"Paste {called(setting_at(drill, bench.at), ids)}", drill, ids)
    return True


def _read(mime: QMimeData) -> Drill:
    """Return the small drill in ``mime``; ``Unreadable`` or ``ValueError`` with a sentence where there is none."""
    data = bytes(mime.data(MIME).data()) if mime.hasFormat(MIME) else b""
    if not data and mime.hasText() and mime.text().lstrip().startswith("{"):
        data = mime.text().encode("utf-8", "replace")
    if not data:
        raise ValueError("it is no part of a drill")
    if len(data) > MOST_BYTES:
        raise ValueError(f"it is {len(data) / 1e6:.0f} MB, more than any part of a drill has")
    return read_drill(data, "the clipboard").drill


def pasted(drill: Drill, at: At, part: Drill, source: Chooser) -> tuple[Drill, tuple[str, ...]]:
    """Return ``drill`` with what stands in the main setting of ``part``, and its new ids.

    Where something stands there already it comes beside it. A person whose letter is taken here becomes the next free one, and
    hits and runs under that letter. Raises ``NoLetterLeft``, ``pydantic.ValidationError``, ``ValueError``.
    """
    found, here = setting_at(part, main_setting(part)), setting_at(drill, at)
    records = [record for kind in KINDS for record in getattr(found, kind).values()]
    if len(records) > MOST_THINGS:
        raise ValueError(f"it has {len(records)} things, more than a court can show")
    names: dict[str, str] = {}
    for letter in sorted({spot.job for spot in found.spots.values()} | _letters(found, [r.id for r in records])):
        drill, names[letter] = _letter_here(
            drill, at, part, letter, stands=found.spot_of(letter) is not None, given=tuple(names.values())
        )
    for record in records:
        taken_kind = getattr(record, "kind", None) or type(record).__name__.lower()
        new = fresh_id(drill, "player" if isinstance(record, Spot) else taken_kind, source)
        while new in names.values():
            new = fresh_id(drill, taken_kind, source)
        names[record.id] = new
    by = COPY_BY if any(_stands_there(here, record) for record in records) else (0.0, 0.0)
    made = [_renamed(record, names, by) for record in records]
    return put(drill, at, *made), tuple(record.id for record in made)


def _letter_here(
    drill: Drill,
    at: At,
    part: Drill,
    letter: str,
    *,
    stands: bool,
    given: Collection[str],
) -> tuple[Drill, str]:
    """Return the letter that the person ``letter`` of ``part`` has here, and ``drill`` with that job."""
    taken = setting_at(drill, at).spot_of(letter) is not None
    if stands and taken:
        job = part.job(letter)
        drill, fresh = new_job(drill, at, "coach" if job is not None and job.by == "coach" else "player", given)
        return drill, fresh.letter
    job = part.job(letter)
    if drill.job(letter) is None and job is not None:
        drill = drill.changed(jobs=(*drill.jobs, job))
    return drill, letter


def _stands_there(here: Setting, record: object) -> bool:
    """Whether something drawn just like ``record`` is there already."""
    id = getattr(record, "id", "")
    return here.find(id) == record


def _renamed(old: Any, names: dict[str, str], by: Point) -> Any:
    record = renamed(moved_record(old, by), names).changed(id=names[old.id])
    values: dict[str, Any] = {
        field: names.get(value, value)
        for field in ("job", "by", "called_by")
        if isinstance(value := record.declared(field), str) and is_letter(value)
    }
    return record.changed(**values) if values else record
