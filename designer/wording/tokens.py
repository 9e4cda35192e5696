"""A drill's own text with its tokens turned into words."""

from __future__ import annotations

import re
from typing import Final

from designer.drill.drill import Drill
from designer.drill.setting import At

_TOKEN: Final = re.compile(r"\{\{|\{([A-Za-z0-9-]{1,40})\}")


def plain(drill: Drill, at: At, text: str) -> str:
    """Return ``text`` on one line with its tokens read; a token that means nothing stays as it is written."""
    return " ".join(_TOKEN.sub(lambda m: m[1] or "{", text).split())
