import os
import shutil
import tempfile
from pathlib import Path

import pytest

from designer.drill.base import place
from designer.drill.drill import Changes, Drill, Progression
from designer.drill.items import Cone

NOBODY = 65534


@pytest.fixture
def drill():
    cone = Cone(kind="cone", id="home", place=place(1.0, -2.0))
    return Drill(id="d-small", title="Small", progressions=(Progression(id="p-1", changes=Changes(items=(cone,))),))


@pytest.fixture
def as_somebody():
    """A folder that anybody may enter, in which this process has no more rights than any user: root would see no locks."""
    folder = Path(tempfile.mkdtemp())
    folder.chmod(0o777)
    was_root = os.geteuid() == 0
    if was_root:
        os.seteuid(NOBODY)
    yield folder
    if was_root:
        os.seteuid(0)
    for inner in folder.rglob("*"):
        if inner.is_dir():
            inner.chmod(0o700)
    shutil.rmtree(folder)
