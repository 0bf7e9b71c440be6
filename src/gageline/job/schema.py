"""The published JSON Schema of the job document."""

from __future__ import annotations

import json

from gageline.job.document import JobDocument

__all__ = ["schema_text"]


def schema_text() -> str:
    """The JSON Schema of the job document, as the text of `docs/job.schema.json`."""
    schema = JobDocument.model_json_schema(by_alias=True)
    schema["$schema"] = "https://json-schema.org/draft/2020-12/schema"
    schema["title"] = "Gageline job document"
    return json.dumps(schema, indent=1, ensure_ascii=False, sort_keys=True) + "\n"
