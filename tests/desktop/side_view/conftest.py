"""A window on the sample of the wide ball, whose numbers under the card appear at once."""

import pytest

from designer.bundle import sample
from designer.desktop.document import Document
from designer.drill.setting import At
from designer.storage.reading import open_drill


@pytest.fixture
def wide(make_window):
    path = sample("wide-start.drill.json")
    window = make_window(Document(open_drill(path).drill, path=path))
    window.view.go_to(At("p-fed"))
    window.numbers.appearing.setInterval(0)
    return window
