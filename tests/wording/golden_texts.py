"""The words of every sample as they were last read aloud: ``golden/`` holds a coach's and a player's text of each.

Made anew, after reading every line that changes, by ``python tests/wording/golden_texts.py`` from the root of the checkout.
"""

from pathlib import Path

from designer.bundle import sample
from designer.drill.drill import Drill
from designer.drill.setting import main_setting
from designer.wording.card import card_words
from designer.wording.describe import text_of

HERE = Path(__file__).parent / "golden"
READERS = ("coach", "player")


def drills():
    """The code of each sample, with its drill."""
    for path in sorted(sample().glob("*.drill.json")):
        yield path.name.removesuffix(".drill.json"), Drill.model_validate_json(path.read_bytes())


def text(drill, reader):
    """The card of the main setting as text."""
    return text_of(card_words(drill, main_setting(drill), reader))


def file_of(code, reader):
    """Where a text is kept."""
    return HERE / f"{code}.{reader}.txt"


if __name__ == "__main__":
    for code, drill in drills():
        for reader in READERS:
            file_of(code, reader).write_text(text(drill, reader), "utf-8")
