"""Units a distance is said in."""

from __future__ import annotations

from typing import Literal

Units = Literal["rackets", "metres", "feet"]
