"""Places as they are typed: in the words they are read in, or as two numbers.

"far end: 2 rackets in from the left singles line, 1 stride inside the baseline" and "-2.74, 10.97" are the same place.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Callable
from typing import Final

from designer.court.readings import reading
from designer.court.regions import End, as_player, end_of, from_player, line_by_words, line_words
from designer.court.standards import Ground
from designer.desktop.forms.box import Refused
from designer.drill.base import FARTHEST, Point, to_tenth_millimetre
from designer.wording.places import end_seen, place_words
from designer.wording.units import RACKET, STRIDE, Units

EXPECTED: Final = "a place such as “far end: 2 rackets in from the left singles line, 1 stride inside the baseline”"

_PREFIX: Final = re.compile(r"^\s*(near|far)(?: end)?\s*[:,]?\s*", re.IGNORECASE)
_NUMBERS: Final = re.compile(r"^\s*([-+−]?\d+(?:\.\d+)?)\s*m?\s*[,;]\s*([-+−]?\d+(?:\.\d+)?)\s*m?\s*$")
_FEET: Final = re.compile(r"^(?:(\d+) ?ft)? ?(?:(\d+) ?in)?$")
_COUNT: Final = re.compile(r"^(\d*)(½|\.\d+)? ?(rackets?|strides?|m|metres?)$")
_OFFSET: Final = re.compile(r"^(.+?) (in from|out from|right of|left of|inside|behind|in front of|from) (the .+)$")
_ON: Final = re.compile(r"^(?:on|level with|against|at) (the .+)$")
_BETWEEN: Final = re.compile(r"^half-way between (the .+) and (the .+)$")
_UNITS: Final = {"racket": RACKET, "stride": STRIDE, "m": 1.0, "metre": 1.0}
_MIDDLES: Final = ("the middle", "the T", "the centre mark", "the centre line")


def place_text(ground: Ground, point: Point, units: Units = "rackets") -> str:
    """Return ``point`` (metres) as it stands in a form: which end, then where from the nearest painted lines."""
    words = place_words(ground, point, units, exact=True)
    end = end_seen(point)
    return words if end is None else f"{end} end: {words}"


def place_of(ground: Ground, text: str, end: End = "near") -> Point:
    """Return the place that ``text`` names; ``end`` is the end that is meant where it names none.

    Raises ``Refused`` with what was expected.
    """
    numbers = _NUMBERS.match(text)
    if numbers is not None:
        x, y = (float(number.replace("−", "-")) for number in numbers.groups())
        return _within((x, y))
    named = _PREFIX.match(text)
    if named is not None:
        end = "near" if named[1].lower() == "near" else "far"
        text = text[named.end() :]
    words = " ".join(text.split()).rstrip(".")
    crossings = _crossings(ground)
    if words.removeprefix("on ") in crossings:
        return from_player(*crossings[words.removeprefix("on ")], end)
    half = _BETWEEN.match(words)
    if half is not None and half[1] in crossings and half[2] in crossings:
        (x0, y0), (x1, y1) = crossings[half[1]], crossings[half[2]]
        return from_player((x0 + x1) / 2, (y0 + y1) / 2, end)
    right, away = _by_counts(ground, words)
    return _within(from_player(right, away, end))


def _within(point: Point) -> Point:
    if max(map(abs, point)) > FARTHEST:
        raise Refused(f"A place within {FARTHEST:g} m of the net, please.")
    return (to_tenth_millimetre(point[0]), to_tenth_millimetre(point[1]))


def _crossings(ground: Ground) -> dict[str, tuple[float, float]]:
    """Return every crossing of lines that has a name, as (right, away) of the player at its end."""
    across = {0.0, ground.singles, -ground.singles}
    if ground.doubles is not None:
        across |= {ground.doubles, -ground.doubles}
    along = {0.0, ground.baseline, *(() if ground.service_line is None else (ground.service_line,))}
    found = {}
    for right, away in itertools.product(sorted(across), sorted(along)):
        crossing = reading(ground, from_player(right, away, "near")).crossing
        if crossing is not None:
            found[crossing] = (right, away)
    return found


def _by_counts(ground: Ground, words: str) -> tuple[float, float]:
    """Return (right, away) of a place that is told by one count across and one along, or by one from a mark."""
    right: float | None = None
    away: float | None = None
    clauses = [clause.strip() for clause in words.split(",")]
    if len(clauses) == 1 and (behind := _behind_a_mark(ground, clauses[0])) is not None:
        return behind
    for clause in clauses:
        across, along = _clause(ground, clause)
        right = across if across is not None else right
        away = along if along is not None else away
    if right is None or away is None or len(clauses) > 2:
        raise Refused(f"Please say {EXPECTED}, or two numbers in metres: “2.74, -6.40”.")
    return right, away


def _behind_a_mark(ground: Ground, clause: str) -> tuple[float, float] | None:
    """Return the place of "1 stride behind the centre mark", None for other words."""
    found = _OFFSET.match(clause)
    line = {"the centre mark": ground.baseline, "the T": ground.service_line}.get("" if found is None else found[3])
    if found is None or line is None or found[2] not in ("inside", "behind"):
        return None
    count = metres_of(found[1])
    return 0.0, line + count if found[2] == "behind" else line - count


def _clause(ground: Ground, clause: str) -> tuple[float | None, float | None]:
    """Return what one clause says: (right, None) or (None, away)."""
    if clause == "in the middle":
        return 0.0, None
    if (between := _BETWEEN.match(clause)) is not None:
        one, two = (_line(ground, words) for words in between.groups())
        return _both(one[0], two[0]), _both(one[1], two[1])
    if (on := _ON.match(clause)) is not None:
        return _line(ground, on[1])
    found = _OFFSET.match(clause)
    if found is None:
        raise Refused(f"“{clause}” is no place; please say {EXPECTED}.")
    told, how, line = found.groups()
    if how == "in from" and line == "the net":
        told, how = f"{told} in", "from"  # "2 ft 6 in from the net": the inches are no direction
    count = metres_of(told)
    right, away = _line(ground, line)
    if how == "inside" and right is not None:
        how = "in from"  # "4 ft 6 in inside the left singles line"
    turns: dict[str, Callable[[float], float]] = {
        "in from": lambda at: at - count if at > 0 else at + count,
        "out from": lambda at: at + count if at > 0 else at - count,
        "right of": lambda at: at + count,
        "left of": lambda at: at - count,
        "inside": lambda at: at - count,
        "behind": lambda at: at + count,
        "in front of": lambda at: at - count,
        "from": lambda at: at + count,
    }
    if how in ("inside", "behind", "in front of", "from"):
        return None, None if away is None else turns[how](away)
    return (None if right is None else turns[how](right)), None


def _both(one: float | None, two: float | None) -> float | None:
    return None if one is None or two is None else (one + two) / 2


def _line(ground: Ground, words: str) -> tuple[float | None, float | None]:
    """Return where a line lies: (right, None) for one along the court, (None, away) for one across it."""
    if words in _MIDDLES:
        return 0.0, None
    fences = {
        "the right side fence": (ground.side_fence, None),
        "the left side fence": (-ground.side_fence, None),
        "the back fence": (None, ground.back_fence),
    }
    if words in fences:
        return fences[words]
    ends = line_by_words(ground, words, "near")
    if ends is None:
        known = ", ".join(line_words(ground))
        raise Refused(f"There is no line “{words}” on this court; it has {known}.")
    (x0, y0), (x1, y1) = (as_player(point, "near") for point in ends)
    return (None, y0) if abs(y1 - y0) < abs(x1 - x0) else (x0, None)


def metres_of(text: str) -> float:
    """Return the metres of a count such as "2 rackets", "1½ strides", "1.37 m" or "4 ft 6 in"; raise ``Refused``."""
    words = text.strip().lower()
    found = _COUNT.match(words)
    if found is not None and (found[1] or found[2]):
        half = 0.5 if found[2] == "½" else float(found[2] or 0)
        unit = next(metres for name, metres in sorted(_UNITS.items(), reverse=True) if found[3].startswith(name))
        return (int(found[1] or 0) + half) * unit
    feet = _FEET.match(words)
    if feet is not None and words:
        return int(feet[1] or 0) * 0.3048 + int(feet[2] or 0) * 0.0254
    raise Refused(f"“{text.strip()}” is no distance; please say “2 rackets”, “1½ strides”, “1.37 m” or “4 ft 6 in”.")


def end_named(point: Point) -> End:
    """Return the end that ``point`` is at, the near one for a place on the net's line."""
    return end_of(point) or "near"
