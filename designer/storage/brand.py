"""The academy's brand that stands beside a drill file, or in a folder above it: ``brand.json`` and its logo."""

from __future__ import annotations

import json
import os
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Final
from xml.etree import ElementTree as ET

from pydantic import ValidationError

from designer import bundle
from designer.drill.brand import Brand
from designer.storage.faults import faults, shown
from designer.storage.parsing import Unreadable, parse
from designer.storage.reading import file_bytes
from designer.storage.typeface import checked_typeface

FILE_NAME: Final = "brand.json"
_FOLDERS: Final = 3
"""How many folders are looked in: the drill's own, its handbook's and its academy's."""
_LARGEST: Final = 200_000
_LARGEST_LOGO: Final = 1_000_000
_FORBIDDEN: Final = frozenset({"script", "foreignObject", "image", "iframe", "use", "animate", "set", "style"})


@dataclass(frozen=True, slots=True)
class Branded:
    """A brand with what its file names.

    ``logo`` is the text of an SVG picture or the bytes of a PNG, ``typeface`` the bytes of a regular TrueType face and, where
    there is one, of a bold one.
    """

    brand: Brand | None = None
    logo: str | bytes | None = None
    typeface: tuple[bytes, bytes | None] | None = None
    faults: tuple[str, ...] = ()
    """What is wrong with logo or typeface, a sentence each: name, colours and licence stand without them."""


def branded(path: str | os.PathLike[str], named: str = "") -> Branded:
    """Return the brand for the drill or handbook at ``path`` with its logo and typeface, all None without one.

    ``named`` is a brand file in the folder of ``path`` or below; without it the nearest ``brand.json`` counts. Raises
    ``Unreadable`` with a sentence where the brand itself cannot be read; a logo or typeface that cannot is left out.
    """
    file = inside(Path(path), named, "brand", "a brand file") if named else _file_beside(path)
    if file is None:
        return Branded()
    brand = _brand(file)
    logo, face, faults = None, None, []
    try:
        logo = _logo(file, brand)
    except Unreadable as reason:
        faults.append(f"{reason} The logo is left out.")
    try:
        face = typeface(file, brand)
    except Unreadable as reason:
        faults.append(f"{reason} The typeface is left out.")
    return Branded(brand, logo, face, tuple(faults))


def brand_files(path: str | os.PathLike[str], named: str = "") -> tuple[Path, ...]:
    """Return the brand file for the drill or handbook at ``path`` and the files that it names, as far as they can be read."""
    try:
        file = inside(Path(path), named, "brand", "a brand file") if named else _file_beside(path)
        brand = None if file is None else _brand(file)
    except Unreadable:
        return ()
    if file is None or brand is None:
        return ()
    return (file, *(file.parent / name for name in (brand.logo, brand.typeface, brand.typeface_bold) if name))


def brand_beside(path: str | os.PathLike[str]) -> Brand | None:
    """Return the brand in the folder of the drill file at ``path`` or in one of the two above, None without one.

    For a drill in the samples no folder above the samples is looked in. Raises ``Unreadable`` with a sentence.
    """
    file = _file_beside(path)
    return None if file is None else _brand(file)


def _brand(file: Path) -> Brand:
    raw = parse(file_bytes(file, _LARGEST, "a brand file"), str(file), "a brand file")
    if not isinstance(raw, dict):
        raise Unreadable(f"{file}: holds {shown(raw)}; expected a brand, an object in braces.")
    try:
        return Brand.model_validate_json(json.dumps(raw))
    except ValidationError as error:
        raise Unreadable(f"{file}: {'; '.join(faults(raw, error))}.") from error


def logo_beside(path: str | os.PathLike[str]) -> str | bytes | None:
    """Return the logo that the brand beside the drill file at ``path`` names, None without one.

    It is the text of an SVG picture or the bytes of a PNG. A logo lies in the brand's own folder and draws by itself:
    nothing in it is fetched, run or expanded. Raises ``Unreadable`` with a sentence.
    """
    file = _file_beside(path)
    return None if file is None else _logo(file, _brand(file))


def _logo(file: Path, brand: Brand) -> str | bytes | None:
    if not brand.logo:
        return None
    logo = inside(file, brand.logo, "logo", "an SVG or PNG file")
    data = file_bytes(logo, _LARGEST_LOGO, "an SVG or PNG file")
    return _checked_png(data, str(logo)) if data.startswith(PNG) else _checked(data, str(logo))


def typeface(file: Path, brand: Brand) -> tuple[bytes, bytes | None] | None:
    """Return the TrueType files that the brand in ``file`` names, None without one. Raises ``Unreadable``."""
    if not brand.typeface:
        return None
    regular = checked_typeface(inside(file, brand.typeface, "typeface", "a TrueType file"))
    bold = brand.typeface_bold
    return regular, checked_typeface(inside(file, bold, "typeface_bold", "a TrueType file")) if bold else None


def inside(file: Path, named: str, field: str, kind: str) -> Path:
    """Return the file ``named`` in the folder of ``file`` or below; raise ``Unreadable`` where it leads out of it."""
    folder = Path(os.path.realpath(file.parent))
    try:
        found = Path(os.path.realpath(folder / named))
    except ValueError:
        raise Unreadable(f"{file}: {field}: {shown(named)}, expected the name of {kind} beside it.") from None
    if not found.is_relative_to(folder) or found == folder:
        raise Unreadable(f"{file}: {field}: {shown(named)}, expected the name of {kind} in the same folder.")
    return found


PNG: Final = b"\x89PNG\r\n\x1a\n"
_MOST_PIXELS: Final = 4_000_000


def _checked_png(data: bytes, name: str) -> bytes:
    """Return a PNG whose header says that it unpacks to no more than it should; raise ``Unreadable`` for any other."""
    # ISO/IEC 15948: the first chunk is IHDR, its length 13, then width and height in four bytes each.
    if len(data) < 33 or data[12:16] != b"IHDR":
        raise Unreadable(f"{name}: is a damaged PNG; expected a picture.")
    width, height = (int.from_bytes(data[start : start + 4], "big") for start in (16, 20))
    if not width or not height or width * height > _MOST_PIXELS:
        raise Unreadable(f"{name}: is {width} by {height} pixels; expected a picture of at most 4 million.")
    return data


def _file_beside(path: str | os.PathLike[str]) -> Path | None:
    for folder in _folders(Path(os.path.realpath(path)).parent):
        if (folder / FILE_NAME).is_file():
            return folder / FILE_NAME
    return None


def _folders(folder: Path) -> Iterator[Path]:
    try:
        samples: Path | None = Path(os.path.realpath(bundle.sample()))
    except bundle.MissingFile:
        samples = None
    for above in (folder, *folder.parents)[:_FOLDERS]:
        yield above
        if above == samples:
            return


def _checked(data: bytes, name: str) -> str:
    """Return the text of an SVG picture that needs nothing but itself; raise ``Unreadable`` for any other."""
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise Unreadable(f"{name}: is not UTF-8; expected an SVG picture.") from error
    if re.search(r"<!(DOCTYPE|ENTITY)|<\?xml-stylesheet", text, re.IGNORECASE):
        raise Unreadable(f"{name}: has a document type or a style sheet; expected an SVG picture without one.")
    try:
        root = ET.fromstring(text)  # noqa: S314 -- no document type, so no entity that could grow
    except (ET.ParseError, ValueError, RecursionError) as error:
        raise Unreadable(f"{name}: is damaged; expected an SVG picture.") from error
    if _local(root.tag) != "svg":
        raise Unreadable(f"{name}: is not a picture; expected an SVG picture.")
    for element in root.iter():
        if _local(element.tag) in _FORBIDDEN:
            raise Unreadable(f"{name}: has a <{_local(element.tag)}>; expected a picture of shapes and paths only.")
        for key, value in element.attrib.items():
            if _local(key).startswith("on") or _points_outside(_local(key), value):
                raise Unreadable(f"{name}: {_local(key)}: {shown(value)}, expected nothing from outside the picture.")
    return text


def _local(name: object) -> str:
    return str(name).rpartition("}")[2]


def _points_outside(key: str, value: str) -> bool:
    if key in ("href", "src", "base"):
        return not value.strip().startswith("#")
    return bool(re.search(r"url\(\s*['\"]?(?!\s*#)", value, re.IGNORECASE)) or "@import" in value.lower()
