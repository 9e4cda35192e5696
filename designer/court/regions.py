"""Parts of the court by their words, always as the player of that end faces the net.

Every word for a region or a line has a space in it, so it is never an id.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final, Literal

from designer.court.standards import Ground
from designer.drill.base import Point

RACKET: Final = 0.6858
"""An adult racket's length, 27 in: what is counted across the court. From memory; rule of thumb of coaches."""

STRIDE: Final = 0.9144
"""A long step of a yard: what is counted along the court."""

End = Literal["near", "far"]
Box = tuple[float, float, float, float]
"""(left, right, front, back) as the player at that end sees it: metres right of the middle, metres from the net."""


def end_of(point: Point) -> End | None:
    """Return which end ``point`` is at, None for a point at the net."""
    if abs(point[1]) < 1e-9:
        return None
    return "near" if point[1] < 0 else "far"


def as_player(point: Point, end: End) -> tuple[float, float]:
    """Return ``point`` as (metres right of the middle, metres from the net) for a player at ``end``; its own inverse.

    >>> as_player((2.0, -8.0), "near")
    (2.0, 8.0)
    """
    x, y = point
    return (x + 0.0, 0.0 - y) if end == "near" else (0.0 - x, y + 0.0)


def from_player(right: float, away: float, end: End) -> Point:
    """Return the point that lies ``right`` metres right of the middle and ``away`` from the net for that player."""
    return (right + 0.0, 0.0 - away) if end == "near" else (0.0 - right, away + 0.0)


def _singles(part: Callable[[float], tuple[float, float]]) -> Callable[[Ground], Box | None]:
    return lambda ground: (*part(ground.singles), 0.0, ground.baseline)


def _doubles(part: Callable[[float], tuple[float, float]]) -> Callable[[Ground], Box | None]:
    return lambda ground: None if ground.doubles is None else (*part(ground.doubles), 0.0, ground.baseline)


def _behind(part: Callable[[float], tuple[float, float]]) -> Callable[[Ground], Box | None]:
    def box(ground: Ground) -> Box | None:
        if ground.service_line is None:
            return None
        return (*part(ground.singles), ground.service_line, ground.baseline)

    return box


def _box(part: Callable[[float], tuple[float, float]]) -> Callable[[Ground], Box | None]:
    def box(ground: Ground) -> Box | None:
        return None if ground.service_line is None else (*part(ground.singles), 0.0, ground.service_line)

    return box


def _alley(sign: int) -> Callable[[Ground], Box | None]:
    def box(ground: Ground) -> Box | None:
        if ground.doubles is None:
            return None
        left, right = sorted((sign * ground.singles, sign * ground.doubles))
        return (left, right, 0.0, ground.baseline)

    return box


def _doubles_back_court(ground: Ground) -> Box | None:
    if ground.service_line is None or ground.doubles is None:
        return None
    return (-ground.doubles, ground.doubles, ground.service_line, ground.baseline)


def _between_service_lines(ground: Ground) -> Box | None:
    if ground.service_line is None:
        return None
    return (-ground.outer, ground.outer, 0.0, ground.service_line)


def _whole(half: float) -> tuple[float, float]:
    return (-half, half)


def _right(half: float) -> tuple[float, float]:
    return (0.0, half)


def _left(half: float) -> tuple[float, float]:
    return (-half, 0.0)


def _middle_four(_: float) -> tuple[float, float]:
    return (-2 * RACKET, 2 * RACKET)


_REGIONS: Final[dict[str, Callable[[Ground], Box | None]]] = {
    "singles court": _singles(_whole),
    "doubles court": _doubles(_whole),
    "right half": _singles(_right),
    "left half": _singles(_left),
    "right doubles half": _doubles(_right),
    "left doubles half": _doubles(_left),
    "back court": _behind(_whole),
    "past the service line": _behind(_whole),
    "doubles back court": _doubles_back_court,
    "right back court": _behind(_right),
    "left back court": _behind(_left),
    "service boxes": _box(_whole),
    "right service box": _box(_right),
    "left service box": _box(_left),
    "deuce box": _box(_right),
    "ad box": _box(_left),
    "between the service lines": _between_service_lines,
    "right alley": _alley(1),
    "left alley": _alley(-1),
    "middle four rackets": _singles(_middle_four),
}


def region_words(ground: Ground) -> tuple[str, ...]:
    """Return the words of every region that this court has."""
    return tuple(words for words, box in _REGIONS.items() if box(ground) is not None)


def region_box(ground: Ground, words: str) -> Box | None:
    """Return the region as the player at either end sees it, None where this court has no such region."""
    box = _REGIONS.get(words)
    return None if box is None else box(ground)


def region(ground: Ground, words: str, end: End) -> tuple[Point, ...] | None:
    """Return the corners of the region at ``end``, going round it; None where this court has no such region."""
    box = region_box(ground, words)
    if box is None:
        return None
    left, right, front, back = box
    return tuple(
        from_player(across, along, end)
        for across, along in ((left, front), (right, front), (right, back), (left, back))
    )


Segment = tuple[float, float, float, float]
"""(right, away, right, away) of a line's two ends, as the player at that end sees them."""


def _level(away: float | None, half: float) -> Segment | None:
    return None if away is None else (-half, away, half, away)


def _side(right: float | None, ground: Ground) -> Segment | None:
    return None if right is None else (right, 0.0, right, ground.baseline)


def _opposite(value: float | None) -> float | None:
    return None if value is None else -value


def _centre_line(ground: Ground) -> Segment | None:
    if not ground.centre_line or ground.service_line is None:
        return None
    return (0.0, 0.0, 0.0, ground.service_line)


def _centre_mark(ground: Ground) -> Segment | None:
    mark = ground.standard.centre_mark
    return None if mark is None else (0.0, round(ground.baseline - mark.metres, 4), 0.0, ground.baseline)


_LINES: Final[dict[str, Callable[[Ground], Segment | None]]] = {
    "the net": lambda ground: _level(0.0, ground.net.ends_x),
    "the service line": lambda ground: _level(ground.service_line, ground.singles),
    "the baseline": lambda ground: _level(ground.baseline, ground.outer),
    "the centre line": _centre_line,
    "the centre mark": _centre_mark,
    "the right singles line": lambda ground: _side(ground.singles, ground),
    "the left singles line": lambda ground: _side(-ground.singles, ground),
    "the right doubles line": lambda ground: _side(ground.doubles, ground),
    "the left doubles line": lambda ground: _side(_opposite(ground.doubles), ground),
}


def line_words(ground: Ground) -> tuple[str, ...]:
    """Return the words of every painted line that this court has, the net included."""
    return tuple(words for words, segment in _LINES.items() if segment(ground) is not None)


def line_by_words(ground: Ground, words: str, end: End) -> tuple[Point, Point] | None:
    """Return the two ends of the line at ``end``, None where this court has no such line."""
    make = _LINES.get(words)
    segment = None if make is None else make(ground)
    if segment is None:
        return None
    first, second = segment[:2], segment[2:]
    return from_player(*first, end), from_player(*second, end)
