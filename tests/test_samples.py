"""The twelve drills that come with the program: whole and sound. Everything in them is invented."""

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
