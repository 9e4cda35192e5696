"""What stands under a form beside its fields: what the program works out from the record, and cannot be typed."""

from __future__ import annotations

from typing import Any

from PySide6.QtWidgets import QSizePolicy, QWidget

from designer.desktop.forms.context import Context


class Beside(QWidget):
    """A part of a form that only tells."""

    def __init__(self) -> None:
        super().__init__()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum)

    def show_record(self, record: Any, context: Context) -> None:
        """Tell of ``record`` as it is now."""
        raise NotImplementedError


def beside_of(record: Any) -> Beside | None:
    """Return what stands beside the fields of ``record``, None where nothing is worked out from it."""
    from designer.drill.items import Area, Line
    from designer.drill.rules import Swap

    if isinstance(record, Area | Line):
        from designer.desktop.forms.shares_beside import SharesBeside

        return SharesBeside()
    if isinstance(record, Swap):
        from designer.desktop.forms.rotation_beside import RotationBeside

        return RotationBeside()
    return None
