"""Steps from an older file format to the next, each a pure function on plain JSON data.

A step stands in ``STEPS`` under the format it starts from and returns new data of the format one higher; ``migrated``
writes the new number. Format 1 is the first, so there is no step yet. To add one, see DEVELOPERS.md, "add a migration".
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, Final

from designer.drill.drill import FORMAT

Raw = dict[str, Any]
Step = Callable[[Raw], Raw]

STEPS: Final[Mapping[int, Step]] = {}


def migrated(raw: Raw, format: int, *, steps: Mapping[int, Step] = STEPS, newest: int = FORMAT) -> Raw:
    """Return ``raw``, which is in ``format``, in the format ``newest``; ``raw`` itself stays as it is.

    Data of a newer format is returned as it is. Raises ``KeyError`` where a step is missing.
    """
    while format < newest:
        raw = steps[format](raw) | {"format": format + 1}
        format += 1
    return raw
