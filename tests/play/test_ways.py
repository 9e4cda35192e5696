"""The usual way as empty progressions: what is drawn stays, and nothing is broken by it."""

import functools
import random

import pytest

from designer.bundle import sample
from designer.drill.conditions import In, Outcome
from designer.drill.drill import Drill, Progression
from designer.drill.rules import Aim, Height, Keep, Rule, UseStroke
from designer.drill.setting import At, setting_at
from designer.play.ways import add_usual, usual_way
from designer.storage.reading import read_drill
from designer.storage.writing import drill_bytes

SAMPLES = sorted(path.name.removesuffix(".drill.json") for path in sample().glob("*.drill.json"))
KINDS = [rung.kind for rung in usual_way()]
BLANK = Drill(id="d-blank", progressions=(Progression(id="p"),))


@functools.cache
def load(name):
    return Drill.model_validate_json(sample(f"{name}.drill.json").read_bytes())


def added(drill, kind):
    whole = add_usual(drill, kind, random.Random(7))
    return whole, setting_at(whole, At(whole.progressions[-1].id))


def names_of(record):
    return {*getattr(record, "of", ()), *getattr(record, "parts", ())}


def test_the_usual_way_goes_from_a_shadow_swing_to_the_match():
    """Common practice, no source: from no decision and no ball to serve and return, then without the rule."""
    assert KINDS == ["shadow", "fed", "cooperative", "restricted", "points", "match start", "rule off"]
    assert all(rung.name and rung.about.endswith(".") for rung in usual_way())


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("name", SAMPLES)
def test_a_rung_is_added_last_and_nothing_else_changes(name, kind):
    drill = load(name)
    whole, setting = added(drill, kind)
    assert whole.progressions[:-1] == drill.progressions
    assert setting.finish is not None
    assert setting.parts
    below = setting_at(drill, At(drill.progressions[-1].id))
    assert (setting.spots, setting.items) == (below.spots, below.items)
    # The rest names only what is there, and the file reads back.
    for record in (*setting.rules.values(), *setting.points.values()):
        assert names_of(record) <= setting.ids(), record.id
    assert {start.shot for start in setting.starts.values()} <= {None, *setting.shots}
    assert read_drill(drill_bytes(whole), "made").drill == whole


@pytest.mark.parametrize("kind", KINDS)
def test_a_rung_on_a_blank_court_is_empty_but_for_parts_points_and_finish(kind):
    _, setting = added(BLANK, kind)
    assert not any((setting.shots, setting.starts, setting.rules, setting.spots))
    assert bool(setting.points) == (kind != "shadow")


def test_together_counts_in_a_row_and_starts_again_after_a_miss():
    _, setting = added(BLANK, "cooperative")
    (part,) = setting.parts.values()
    assert (part.kind, part.failed) == ("cooperative", Outcome(then="count to zero"))
    assert (setting.finish.running, setting.finish.scores) == (True, "all together")


def test_restricted_holds_the_rules_until_it_opens():
    _, setting = added(load("chalk-line"), "restricted")
    forced, opened = sorted(setting.parts.values(), key=lambda part: part.kind)
    assert (forced.kind, opened.kind, opened.after) == ("forced", "open", forced.id)
    assert forced.until[0].count == 4
    assert {rule.parts for rule in setting.rules.values()} == {(forced.id,)}


def test_without_a_ball_players_swing_and_nobody_feeds():
    drill = load("wide-start")
    _, setting = added(drill, "shadow")
    assert {shot.stroke for shot in setting.shots.values()} == {"shadow swing"}
    assert not setting.starts
    assert not setting.points
    assert all(run.during in setting.shots for run in setting.runs.values())


def test_a_match_start_is_a_serve_by_whoever_fed():
    drill = load("a-chooses").changed(progressions=load("a-chooses").progressions[:1])
    whole, setting = added(drill, "match start")
    (start,) = setting.starts.values()
    serve = setting.shots[start.shot]
    assert (serve.by, serve.stroke, start.serves, start.courts) == ("B", "serve", {"B": 2}, "in turn")
    assert setting.finish.kind == "tie-break"
    assert drill_bytes(whole).count(b'"serve"') == 1


def test_rule_off_pays_for_what_the_rule_asked_and_keeps_what_protects():
    keep = Rule(
        id="deep",
        who=("A",),
        must=Keep(do="keep", where=(In(area="back court", judged="bounce", line="in"),)),
        breach=Outcome(then="lose the point"),
    )
    body = Rule(id="body", never=True, must=Aim(do="aim", direction="at a body"))
    low = Rule(id="low", must=Height(do="height", at="highest", most="raised racket"))
    wing = Rule(id="wing", must=UseStroke(do="use stroke", wing="forehand"))
    drill = BLANK.changed(
        progressions=(
            Progression(id="p", changes=BLANK.progressions[0].changes.changed(rules=(keep, body, wing, low))),
        )
    )
    _, setting = added(drill, "rule off")
    assert list(setting.rules) == ["body", "low"]
    (bonus,) = [points for points in setting.points.values() if points.beside is not None]
    assert (bonus.gives.value, bonus.beside) == (2, "instead")
    assert bonus.on[0].and_[0].where == keep.must.where
    assert bonus.on[0].by == ("A",)
