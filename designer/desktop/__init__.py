"""The Qt program: window, canvas with its tools, panels and dialogs."""

import builtins
import gc
import os

# All that is loaded now stays. Looking through it for garbage again and again while it grows takes a third of the time
# until the window is there; the window turns the collector on once it has been painted.
gc.disable()

# pydantic looks through every installed package for plugins of its own; this program has none.
os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")

# The core comes before Qt: PySide looks into the source of every module that is imported after it.
import platformdirs  # noqa: E402, F401

import designer.drawing.part  # noqa: E402
import designer.drawing.picture  # noqa: E402
import designer.drawing.samples  # noqa: E402
import designer.drawing.sheet  # noqa: E402
import designer.drill.edits  # noqa: E402
import designer.play.directions  # noqa: E402
import designer.storage.reading  # noqa: E402
import designer.storage.recovery  # noqa: E402
import designer.wording.places  # noqa: E402
import designer.wording.sentence  # noqa: E402, F401

# From its first import on, PySide looks at every import of the process for a switch of names that we do not use
# (``from __feature__ import …``), and reads the importing module's source to do so. Python's own import is put back:
# an eighth of the time until the window takes a key.
_plain_import = builtins.__import__
import PySide6.QtCore  # noqa: E402, F401

builtins.__import__ = _plain_import
