"""The JSON Schema of a drill file, for whoever reads or writes one without this program."""

from __future__ import annotations

from typing import Any

from pydantic.json_schema import GenerateJsonSchema

from designer.drill.drill import FORMAT, Drill


def schema() -> dict[str, Any]:
    """Return the JSON Schema (draft 2020-12) of a drill file in the format that this program writes."""
    made = Drill.model_json_schema(by_alias=True, schema_generator=_Generator)
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": f"A tennis drill, format {FORMAT}",
        **{key: value for key, value in made.items() if key != "title"},
    }


class _Generator(GenerateJsonSchema):
    """Leaves out the titles that are only field names again."""

    def field_title_should_be_set(self, schema: Any) -> bool:  # noqa: ARG002
        return False
