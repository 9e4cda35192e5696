"""Reading the files that a command names, and writing what it makes."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable
from pathlib import Path
from typing import Final

from designer.commands.saying import complain
from designer.commands.status import WrongUsage
from designer.drill.drill import Drill
from designer.drill.setting import At, find_setting, main_setting
from designer.storage.parsing import Unreadable
from designer.storage.reading import Opened, open_drill
from designer.storage.writing import write_file

STANDARD_OUTPUT: Final = "-"


def opened(name: str) -> Opened:
    """Return the drill in the file ``name``, telling what was mended in it.

    Raises ``Unreadable``, also for a newer format: what is left of one is for looking at, not for making cards.
    """
    found = open_drill(name)
    if found.read_only:
        raise Unreadable(f"{name}: {found.notices[0]}")
    for notice in found.notices:
        complain(f"{name}: {notice}")
    return found


def setting_named(drill: Drill, name: str | None, file: str) -> At:
    """Return the setting that ``--at`` names, the drill's main one where it is None; raise ``WrongUsage``."""
    if name is None:
        return main_setting(drill)
    try:
        return find_setting(drill, name)
    except KeyError as error:
        raise WrongUsage(f"{file}: {error.args[0]}.") from error


def write(output: str, data: bytes, *, force: bool, read: Iterable[str]) -> None:
    """Write ``data`` to the file ``output``, or to standard output for ``-``.

    Raises ``WrongUsage`` where the file is there and ``force`` is not given, or where it is one of the files ``read``;
    ``Unwritable`` where it cannot be written.
    """
    refuse_overwriting(output, force=force, read=read)
    if output == STANDARD_OUTPUT:
        sys.stdout.flush()
        sys.stdout.buffer.write(data)
        sys.stdout.buffer.flush()
    else:
        write_file(output, data)


def refuse_overwriting(output: str, *, force: bool, read: Iterable[str]) -> None:
    """Raise ``WrongUsage`` where writing ``output`` would take away what the user has not given away."""
    if output == STANDARD_OUTPUT or not os.path.lexists(output):
        return
    if any(_same_file(output, file) for file in read):
        raise WrongUsage(f"{output}: is the file that is read; name another one to write.")
    if Path(output).is_dir():
        raise WrongUsage(f"{output}: is a folder; expected the name of a file to write.")
    if not force:
        raise WrongUsage(f"{output}: is there already; --force overwrites it.")


def _same_file(one: str, other: str) -> bool:
    try:
        return Path(one).samefile(other)
    except (OSError, ValueError):
        return False
