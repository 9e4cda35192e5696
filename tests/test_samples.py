"""The twelve drills that come with the program: whole, sound, and standing where their text says.

Everything here is invented but the court: ITF Rules of Tennis, Rule 1, in feet (net to baseline 39, net to service line
21, singles 27 wide, doubles 36); the red court is 36 by 18 ft, inside the ranges of the ITF's page on smaller courts.
A racket is 27 in and a stride is a yard, so that places are counted here in feet and never taken from the program.
"""

import itertools
import json
import re
from collections import Counter
from functools import cache

import jsonschema
import pytest

from designer.bundle import sample
from designer.drill.base import Record
from designer.drill.places import locate
from designer.drill.setting import At, addresses, below, changes_at, difference, resolve, setting_at
from designer.review.checks import checks
from designer.storage.brand import brand_beside, logo_beside
from designer.storage.reading import open_drill
from designer.storage.schema import schema
from designer.storage.writing import drill_bytes
from designer.wording.card import card_words

FOOT = 0.3048
RACKET, STRIDE = 27 / 12, 3
BASELINE, SERVICE, SINGLES, DOUBLES = 39, 21, 13.5, 18
RED_BASELINE, RED_SIDE = 18, 9

CODES = (
    "shared-target",
    "one-lands-short",
    "forehand-on-eight",
    "chalk-line",
    "wide-start",
    "a-chooses",
    "short-approach",
    "serve-open",
    "volley-four",
    "hoop-red",
    "doubles-six",
    "return-past",
)
OWN_TEXT = ("note", "text", "label", "name", "role", "call", "aim", "objective", "cues", "watch_for", "safety", "kit")
SIDE_WORDS = re.compile(r"\b(left|right|deuce|ad|clockwise)\b", re.IGNORECASE)
TOKEN = re.compile(r"\{([^{}]*)\}")
TURNED_WORDS = {"left", "right", "deuce", "ad", "clockwise", "forehand", "backhand"}


def path(code):
    return sample(f"{code}.drill.json")


@cache
def drill_of(code):
    return open_drill(path(code)).drill


def settings_of(drill):
    return [(at, setting_at(drill, at)) for at in addresses(drill)]


def nested(record):
    """The record and every record inside it."""
    yield record
    for value in dict(record).values():
        parts = value.values() if isinstance(value, dict) else value if isinstance(value, tuple) else (value,)
        for part in parts:
            if isinstance(part, Record):
                yield from nested(part)


def texts(record):
    """Every text of the author's own in a record, with the name of its field."""
    for part in nested(record):
        for name in OWN_TEXT:
            value = getattr(part, name, None)
            for text in value if isinstance(value, tuple) else (value,):
                if isinstance(text, str) and text:
                    yield name, text


def named_ids(record):
    """Every id that a record names: what it comes after, what it is about, where it lies, what it is tied to."""
    for part in nested(record):
        for name in ("after", "during", "shot", "on"):
            value = getattr(part, name, None)
            if isinstance(value, str) and not value.isupper():
                yield value
        for name in ("of", "shots", "parts"):
            value = getattr(part, name, ())
            yield from (id for id in value if isinstance(id, str))
        area = getattr(part, "area", None)
        if isinstance(area, str) and " " not in area:
            yield area


def letters(record):
    """Every letter that a record names."""
    for part in nested(record):
        for name in ("by", "who", "called_by", "job", "hand_of", "on"):
            value = getattr(part, name, None)
            yield from (x for x in (value if isinstance(value, tuple) else (value,)) if is_letter(x))
        for moved in dict(getattr(part, "moves", {})).items():
            yield from filter(is_letter, moved)
        yield from itertools.chain.from_iterable(getattr(part, "table", ()))


def is_letter(value):
    return isinstance(value, str) and len(value) == 1 and value.isupper()


def feet(point):
    return tuple(round(value / FOOT, 3) + 0.0 for value in point)


def test_all_twelve_are_there():
    found = sorted(file.name.removesuffix(".drill.json") for file in sample().glob("*.drill.json"))
    assert found == sorted(CODES)


@pytest.mark.parametrize("code", CODES)
def test_a_sample_opens_without_a_notice_and_is_as_the_program_writes_it(code):
    opened = open_drill(path(code))
    assert opened.notices == ()
    assert not opened.read_only
    assert opened.drill.code == code
    assert drill_bytes(opened.drill) == path(code).read_bytes()


@pytest.mark.parametrize("code", CODES)
def test_a_sample_fits_the_published_schema(code):
    jsonschema.Draft202012Validator(schema()).validate(json.loads(path(code).read_bytes()))


@pytest.mark.parametrize("code", CODES)
def test_a_sample_has_nothing_that_the_program_does_not_know(code):
    assert [part.model_extra for part in nested(drill_of(code)) if part.model_extra] == []


@pytest.mark.parametrize("code", CODES)
def test_every_setting_stores_only_what_is_its_own(code):
    drill = drill_of(code)
    for at in addresses(drill):
        under, setting = below(drill, at), setting_at(drill, at)
        own = difference(under, setting)
        assert resolve(under, own) == setting
        assert Counter(own.drop) == Counter(changes_at(drill, at).drop), at
        for field in ("spots", "items", "shots", "runs", "parts", "rules", "points", "starts", "swaps"):
            stored = {record.id for record in getattr(changes_at(drill, at), field)}
            assert stored == {record.id for record in getattr(own, field)}, (at, field)


@pytest.mark.parametrize("code", CODES)
def test_what_a_setting_names_is_in_it(code):
    drill = drill_of(code)
    jobs = {job.letter for job in drill.jobs}
    for at, setting in settings_of(drill):
        for _, record in setting.records():
            assert set(named_ids(record)) <= setting.ids(), (at, record.id)
            assert set(letters(record)) <= jobs, (at, record.id)
        assert setting.in_play is None or " " in setting.in_play or setting.in_play in setting.items
        playing = {part.by for part in (*setting.shots.values(), *setting.runs.values())}
        assert playing <= {spot.job for spot in setting.spots.values()}, at


@pytest.mark.parametrize("code", CODES)
def test_every_arrow_can_be_drawn_and_no_two_balls_of_one_setting_land_on_each_other(code):
    for at, setting in settings_of(drill_of(code)):
        ends = {}
        for move in (*setting.shots.values(), *setting.runs.values()):
            if move.to is not None:
                ends[move.id] = locate(setting, move.to)
                assert ends[move.id] is not None, (at, move.id)
        landings = [(id, point) for id, point in ends.items() if id in setting.shots]
        for (one, first), (two, second) in itertools.combinations(landings, 2):
            apart = max(abs(first[0] - second[0]), abs(first[1] - second[1]))
            assert apart >= 0.4, (at, one, two)


@pytest.mark.parametrize("code", CODES)
def test_no_question_is_left_for_the_coach(code):
    drill = drill_of(code)
    for at, setting in settings_of(drill):
        for rule in setting.rules.values():
            assert rule.breach is not None, (at, rule.id)
        for start in setting.starts.values():
            assert start.bad is not None, (at, start.id)
            assert start.by, (at, start.id)
        for _, record in setting.records():
            for part in nested(record):
                if hasattr(part, "judged") and part.judged not in ("net", None):
                    assert part.line is not None, (at, record.id)
    assert drill.house.called_by
    assert drill.house.in_doubt == "replay"
    assert drill.house.stopped is not None
    assert drill.house.stopped.then == "replay"


@pytest.mark.parametrize("code", CODES)
def test_the_review_finds_nothing_wrong_and_nothing_to_be_careful_of(code):
    found = [(check.weight, check.key, check.sentence.text) for check in checks(drill_of(code))]
    assert [finding for finding in found if finding[0] != "suggestion"] == []


@pytest.mark.parametrize("code", CODES)
def test_no_card_of_a_sample_has_a_line_left_to_fill_in(code):
    drill = drill_of(code)
    for at in addresses(drill):
        sections = card_words(drill, at, "stand-in").sections
        assert [sentence.text for section in sections for sentence in section.sentences if sentence.missing] == [], at


@pytest.mark.parametrize("code", CODES)
def test_every_progression_says_how_it_starts_what_counts_and_where_it_ends(code):
    drill = drill_of(code)
    for progression in drill.progressions:
        setting = setting_at(drill, At(progression.id))
        assert progression.name
        assert setting.starts
        assert setting.points
        assert setting.finish is not None
        assert setting.parts


@pytest.mark.parametrize("code", CODES)
def test_no_text_holds_a_side_that_a_mirrored_drill_would_have_to_turn(code):
    drill = drill_of(code)
    for field, text in texts(drill):
        assert not SIDE_WORDS.search(TOKEN.sub("", text)), (field, text)


@pytest.mark.parametrize("code", CODES)
def test_every_token_in_a_text_means_something(code):
    drill = drill_of(code)
    known = TURNED_WORDS | {job.letter for job in drill.jobs}
    for field, text in texts(drill):
        assert set(TOKEN.findall(text)) <= known, (field, text)


@pytest.mark.parametrize("code", CODES)
def test_a_sample_is_signed_dated_and_framed_by_the_academy(code):
    drill = drill_of(code)
    assert drill.author == "Alder Quay Tennis Academy"
    assert drill.dated is not None
    assert drill.main in {progression.id for progression in drill.progressions}
    brand = brand_beside(path(code))
    assert brand is not None
    assert brand.name == drill.author
    assert logo_beside(path(code))


def test_the_brand_colour_can_be_read_on_white():
    # Relative luminance and contrast ratio: W3C WCAG 2.2, 1.4.3; 4.5 is asked of text.
    colour = brand_beside(path(CODES[0])).colour
    channels = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    luminance = sum(share * c for share, c in zip((0.2126, 0.7152, 0.0722), linear, strict=True))
    assert 1.05 / (luminance + 0.05) >= 4.5


HALF_BACK = (SERVICE + BASELINE) / 2
SPOTS = {
    ("shared-target", "p-together", "A"): (3 * RACKET, -BASELINE - STRIDE),
    ("shared-target", "p-together", "B"): (-3 * RACKET, BASELINE + STRIDE),
    ("one-lands-short", "p-points", "A"): (0, -BASELINE - STRIDE),
    ("one-lands-short", "p-points", "B"): (0, BASELINE + STRIDE),
    ("forehand-on-eight", "p-points", "A"): (0, -BASELINE - STRIDE),
    ("chalk-line", "p-points", "A"): (0, -BASELINE),
    ("chalk-line", "p-points", "B"): (0, BASELINE + STRIDE),
    ("wide-start", "p-fed", "A"): (0, -BASELINE - STRIDE),
    ("wide-start", "p-fed", "B"): (0, BASELINE + STRIDE),
    ("a-chooses", "p-change", "A"): (3 * RACKET, -BASELINE - STRIDE),
    ("a-chooses", "p-change", "B"): (-3 * RACKET, BASELINE + STRIDE),
    ("short-approach", "p-points", "A"): (0, -BASELINE - STRIDE),
    ("short-approach", "p-points", "B"): (0, BASELINE),
    ("volley-four", "p-four", "A"): (-4 * RACKET, -SERVICE + STRIDE),
    ("volley-four", "p-four", "B"): (4 * RACKET, -SERVICE + STRIDE),
    ("volley-four", "p-four", "C"): (4 * RACKET, SERVICE - STRIDE),
    ("volley-four", "p-four", "D"): (-4 * RACKET, SERVICE - STRIDE),
    ("hoop-red", "p-hand", "F"): (-2 * RACKET, -RED_BASELINE / 2),
    ("hoop-red", "p-hand", "A"): (0, -RED_BASELINE - RACKET),
    ("hoop-red", "p-hand", "B"): (-2 * RACKET, RED_BASELINE + 3 * STRIDE),
    ("hoop-red", "p-hand", "C"): (-RED_SIDE - 2 * STRIDE, -RED_BASELINE / 2),
    ("hoop-red", "p-hand", "D"): (-RED_SIDE - 2 * STRIDE, -RED_BASELINE / 2 - 2 * RACKET),
    ("doubles-six", "p-two", "A"): (4 * RACKET, -BASELINE - STRIDE),
    ("doubles-six", "p-two", "B"): (-4 * RACKET, -SERVICE / 2),
    ("doubles-six", "p-two", "C"): (-4 * RACKET, BASELINE + STRIDE),
    ("doubles-six", "p-two", "D"): (4 * RACKET, SERVICE / 2),
    ("return-past", "p-together", "B"): (-RACKET, BASELINE - 3 * STRIDE),
}


@pytest.mark.parametrize(("code", "progression", "letter"), SPOTS)
def test_people_stand_where_the_text_says(code, progression, letter):
    setting = setting_at(drill_of(code), At(progression))
    assert feet(locate(setting, setting.spot_of(letter).place)) == SPOTS[code, progression, letter]


CORNERS = {
    # 5 rackets by 4 strides, 1 racket in from the right singles line, 1 stride behind and inside.
    ("shared-target", "p-together", None, "target"): (0, -BASELINE + STRIDE, SINGLES - RACKET, -SERVICE - STRIDE),
    ("shared-target", "p-together", "v-baseline", "target"): (0, -BASELINE, SINGLES - RACKET, -SERVICE - STRIDE),
    ("shared-target", "p-together", "v-deeper", "target"): (
        0,
        -BASELINE + STRIDE,
        SINGLES - RACKET,
        -SERVICE - 2 * STRIDE,
    ),
    ("one-lands-short", "p-points", None, "depth"): (-SINGLES, -SERVICE - 2 * STRIDE, SINGLES, -BASELINE + 4 * STRIDE),
    ("one-lands-short", "p-points", "v-nearer", "depth"): (
        -SINGLES,
        -SERVICE - STRIDE,
        SINGLES,
        -SERVICE - STRIDE,
    ),
    ("one-lands-short", "p-points", "v-half-way", "depth"): (-SINGLES, -HALF_BACK, SINGLES, -HALF_BACK),
    # 4 rackets in from A's left singles line, and from the right one of left-handed B: on one line.
    ("forehand-on-eight", "p-points", None, "lane-a"): (
        -SINGLES + 4 * RACKET,
        -BASELINE + STRIDE,
        -SINGLES + 4 * RACKET,
        -SERVICE - STRIDE,
    ),
    ("forehand-on-eight", "p-points", None, "lane-b"): (
        -SINGLES + 4 * RACKET,
        SERVICE + STRIDE,
        -SINGLES + 4 * RACKET,
        BASELINE - STRIDE,
    ),
    ("forehand-on-eight", "p-points", None, "big-a"): (-SINGLES + 4 * RACKET, -BASELINE, SINGLES, -SERVICE),
    ("forehand-on-eight", "p-points", "v-seven", "lane-a"): (
        -RACKET,
        -BASELINE + STRIDE,
        -RACKET,
        -SERVICE - STRIDE,
    ),
    ("forehand-on-eight", "p-points", "v-nine", "lane-b"): (
        -3 * RACKET,
        SERVICE + STRIDE,
        -3 * RACKET,
        BASELINE - STRIDE,
    ),
    ("forehand-on-eight", "p-points", "v-one-hand", "lane-b"): (
        SINGLES - 4 * RACKET,
        SERVICE + STRIDE,
        SINGLES - 4 * RACKET,
        BASELINE - STRIDE,
    ),
    ("chalk-line", "p-points", None, "chalk"): (-SINGLES, -BASELINE - STRIDE, SINGLES, -BASELINE - STRIDE),
    ("chalk-line", "p-points", "v-two-strides", "chalk"): (
        -SINGLES,
        -BASELINE - 2 * STRIDE,
        SINGLES,
        -BASELINE - 2 * STRIDE,
    ),
    ("chalk-line", "p-points", "v-baseline", "chalk"): (-SINGLES, -BASELINE, SINGLES, -BASELINE),
    ("wide-start", "p-fed", None, "feed-zone"): (SINGLES - 2 * RACKET, -SERVICE - 3 * STRIDE, SINGLES, -SERVICE),
    ("wide-start", "p-fed", None, "reply-zone"): (-SINGLES, SERVICE, 0, BASELINE),
    ("wide-start", "p-fed", None, "tick"): (RACKET, -BASELINE - STRIDE / 2, RACKET, -BASELINE),
    ("wide-start", "p-fed", "v-four-rackets", "feed-zone"): (
        SINGLES - 4 * RACKET,
        -SERVICE - 3 * STRIDE,
        SINGLES,
        -SERVICE,
    ),
    ("wide-start", "p-fed", "v-tick", "tick"): (3 * RACKET, -BASELINE - STRIDE / 2, 3 * RACKET, -BASELINE),
    ("wide-start", "p-fed", "v-deeper", "reply-zone"): (-SINGLES, SERVICE + 2 * STRIDE, 0, BASELINE),
    ("wide-start", "p-fed", "v-one-racket", "feed-zone"): (SINGLES - RACKET, -SERVICE - 3 * STRIDE, SINGLES, -SERVICE),
    ("a-chooses", "p-change", "v-short-only", "front"): (
        -SINGLES,
        -SERVICE - 2 * STRIDE,
        SINGLES,
        -SERVICE - 2 * STRIDE,
    ),
    ("short-approach", "p-points", None, "zone"): (0, SERVICE + 2 * STRIDE, SINGLES, BASELINE),
    ("short-approach", "p-points", None, "feed-place"): (0, -SERVICE, SINGLES - RACKET, -SERVICE / 2),
    ("short-approach", "p-points", "v-whole", "zone"): (0, SERVICE, SINGLES, BASELINE),
    ("short-approach", "p-points", "v-three", "zone"): (SINGLES - 3 * RACKET, SERVICE + 2 * STRIDE, SINGLES, BASELINE),
    ("serve-open", "p-points", None, "wide"): (-SINGLES, 0, -3 * RACKET, SERVICE),
    ("serve-open", "p-points", None, "centre"): (-3 * RACKET, 0, 0, SERVICE),
    ("serve-open", "p-points", None, "open-half"): (0, 0, SINGLES, BASELINE),
    ("serve-open", "p-points", "v-past", "open-half"): (0, SERVICE, SINGLES, BASELINE),
    ("volley-four", "p-four", None, "near-net"): (-DOUBLES, -SERVICE, DOUBLES, 0),
    ("volley-four", "p-four", None, "keep-off"): (-DOUBLES, -2 * STRIDE, DOUBLES, 0),
    ("hoop-red", "p-hand", "v-half", "half"): (0, 0, RED_SIDE, RED_BASELINE),
    ("return-past", "p-points", None, "depth"): (-SINGLES, SERVICE + 2 * STRIDE, SINGLES, SERVICE + 2 * STRIDE),
    ("return-past", "p-points", "v-service-line", "depth"): (-SINGLES, SERVICE, SINGLES, SERVICE),
    ("return-past", "p-points", "v-half-way", "depth"): (-SINGLES, HALF_BACK, SINGLES, HALF_BACK),
}


@pytest.mark.parametrize(("code", "progression", "variation", "id"), CORNERS)
def test_lines_and_areas_lie_where_the_text_says(code, progression, variation, id):
    item = setting_at(drill_of(code), At(progression, variation)).items[id]
    corners = [feet(corner) for corner in (getattr(item, "shape", None) or item).corners]
    across, along = sorted(x for x, _ in corners), sorted(y for _, y in corners)
    assert (across[0], along[0], across[-1], along[-1]) == CORNERS[code, progression, variation, id]


PLACES = {
    ("a-chooses", "p-change", "half-way"): (0, -HALF_BACK),
    ("volley-four", "p-four", "disc-2"): (DOUBLES + RACKET / 2, -2 * STRIDE),
    ("hoop-red", "p-hand", "hoop-hand"): (2 * RACKET, RED_BASELINE / 2),
    ("hoop-red", "p-hand", "hoop-other"): (-2 * RACKET, RED_BASELINE / 2),
}


@pytest.mark.parametrize(("code", "progression", "id"), PLACES)
def test_kit_stands_where_the_text_says(code, progression, id):
    setting = setting_at(drill_of(code), At(progression))
    assert feet(locate(setting, setting.items[id].place)) == PLACES[code, progression, id]


def test_the_discs_of_the_serve_split_each_box_in_two():
    setting = setting_at(drill_of("serve-open"), At("p-points"))
    places = sorted(feet(setting.items[id].place.at) for id in ("disc-deuce", "disc-ad"))
    assert [x for x, _ in places] == [-3 * RACKET, 3 * RACKET]
    assert [y for _, y in places] == [SERVICE, SERVICE]


def test_the_thrown_ball_bounces_one_racket_to_the_hand_side_and_two_strides_inside_the_baseline():
    setting = setting_at(drill_of("hoop-red"), At("p-hand"))
    assert feet(locate(setting, setting.shots["throw"].to)) == (RACKET, -RED_BASELINE + 2 * STRIDE)


def test_the_feed_at_the_net_is_hit_from_the_service_line():
    setting = setting_at(drill_of("volley-four"), At("p-four"))
    assert feet(setting.shots["feed"].contact.at) == (-4 * RACKET, -SERVICE)


def test_six_rounds_of_doubles_give_everyone_each_partner_twice_and_each_place_three_times():
    table = setting_at(drill_of("doubles-six"), At("p-two")).swaps["partners"].table
    pairs = Counter(
        frozenset(pair)
        for near_back, near_net, far_back, far_net in table
        for pair in ((near_back, near_net), (far_back, far_net))
    )
    assert pairs == {frozenset(pair): 2 for pair in itertools.combinations("ABCD", 2)}
    assert Counter(letter for row in table for letter in (row[0], row[2])) == dict.fromkeys("ABCD", 3)
    assert Counter(letter for row in table for letter in (row[1], row[3])) == dict.fromkeys("ABCD", 3)


def test_after_two_rounds_of_doubles_a_stays_and_the_others_move_one_place():
    table = setting_at(drill_of("doubles-six"), At("p-two")).swaps["partners"].table
    for before, after in itertools.pairwise(table[:3]):
        near_back, near_net, far_back, far_net = before
        assert after == (near_back, far_net, near_net, far_back)


def test_three_rounds_at_the_net_give_everyone_each_partner_once():
    table = setting_at(drill_of("volley-four"), At("p-four")).swaps["partners"].table
    pairs = Counter(frozenset(row[side : side + 2]) for row in table for side in (0, 2))
    assert pairs == {frozenset(pair): 1 for pair in itertools.combinations("ABCD", 2)}


def discs(setting):
    """How many flat discs a setting needs: at each piece of a line, at corners that no painted lines cross, and alone."""
    crossings = {(x, y) for x in (-SINGLES, SINGLES, -DOUBLES, DOUBLES) for y in (-BASELINE, BASELINE)}
    crossings |= {(x, y) for x in (-SINGLES, 0, SINGLES) for y in (-SERVICE, SERVICE)}
    crossings |= {(0, -BASELINE), (0, BASELINE)}
    count = 0
    for item in setting.items.values():
        copies = 2 if item.both_ends else 1
        if item.kind == "disc":
            count += copies
        elif getattr(item, "marked", None) == "discs":
            corners = [feet(corner) for corner in getattr(item, "shape", item).corners]
            if item.kind == "line":
                count += copies * item.pieces
            else:
                places = set(itertools.product({x for x, _ in corners}, {y for _, y in corners}))
                count += copies * len(places - crossings)
    return count


@pytest.mark.parametrize(
    ("code", "progression", "count"),
    [
        ("shared-target", "p-together", 8),
        ("one-lands-short", "p-points", 10),
        ("forehand-on-eight", "p-points", 10),
        ("chalk-line", "p-points", 0),
        ("a-chooses", "p-change", 2),
        ("short-approach", "p-points", 2),
        ("serve-open", "p-points", 2),
        ("volley-four", "p-four", 4),
        ("hoop-red", "p-hand", 3),
        ("doubles-six", "p-two", 0),
        ("return-past", "p-points", 5),
    ],
)
def test_the_layout_needs_as_many_discs_as_the_text_asks_for(code, progression, count):
    assert discs(setting_at(drill_of(code), At(progression))) == count
