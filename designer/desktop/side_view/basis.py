"""What the numbers of a window rest on: the level, one's own group at it, and the drag of the air."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from designer.desktop import settings

if TYPE_CHECKING:
    from designer.drill.drill import Drill
    from designer.drill.setting import At
    from designer.numbers.levels import Level
    from designer.numbers.situation import Situation


@dataclass(frozen=True, slots=True)
class Basis:
    """``group``: how many times as wide one's own group spreads its balls, and the count behind that; None for the usual.

    ``drag``: a drag coefficient, None for the ball's own.
    """

    level: str
    group: tuple[float, str] | None = None
    drag: float | None = None

    @property
    def words(self) -> str:
        """Return what the players are called: "club level", "club level, 4 of 10"."""
        return f"{self.level} level" if self.group is None else f"{self.level} level, {self.group[1]}"

    def players(self) -> Level:
        """Return the level, its spread fitted to one's own group where one is kept."""
        from designer.numbers.levels import level

        usual = level(self.level)
        return usual if self.group is None else usual.with_spread(*self.group)

    def situation(self, drill: Drill, at: At) -> Situation:
        """Return a setting ready for numbers."""
        from designer.numbers.situation import situation

        return situation(drill, at, self.players(), drag=self.drag)


def chosen() -> Basis:
    """Return what the user has chosen last."""
    level = settings.level()
    return Basis(level, settings.group(level), settings.drag())
