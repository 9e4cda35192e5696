from __future__ import annotations

import functools
from collections.abc import Callable

import pytest

from designer.bundle import sample
from designer.court.standards import ground
from designer.drill.base import place
from designer.drill.conditions import Event, In
from designer.drill.drill import Changes, Drill, Progression
from designer.drill.items import Area, Cone, Rectangle
from designer.drill.movement import Shot
from designer.drill.people import Job, Spot
from designer.drill.rules import Keep, Rule, Start, Swap, UseStroke
from designer.drill.setting import addresses, setting_at
from designer.play.directions import direction, inside
from designer.play.sequence import sequence
from designer.play.versions import (
    NoSingleAnswer,
    Turned,
    change_hand,
    mirror,
    swap_ends,
    swap_jobs,
    switch_wing,
)
from designer.storage.writing import drill_bytes

SAMPLES = sorted(path.name.removesuffix(".drill.json") for path in sample().glob("*.drill.json"))


@functools.cache
def load(name: str) -> Drill:
    return Drill.model_validate_json(sample(f"{name}.drill.json").read_bytes())


def two(drill: Drill) -> tuple[str, str]:
    return drill.jobs[0].letter, drill.jobs[1].letter


VERSIONS: dict[str, Callable[[Drill], Turned]] = {
    "mirror": mirror,
    "switch-wing": switch_wing,
    "left-handed, strokes kept": lambda drill: change_hand(drill, two(drill)[0], "strokes"),
    "left-handed, paths kept": lambda drill: change_hand(drill, two(drill)[0], "paths"),
    "swap-ends": swap_ends,
    "swap-jobs": lambda drill: swap_jobs(drill, *two(drill)),
}


def small(**changes: object) -> Drill:
    return Drill(
        id="d-small",
        jobs=(Job(letter="A"), Job(letter="B", hand="left")),
        progressions=(Progression(id="p-one", changes=Changes(**changes)),),
    )


def only(turned: Turned):
    return setting_at(turned.drill, next(addresses(turned.drill)))


@pytest.mark.parametrize("name", SAMPLES)
@pytest.mark.parametrize("version", VERSIONS)
def test_a_version_applied_twice_gives_the_first_bytes_again(name: str, version: str) -> None:
    drill = load(name)
    turned = VERSIONS[version](drill).drill
    assert drill_bytes(turned) != drill_bytes(drill)
    assert drill_bytes(VERSIONS[version](turned).drill) == drill_bytes(drill)


@pytest.mark.parametrize("name", SAMPLES)
@pytest.mark.parametrize("version", ["mirror", "switch-wing", "swap-ends"])
def test_directions_stay_what_they_are_called(name: str, version: str) -> None:
    """Reflected or turned, a cross-court ball is still cross-court: a fact of geometry, no source needed."""
    drill, turned = load(name), VERSIONS[version](load(name)).drill
    for at in addresses(drill):
        before, after = (sequence(setting_at(d, at), ground(d.court), d.jobs) for d in (drill, turned))
        court = ground(drill.court)
        for step in before.steps:
            other = after.step(step.shot.id)
            assert other is not None
            if version == "switch-wing" and step.wing == other.wing:
                continue  # a ball at the body is taken as a forehand whichever side it is drawn on
            assert direction(step, before, court) == direction(other, after, court)
            assert inside(step, before, court) == inside(other, after, court)
            assert step.digit == other.digit


def test_a_mirror_turns_places_hands_sides_and_tokens() -> None:
    turned = mirror(
        small(
            spots=(Spot(id="spot-a", job="A", place=place(2.0, -12.8016), facing=30),),
            items=(
                Cone(kind="cone", id="home", place=place(1.0, -3.0), note="{left} of {A}; {{left}"),
                Area(kind="area", id="zone", shape=Rectangle(form="rectangle", corners=((0.0, 1.0), (4.0, 6.0)))),
            ),
            shots=(Shot(id="one", by="A", wing="forehand", bend=0.5, to=place(3.0, 5.0)),),
            rules=(
                Rule(id="keep", must=Keep(do="keep", where=(In(area="right half"), In(area="the left singles line")))),
            ),
            starts=(Start(id="start", courts="deuce"),),
        ),
    )
    setting = only(turned)
    assert setting.spots["spot-a"].place.at == (-2.0, -12.8016)
    assert setting.spots["spot-a"].facing == 330
    assert setting.items["home"].note == "{right} of {A}; {{left}"
    assert setting.items["zone"].shape.corners == ((0.0, 1.0), (-4.0, 6.0))
    assert (setting.shots["one"].wing, setting.shots["one"].bend) == ("forehand", -0.5)
    assert [part.area for part in setting.rules["keep"].must.where] == ["left half", "the right singles line"]
    assert setting.starts["start"].courts == "ad"
    assert [job.hand for job in turned.drill.jobs] == ["left", "right"]
    assert turned.drill.turned == ("mirrored",)


def test_the_other_wing_keeps_hands_and_exchanges_wings() -> None:
    drill = small(
        shots=(Shot(id="one", by="A", wing="forehand", to=place(3.0, 5.0), note="{forehand}"),),
        rules=(Rule(id="only", who=("A",), must=UseStroke(do="use stroke", wing="forehand")),),
    )
    setting = only(switch_wing(drill))
    assert setting.shots["one"].wing == "backhand"
    assert setting.shots["one"].note == "{backhand}"
    assert setting.shots["one"].to.at == (-3.0, 5.0)
    assert setting.rules["only"].must.wing == "backhand"
    assert switch_wing(drill).drill.jobs == drill.jobs


def test_a_wing_that_is_hardly_played_is_said() -> None:
    turned = switch_wing(small(shots=(Shot(id="high", by="A", stroke="smash", wing="forehand"),)))
    assert turned.warnings == ("Shot high: a smash off the backhand is hardly played.",)


def test_a_backhand_on_the_greater_part_of_the_court_is_said() -> None:
    turned = switch_wing(load("forehand-on-eight"))
    assert turned.warnings == tuple(
        f"Rule forehand-{letter} asks for the backhand on 66.7 per cent of the width: the greater side is usually the "
        "forehand's; make the area smaller."
        for letter in "ab"
    )
    assert switch_wing(turned.drill).warnings == ()


def test_one_left_hander_has_no_single_answer() -> None:
    with pytest.raises(NoSingleAnswer, match=r"Keep A's strokes .* or keep the ball's paths"):
        change_hand(small(), "A")


def rally() -> Drill:
    return small(
        shots=(
            Shot(id="one", by="A", wing="forehand", to=place(3.0, 5.0)),
            Shot(id="two", by="B", after="one", wing="forehand", to=place(3.0, -5.0)),
        ),
        rules=(Rule(id="both", who=("A", "B"), must=UseStroke(do="use stroke", wing="forehand")),),
    )


def test_keeping_the_strokes_reflects_the_picture_and_turns_the_others_wings() -> None:
    turned = change_hand(rally(), "A", "strokes")
    shots = only(turned).shots
    assert (shots["one"].wing, shots["two"].wing) == ("forehand", "backhand")
    assert shots["one"].to.at == (-3.0, 5.0)
    assert [job.hand for job in turned.drill.jobs] == ["left", "left"]


def test_keeping_the_paths_turns_only_the_wings_of_that_player() -> None:
    turned = change_hand(rally(), "A", "paths")
    shots = only(turned).shots
    assert (shots["one"].wing, shots["two"].wing) == ("backhand", "forehand")
    assert shots["one"].to.at == (3.0, 5.0)


def test_a_rule_about_a_wing_that_binds_both_is_left_and_said() -> None:
    turned = change_hand(rally(), "A", "paths")
    assert only(turned).rules["both"].must.wing == "forehand"
    assert turned.warnings == (
        "Rule both asks for the forehand and binds more than A: it is left as it was; say which wing A plays.",
    )


def test_the_other_end_turns_the_court_half_round() -> None:
    drill = small(
        spots=(Spot(id="spot-a", job="A", place=place(2.0, -12.0), facing=10),),
        rules=(Rule(id="near", who=("near",), must=UseStroke(do="use stroke", wing="forehand")),),
    )
    setting = only(swap_ends(drill))
    assert setting.spots["spot-a"].place.at == (-2.0, 12.0)
    assert setting.spots["spot-a"].facing == 190
    assert setting.rules["near"].who == ("far",)


def test_jobs_are_exchanged_wherever_a_letter_stands() -> None:
    drill = Drill(
        id="d-four",
        jobs=tuple(Job(letter=letter, role=f"is {letter}") for letter in "ABCD"),
        cues=("{A} feeds {B}.",),
        progressions=(
            Progression(
                id="p-one",
                changes=Changes(
                    shots=(Shot(id="one", by="A"),),
                    starts=(Start(id="start", by=("A", "C"), serves={"A": 1}),),
                    swaps=(
                        Swap(id="turn", on=(Event(what="round"),), moves={"A": "C", "C": "A"}),
                        Swap(id="pairs", on=(Event(what="round"),), table=(("A", "B", "C", "D"), ("B", "C", "A", "D"))),
                    ),
                ),
            ),
        ),
    )
    turned = swap_jobs(drill, "A", "B")
    setting = only(turned)
    assert [job.letter for job in turned.drill.jobs] == ["B", "A", "C", "D"]
    assert turned.drill.cues == ("{B} feeds {A}.",)
    assert setting.shots["one"].by == "B"
    assert setting.starts["start"].by == ("B", "C")
    assert setting.starts["start"].serves == {"B": 1}
    assert setting.swaps["turn"].moves == {"B": "C", "C": "B"}
    # A row gives the people in the order of the jobs A, B, C, D. In the second round B plays A's job, C plays B's and
    # A plays C's; with A and B exchanged in name, C plays A's, A plays B's and B plays C's.
    assert setting.swaps["pairs"].table == (("A", "B", "C", "D"), ("C", "A", "B", "D"))


def test_a_letter_the_drill_lacks_is_said() -> None:
    with pytest.raises(KeyError, match="no job 'Z'; it has A, B"):
        swap_jobs(small(), "A", "Z")
