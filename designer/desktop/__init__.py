"""The Qt program: window, canvas with its tools, panels and dialogs."""

import gc

# All that is loaded now stays. Looking through it for garbage again and again while it grows takes a third of the time
# until the window is there; the window turns the collector on once it has been painted.
gc.disable()

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
