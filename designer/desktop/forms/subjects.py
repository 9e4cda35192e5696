"""What a form is about: how its record is read from a drill, how an edited one is put back, and what it is called."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Final

from designer.desktop.forms.context import Context, regions
from designer.desktop.forms.fields import Field, Line, Pick, Table
from designer.desktop.forms.tables import table_of
from designer.desktop.forms.tables_drill import COURT, FACTS, HOUSE, JOB, PAPER, PROGRESSION, VARIATION, WORDS
from designer.desktop.names import name_of
from designer.drill import edits
from designer.drill.base import Area, Letter, Record, Text
from designer.drill.drill import Drill
from designer.drill.people import Job
from designer.drill.setting import At, progression_at, setting_at, variation_at


@dataclass(frozen=True, slots=True)
class Subject:
    """``key`` names it: the id of a record, or "drill:facts", "job:A", "progression:p-1" and so on.

    ``read`` returns None where it is no longer there.
    """

    key: str
    read: Callable[[Drill, At], Any]
    write: Callable[[Drill, At, Any], Drill]
    table: Callable[[Any], Table]
    title: Callable[[Context, Any], str]

    @property
    def record_id(self) -> str | None:
        """Return the id of the setting's record that this is about, None for what belongs to the whole drill."""
        return None if ":" in self.key else self.key


def record(id: str) -> Subject:
    """Return the subject of a record of the setting in view."""
    return Subject(
        key=id,
        read=lambda drill, at: setting_at(drill, at).find(id),
        write=edits.put,
        table=table_of,
        title=lambda context, found: name_of(context.setting, found),
    )


def _of_drill(key: str, title: str, table: Table) -> Subject:
    return Subject(
        key=f"drill:{key}",
        read=lambda drill, _: drill,
        write=lambda _drill, _at, new: new,
        table=lambda _: table,
        title=lambda _context, _record: title,
    )


FACT_SHEET: Final = _of_drill("facts", "players, time and kit", FACTS)
WORDING: Final = _of_drill("words", "title, objective and cues", WORDS)
PAPERS: Final = _of_drill("papers", "author, edition and tags", PAPER)

COURT_SHEET: Final = Subject(
    key="drill:court",
    read=lambda drill, _: drill.court,
    write=lambda drill, _, new: drill.changed(court=new),
    table=lambda _: COURT,
    title=lambda _context, _record: "court",
)
HOUSE_SHEET: Final = Subject(
    key="drill:house",
    read=lambda drill, _: drill.house,
    write=lambda drill, _, new: drill.changed(house=new),
    table=lambda _: HOUSE,
    title=lambda _context, _record: "house answers",
)


class InPlay(Record):
    """What a setting says beside its records: what is in play, and with which ball."""

    in_play: Area | None = None
    ball: Text | None = None


_IN_PLAY_ROWS: Final[Table] = (
    Field("in_play", "In play", Pick(regions, "the singles court")),
    Field("ball", "Ball", Line("the usual one", optional=True, follows=True)),
)


def _read_in_play(drill: Drill, at: At) -> InPlay:
    here = setting_at(drill, at)
    return InPlay(in_play=here.in_play, ball=here.ball)


def _write_in_play(drill: Drill, at: At, new: InPlay) -> Drill:
    from dataclasses import replace

    return edits.with_setting(drill, at, replace(setting_at(drill, at), in_play=new.in_play, ball=new.ball))


IN_PLAY_SHEET: Final = Subject(
    key="drill:in play",
    read=_read_in_play,
    write=_write_in_play,
    table=lambda _: _IN_PLAY_ROWS,
    title=lambda _context, _record: "court in play and ball",
)


def job(letter: Letter) -> Subject:
    """Return the subject of the job of this letter; writing one that the drill does not list yet adds it."""

    def write(drill: Drill, _: At, new: Job) -> Drill:
        kept = tuple(new if each.letter == letter else each for each in drill.jobs)
        return drill.changed(jobs=kept if drill.job(letter) else (*kept, new))

    return Subject(
        key=f"job:{letter}",
        read=lambda drill, _: drill.job(letter) or Job(letter=letter),
        write=write,
        table=lambda _: JOB,
        title=lambda _context, _record: f"player {letter}",
    )


def _names(*fields: str) -> Callable[[Any], dict[str, Any]]:
    return lambda found: {name: getattr(found, name) for name in fields}


def progression(id: str) -> Subject:
    """Return the subject of a progression: its name, aim and minutes."""
    values = _names("name", "aim", "minutes", "note")

    def read(drill: Drill, _: At) -> Any:
        return progression_at(drill, At(id)) if any(each.id == id for each in drill.progressions) else None

    return Subject(
        key=f"progression:{id}",
        read=read,
        write=lambda drill, _, new: edits.change_progression(drill, id, **values(new)),
        table=lambda _: PROGRESSION,
        title=lambda _context, found: f"progression {found.name}".strip(),
    )


def variation(at: At) -> Subject:
    """Return the subject of a variation: its name and note."""
    values = _names("name", "note")

    def read(drill: Drill, _: At) -> Any:
        try:
            return variation_at(drill, at)
        except KeyError:
            return None

    return Subject(
        key=f"variation:{at.variation}",
        read=read,
        write=lambda drill, _, new: edits.change_variation(drill, at, **values(new)),
        table=lambda _: VARIATION,
        title=lambda _context, found: f"variation {found.name}".strip(),
    )


SHEETS: Final = {each.key: each for each in (FACT_SHEET, WORDING, PAPERS, COURT_SHEET, HOUSE_SHEET, IN_PLAY_SHEET)}
"""The forms for what is said once for the whole drill."""


def subject_of(drill: Drill, at: At, about: str) -> Subject | None:
    """Return what ``about`` names in a sentence: a record's id, a job's letter, a progression, a variation, a sheet."""
    if about in SHEETS:
        return SHEETS[about]
    if setting_at(drill, at).find(about) is not None:
        return record(about)
    if len(about) == 1 and about.isupper():
        return job(about)
    for each in drill.progressions:
        if each.id == about:
            return progression(about)
        for degree in (each.easier, each.harder, each.others):
            if any(one.id == about for one in degree):
                return variation(At(each.id, about))
    return None
