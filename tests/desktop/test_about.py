"""What one is asked for when something goes wrong."""

import platform

import PySide6
import reportlab

from designer import __version__
from designer.desktop.about import versions, versions_text


def test_each_part_is_named_with_its_version(qapp):
    found = dict(versions())
    assert found["Drill Designer"] == __version__
    assert found["Python"] == platform.python_version()
    assert found["PySide6-Essentials"] == PySide6.__version__
    assert found["reportlab"] == reportlab.__version__
    assert found["Qt"].count(".") == 2
    assert versions_text().splitlines()[0] == f"Drill Designer {__version__}"
