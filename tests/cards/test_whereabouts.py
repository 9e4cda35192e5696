from __future__ import annotations

import pytest

from designer.bundle import sample
from designer.cards.card import make_card
from designer.cards.text import Unprintable
from designer.cards.whereabouts import where_written
from designer.drill.drill import Changes, Drill, Progression, Variation
from designer.drill.items import Note
from designer.drill.movement import Shot
from designer.drill.setting import At


def test_a_sign_is_found_where_it_is_written() -> None:
    shot = Shot(id="s", by="A", note="Keep ⇄ low")
    one = Progression(id="p-one", name="One")
    two = Progression(id="p-two", changes=Changes(shots=(shot,)), easier=(Variation(id="v-one", name="⇄ slow"),))
    drill = Drill(id="d-own", progressions=(one, two), objective="Run ⇄ stop", cues=("one", "two ⇄"))
    assert set(where_written(drill, "⇄")) == {
        "the objective",
        "cue 2",
        "the note of shot 1 in progression 2",
        "the name of easier form 1 in progression 2",
    }
    assert where_written(drill, "☂") == ()


def test_a_sign_on_the_court_alone_is_told_of_too() -> None:
    note = Note(kind="note", id="n", text="watch ☂", place={"at": (0.0, 3.0)})
    drill = Drill(id="d-own", progressions=(Progression(id="p-one", changes=Changes(items=(note,))),))
    (notice,) = make_card(drill, At("p-one")).notices
    assert "☂ (U+2602) in the text of thing on the court 1 in progression 1" in notice


@pytest.mark.parametrize("text", ["שלום", "مرحبا", "Run, then שלום"])
def test_a_script_written_from_right_to_left_is_declined_with_its_place(text: str) -> None:
    """Unicode Standard Annex 9: Hebrew letters are of class R, Arabic ones of class AL."""
    drill = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes()).changed(cues=("ok", text))
    for paper in ("a5", "3x5"):
        with pytest.raises(Unprintable, match="in cue 2 is of a script that is written from right to left"):
            make_card(drill, At("p-fed"), paper=paper)


def test_greek_and_cyrillic_are_printed() -> None:
    drill = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes()).changed(cues=("Ψηλά", "Высоко"))
    assert make_card(drill, At("p-fed")).notices == ()
