"""Plain JSON data as a drill: every record as it must be or, from a newer format, as much of it as is understood."""

from __future__ import annotations

import copy
import json
from typing import Final

from pydantic import ValidationError

from designer.drill.drill import FORMAT, Drill
from designer.storage.faults import fault_locations, faults
from designer.storage.location import MISSING, Location, found, location_words
from designer.storage.migrations import Raw
from designer.storage.parsing import Unreadable

_ROUNDS: Final = 30


def validated(raw: Raw, name: str) -> Drill:
    """Return ``raw`` as a drill; ``name`` is what sentences call the file. Raises ``Unreadable``."""
    try:
        return _drill(raw)
    except ValidationError as error:
        raise Unreadable(f"{name}: {'; '.join(faults(raw, error))}.") from error


def as_far_as_known(raw: Raw, name: str) -> tuple[Drill, tuple[str, ...]]:
    """Return the drill in ``raw``, written in a newer format, without what does not fit, and what there is to say.

    Raises ``Unreadable`` where too little is left for a drill.
    """
    newer = f"is in format {raw['format']}, written by a newer program; expected at most format {FORMAT}"
    left_out: list[str] = []
    rest = copy.deepcopy(raw)
    for _ in range(_ROUNDS):
        try:
            drill = _drill(rest)
        except ValidationError as error:
            places = {_record(rest, location) for location in fault_locations(rest, error)}
            if () in places:
                raise Unreadable(f"{name}: {newer}.") from error
            # From the last to the first, or the numbers of the entries behind one would change.
            for place in sorted(places, key=lambda place: tuple(map(_sortable, place)), reverse=True):
                left_out.append(f"{location_words(rest, place)}: left out, it belongs to a newer format.")
                _remove(rest, place)
        else:
            return drill, (f"{newer}.", *reversed(left_out))
    raise Unreadable(f"{name}: {newer}.")


def _drill(raw: Raw) -> Drill:
    # As text, for in a strict record only JSON's lists may become tuples and only JSON's texts dates.
    return Drill.model_validate_json(json.dumps(raw))


def _sortable(step: str | int) -> tuple[int, str]:
    return (step, "") if isinstance(step, int) else (-1, step)


def _record(raw: Raw, location: Location) -> Location:
    """Return the place of the whole record that ``location`` lies in, else of the field; () where the drill itself fails."""
    for depth in range(len(location), 1, -1):
        if isinstance(location[depth - 1], int) and location[depth - 3 : depth - 2] == ("changes",):
            return location[:depth]
    return location[:-1] if found(raw, location) is MISSING else location


def _remove(raw: Raw, location: Location) -> None:
    parent = found(raw, location[:-1])
    if found(parent, location[-1:]) is not MISSING:  # it may have gone with a record round it
        del parent[location[-1]]
