"""What every sample's coach and player read, word for word, as a person last read it aloud."""

import pytest
from wording.golden_texts import HERE, READERS, drills, file_of, text

DRILLS = dict(drills())


@pytest.mark.parametrize("reader", READERS)
@pytest.mark.parametrize("code", DRILLS)
def test_a_sample_reads_as_it_was_last_read_aloud(code, reader):
    assert text(DRILLS[code], reader) == file_of(code, reader).read_text("utf-8")


def test_no_text_is_kept_of_a_sample_that_is_gone():
    kept = {path.name for path in HERE.glob("*.txt")}
    assert kept == {file_of(code, reader).name for code in DRILLS for reader in READERS}
