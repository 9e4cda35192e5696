"""Whatever decides a rally and is not said is asked for; the usual answer, where there is one, is a press away."""

import pytest
from review.situations import AT, END, FEED, HOUSE, RALLY, REPLY, START, WON, A, B, drill, keys, only, run, told

from designer.drill.base import place
from designer.drill.conditions import Event, In, Outcome
from designer.drill.items import Area, Disc, Rectangle
from designer.drill.movement import Shot
from designer.drill.rules import Aim, Bounces, Finish, Keep, Part, Points, Rule, Swap, UseStroke
from designer.drill.setting import setting_at
from designer.review.questions import questions

ZONE = Area(kind="area", id="zone", care="exact", shape=Rectangle(form="rectangle", corners=((0.0, 7.0), (4.0, 11.0))))
LOSE = Outcome(then="lose the point")


def asked(*records, **values):
    return list(questions(told(*records, **values)))


def keep(judged="bounce", line="in", breach=LOSE, area="zone", **values):
    where = (In(area=area, judged=judged, line=line),)
    return Rule(id="rule", must=Keep(do="keep", where=where), breach=breach, **values)


def mended(key, *records, **values):
    """The setting, and the drill, after the usual answer to the question ``key``; which must then be silent."""
    whole = only(asked(*records, **values), key).mend(drill(*records, **values))
    again = keys(questions(told(*records, **values).__class__(whole, AT, setting_at(whole, AT))))
    assert key not in again
    return setting_at(whole, AT), whole


def test_a_drill_that_says_everything_is_asked_nothing():
    assert asked(*RALLY, ZONE, keep()) == []


def test_a_blank_court_is_asked_nothing():
    assert asked(jobs="") == []


def test_what_is_missing_altogether_is_asked_for():
    assert keys(asked(A, B, FEED, REPLY)) == ["finish", "points", "rules", "start"]
    setting, _ = mended("start", A, B, FEED, REPLY, WON, END)
    assert setting.starts["start"].shot == "feed"


def test_shadow_swings_need_neither_start_nor_points():
    swing = Shot(id="swing", by="A", stroke="shadow swing")
    assert keys(asked(A, swing, END, jobs="A")) == []


def test_a_game_scores_itself():
    assert keys(asked(A, B, FEED, REPLY, START, END.changed(kind="tie-break"))) == []


def test_a_bad_feed():
    setting, _ = mended("bad", A, B, FEED, REPLY, START.changed(bad=None), WON, END)
    assert setting.starts["start"].bad.then == "replay"


def test_a_fault_has_no_usual_answer():
    serve = FEED.changed(stroke="second serve")
    assert only(asked(A, B, serve, REPLY, START.changed(bad=None), WON, END), "bad").mend is None


def test_what_an_area_is_judged_by():
    setting, _ = mended("judged", *RALLY, ZONE, keep(judged=None, line=None))
    assert setting.rules["rule"].must.where[0].judged == "bounce"


@pytest.mark.parametrize(
    ("record", "expected"),
    [
        (START.changed(good=(In(area="zone"),)), ["judged"]),
        (Points(id="p", on=(Event(what="landed", where=(In(area="zone"),)),), gives=LOSE), ["judged"]),
        (Rule(id="r", when=(In(area="zone"),), must=Aim(do="aim", direction="cross-court"), breach=LOSE), ["judged"]),
        # A ball that strikes a disc needs no judging.
        (Points(id="p", on=(Event(what="struck", where=(In(area="zone"),)),), gives=Outcome(then="replay")), []),
    ],
)
def test_places_are_asked_about_wherever_they_stand(record, expected):
    assert keys(asked(*RALLY, ZONE, record)) == expected


def test_the_edge_of_an_exact_area():
    setting, _ = mended("edge", *RALLY, ZONE, keep(line=None))
    assert setting.rules["rule"].must.where[0].line == "in"


def test_edges_that_need_no_answer():
    # Outer lines are in by the rules of the game; "about" cannot be judged to the edge; the net has no edge.
    assert asked(*RALLY, keep(area="singles court", line=None)) == []
    assert asked(*RALLY, ZONE.changed(care="about"), keep(line=None)) == []
    assert asked(*RALLY, ZONE, keep(judged="net", line=None)) == []
    assert keys(asked(*RALLY, keep(area="right half", line=None))) == ["edge"]


def test_what_a_breach_costs():
    check = only(asked(*RALLY, ZONE, keep(breach=None)), "cost")
    assert check.about == ("rule",)
    assert check.mend is None  # there is no usual answer


def test_what_else_a_target_pays_when_the_rally_is_won():
    hit = Points(
        id="hit",
        on=(Event(what="landed", where=(In(area="zone", judged="bounce", line="in"),)),),
        gives=Outcome(then="points", value=2),
    )
    assert keys(asked(*RALLY, ZONE, hit)) == ["beside"]
    assert asked(*RALLY, ZONE, hit.changed(beside="the higher")) == []
    assert asked(A, B, FEED, REPLY, START, END, ZONE, hit) == []  # nothing else is paid


def test_forced_parts():
    parts = (Part(id="forced", kind="forced"), Part(id="open", kind="open", after="forced"))
    assert keys(asked(*RALLY, *parts)) == ["failed", "opens"]
    said = parts[0].changed(shots=("reply",), failed=LOSE)
    assert asked(*RALLY, said, parts[1]) == []


@pytest.mark.parametrize(
    ("finish", "expected"),
    [
        ({"kind": "race"}, ["to"]),
        ({"kind": "goal"}, ["to"]),
        ({"kind": "goal", "to": 20, "minutes": 4}, ["last-rally"]),
        ({"kind": "total", "starts": 20}, ["level"]),
        ({"kind": "total", "starts": 20, "level": "shared"}, []),
        ({"kind": "total", "starts": 20, "scores": "all together"}, []),
        ({"kind": "race", "to": 11}, []),
    ],
)
def test_how_it_ends(finish, expected):
    rest = [record for record in RALLY if record is not END]
    assert keys(asked(*rest, Finish(id="end", **finish))) == expected


def test_usual_answers_to_how_it_ends():
    rest = [record for record in RALLY if record is not END]
    timed = Finish(id="end", kind="total", minutes=4)
    assert mended("last-rally", *rest, timed)[0].finish.last_rally == "played out"
    assert mended("level", *rest, timed)[0].finish.level == "one more each"


def test_who_calls_and_doubt_are_asked_once_for_the_drill():
    house = HOUSE.changed(called_by=(), in_doubt=None)
    found = asked(*RALLY, ZONE, keep(), START.changed(good=(In(area="zone", judged="bounce", line="in"),)), house=house)
    assert keys(found) == ["caller", "doubt"]
    assert only(found, "caller").about == ("rule", "start")
    assert mended("caller", *RALLY, ZONE, keep(), house=house)[1].house.called_by == ("receiver",)
    assert mended("doubt", *RALLY, ZONE, keep(), house=house)[1].house.in_doubt == "replay"


def test_a_rule_that_answers_for_itself_is_not_asked():
    own = keep(called_by=("doer",), in_doubt="replay")
    start = START.changed(called_by=("receiver",))
    rally = [record for record in RALLY if record is not START]
    assert asked(*rally, start, ZONE, own, house=HOUSE.changed(called_by=(), in_doubt=None)) == []


def test_a_ball_on_court():
    open_house = HOUSE.changed(stopped=None)
    assert mended("stop", *RALLY, house=open_house)[1].house.stopped.then == "replay"
    stop = Points(id="stop", on=(Event(what="called", call="stop"),), gives=Outcome(then="replay"))
    assert asked(*RALLY, stop, house=open_house) == []


def test_a_run_that_belongs_to_no_ball():
    assert keys(asked(*RALLY, run("A", None, 2.0, -12.0))) == ["run"]
    assert asked(A, run("A", None, 2.0, -12.0), Disc(kind="disc", id="d", place=place(1.0, 1.0)), jobs="A") == []


def test_a_fed_ball_that_its_runner_does_not_reach():
    reach = run("A", "feed", 3.0, -12.0, purpose="reach")
    setting, _ = mended("unreached", *RALLY, reach)
    (missed,) = [points for points in setting.points.values() if points.id != "won"]
    assert (missed.on[0].what, missed.on[0].of, missed.gives.then) == ("missed", ("feed",), "replay")
    # What a rally that ends in the forced part means says it too; a run made to recover asks nothing.
    said = Part(id="forced", kind="forced", shots=("reply",), failed=LOSE)
    assert asked(*RALLY, reach, said) == []
    assert asked(*RALLY, run("A", "feed", 3.0, -12.0, purpose="recover")) == []


def test_a_new_line_from_the_middle():
    rule = Rule(id="aim", breach=LOSE, must=Aim(do="aim", direction="new line"))
    setting, _ = mended("from-middle", *RALLY, rule)
    assert setting.rules["aim"].must.from_middle == "either"
    assert asked(*RALLY, rule.changed(must=Aim(do="aim", direction="cross-court"))) == []


def test_a_volley_where_the_stroke_depends_on_the_bounce():
    where = In(area="zone", judged="bounce", line="in")
    rule = Rule(id="wing", when=(where,), breach=LOSE, must=UseStroke(do="use stroke", wing="forehand"))
    check = only(asked(*RALLY, ZONE, rule), "volleyed")
    assert check.sentence.text == "Taken out of the air: as a ball in the marked area?"
    assert (check.about, check.mend) == (("zone", "wing"), None)
    assert asked(*RALLY, ZONE, rule.changed(when=(where.changed(volleyed="out"),))) == []
    none_volley = Rule(id="bounce", breach=LOSE, must=Bounces(do="bounces", least=1))
    assert asked(*RALLY, ZONE, rule, none_volley) == []


def test_who_may_come_in_before_it_opens():
    counted = Part(id="forced", kind="forced", until=(Event(what="played", count=4),), failed=LOSE)
    parts = (counted, Part(id="open", kind="open", after="forced"))
    _, whole = mended("come-in", *RALLY, *parts)
    assert whole.house.come_in == ("anyone",)
    feet = Rule(
        id="feet",
        breach=LOSE,
        must=Keep(do="keep", where=(In(area="the baseline", side="behind", judged="both feet", line="in"),)),
    )
    assert asked(*RALLY, *parts, feet) == []
    at_net = A.changed(place=place(0.0, -3.0))
    assert asked(at_net, *RALLY[1:], *parts) == []  # somebody is at the net already


def test_a_foot_on_the_line_has_no_usual_answer():
    where = In(area="the baseline", side="behind", judged="both feet")
    check = only(asked(*RALLY, Rule(id="feet", breach=LOSE, must=Keep(do="keep", where=(where,)))), "edge")
    assert check.sentence.text == "A foot on the baseline?"
    assert (check.about, check.mend) == (("feet",), None)


@pytest.mark.parametrize(
    ("players", "expected"),
    [((2, 2), None), ((2, 3), "What does the third player do?"), ((2, 5), "What do players three to five do?")],
)
def test_what_the_player_over_does(players, expected):
    found = [check.sentence.text for check in asked(*RALLY, players=players) if check.key == "extra"]
    assert found == ([] if expected is None else [expected])


def test_a_note_that_speaks_of_the_player_over_answers():
    swap = Swap(id="swap", on=(Event(what="finished"),), moves={"A": "B", "B": "A"}, note="A third player comes in.")
    assert asked(*RALLY, swap, players=(2, 3)) == []


def test_a_check_says_the_usual_answer_with_the_question():
    check = only(asked(A, B, FEED, REPLY, START.changed(bad=None), WON, END), "bad")
    assert check.sentence.text == "Bad feed? Usual: replay."
    assert not check.sentence.missing
