"""Of which drills a card was made is remembered, the latest of them."""

from designer.desktop import first_card
from designer.desktop.first_card import card_was_made, remember_card
from designer.desktop.settings import settings


def test_a_drill_is_known_once_its_card_was_made():
    assert not card_was_made("d-one")
    remember_card("d-one")
    assert card_was_made("d-one")
    assert not card_was_made("d-two")


def test_only_the_latest_are_kept_and_a_spoilt_list_is_an_empty_one(monkeypatch):
    monkeypatch.setattr(first_card, "KEPT", 2)
    for number in range(3):
        remember_card(f"d-{number}")
    assert [card_was_made(f"d-{number}") for number in range(3)] == [False, True, True]
    settings().setValue("card/made", "{")
    assert not card_was_made("d-2")
