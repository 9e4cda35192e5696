"""The few words that stand on the diagram beside or in an area, a line or a hoop."""

from __future__ import annotations

from designer.drill.conditions import In
from designer.drill.items import Area
from designer.drill.rules import UseStroke
from designer.drill.setting import Setting
from designer.play.rally import area_roles, area_value
from designer.wording.sentence import one_line
from designer.wording.spoken import label


def words_for_label(setting: Setting, id: str) -> str:
    """Return the name that stands by an item, at most as the author wrote it; "" where it needs none.

    Without a name an area says what it is for: "feed area", "keep out", "target", or the stroke a rule asks for there.
    """
    item = setting.items.get(id)
    name = one_line(getattr(item, "name", ""))
    if name or not isinstance(item, Area):
        return name
    role = area_roles(setting).get(id, "rule")
    if role == "rule":
        return _stroke_asked(setting, id)
    return label({"feed": "feed area", "keep out": "keep out", "target": "target"}[role])


def value_for_label(setting: Setting, id: str) -> str:
    """Return what a ball there is paid as it stands in a target: "+2"; "" where that is not one amount."""
    value = area_value(setting, id)
    return "" if value is None else f"+{value}" if value >= 0 else f"−{-value}"


def _stroke_asked(setting: Setting, id: str) -> str:
    """Return the stroke that a rule asks for after a bounce in the area: "forehand", "volley"."""
    for rule in setting.rules.values():
        here = any(isinstance(place, In) and place.area == id and not place.outside for place in rule.when)
        if here and isinstance(rule.must, UseStroke):
            asked = rule.must.wing or " or ".join(rule.must.strokes[:1])
            return label(f"no {asked}" if rule.never and asked else asked)
    return ""
