"""Nothing on a printed court lies under words: the boxes of ink are cut with one another by shapely, a general geometry library."""

import itertools
import os

import pytest
from shapely.affinity import rotate, scale
from shapely.geometry import LineString, Point, Polygon, box
from shapely.ops import unary_union

from designer.bundle import sample
from designer.court.standards import ground
from designer.drawing.picture import picture
from designer.drawing.primitives import Dots, Ellipse, Layer, Strokes, Words
from designer.drawing.themes import theme
from designer.drawing.words import text_width
from designer.drill.drill import Drill
from designer.drill.setting import addresses

SAMPLES = sorted(path.name.removesuffix(".drill.json") for path in sample().glob("*.drill.json"))
HARD = (Layer.KIT, Layer.PEOPLE, Layer.HEADS, Layer.DIGITS)
UNDER = ("court", "run-off", "paper", "casing", "casing outside")
MEDIA = ((157.6, 1.0), (192.7, 1.2), (152.0, 1.0), (140.0, 1.0))
"""Points the court is wide, and points of a mark unit: A5, A4, 3 × 5 in, and a little less."""


SEEN = 0.1
"""Less than this many square u is not seen: a hair of 0.2 mm by 0.06 mm on an A5 card."""


def ink(words):
    """Return the rectangle of a line's ink: capitals' height, and tails where there are letters with tails."""
    width = text_width(words.text, words.size, words.bold)
    left = words.at[0] - {"left": 0.0, "middle": width / 2, "right": width}[words.align]
    tail = 0.22 if set("gjpqy,;()") & set(words.text) else 0.0
    return box(left, words.at[1] - tail * words.size, left + width, words.at[1] + 0.714 * words.size)


def shape(primitive):
    """Return what a primitive covers, None for casing and for words, which are looked at by themselves."""
    if isinstance(primitive, Words | Dots | Strokes):
        return None
    style = primitive.style
    if {style.stroke, style.fill} - {None} <= set(UNDER):
        return None
    if isinstance(primitive, Ellipse):
        upright = scale(Point(primitive.centre).buffer(1.0), *primitive.radii)
        return rotate(upright, primitive.turn).buffer(style.width / 2)
    points = primitive.points[::3] if primitive.curved else primitive.points
    solid = primitive.closed and len(points) > 2
    return (Polygon(points) if solid else LineString(points)).buffer(style.width / 2)


def covered(made):
    """Yield (words, what they cover, how much in square u)."""
    square = made.unit**2
    words = [
        (mark, each.text, ink(each))
        for mark in made.marks
        if mark.layer == Layer.WORDS
        for each in mark.primitives
        if isinstance(each, Words)
    ]
    for mark in made.marks:
        if mark.layer not in HARD or mark.kind == "going on":
            continue
        found = unary_union([seen for each in mark.primitives if (seen := shape(each)) is not None])
        for owner, text, rectangle in words:
            if owner is not mark and (shared := rectangle.intersection(found).area / square) > SEEN:
                yield text, f"{mark.kind} {mark.id}", shared
    for (one, text, first), (other, more, second) in itertools.combinations(words, 2):
        if one is not other and (shared := first.intersection(second).area / square) > SEEN:
            yield text, more, shared


@pytest.mark.parametrize("name", SAMPLES)
def test_words_on_paper_cover_nothing(name):
    """Common practice, no source: what cannot be read at a glance is read wrong."""
    drill = Drill.model_validate_json(sample(f"{name}.drill.json").read_bytes())
    thorough = os.environ.get("HYPOTHESIS_PROFILE") == "thorough"
    turn = SAMPLES.index(name)
    settings = list(addresses(drill))
    for at in settings if thorough else settings[turn % 3 :: 5]:
        for points, unit in MEDIA if thorough else MEDIA[turn % 4 :: 4]:
            for across in (False, True):
                metres = 2 * ground(drill.court).side_fence / points * unit
                made = picture(drill, at, unit=metres, theme=theme("paper"), across=across, patient=True)
                assert list(covered(made)) == [], (at, points, across)
