"""What becomes of one person at a swap, as that person reads it. Swaps as groups use them; common practice, no source."""

from wording.making import DOUBLES, SINGLES, spot, texts, told

from designer.drill.rules import Finish, Swap
from designer.wording.turns import changes_job, own_swaps, swaps_later

AFTER_FIVE = ({"what": "starts", "count": 5},)
WAITS = spot("C", -8.0, 0.0, task="waits")
TABLE = (("A", "B", "C", "D"), ("A", "D", "C", "B"), ("A", "C", "D", "B"))


def said(start, *records, **values):
    return texts(own_swaps(told(*records, reader="player", **values), start))


def test_of_two_the_reader_hears_what_comes_next_and_which_end():
    swap = Swap(id="s", on=AFTER_FIVE, moves={"A": "B", "B": "A"}, ends=True)
    assert said("A", *SINGLES, swap) == ["After every five starts, change ends: you are B, then A again."]
    assert said("B", *SINGLES, swap) == ["After every five starts, change ends: you are A, then B again."]
    stays = swap.changed(ends=False)
    assert said("A", *SINGLES, stays) == ["After every five starts you are B, then A again; stay at your end."]
    over = swap.changed(mirrored=True)
    assert said("A", *SINGLES, over)[0].endswith("then A again; play it mirrored: left for right.")


def test_with_a_third_the_reader_hears_both_ways_round():
    swap = Swap(id="s", on=AFTER_FIVE, moves={"A": "B", "B": "C", "C": "A"}, ends=True)
    three = {"jobs": "ABC", "players": (2, 3)}
    assert said("A", *SINGLES, WAITS, swap, **three) == [
        "After every five starts, change ends: you are B, then C if present, then A again."
    ]
    # Whoever is the third is only there with three.
    assert said("C", *SINGLES, WAITS, swap, **three) == [
        "After every five starts, change ends: you are A, then B, then C again."
    ]


def test_whoever_waits_hears_when_they_come_in_and_what_the_others_do_before():
    change = Swap(id="a", on=AFTER_FIVE, moves={"A": "B", "B": "A"}, ends=True)
    waiting = (WAITS, spot("D", 8.0, 0.0, task="waits"))
    swap = Swap(id="s", on=({"what": "starts", "count": 10},), moves={"A": "C", "C": "A", "B": "D", "D": "B"})
    four = {"jobs": "ABCD", "players": (4, 4)}
    assert said("C", *SINGLES, *waiting, change, swap, **four) == [
        "After every five starts A and B change jobs and ends.",
        "After every ten starts C and D come in for A and B: you are A, then C again.",
    ]


def test_partners_that_change_at_once_know_each_other_opponents_are_named():
    swap = Swap(id="s", on=({"what": "score", "count": 3},), moves={"A": "B", "B": "A", "C": "D", "D": "C"})
    assert said("D", *DOUBLES, swap, jobs="ABCD") == ["When one side reaches 3, partners change places: you are C."]
    across = swap.changed(moves={"A": "C", "C": "A", "B": "D", "D": "B"}, ends=True)
    (text,) = said("D", *DOUBLES, across, jobs="ABCD")
    assert text.startswith("When one side reaches 3, A and C change jobs and ends, and so do B and D: you are B")


def later(start, *records, **values):
    return texts(swaps_later(told(*records, reader="player", **values), start))


def test_rounds_are_listed_apart_by_places_where_these_change_and_by_partners():
    swap = Swap(id="s", on=({"what": "round"},), table=TABLE)
    assert said("A", *DOUBLES, swap, jobs="ABCD") == ["After each round you are A again, new partner: see Rounds."]
    assert later("A", *DOUBLES, swap, jobs="ABCD") == ["Rounds: with who began as B, D, C."]
    # B stands in job 2, then in job 4 twice.
    assert said("B", *DOUBLES, swap, jobs="ABCD") == [
        "After each round see Rounds: in round 2 you are D, your partner began as C."
    ]
    # A fifth changes who plays, which is looked up.
    over = swap.changed(note="Five players: whoever waits goes in for the player of most rounds.")
    five = {"jobs": "ABCDE", "players": (4, 5)}
    assert said("B", *DOUBLES, spot("E", -8.0, 0.0, task="waits"), over, **five) == [
        "After each round see Rounds: in round 2 you are D, your partner began as C. With E see Rules."
    ]
    assert later("B", *DOUBLES, swap, jobs="ABCD") == [
        "Rounds: at B in round 1, at D in 2 and 3; with who began as A, C, D."
    ]
    waits = spot("E", -8.0, 6.4, task="waits")
    assert said("E", *DOUBLES, waits, swap, jobs="ABCDE") == [
        "After each round change places; letters stay on the court."
    ]
    assert later("E", *DOUBLES, waits, swap, jobs="ABCDE") == []


def test_what_is_done_with_a_player_over_is_fine_print_but_for_whoever_waits():
    note = "Five players: E waits first."
    swap = Swap(id="s", on=({"what": "round"},), table=TABLE, note=note)
    five = (*DOUBLES, spot("E", -8.0, 6.4, task="waits"), swap)
    assert note not in said("A", *five, jobs="ABCDE")
    assert later("A", *five, jobs="ABCDE")[-1] == note
    assert said("E", *five, jobs="ABCDE")[-1] == note
    # Another note is part of the swap.
    other = Swap(id="s", on=AFTER_FIVE, moves={"A": "B", "B": "A"}, ends=True, note="Shake hands.")
    assert said("A", *SINGLES, other)[-1] == "Shake hands."
    assert later("A", *SINGLES, other) == []


def test_only_who_has_another_job_later_starts_as_something():
    swap = Swap(id="s", on=({"what": "round"},), table=TABLE)
    made = told(*DOUBLES, swap, jobs="ABCD", reader="player")
    assert (changes_job(made, "A"), changes_job(made, "B")) == (False, True)
    assert not changes_job(told(*SINGLES, reader="player"), "A")


def test_the_end_of_play_is_not_taken_for_an_end_of_the_court():
    swap = Swap(id="s", on=({"what": "finished"},), moves={"A": "B", "B": "A"})
    assert said("A", *SINGLES, swap) == ["When it is over, you are B; stay at your end."]
    game = Finish(id="end", kind="race", to=7)
    assert said("A", *SINGLES, swap, game) == ["After the game you are B; stay at your end."]
    twice = Swap(id="m", on=({"what": "finished", "count": 2},), mirrored=True)
    assert said("A", *SINGLES, twice, game) == ["After two games play it mirrored: left for right."]


def test_a_loser_who_makes_room_is_told_as_to_anybody():
    swap = Swap(id="s", on=({"what": "finished"},), moves={"loser": "C", "C": "loser"})
    assert said("A", *SINGLES, WAITS, swap, jobs="ABC") == ["When it is over, C comes in for the loser."]
