"""Easier and harder at one press: only what the dial names changes, and what is made can be laid out and read."""

import functools
import random

import pytest

from designer.bundle import sample
from designer.court.regions import RACKET, STRIDE
from designer.drill.base import place
from designer.drill.conditions import Event, In, Outcome
from designer.drill.drill import Changes, Drill, Progression
from designer.drill.items import Area, Disc, Ellipse, Hoop, Line, Polygon, Rectangle
from designer.drill.movement import Shot
from designer.drill.people import Job, Spot
from designer.drill.rules import Bounces, Finish, Keep, Part, Points, Rule
from designer.drill.setting import At, addresses, changes_at, main_setting, setting_at
from designer.play.dials import dials, turned
from designer.storage.reading import read_drill
from designer.storage.writing import drill_bytes

SAMPLES = sorted(path.name.removesuffix(".drill.json") for path in sample().glob("*.drill.json"))
CASES = [
    (name, dial.key, degree)
    for name in SAMPLES
    for drill in [Drill.model_validate_json(sample(f"{name}.drill.json").read_bytes())]
    for dial in dials(drill, main_setting(drill))
    for degree in ("easier", "harder")
    if dial.words(degree) is not None
]
AT = At("p")
LINE = 13.5 * 0.3048  # the singles line, 13 ft 6 in from the middle: ITF Rules of Tennis, Rule 1
SERVICE, BASE = 21 * 0.3048, 39 * 0.3048


@functools.cache
def load(name):
    return Drill.model_validate_json(sample(f"{name}.drill.json").read_bytes())


def drill(**changes):
    spots = (Spot(id="a", job="A", place=place(0, -12.8016)), Spot(id="b", job="B", place=place(0, 12.8016)))
    changes = {"spots": spots} | changes
    jobs = (Job(letter="A"), Job(letter="B"))
    return Drill(id="d", jobs=jobs, progressions=(Progression(id="p", changes=Changes(**changes)),))


def zone(x0, y0, x1, y1, **values):
    return Area(
        kind="area", id="zone", care="exact", shape=Rectangle(form="rectangle", corners=((x0, y0), (x1, y1))), **values
    )


def keep(area="zone", **values):
    return Rule(id="rule", must=Keep(do="keep", where=(In(area=area, judged="bounce", **values),)))


def press(whole, key, degree):
    made = turned(whole, AT, key, degree, random.Random(5))
    variation = getattr(made.progressions[0], degree)[-1]
    return setting_at(made, At("p", variation.id))


def keys(whole, degree=None):
    return {dial.key for dial in dials(whole, AT) if degree is None or dial.words(degree) is not None}


@pytest.mark.parametrize(("name", "key", "degree"), CASES)
def test_a_press_adds_one_variation_and_leaves_the_rest(name, key, degree):
    before = load(name)
    at = main_setting(before)
    after = turned(before, at, key, degree, random.Random(3))
    new = set(addresses(after)) - set(addresses(before))
    assert len(new) == 1
    (made,) = new
    assert made.progression == at.progression
    assert all(setting_at(before, old) == setting_at(after, old) for old in addresses(before))
    assert changes_at(after, made) != Changes()
    assert read_drill(drill_bytes(after), "made").drill == after
    # Nothing names what is no longer there.
    setting = setting_at(after, made)
    for record in (*setting.rules.values(), *setting.points.values(), *setting.parts.values()):
        named = {*getattr(record, "of", ()), *getattr(record, "shots", ())}
        named |= {id for event in getattr(record, "on", getattr(record, "until", ())) for id in event.of}
        assert named <= setting.ids()


def test_every_dial_is_found_on_some_sample():
    assert {key for _, key, _ in CASES} == {
        "target size",
        "target distance",
        "count to open",
        "feed",
        "court width",
        "bounces",
        "choices",
        "score to win",
        "margin",
    }


def test_a_blank_court_has_no_dials():
    assert dials(drill(spots=()), AT) == ()


def test_a_dial_that_goes_no_further_says_so():
    whole = drill(finish=Finish(id="end", kind="race", to=11))
    with pytest.raises(ValueError, match="the margin cannot be made easier here"):
        turned(whole, AT, "margin", "easier", random.Random(1))
    with pytest.raises(KeyError):
        dials(whole, At("gone"))


def test_a_variation_is_turned_on_from_where_it_is():
    whole = turned(drill(finish=Finish(id="end", kind="race", to=11)), AT, "score to win", "harder", random.Random(1))
    first = At("p", whole.progressions[0].harder[0].id)
    twice = turned(whole, first, "score to win", "harder", random.Random(2))
    assert [setting_at(twice, At("p", v.id)).finish.to for v in twice.progressions[0].harder] == [15, 21]


def test_a_target_keeps_its_painted_edges_and_moves_the_others_by_whole_counts():
    # Right half of the far end past the service line, its front one stride behind that line, as its player sees it.
    whole = drill(items=(zone(-LINE, SERVICE + STRIDE, 0.0, BASE),), rules=(keep(),))
    larger = press(whole, "target size", "easier").items["zone"].shape.corners
    assert larger == ((-LINE, SERVICE), (0.0, BASE))
    smaller = press(whole, "target size", "harder").items["zone"].shape.corners
    assert smaller == ((pytest.approx(-LINE), pytest.approx(SERVICE + 2 * STRIDE)), (0.0, pytest.approx(BASE)))


def test_a_target_free_on_both_sides_gains_half_a_racket_on_each():
    whole = drill(items=(zone(-1.0, 8.0, 1.0, 10.0),), rules=(keep(),))
    (x0, y0), (x1, y1) = press(whole, "target size", "easier").items["zone"].shape.corners
    assert x1 - x0 == pytest.approx(2 + RACKET, abs=1e-3)
    assert y1 - y0 == pytest.approx(2 + STRIDE, abs=1e-3)


def test_painted_all_round_it_can_only_get_smaller_and_is_then_marked():
    whole = drill(items=(zone(-LINE, SERVICE, 0.0, BASE, marked="painted"),), rules=(keep(),))
    assert "target size" not in keys(whole, "easier")
    smaller = press(whole, "target size", "harder").items["zone"]
    assert smaller.marked == "discs"
    assert smaller.shape.corners[0][1] == pytest.approx(SERVICE + STRIDE)


def test_a_tiny_target_gets_no_smaller():
    whole = drill(items=(zone(1.0, 8.0, 1.3, 8.3),), rules=(keep(),))
    assert "target size" not in keys(whole, "harder")


@pytest.mark.parametrize(
    "shape",
    [
        Ellipse(form="ellipse", corners=((-1.0, 8.0), (1.0, 10.0))),
        Polygon(form="polygon", corners=((-1.0, 8.0), (1.0, 8.0), (0.0, 10.0))),
    ],
)
def test_other_shapes_grow_and_shrink_round_their_middle(shape):
    whole = drill(items=(Area(kind="area", id="zone", shape=shape),), rules=(keep(),))

    def width(degree):
        across = [x for x, _ in press(whole, "target size", degree).items["zone"].shape.corners]
        assert max(across) == pytest.approx(-min(across))
        return max(across) - min(across)

    assert width("harder") < 2 < width("easier")


def test_discs_on_the_corners_go_with_them():
    corner = Disc(kind="disc", id="disc", place=place(-LINE, SERVICE + STRIDE))
    other = Disc(kind="disc", id="other", place=place(-3.0, SERVICE + STRIDE))
    whole = drill(items=(zone(-LINE, SERVICE + STRIDE, 0.0, BASE), corner, other), rules=(keep(),))
    after = press(whole, "target size", "harder")
    assert after.items["disc"].place.at[1] == pytest.approx(SERVICE + 2 * STRIDE)
    assert after.items["other"] == other


def test_a_target_and_a_depth_line_move_a_stride():
    line = Line(kind="line", id="line", corners=((-4.0, 8.0), (4.0, 8.0)))
    whole = drill(items=(line,), rules=(keep("line", side="behind"),))
    assert press(whole, "target distance", "harder").items["line"].corners[0][1] == pytest.approx(8 + STRIDE)
    near = drill(items=(zone(-1, -10, 1, -9),), rules=(keep(),))
    assert press(near, "target distance", "harder").items["zone"].shape.corners[0][1] == pytest.approx(-10 - STRIDE)


def test_nothing_is_set_beyond_the_court():
    whole = drill(items=(zone(-1.0, BASE - 2.0, 1.0, BASE),), rules=(keep(),))
    assert "target distance" not in keys(whole, "harder")
    assert "target distance" in keys(whole, "easier")


def test_hoops_in_a_row_move_together():
    hoops = [Hoop(kind="hoop", id=id, place=place(x, 6.0)) for id, x in (("left", -1.0), ("right", 1.0))]
    whole = drill(items=tuple(hoops), rules=(keep("left"),))
    after = press(whole, "target distance", "easier")
    assert [item.place.at[1] for item in after.items.values()] == [pytest.approx(6 - STRIDE)] * 2


def test_the_count_takes_the_rule_that_counts_to_it_along():
    part = Part(id="part", kind="forced", until=(Event(what="played", by=("A",), count=2),))
    rule = keep().changed(who=("A",), to_hit=2)
    whole = drill(items=(zone(0, 7, 3, 11),), parts=(part, Part(id="open", kind="open", after="part")), rules=(rule,))
    after = press(whole, "count to open", "harder")
    assert (after.parts["part"].until[0].count, after.rules["rule"].to_hit) == (4, 4)
    assert press(whole, "count to open", "easier").parts["part"].until[0].count == 1


def test_a_feed_gets_softer_or_faster_one_step():
    feed = Shot(id="feed", by="B", stroke="racket feed", pace="soft", to=place(1, -9))
    assert keys(drill(shots=(feed,)), "easier").isdisjoint({"feed"})
    assert press(drill(shots=(feed,)), "feed", "harder").shots["feed"].pace == "half"
    assert press(drill(shots=(feed.changed(pace=None),)), "feed", "harder").shots["feed"].pace == "full"


def test_the_court_narrows_to_the_half_that_is_played_in():
    shots = (
        Shot(id="one", by="A", to=place(-2, 9)),
        Shot(id="two", by="B", after="one", to=place(2, -9)),
    )
    whole = drill(shots=shots, in_play="singles court")
    assert press(whole, "court width", "harder").in_play == "right half"
    assert press(whole, "court width", "easier").in_play == "doubles court"
    both = drill(shots=(shots[0], shots[1].changed(to=place(-2, -9))), in_play="singles court")
    assert "court width" not in keys(both, "harder")


@pytest.mark.parametrize(
    ("must", "degree", "expected"),
    [
        ({"most": 0}, "easier", {"most": 1}),
        ({"least": 1, "most": 1}, "easier", {"least": 1, "most": 2}),
        ({"least": 1, "most": 2}, "harder", {"least": 1, "most": 1}),
        ({"least": 1, "most": 1}, "harder", {"least": 1, "most": 1, "rising": True}),
        ({"least": 1, "most": 1, "rising": True}, "easier", {"least": 1, "most": 1}),
    ],
)
def test_bounces(must, degree, expected):
    rule = Rule(id="rule", must=Bounces(do="bounces", **must))
    assert press(drill(rules=(rule,)), "bounces", degree).rules["rule"].must == Bounces(do="bounces", **expected)


def test_a_bounce_more_where_no_rule_speaks_of_it_is_a_rule():
    shots = (Shot(id="feed", by="B", stroke="racket feed"), Shot(id="one", by="A", after="feed"))
    together = Part(id="part", kind="cooperative")
    for parts, cost in (((), "lose the point"), ((together,), "no score")):
        after = press(drill(shots=shots, parts=parts), "bounces", "easier")
        (rule,) = after.rules.values()
        assert (rule.must.most, rule.breach.then) == (2, cost)


def test_a_choice_less_takes_what_is_said_of_it_along():
    shots = (
        Shot(id="feed", by="B", stroke="racket feed", to=place(0, -9)),
        Shot(id="line", by="A", after="feed", to=place(-2, 9)),
        Shot(id="cross", by="A", after="feed", to=place(2, 9)),
        Shot(id="back", by="B", after="cross"),
    )
    rules = (Rule(id="rule", of=("cross",), must=Bounces(do="bounces", most=1)),)
    points = (
        Points(id="both", on=(Event(what="landed", of=("line", "cross")),), gives=Outcome(then="points", value=1)),
        Points(id="one", on=(Event(what="won", of=("back",)),), gives=Outcome(then="points", value=2)),
    )
    after = press(drill(shots=shots, rules=rules, points=points), "choices", "easier")
    left = set(after.shots) - {"feed"}
    assert left in ({"line"}, {"cross", "back"})
    assert after.points["both"].on[0].of == tuple(sorted(left & {"line", "cross"}))
    assert ("rule" in after.rules) == ("one" in after.points) == ("cross" in left)
    assert "choices" not in keys(drill(shots=shots), "harder")


@pytest.mark.parametrize(
    ("finish", "degree", "to"),
    [
        ({"kind": "race", "to": 11}, "easier", 9),
        ({"kind": "race", "to": 11}, "harder", 15),
        ({"kind": "race", "to": 12, "running": True}, "harder", 15),
        ({"kind": "goal", "to": 20}, "easier", 15),
        ({"kind": "goal", "to": 7, "starts": 8}, "harder", 8),
    ],
)
def test_the_score_to_win(finish, degree, to):
    assert press(drill(finish=Finish(id="end", **finish)), "score to win", degree).finish.to == to


def test_the_score_takes_its_cap_along_and_a_full_goal_stays():
    whole = drill(finish=Finish(id="end", kind="race", to=11, margin=2, cap=15))
    assert press(whole, "score to win", "easier").finish.cap == 13
    assert "score to win" not in keys(drill(finish=Finish(id="end", kind="goal", to=8, starts=8)), "harder")
    assert "score to win" not in keys(drill(finish=Finish(id="end", kind="goal", to="own best")))


def test_the_margin():
    assert press(drill(finish=Finish(id="end", kind="race", to=7)), "margin", "harder").finish.margin == 2
    by_two = drill(finish=Finish(id="end", kind="race", to=7, margin=2, cap=9))
    assert press(by_two, "margin", "easier").finish == Finish(id="end", kind="race", to=7)
    assert "margin" not in keys(drill(finish=Finish(id="end", kind="race", to=9, running=True)))
