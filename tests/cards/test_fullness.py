"""How full a card is, as it is told while it is written, against the card that is made."""

from __future__ import annotations

import itertools

import pytest

from designer.bundle import sample
from designer.cards.card import make_card
from designer.cards.fullness import fullness
from designer.drill.brand import Brand
from designer.drill.drill import Drill, Progression
from designer.drill.setting import At, main_setting

SAMPLES = sorted(path.name.removesuffix(".drill.json") for path in sample().glob("*.drill.json"))


@pytest.mark.parametrize(("number", "paper", "reader"), [(2, "3x5", "player"), (9, "a5", "coach")])
def test_it_tells_of_the_card_that_is_made_logo_code_and_all(number: int, paper: str, reader: str) -> None:
    drill = Drill.model_validate_json(sample(f"{SAMPLES[number]}.drill.json").read_bytes())
    brand = Brand.model_validate_json(sample("brand.json").read_bytes()).changed(address="HTTPS://EXAMPLE.ORG/DRILLS")
    logo = sample("alder-quay.svg").read_text(encoding="utf-8")
    told = fullness(drill, main_setting(drill), paper=paper, reader=reader, brand=brand, logo=logo)
    made = make_card(drill, main_setting(drill), paper=paper, reader=reader, brand=brand, logo=logo)
    assert told is not None
    assert told.sides == made.pages
    assert told != fullness(drill, main_setting(drill), paper=paper, reader=reader), "code and logo take room"


def test_a_card_that_says_next_to_nothing_is_one_side_with_room() -> None:
    drill = Drill(id="d-empty", title="New drill", progressions=(Progression(id="p-one"),))
    for paper, reader in itertools.product(("a5", "a4"), ("player", "coach")):
        told = fullness(drill, At("p-one"), paper=paper, reader=reader)
        assert told is not None
        assert told.sides == make_card(drill, At("p-one"), paper=paper, reader=reader).pages == 1
        assert told.last < 0.85
