"""The academy's brand that stands beside a drill file, or in a folder above it: ``brand.json`` and its logo."""

from __future__ import annotations

import json
import os
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Final
from xml.etree import ElementTree as ET

from pydantic import ValidationError

from designer import bundle
from designer.drill.brand import Brand
from designer.storage.faults import faults, shown
from designer.storage.parsing import Unreadable, parse
from designer.storage.reading import file_bytes

FILE_NAME: Final = "brand.json"
_FOLDERS: Final = 3
"""How many folders are looked in: the drill's own, its handbook's and its academy's."""
_LARGEST: Final = 200_000
_LARGEST_LOGO: Final = 1_000_000
_FORBIDDEN: Final = frozenset({"script", "foreignObject", "image", "iframe", "use", "animate", "set", "style"})


def brand_beside(path: str | os.PathLike[str]) -> Brand | None:
    """Return the brand in the folder of the drill file at ``path`` or in one of the two above, None without one.

    For a drill in the samples no folder above the samples is looked in. Raises ``Unreadable`` with a sentence.
    """
    file = _file_beside(path)
    if file is None:
        return None
    raw = parse(file_bytes(file, _LARGEST), str(file))
    if not isinstance(raw, dict):
        raise Unreadable(f"{file}: holds {shown(raw)}; expected a brand, an object in braces.")
    try:
        return Brand.model_validate_json(json.dumps(raw))
    except ValidationError as error:
        raise Unreadable(f"{file}: {'; '.join(faults(raw, error))}.") from error


def logo_svg(path: str | os.PathLike[str]) -> str | None:
    """Return the SVG text of the logo that the brand beside the drill file at ``path`` names, None without one.

    A logo lies in the brand's own folder and draws by itself: nothing in it is fetched, run or expanded. Raises
    ``Unreadable`` with a sentence.
    """
    brand, file = brand_beside(path), _file_beside(path)
    if brand is None or file is None or not brand.logo:
        return None
    folder = Path(os.path.realpath(file.parent))
    try:
        logo = Path(os.path.realpath(folder / brand.logo))
    except ValueError:
        raise Unreadable(f"{file}: logo: {shown(brand.logo)}, expected the name of an SVG file beside it.") from None
    if not logo.is_relative_to(folder) or logo == folder:
        raise Unreadable(f"{file}: logo: {shown(brand.logo)}, expected the name of an SVG file in the same folder.")
    return _checked(file_bytes(logo, _LARGEST_LOGO), str(logo))


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
