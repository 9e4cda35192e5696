"""Drags a cone from the strip onto the court of the real window, with a real pointer, and looks whether it lies there.

    xvfb-run -a python tests/screen/drag_a_cone.py PROGRAM FILE.drill.json

Run on its own by `.ci/run`: a real drag and drop needs a screen, which the other tests do without. Where
`DRILL_DESIGNER_POSITIONS` names a file, the window keeps in it, as JSON and in global pixels, where things are:

    {"strip": {"cone": [x, y], ...}, "court": {"centre": [x, y], "pixels_per_metre": n}, "document": {"items": n}}

Needs xdotool; nothing but Python's own library besides. Exit status 0 where the cone lies on the court and goes again
by undo, else 1 with a sentence.
"""

import json
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

PATIENCE = 30.0
DROP = (1.5, -3.0)  # metres from the net's centre: on the court, whichever way it lies on the screen


class Failed(Exception):
    """What was expected and did not come."""


def positions(file: Path) -> dict[str, Any] | None:
    """What the window has written, or None while there is nothing whole to read."""
    try:
        return json.loads(file.read_text("utf-8"))
    except (FileNotFoundError, json.JSONDecodeError):
        return None


def wait_for(
    file: Path, program: subprocess.Popen, what: str, holds: Callable[[dict[str, Any]], bool]
) -> dict[str, Any]:
    """The positions as soon as they fulfil a condition."""
    end = time.monotonic() + PATIENCE
    while time.monotonic() < end:
        if program.poll() is not None:
            raise Failed(f"the program ended with status {program.returncode} while waiting for {what}")
        found = positions(file)
        if found is not None and holds(found):
            return found
        time.sleep(0.05)
    raise Failed(f"{what} did not come within {PATIENCE:.0f} s; the window said {positions(file)}")


def pointer(*words: str | float) -> None:
    subprocess.run(["xdotool", *(str(word) for word in words)], check=True)


def drag(start: list[float], end: list[float], steps: int = 12) -> None:
    """A drag as a hand makes it: some way between press and release, or no drag begins."""
    pointer("mousemove", round(start[0]), round(start[1]))
    pointer("mousedown", 1)
    for step in range(1, steps + 1):
        x, y = (a + (b - a) * step / steps for a, b in zip(start, end, strict=True))
        pointer("mousemove", round(x), round(y), "sleep", 0.1)
    pointer("mouseup", 1)


def try_it(program: subprocess.Popen, file: Path) -> None:
    before = wait_for(
        file,
        program,
        "the window",
        lambda found: "cone" in found.get("strip", {}) and "centre" in found.get("court", {}),
    )
    items = before["document"]["items"]
    x, y = before["court"]["centre"]
    scale = before["court"]["pixels_per_metre"]
    drag(before["strip"]["cone"], [x + DROP[0] * scale, y - DROP[1] * scale])
    wait_for(file, program, "the cone", lambda found: found["document"]["items"] == items + 1)
    pointer("key", "ctrl+z")
    wait_for(file, program, "undo", lambda found: found["document"]["items"] == items)


def main() -> int:
    program_path, drill = sys.argv[1:]
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "positions.json"
        homes = {
            name: str(Path(folder) / name)
            for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_STATE_HOME", "XDG_CACHE_HOME")
        }
        environment = os.environ | homes | {"DRILL_DESIGNER_POSITIONS": str(file), "QT_QPA_PLATFORM": "xcb"}
        program = subprocess.Popen([program_path, "open", drill], env=environment)
        try:
            try_it(program, file)
        except Failed as reason:
            print(f"drag_a_cone: {reason}", file=sys.stderr)
            return 1
        finally:
            program.kill()
            program.wait()
    print("a cone was dragged from the strip onto the court and taken back by undo")
    return 0


if __name__ == "__main__":
    sys.exit(main())
