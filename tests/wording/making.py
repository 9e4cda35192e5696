"""Small drills for the tests of wording. What is said in them is common practice, no source, and invented."""

from designer.drill.base import place
from designer.drill.drill import Changes, Drill, House, Progression
from designer.drill.items import Area, Rectangle
from designer.drill.movement import Shot
from designer.drill.people import Job, Spot
from designer.drill.setting import EMPTY, At, difference
from designer.wording.sentence import unmarked
from designer.wording.telling import telling

HERE = At("p")


def spot(letter, x, y, **values):
    return Spot(id=f"spot-{letter.lower()}", job=letter, place=place(x, y), **values)


SINGLES = (spot("A", 0.0, -12.8016), spot("B", 0.0, 12.8016))
DOUBLES = (
    spot("A", 2.7432, -12.8016),
    spot("B", -2.7432, -3.2004),
    spot("C", -2.7432, 12.8016),
    spot("D", 2.7432, 3.2004),
)
FEED = Shot(id="feed", by="B", stroke="racket feed", to=place(0.0, -9.144))
REPLY = Shot(id="reply", by="A", after="feed")


def area(id, name, *corners, **values):
    return Area(kind="area", id=id, name=name, shape=Rectangle(form="rectangle", corners=corners), **values)


ZONE = area("zone", "reply zone", (-4.1148, 6.4008), (0.0, 11.8872), care="exact", marked="painted")


def drill_of(*records, house=None, jobs="AB", in_play=None, ball=None, **values):
    """A drill of one progression, "p", with these records."""
    setting = EMPTY.having(*records)
    changes = difference(EMPTY, setting)
    changes = changes.changed(**{k: v for k, v in (("in_play", in_play), ("ball", ball)) if v is not None})
    return Drill(
        id="d-made",
        jobs=tuple(Job(letter=letter) for letter in jobs),
        house=house or House(in_doubt="replay"),
        progressions=(Progression(id="p", name="Points", changes=changes),),
        **values,
    )


def told(*records, reader="coach", player=None, units="rackets", **values):
    """The telling of a drill of one progression with these records."""
    return telling(drill_of(*records, **values), HERE, reader, player, units)


def texts(sentences):
    """What a list of sentences reads."""
    return [sentence.text for sentence in sentences]


def read(text):
    return unmarked(text)


def with_variation(drill, **changes):
    """The drill with an easier form "v" of its only progression that makes these changes."""
    from designer.drill.drill import Variation

    (progression,) = drill.progressions
    easier = (Variation(id="v", name="Easier", changes=Changes(**changes)),)
    return drill.changed(progressions=(progression.changed(easier=easier),))
