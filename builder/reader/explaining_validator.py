"""The validator that explains every error, loaded only where something is wrong.

In: a schema. Out: its validator. To import it takes a tenth of what a command needs to start.
"""

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from jsonschema import Draft202012Validator


def explaining_validator(schema: dict[str, Any]) -> "Draft202012Validator":
    """Return the validator of a schema."""
    from jsonschema import Draft202012Validator

    return Draft202012Validator(schema)
