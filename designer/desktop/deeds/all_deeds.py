"""All that menus, keys and buttons of one window do. They are made when the window rests, or as soon as one is asked for."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from designer.desktop.deeds.card_deeds import CardDeeds
from designer.desktop.deeds.check_deeds import CheckDeeds
from designer.desktop.deeds.drill_deeds import DrillDeeds
from designer.desktop.deeds.edit_deeds import EditDeeds
from designer.desktop.deeds.file_deeds import FileDeeds
from designer.desktop.deeds.play_deeds import PlayDeeds
from designer.desktop.deeds.view_deeds import ViewDeeds

if TYPE_CHECKING:
    from designer.desktop.window import MainWindow


@dataclass(frozen=True, slots=True)
class AllDeeds:
    """One of each."""

    file: FileDeeds
    edit: EditDeeds
    view: ViewDeeds
    drill: DrillDeeds
    card: CardDeeds
    play: PlayDeeds
    check: CheckDeeds


def deeds_of(window: MainWindow) -> AllDeeds:
    """Return the deeds of ``window``, joined to its menus and parts."""
    return AllDeeds(
        file=FileDeeds(window),
        edit=EditDeeds(window),
        view=ViewDeeds(window),
        drill=DrillDeeds(window),
        card=CardDeeds(window),
        play=PlayDeeds(window),
        check=CheckDeeds(window),
    )
