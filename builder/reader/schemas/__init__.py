"""One JSON Schema (2020-12) for each kind of file.

In: nothing, or the shop's own names. Out: schemas as plain dicts, for editors, for the site, and
for the reader, which builds its messages from their titles and examples.
"""

from builder.reader.schemas.schema_list import FILE_KINDS, named_schema, schema

__all__ = ["FILE_KINDS", "named_schema", "schema"]
