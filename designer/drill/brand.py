"""An academy's brand: what frames a card. It never touches the marks that carry meaning."""

from __future__ import annotations

from typing import Annotated

from pydantic import StringConstraints

from designer.drill.base import Record, Text

Colour = Annotated[str, StringConstraints(pattern=r"^#[0-9A-Fa-f]{6}$")]

Address = Annotated[str, StringConstraints(max_length=120, pattern=r"^[!-~]*$")]


class Brand(Record):
    """Name, footer and colours of an academy.

    ``logo`` is the name of an SVG or PNG file beside the brand file, ``typeface`` and ``typeface_bold`` of TrueType files.
    ``address`` is what the code on a card leads to where nobody gives another one: ASCII without spaces.
    """

    name: Text
    colour: Colour = "#17202A"
    second_colour: Colour | None = None
    logo: Text = ""
    typeface: Text = ""
    typeface_bold: Text = ""
    footer: Text = ""
    licence: Text = ""
    address: Address = ""
