from __future__ import annotations

import functools

import pypdfium2
import pytest

from designer.bundle import sample
from designer.cards.card import make_card
from designer.cards.papers import A5, PAPERS
from designer.cards.rounds import RoundTable
from designer.cards.scores import Boxes, goals
from designer.cards.text import Typesetter
from designer.drill.drill import Changes, Drill, Progression, Variation
from designer.drill.rules import Finish
from designer.drill.setting import At, main_setting, setting_at
from designer.wording.turns import OwnRounds


@functools.cache
def load(name: str) -> Drill:
    return Drill.model_validate_json(sample(f"{name}.drill.json").read_bytes())


def frames(pdf: bytes) -> list[tuple[float, float, float, float]]:
    """Return the bounds of every empty box to write in, on all pages."""
    found = []
    for page in pypdfium2.PdfDocument(pdf):
        for thing in page.get_objects(filter=[pypdfium2.raw.FPDF_PAGEOBJ_PATH]):
            left, low, right, high = thing.get_bounds()
            if 8 < right - left < 22 and abs((right - left) - (high - low)) < 0.2:
                found.append((left, low, right, high))
    return found


def wide_frames(pdf: bytes) -> list[tuple[float, float, float, float]]:
    """Return the bounds of every empty box of 25 by 12.5 pt: what the smaller boxes are, twice as wide."""
    things = [
        thing.get_bounds()
        for page in pypdfium2.PdfDocument(pdf)
        for thing in page.get_objects(filter=[pypdfium2.raw.FPDF_PAGEOBJ_PATH])
    ]
    pen = 1.2  # the line lies on both sides of the edge
    return [box for box in things if abs(box[2] - box[0] - pen - 25) < 0.1 and abs(box[3] - box[1] - pen - 12.5) < 0.1]


def text_of(pdf: bytes) -> str:
    return " ".join(page.get_textpage().get_text_range() for page in pypdfium2.PdfDocument(pdf)).replace("\r\n", " ")


@pytest.mark.parametrize("paper", PAPERS)
def test_there_is_a_box_for_every_start_of_everybody(paper: str) -> None:
    drill = load("wide-start")
    pdf = make_card(drill, main_setting(drill), paper=paper).pdf
    boxes = [box for box in frames(pdf) if box[2] - box[0] < 14.5]
    assert len(boxes) >= 3 * 20, "20 starts, two players and a third who takes turns with them"
    for words in ("Score", "You B C", "Goal today", "Best so far"):
        assert words in text_of(pdf)


def test_a_goal_of_several_rounds_has_a_box_for_the_total_of_each() -> None:
    drill = load("hoop-red")  # "18 together from six balls each. Two turns each, try to beat your first total."
    end = setting_at(drill, main_setting(drill)).finish
    assert end is not None
    assert (end.starts, end.rounds) == (6, 2)
    pdf = make_card(drill, main_setting(drill)).pdf
    assert "Total of each round" in text_of(pdf)
    assert len(wide_frames(pdf)) == 2
    together = load("shared-target")
    assert "A box each time: write the total." in text_of(make_card(together, main_setting(together)).pdf)


def test_whose_own_points_count_over_rounds_has_a_box_for_each_round() -> None:
    """Six rounds with other partners, everyone adds up own points: the table of the drill itself, read down a column."""
    drill = load("doubles-six")
    table = next(iter(setting_at(drill, main_setting(drill)).swaps.values())).table
    for paper in PAPERS:
        text = text_of(make_card(drill, main_setting(drill), paper=paper, player="C").pdf)
        places = ["ABCD"[row.index("C")] for row in table]
        partners = [row[row.index("C") ^ 1] for row in table]
        assert "Rounds and score Write your own points." in text, "where the swap sends to"
        assert "Round 1 2 3 4 5 6 " in text
        assert f"You are {' '.join(places)} With {' '.join(partners)} Points" in text


def test_many_rounds_are_told_in_lines_of_a_table_that_stay_in_their_column() -> None:
    own = OwnRounds(tuple("ABCDABCDABCD"), tuple("BADCBADCBADC"))
    table = RoundTable(own, A5.body, Typesetter())
    for width in (110.0, 170.0, 400.0):
        lines = list(table.stretches(width))
        assert [number for line in lines for number in range(line.start, line.stop)] == list(range(12))
        assert all(table.words + (line.stop - line.start) * table.cell(width) <= width for line in lines)
    # Where the place is always the same it is not repeated; with nobody beside one there is no partner.
    assert [name for name, _ in RoundTable(OwnRounds(("A", "A"), ("B", "C")), A5.body, Typesetter()).rows] == [
        "Round",
        "With",
    ]
    assert [name for name, _ in RoundTable(OwnRounds(("A", "B"), ("", "")), A5.body, Typesetter()).rows] == [
        "Round",
        "You are",
    ]


def test_five_boxes_stand_together_and_no_group_is_torn_apart() -> None:
    for width in (130.0, 170.0, 230.0, 363.0):
        row = Boxes((("You", 20),), 12.5, A5.body, Typesetter())
        places = list(row.places(20, width))
        for start in range(0, 20, 5):
            five = places[start : start + 5]
            if width > 110:
                assert len({line for _, line in five}) == 1
        assert all(across + row.size(width) <= width + 0.1 for across, _ in places)


def test_the_goal_for_each_level_is_said_where_they_differ() -> None:
    def aiming(to: int) -> Changes:
        return Changes(finish=Finish(id="end", kind="goal", to=to, starts=10))

    drill = Drill(
        id="d-own",
        progressions=(
            Progression(
                id="p-one",
                changes=aiming(7),
                easier=(Variation(id="v-like"), Variation(id="v-easy", changes=aiming(5))),
                harder=(Variation(id="v-hard", changes=aiming(9)), Variation(id="v-same")),
            ),
        ),
    )
    found = goals(drill, At("p-one"), player=None, units="rackets")
    assert [(level, text.split(":")[1][:3].strip()) for level, text in found] == [
        ("Easier", "5"),
        ("As set", "7"),
        ("Harder", "9"),
    ]
    said = text_of(make_card(drill, At("p-one")).pdf)
    for level, text in found:
        assert f"{level} {text}".replace("\N{NO-BREAK SPACE}", " ") in " ".join(said.split())
    assert goals(load("wide-start"), main_setting(load("wide-start")), player="A", units="rackets") == ()


def test_a_coach_has_no_score_to_keep() -> None:
    drill = load("wide-start")
    assert "Best so far" not in text_of(make_card(drill, main_setting(drill), reader="coach").pdf)
