"""A setting read as play. The situations are those of invented drills; positions are worked out by hand beside them."""

import pytest
from effort import calls
from hypothesis import given
from hypothesis import strategies as st

from designer.court.standards import ground
from designer.drill.base import Place, place
from designer.drill.drill import Court
from designer.drill.items import Area, Rectangle
from designer.drill.movement import Run, Shot
from designer.drill.people import Job, Spot
from designer.drill.rules import Start
from designer.drill.setting import EMPTY
from designer.play.sequence import circle, sequence

TENNIS = ground(Court())
RIGHT = (Job(letter="A"), Job(letter="B"))


def spot(letter, x, y):
    return Spot(id=f"spot-{letter.lower()}", job=letter, place=place(x, y))


def read(*records, jobs=RIGHT):
    return sequence(EMPTY.having(*records), TENNIS, jobs)


WIDE = (
    spot("A", 0.0, -12.8016),
    spot("B", 0.0, 12.8016),
    Shot(id="feed", by="B", stroke="racket feed", to=place(3.5, -8.0)),
    Shot(id="reply", by="A", after="feed", wing="forehand", to=place(-2.0, 9.0)),
    Run(id="out", by="A", during="feed", to=place(4.0, -12.0)),
    Run(id="back", by="A", during="reply", to=place(0.6858, -12.0), purpose="recover"),
)
LATER = Shot(id="second", by="B", after="reply", stroke="racket feed", to=place(0.0, -9.144))


def test_digits_run_on_through_a_later_ball_of_the_same_start():
    play = read(*WIDE, LATER)
    assert [(step.shot.id, step.digit) for step in play.steps] == [("feed", 1), ("reply", 2), ("second", 3)]
    assert [step.feed for step in play.steps] == [True, False, True]


def test_a_later_ball_is_placed_by_what_its_start_waits_for():
    # The same drill with the second feed bound only by "once A has reached the tick".
    loose = LATER.changed(after=None)
    start = {"what": "reached", "by": ("A",), "of": ("back",)}
    play = read(*WIDE, loose, Start(id="again", shot="second", once=start))
    assert [(step.shot.id, step.digit) for step in play.steps] == [("feed", 1), ("reply", 2), ("second", 3)]
    assert play.person_at("A", "second") == (0.6858, -12.0)


def test_people_are_where_their_last_run_on_the_branch_took_them():
    play = read(*WIDE, LATER)
    assert play.person_at("A", "feed") == (0.0, -12.8016)
    assert play.person_at("A", "reply") == (4.0, -12.0)
    assert play.person_at("A", "second") == (0.6858, -12.0)
    assert play.person_after("A", "reply") == (0.6858, -12.0)
    assert play.person_at("B", "second") == (0.0, 12.8016)
    assert play.person_at("C", "reply") is None


def test_a_run_starts_where_the_last_one_ended_and_passes_through_its_via():
    bent = Run(id="back", by="A", during="reply", to=place(0.6858, -12.0), via=((2.0, -13.0),))
    play = read(*WIDE[:-1], bent)
    assert play.run_paths["out"] == ((0.0, -12.8016), (4.0, -12.0))
    assert play.run_paths["back"] == ((4.0, -12.0), (2.0, -13.0), (0.6858, -12.0))
    assert [run.id for run in play.step("reply").runs] == ["back"]


def test_a_contact_that_is_not_given_is_a_racket_beside_the_hitter():
    # A right-hander's forehand is on the right: x grows to the right at the near end and falls at the far end.
    play = read(*WIDE)
    assert play.step("reply").contact == (4.6858, -12.0)
    assert play.step("feed").contact == (-0.6858, 12.8016)
    left = read(*WIDE, jobs=(Job(letter="A", hand="left"), Job(letter="B", hand="left")))
    assert left.step("reply").contact == (3.3142, -12.0)
    assert left.step("feed").contact == (0.6858, 12.8016)
    assert not play.step("reply").contact_drawn


def test_a_serve_is_hit_from_the_spot():
    play = read(spot("A", 1.0, -12.0), Shot(id="serve", by="A", stroke="serve", to=place(-2.0, 5.0)))
    assert play.step("serve").contact == (1.0, -12.0)
    assert play.step("serve").wing is None


def test_a_contact_that_is_given_is_drawn_unless_the_hitter_stands_there():
    low = Shot(id="one", by="A", contact=place(-2.7432, -6.4008))
    assert read(spot("A", -2.7432, -5.4864), low).step("one").contact_drawn
    assert not read(spot("A", -2.7432, -6.4008), low).step("one").contact_drawn


@pytest.mark.parametrize(
    ("lands", "hand", "wing"),
    [
        # A stands at the middle of the near baseline; the ball comes from the far middle and goes on straight.
        ((2.0, -8.0), "right", "forehand"),
        ((-2.0, -8.0), "right", "backhand"),
        ((2.0, -8.0), "left", "backhand"),
        ((-2.0, -8.0), "left", "forehand"),
        ((0.05, -8.0), "right", "forehand"),  # at the body
    ],
)
def test_the_wing_is_guessed_from_the_side_the_ball_passes(lands, hand, wing):
    play = read(
        spot("A", 0.0, -11.8872),
        spot("B", 0.0, 11.8872),
        Shot(id="in", by="B", contact=place(0.0, 11.8872), to=place(*lands)),
        Shot(id="out", by="A", after="in"),
        jobs=(Job(letter="A", hand=hand), Job(letter="B")),
    )
    assert play.step("out").wing == wing


def test_alternatives_share_a_digit_and_fan_out_from_one_contact():
    play = read(
        spot("A", 0.0, -12.0),
        spot("B", 0.0, 12.0),
        Shot(id="approach", by="A", to=place(2.0, 9.0)),
        Shot(id="pass-right", by="B", after="approach", to=place(3.2, -8.5)),
        Shot(id="pass-left", by="B", after="approach", to=place(-3.2, -8.5)),
        Shot(id="lob", by="B", after="approach", stroke="lob", to=place(0.0, -10.5)),
    )
    first, *fan = play.steps
    assert not first.alternatives
    # By their ids, so that a mirrored drill is told in the same order.
    assert [step.shot.id for step in fan] == ["lob", "pass-left", "pass-right"]
    assert {step.digit for step in fan} == {2}
    assert [step.first_of_fan for step in fan] == [True, False, False]
    assert all(step.alternatives and step.fan == ("lob", "pass-left", "pass-right") for step in fan)
    assert {step.contact for step in fan} == {fan[0].contact}


def test_an_alternative_by_somebody_else_has_a_tag_of_its_own():
    play = read(
        *(spot(letter, x, y) for letter, x, y in (("A", 2.7, -12.8), ("C", -2.7, 12.8), ("D", 2.7, 3.2))),
        Shot(id="ball", by="A", to=place(-2.7, 9.6)),
        Shot(id="straight", by="C", after="ball", to=place(-2.7, -9.6)),
        Shot(id="across", by="D", after="ball", stroke="volley", to=place(1.0, -5.0)),
        jobs=(),
    )
    across = play.step("across")
    assert across.alternatives
    assert across.first_of_fan
    assert across.fan == ("across",)


def test_first_shots_of_one_letter_are_alternatives_and_of_two_letters_go_at_once():
    serves = [Shot(id=f"serve-{n}", by="A", stroke="serve", to=place(-float(n), 5.0)) for n in (3, 1)]
    choice = read(spot("A", 1.0, -12.0), *serves)
    assert [(step.digit, step.alternatives) for step in choice.steps] == [(1, True), (1, True)]
    pairs = [Shot(id=f"feed-{letter.lower()}", by=letter, stroke="racket feed") for letter in "AB"]
    at_once = read(spot("A", -2.7, -6.4), spot("B", 2.7, -6.4), *pairs)
    assert [(step.digit, step.alternatives) for step in at_once.steps] == [(1, False), (1, False)]


def test_each_branch_has_its_own_places():
    play = read(
        spot("A", 0.0, -12.0),
        spot("B", 0.0, 12.0),
        Shot(id="wide", by="A", stroke="serve", to=place(-3.5, 5.0)),
        Shot(id="centre", by="A", stroke="serve", to=place(-0.5, 5.0)),
        Shot(id="from-wide", by="B", after="wide"),
        Shot(id="from-centre", by="B", after="centre"),
        Run(id="out", by="B", during="wide", to=place(-4.0, 11.0)),
    )
    assert play.person_at("B", "from-wide") == (-4.0, 11.0)
    assert play.person_at("B", "from-centre") == (0.0, 12.0)
    assert play.branch("from-wide") == ("wide", "from-wide")
    assert [step.shot.id for step in play.following("wide")] == ["from-wide"]


def test_a_ball_sent_to_a_person_goes_to_where_that_person_has_run():
    play = read(
        spot("A", 0.0, -12.0),
        spot("B", 0.0, 12.0),
        Shot(id="approach", by="A", to=place(2.0, 9.0)),
        Shot(id="gentle", by="B", after="approach", to=Place(on="A")),
        Run(id="in", by="A", during="approach", to=place(0.8, -2.8)),
    )
    assert play.step("gentle").landing == (0.8, -2.8)


def test_a_target_at_both_ends_is_the_one_across_the_net():
    target = Area(
        kind="area",
        id="target",
        shape=Rectangle(form="rectangle", corners=((0.0, -10.9728), (3.429, -7.3152))),
        both_ends=True,
    )
    play = read(
        spot("A", 2.0, -12.8),
        spot("B", -2.0, 12.8),
        target,
        Shot(id="reply", by="B", to=Place(on="target")),
        Shot(id="third", by="A", after="reply", to=Place(on="target")),
    )
    assert play.step("reply").landing == (1.7145, -9.144)
    assert play.step("third").landing == (-1.7145, 9.144)


def test_a_shot_without_a_target_lands_nowhere_in_particular():
    assert read(spot("A", 0.0, -12.0), Shot(id="one", by="A")).step("one").landing is None


def test_hits_are_counted_from_the_ball_that_was_put_in():
    play = read(*WIDE, LATER, Shot(id="answer", by="A", after="second"))
    assert [(step.shot.id, step.hit) for step in play.steps] == [
        ("feed", 0),
        ("reply", 1),
        ("second", 0),
        ("answer", 1),
    ]


def test_shots_in_a_circle_are_refused_by_name():
    ring = [Shot(id=id, by="A", after=after) for id, after in (("a", "c"), ("b", "a"), ("c", "b"), ("tail", "c"))]
    with pytest.raises(ValueError, match="the shots a, b, c come after one another in a circle"):
        read(*ring)
    assert set(circle(EMPTY.having(*ring))) == {"a", "b", "c"}
    assert circle(EMPTY.having(*WIDE)) == ()


def test_a_shot_of_nobody_and_a_shot_after_nothing_still_stand_in_order():
    play = read(Shot(id="lost", by="Z", after="gone", to=place(0.0, -5.0)), Shot(id="next", by="Z", after="lost"))
    assert [step.digit for step in play.steps] == [1, 2]
    assert not any(step.placed for step in play.steps)


@given(st.randoms(use_true_random=False))
def test_the_order_of_records_in_a_file_means_nothing(random):
    records = [*WIDE, LATER, Shot(id="other", by="B", after="reply", to=place(1.0, -9.0))]
    shuffled = records[:]
    random.shuffle(shuffled)
    assert read(*shuffled).steps == read(*records).steps


@given(st.lists(st.integers(-1, 7), min_size=1, max_size=8))
def test_every_tree_of_shots_is_read_with_depth_as_digit(parents):
    shots = [
        Shot(id=f"s{number}", by="A", after=f"s{parent}" if 0 <= parent < number else None)
        for number, parent in enumerate(parents)
    ]
    play = read(spot("A", 0.0, -12.0), *shots)
    for step in play.steps:
        assert step.digit == len(play.branch(step.shot.id))
    assert [step.digit for step in play.steps] == sorted(step.digit for step in play.steps)
    assert len(play.steps) == len(shots)


def rally(length):
    """A rally of so many shots, somebody running at each, and things enough to stand on."""
    shots = (
        Shot(
            id=f"shot-{number}",
            by="AB"[number % 2],
            stroke="drive" if number else "racket feed",
            after=f"shot-{number - 1}" if number else None,
            to=place(2.0, 8.0 if number % 2 else -8.0),
        )
        for number in range(length)
    )
    runs = (Run(id=f"run-{number}", by="A", during=f"shot-{number}", to=place(1.0, -12.0)) for number in range(length))
    return EMPTY.having(spot("A", 0.0, -12.0), spot("B", 0.0, 12.0), *shots, *runs)


def test_a_rally_four_times_as_long_is_four_times_the_work():
    short, long = rally(100), rally(400)

    def read_whole(setting):
        told = sequence(setting, TENNIS, RIGHT)
        return [(told.person_at("B", step.shot.id), told.following(step.shot.id)) for step in told.steps]

    assert calls(lambda: read_whole(long)) < 4.4 * calls(lambda: read_whole(short))
