"""The published JSON Schema of the rack document."""

from __future__ import annotations

import json

from gageline.stock.document import RackDocument

__all__ = ["rack_schema_text"]


def rack_schema_text() -> str:
    """The JSON Schema of the rack document, as the text of `docs/rack.schema.json`."""
    schema = RackDocument.model_json_schema()
    schema["$schema"] = "https://json-schema.org/draft/2020-12/schema"
    schema["title"] = "Gageline rack document"
    return json.dumps(schema, indent=1, ensure_ascii=False, sort_keys=True) + "\n"
