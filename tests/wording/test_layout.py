"""The layout list and the kit. Positions are whole counts from painted lines, worked out by hand."""

from wording.making import DOUBLES, SINGLES, area, drill_of, spot, texts, told

from designer.drill.base import Place, place
from designer.drill.conditions import In
from designer.drill.items import Basket, Cone, Disc, Hoop, Line, Obstacle, Unknown
from designer.drill.rules import Keep, Rule
from designer.wording.facts import facts, footer
from designer.wording.kit import kit, kit_of
from designer.wording.layout import folded, layout


def laid_out(*records, units="rackets", **values):
    from wording.making import HERE

    return texts(layout(drill_of(*records, **values), HERE, units))


def test_an_area_from_its_edges():
    zone = area("z", "approach zone", (0.0, 8.2296), (4.1148, 11.8872), care="exact", marked="discs")
    assert laid_out(*SINGLES, zone)[0] == (
        "Approach zone (exact): from B’s left singles line to the centre line extended; "
        "from 2 strides behind the service line to the baseline. Two discs on the corners that are not painted."
    )


def test_things_are_told_in_the_order_of_one_walk_from_the_basket():
    things = (
        Cone(kind="cone", id="a-far", place=place(0.0, 9.0)),
        Hoop(kind="hoop", id="b-near", place=place(0.0, -9.0)),
        area("c-middle", "middle zone", (-1.0, -4.0), (1.0, -2.0)),
        Basket(kind="basket", id="d-basket", place=place(0.0, -16.0)),
    )
    assert [line.partition(":")[0] for line in laid_out(*SINGLES, *things)[:4]] == [
        "Basket",
        "Flat hoop",
        "Middle zone",
        "Cone",
    ]


def test_what_a_rule_depends_on_is_exact_unless_it_is_said_otherwise():
    def head(care, *records):
        zone = area("z", "zone", (0.0, 8.2296), (4.1148, 11.8872), care=care)
        lines = laid_out(*SINGLES, zone, *records)
        return next(line for line in lines if line.startswith("Zone")).partition(":")[0], lines[-1]

    inside = Rule(id="r", must=Keep(do="keep", where=(In(area="z", judged="bounce"),)))
    assert head(None)[0] == "Zone"
    assert head(None, inside)[0] == "Zone (exact)"
    assert head("about", inside)[0] == "Zone (about)"
    assert head(None, inside)[1].endswith("Exact: a rule depends on it.")
    assert "Exact" not in head("about", inside)[1]


def test_what_no_count_comes_near_enough_to_is_measured():
    disc = Disc(kind="disc", id="d", care="exact", place=place(1.1, -2.0))
    assert laid_out(*SINGLES, disc)[0] == (
        "Flat disc (exact, measure): 1.1 m right of A’s centre line, 2 m from the net."
    )
    assert laid_out(*SINGLES, disc, units="feet")[0].startswith("Flat disc (exact): 3 ft 7 in right")
    assert "measure" not in laid_out(*SINGLES, disc.changed(care="about"))[0]


def test_an_area_that_painted_lines_make():
    zone = area("z", "reply zone", (-4.1148, 6.4008), (0.0, 11.8872), marked="painted")
    assert laid_out(*SINGLES, zone)[0] == (
        "Reply zone: B’s right half from the service line to the baseline; painted lines and the centre line extended."
    )


def test_metres_and_feet():
    zone = area("z", "feed area", (2.7432, -9.144), (4.1148, -6.4008), care="about", marked="in thought")
    assert laid_out(*SINGLES, zone, units="metres")[0] == (
        "Feed area (about, not marked): from A’s right singles line 1.37 m in; from the service line 2.74 m back."
    )
    assert laid_out(*SINGLES, zone, units="feet")[0] == (
        "Feed area (about, not marked): from A’s right singles line 4 ft 6 in inwards; from the service line 9 ft back."
    )
    assert not any("Six strides" in line for line in laid_out(*SINGLES, zone, units="metres"))
    assert laid_out(*SINGLES, zone)[-1].endswith("Six strides make service line to baseline.")


def test_a_line_and_a_tick():
    depth = Line(
        kind="line",
        id="d",
        name="depth line",
        corners=((-4.1148, -8.2296), (4.1148, -8.2296)),
        marked="discs",
        pieces=5,
        both_ends=True,
    )
    tick = Line(kind="line", id="t", corners=((0.6858, -11.8872), (0.6858, -12.3444)), marked="chalk", care="exact")
    short = depth.changed(id="s", name="short line", marked="in thought", pieces=None, care="exact", both_ends=False)
    assert laid_out(*SINGLES, short)[0].startswith("Short line (exact): imagined, 2 strides behind A’s service line")
    found = laid_out(*SINGLES, depth, tick)
    assert found[0] == (
        "Depth line: five discs, evenly spaced, 2 strides behind the service line, singles line to singles line, "
        "the same at both ends."
    )
    assert found[1] == "Tick (exact): chalk, ½ stride long, behind A’s baseline, 1 racket right of the centre mark."


def test_things_of_a_kind_stand_in_one_line():
    hoops = [Hoop(kind="hoop", id=f"h-{n}", place=place(x, 2.7432)) for n, x in enumerate((-2.7432, 2.7432))]
    assert laid_out(*SINGLES, *hoops)[0].startswith("Flat hoops: ")
    assert laid_out(*SINGLES, *hoops)[0].count("each singles line") == 1
    under = Disc(kind="disc", id="d", place=Place(on="A"))
    assert "Flat disc: where A stands." in laid_out(*SINGLES, under)


def test_people_at_like_places_stand_in_one_line():
    found = laid_out(*SINGLES)
    assert found[0] == "A and B: 1 stride behind the centre mark."
    waits = (spot("C", -8.2, 0.0, task="waits"), spot("D", 8.2, 0.0, task="waits"))
    assert "C and D wait: against each side fence, level with the net." in laid_out(
        *SINGLES, *waits, jobs="ABCD", court={"side_run": 3.048, "run_back": 5.4864}
    )


def test_where_two_share_an_end_it_is_named():
    found = laid_out(*DOUBLES, jobs="ABCD")
    assert found[0].endswith("1 stride behind the baseline, A at the near end and C at the far end.")
    waits = spot("E", -8.0, -11.8872, task="waits")
    assert laid_out(*DOUBLES, waits, jobs="ABCDE")[2].endswith("level with the baseline, near end.")


def test_sides_and_ends_are_folded():
    left, right = "2 rackets in from the left singles line", "2 rackets in from the right singles line"
    assert folded([left, right]) == ["2 rackets in from each singles line"]
    assert folded([f"{left}, at the near end", f"{left}, at the far end"]) == [f"{left}, at both ends"]
    assert folded([left, "on the T"]) == [left, "on the T"]


def test_a_thing_that_is_not_known_is_said():
    assert "A thing this program does not know: trampoline." in laid_out(*SINGLES, Unknown(kind="trampoline", id="u"))


def test_kit_is_counted_with_its_copies():
    depth = Line(kind="line", id="d", corners=((-4.0, -8.0), (4.0, -8.0)), marked="discs", pieces=5, both_ends=True)
    zone = area("z", "zone", (0.0, 8.2296), (4.1148, 11.8872), marked="discs")
    chalk = Line(kind="line", id="c", corners=((-4.0, -12.8), (4.0, -12.8)), marked="chalk")
    things = (
        depth,
        zone,
        chalk,
        Cone(kind="cone", id="k", place=place(1.0, 1.0)),
        Basket(kind="basket", id="b", place=place(0.0, 17.0)),
    )
    made = drill_of(*SINGLES, *things, kit=("two balls in {B}'s pockets.",))
    from wording.making import HERE

    # Five discs at each end, and two of the area's four corners: the others are painted crossings.
    assert kit(made, HERE) == ("12 flat discs", "1 cone", "basket", "chalk", "two balls in B’s pockets")
    assert kit_of(told(*SINGLES)) == ()


def test_the_row_of_facts():
    made = told(*SINGLES, players=(2, 3), minutes=12, balls=14, age=(6, 8), coach_needed=True, ball="red")
    assert [(fact.icon, fact.text) for fact in facts(made)] == [
        ("people", "2 or 3 and a coach, ages 6 to 8"),
        ("court", "singles"),
        ("clock", "12 min"),
        ("ball", "14 red"),
    ]
    assert [fact.text for fact in facts(told(*DOUBLES, jobs="ABCD", court={"standard": "red"}))][1] == "red court"


def test_the_foot_of_a_card():
    from datetime import date

    made = told(*SINGLES, code="wide-start", edition=3, dated=date(2026, 11, 25), turned=("mirrored",))
    assert footer(made) == ("wide-start", "edition 3", "25 Nov 2026", "mirrored")
    # A drill without a code has no name of ours on paper: its id means nothing to a reader.
    assert footer(told(*SINGLES)) == ("edition 1",)


def test_a_name_that_holds_the_marks_of_a_sentence_is_told_without_them():
    shed = Obstacle(
        kind="obstacle", id="shed", corners=((5.0, -13.0), (6.0, -13.0), (6.0, -14.0)), name="the\x02 \x01shed\x03"
    )
    assert any(text.startswith("Shed: ") for text in laid_out(*SINGLES, shed))
