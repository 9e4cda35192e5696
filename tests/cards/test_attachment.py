"""A coach's card mailed as a PDF, opened in the program, changed and printed again keeps everything."""

from __future__ import annotations

import json
from pathlib import Path

import pikepdf
import pytest

from designer.bundle import sample
from designer.cards.card import make_card
from designer.drill.setting import main_setting
from designer.storage.reading import open_drill
from designer.storage.writing import drill_bytes


@pytest.mark.parametrize("name", ["doubles-six", "short-approach"])
def test_a_card_that_was_mailed_and_saved_anew_opens_changes_and_prints_again(name: str, tmp_path: Path) -> None:
    raw = json.loads(sample(f"{name}.drill.json").read_bytes())
    raw["club-note"] = {"kept": ["by another program"]}  # a field that this program does not know
    first = tmp_path / "first.drill.json"
    first.write_text(json.dumps(raw), encoding="utf-8")
    opened = open_drill(first)
    card = make_card(opened.drill, main_setting(opened.drill), reader="coach", source=opened.source)
    # As a mail program or a viewer leaves it: other object numbers, packed objects, another order. ISO 32000-1, 7.5.7 and F.
    (tmp_path / "sent.pdf").write_bytes(card.pdf)
    with pikepdf.open(tmp_path / "sent.pdf") as document:
        document.save(tmp_path / "received.pdf", linearize=True, object_stream_mode=pikepdf.ObjectStreamMode.generate)
    assert [notice for notice in card.notices if "“club-note”" in notice and "names no child" in notice]
    received = open_drill(tmp_path / "received.pdf")
    assert received.drill == opened.drill
    changed = received.drill.changed(title="Changed on the train")
    again = make_card(changed, main_setting(changed), reader="coach", source=drill_bytes(changed))
    (tmp_path / "again.pdf").write_bytes(again.pdf)
    last = open_drill(tmp_path / "again.pdf").drill
    assert last == changed
    kept = json.loads(drill_bytes(last))
    assert {key: value for key, value in kept.items() if key != "title"} == {
        key: value for key, value in json.loads(drill_bytes(opened.drill)).items() if key != "title"
    }
    assert kept["club-note"] == raw["club-note"]
    assert [setting.id for setting in last.progressions] == [each["id"] for each in raw["progressions"]]
