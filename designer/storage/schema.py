"""The JSON Schema of each kind of file, for whoever reads or writes one without this program."""

from __future__ import annotations

from typing import Any, Final

from pydantic import BaseModel
from pydantic.json_schema import GenerateJsonSchema

from designer.drill.brand import Brand
from designer.drill.drill import FORMAT, Drill
from designer.drill.handbook import Handbook
from designer.drill.today import Today

_RECORDS: Final[dict[str, tuple[type[BaseModel], str]]] = {
    "drill": (Drill, f"A tennis drill, format {FORMAT}"),
    "handbook": (Handbook, "A handbook of tennis drills, format 1"),
    "brand": (Brand, "The brand that frames an academy's cards and handbooks"),
    "today": (Today, "Who plays a tennis drill today, format 1"),
}
KINDS: Final = tuple(_RECORDS)
"""The kinds of file that have a schema, the drill first."""


def schema(kind: str = "drill") -> dict[str, Any]:
    """Return the JSON Schema (draft 2020-12) of a file of ``KINDS`` in the format that this program writes."""
    record, title = _RECORDS[kind]
    made = record.model_json_schema(by_alias=True, schema_generator=_Generator)
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": title,
        **{key: value for key, value in made.items() if key != "title"},
    }


class _Generator(GenerateJsonSchema):
    """Leaves out the titles that are only field names again, and lets no key stand that the program refuses."""

    def field_title_should_be_set(self, schema: Any) -> bool:  # noqa: ARG002
        return False

    def dict_schema(self, schema: Any) -> dict[str, Any]:
        made = super().dict_schema(schema)
        return made | {"additionalProperties": False} if "patternProperties" in made else made
