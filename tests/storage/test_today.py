import stat
import sys
from datetime import date

import pytest

from designer.drill.today import Person, Today
from designer.storage.parsing import Unreadable
from designer.storage.today import forget_today, keep_today, kept_today, open_today

DAY, NEXT = date(2026, 11, 25), date(2026, 11, 26)
TODAY = Today(drill="d-wide", people={"A": Person(name="Mira", hand="left")})


def test_names_are_kept_for_the_day_and_then_removed_those_of_other_drills_too(tmp_path):
    file = keep_today(TODAY, DAY, tmp_path)
    other = keep_today(TODAY.changed(drill="d-other"), DAY, tmp_path)
    assert kept_today("d-wide", DAY, tmp_path) == TODAY.changed(dated=DAY)
    assert sys.platform == "win32" or stat.S_IMODE(file.stat().st_mode) == 0o600
    assert kept_today("d-wide", NEXT, tmp_path) is None
    assert not file.exists()
    assert not other.exists()


def test_what_is_forgotten_is_gone(tmp_path):
    keep_today(TODAY, DAY, tmp_path)
    forget_today("d-wide", tmp_path)
    assert kept_today("d-wide", DAY, tmp_path) is None


@pytest.mark.parametrize("text", ["[]", '{"people": {}}', '{"drill": "d", "people": {"AA": {"name": "x"}}}', "{"])
def test_a_file_that_says_no_such_thing_is_refused_with_its_name(tmp_path, text):
    file = tmp_path / "mine.today.json"
    file.write_text(text, encoding="utf-8")
    with pytest.raises(Unreadable, match=r"mine\.today\.json"):
        open_today(file)
