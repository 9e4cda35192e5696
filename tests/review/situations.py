"""Small drills for the tests of the review: two players on a tennis court, and what a test adds."""

from designer.drill.base import place
from designer.drill.conditions import Outcome
from designer.drill.drill import Changes, Court, Drill, House, Progression
from designer.drill.kinds import kind_of
from designer.drill.movement import Run, Shot
from designer.drill.people import Job, Spot
from designer.drill.rules import Finish, Points, Start
from designer.drill.setting import At
from designer.wording.telling import telling

AT = At("p")
HOUSE = House(called_by=("receiver",), in_doubt="replay", stopped=Outcome(then="replay"), feed_played="accepted")
COURT = Court(run_back=6.4008, side_run=3.6576)


def spot(letter, x, y, **values):
    return Spot(id=f"spot-{letter.lower()}", job=letter, place=place(x, y), **values)


A, B = spot("A", 0.0, -12.8016), spot("B", 0.0, 12.8016)
FEED = Shot(id="feed", by="B", stroke="racket feed", to=place(2.0, -9.0))
REPLY = Shot(id="reply", by="A", after="feed", to=place(-2.0, 9.0))
START = Start(id="start", shot="feed", bad=Outcome(then="replay"))
WON = Points(id="won", on=({"what": "won"},), gives=Outcome(then="points", value=1))
END = Finish(id="end", kind="race", to=11)
RALLY = (A, B, FEED, REPLY, START, WON, END)


def run(by, during, x, y, id="run", **values):
    return Run(id=id, by=by, during=during, to=place(x, y), **values)


def changes(*records, **values):
    lists = {}
    for record in records:
        kind = kind_of(record)
        if kind == "finish":
            lists[kind] = record
        else:
            lists.setdefault(kind, []).append(record)
    return Changes(**{kind: value if kind == "finish" else tuple(value) for kind, value in lists.items()}, **values)


def drill(*records, jobs="AB", in_play=None, **values):
    """A drill of one progression "p" with these records; the jobs are letters or `Job` records."""
    own = changes(*records) if in_play is None else changes(*records, in_play=in_play)
    held = tuple(job if isinstance(job, Job) else Job(letter=job) for job in jobs)
    values = {"court": COURT, "house": HOUSE} | values
    return Drill(id="d-test", jobs=held, progressions=(Progression(id="p", changes=own),), **values)


def told(*records, **values):
    return telling(drill(*records, **values), AT)


def keys(found):
    return sorted(check.key for check in found)


def only(found, key):
    """The one check of this key."""
    (check,) = [check for check in found if check.key == key]
    return check
