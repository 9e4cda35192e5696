"""Who takes whose place. Swaps as groups use them; common practice, no source."""

from wording.making import DOUBLES, HERE, SINGLES, drill_of, spot, texts, told

from designer.drill.base import place
from designer.drill.items import Basket, Cone, Line
from designer.drill.people import Job
from designer.drill.rules import Finish, Swap
from designer.wording.card import card_words
from designer.wording.layout import layout_of
from designer.wording.swaps import swaps
from designer.wording.telling import telling

AFTER_FIVE = ({"what": "starts", "count": 5},)
THIRD = spot("C", -8.0, 0.0, task="waits")


def said(*records, **values):
    return texts(swaps(told(*records, **values)))


def test_two_change_jobs_and_ends():
    swap = Swap(id="s", on=AFTER_FIVE, moves={"A": "B", "B": "A"}, ends=True)
    assert said(*SINGLES, swap) == ["After every five starts A and B change jobs and ends."]
    assert said(*SINGLES, swap.changed(ends=False)) == ["After every five starts A and B change jobs, not ends."]


def test_a_ring_is_told_for_the_fewest_first():
    swap = Swap(id="s", on=AFTER_FIVE, moves={"A": "B", "B": "C", "C": "A"})
    assert said(*SINGLES, THIRD, swap, jobs="ABC", players=(2, 3)) == [
        "After every five starts A and B change jobs, not ends; with C, A becomes B, B becomes C and C becomes A."
    ]
    assert said(*SINGLES, THIRD, swap, jobs="ABC", players=(3, 3)) == [
        "After every five starts A becomes B, B becomes C and C becomes A."
    ]


def test_a_pair_that_waits_comes_in():
    waiting = (THIRD, spot("D", 8.0, 0.0, task="waits"))
    swap = Swap(id="s", on=({"what": "starts", "count": 10},), moves={"A": "C", "C": "A", "B": "D", "D": "B"})
    assert said(*SINGLES, *waiting, swap, jobs="ABCD") == ["After every ten starts C and D come in for A and B."]


def test_the_loser_makes_room_and_the_winner_goes_up():
    swap = Swap(id="s", on=({"what": "finished"},), moves={"loser": "C", "C": "loser"})
    assert said(*SINGLES, THIRD, swap, jobs="ABC") == ["At the end C comes in for the loser."]
    ladder = Swap(id="s", on=({"what": "minutes", "count": 6},), moves={"winner": "court up", "loser": "court down"})
    assert said(*SINGLES, ladder) == ["After every 6 min the winner moves a court up and the loser moves a court down."]


def test_what_comes_first_in_play_is_said_first():
    ends = Swap(id="z", on=({"what": "score", "count": 8},), ends=True)
    jobs = Swap(id="a", on=({"what": "finished"},), moves={"A": "B", "B": "A"}, ends=True)
    assert said(*SINGLES, jobs, ends) == [
        "When one player reaches 8, change ends.",
        "At the end A and B change jobs and ends.",
    ]


def test_partners_round_by_round():
    table = (("A", "B", "C", "D"), ("A", "D", "C", "B"), ("A", "C", "D", "B"))
    swap = Swap(id="s", on=({"what": "round"},), table=table)
    assert said(*DOUBLES, swap, jobs="ABCD") == [
        (
            "After each round people change places. Rounds, in the places of A and B v C and D: "
            "1 A and B v C and D; 2 A and D v C and B; 3 A and C v D and B."
        )
    ]


def test_rounds_name_each_pair_in_the_order_of_what_its_places_are_called():
    swap = Swap(id="s", on=({"what": "round"},), table=(("A", "B", "C", "D"), ("A", "D", "B", "C")))
    drill = drill_of(*DOUBLES, swap, jobs="ABCD")
    roles = {"A": "back", "B": "net", "C": "back", "D": "net"}
    drill = drill.changed(jobs=tuple(job.changed(role=roles[job.letter]) for job in drill.jobs))
    (said_once,) = texts(swaps(telling(drill, HERE)))
    assert said_once.endswith("each pair in the order back, net: 1 A and B v C and D; 2 A and D v B and C.")
    # Who has read that is told which of the two a letter is.
    assert texts(layout_of(telling(drill, HERE)))[-1].endswith("Letters are places, under Swap people.")


def test_what_is_laid_out_stays_where_people_change_ends_with_their_jobs():
    swap = Swap(id="s", on=({"what": "starts", "count": 5},), moves={"A": "B", "B": "A"}, ends=True)
    cone = Cone(kind="cone", id="c", place=place(2.0, 9.0))
    stays = "After every five starts A and B change jobs and ends. What is laid out stays."
    assert said(*SINGLES, cone, swap) == [stays]
    # Where the same lies at both ends, or nothing does, there is nothing to carry.
    assert said(*SINGLES, cone.changed(both_ends=True), swap) == [stays.split(" What", maxsplit=1)[0]]
    # A mirror moves it all the same.
    mirror = Swap(id="m", on=({"what": "starts", "count": 10},), mirrored=True)
    assert said(*SINGLES, cone, swap, mirror) == [
        stays,
        "After every ten starts play it mirrored, the layout too: left for right.",
    ]
    both = swap.changed(mirrored=True)
    assert said(*SINGLES, cone, both)[0].endswith("ends; play it mirrored, the layout too: left for right.")
    # What is the same in a mirror lies where it should: in the middle, in a pair, or as a basket that is brought along.
    middle, other = cone.changed(place=place(0.0, 9.0)), cone.changed(id="d", place=place(-2.0, 9.0))
    basket = Basket(kind="basket", id="b", place=place(2.0, 14.0))
    for same in ((middle,), (cone, other), (basket,)):
        assert said(*SINGLES, *same, mirror) == ["After every ten starts play it mirrored: left for right."]


def test_the_other_side():
    swap = Swap(id="s", on=({"what": "starts", "count": 10},), mirrored=True)
    assert said(*SINGLES, swap) == ["After every ten starts play it mirrored: left for right."]


def test_a_swap_of_which_only_a_note_speaks():
    swap = Swap(id="s", on=({"what": "finished"},), note="New opponent.")
    assert said(*SINGLES, swap) == ["At the end: new opponent."]
    # Without one nothing is said, and it is asked.
    bare = swap.changed(note="")
    assert said(*SINGLES, bare) == []
    asked = card_words(drill_of(*SINGLES, bare), HERE, "coach").section("swap").sentences
    assert [(s.text, s.missing) for s in asked] == [("At the end: who goes where?", True)]


def lane(letter, x, y):
    return Line(
        kind="line", id=f"lane-{letter.lower()}", hand_of=letter, marked="discs", corners=((x, y), (x, y + 2.0))
    )


ENDS = Swap(id="s", on=({"what": "score", "count": 6},), ends=True)


def of_hands(*records, **values):
    return [s.text for s in swaps(told(*SINGLES, *records, **values)) if s.key == "swap:hands"]


def test_two_of_one_hand_find_their_line_on_their_own_side():
    # Each lies two rackets (1.3716 m) to its player's left: turned half round they are the same.
    both = (lane("A", -1.3716, -11.0), lane("B", 1.3716, 8.0))
    assert of_hands(*both, ENDS) == ["Each line of discs stays where it is."]
    assert of_hands(*both) == []


def test_where_right_meets_left_the_lines_move_or_nobody_does():
    # On one side of the court from end to end: A's left, and the right of a left-handed B.
    both = (lane("A", -1.3716, -11.0), lane("B", -1.3716, 8.0))
    moves = "each line of discs moves 4 rackets to the other side of the middle."
    assert of_hands(*both, ENDS) == [f"Players of different hands change ends: {moves}"]
    assert of_hands(*both) == [f"Players of different hands stay at their ends; to change them, {moves}"]
    assert of_hands(*both, reader="player") == ["Stay at your end."]


def test_a_line_for_one_player_alone_moves_only_for_another_hand():
    left = (Job(letter="A"), Job(letter="B", hand="left"))
    made = drill_of(*SINGLES, lane("A", -1.3716, -11.0), ENDS)
    assert [s.text for s in swaps(telling(made, HERE)) if s.key == "swap:hands"] == [
        "The line of discs stays where it is."
    ]
    other = telling(made.changed(jobs=left), HERE)
    assert [s.text for s in swaps(other) if s.key == "swap:hands"] == [
        "Players of different hands change ends: the line of discs moves 4 rackets to the other side of the middle."
    ]


def test_what_comes_again_says_every_and_what_comes_once_does_not():
    swap = Swap(id="w", on=({"what": "starts", "count": 10},), moves={"A": "B", "B": "A"}, ends=True)
    total = Finish(id="end", kind="total", starts=20)
    assert said(*SINGLES, swap, total) == ["After ten starts A and B change jobs and ends."]
    assert said(*SINGLES, swap, total.changed(starts=40))[0].startswith("After every ten starts ")
    # Ten each are more than ten.
    assert said(*SINGLES, swap, total.changed(each=True))[0].startswith("After every ten starts ")


def test_two_who_wait_come_in_one_after_the_other():
    waiting = (spot("C", -8.0, 0.0, task="waits"), spot("D", -8.0, 2.0, task="waits"))
    moves = {"C": "loser", "loser": "D", "D": "C"}
    swap = Swap(id="w", on=({"what": "won", "count": 2, "running": True},), moves=moves, take_over=2)
    (text,) = said(*SINGLES, *waiting, swap, jobs="ABCD")
    assert "C comes in for the loser" in text
    assert "the loser becomes D" in text
    assert text.endswith("Whoever comes in takes over with two points in a row.")


def test_who_waits_in_a_round_of_a_table_is_named():
    rows = (("A", "B", "C", "D", "E"), ("E", "B", "C", "A", "D"))
    swap = Swap(id="t", on=({"what": "round"},), table=rows)
    (text,) = said(*DOUBLES, spot("E", -8.0, 6.4, task="waits"), swap, jobs="ABCDE")
    assert text.endswith("1 A and B v C and D, E waits; 2 E and B v C and A, D waits.")
