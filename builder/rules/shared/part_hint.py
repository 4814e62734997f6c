"""What a part that doesn't exist may have meant, and which parts there are.

In: a name and the library. Out: the hint of a finding.
"""

from collections.abc import Mapping

from builder.model.library import Library
from builder.model.module_record import Module, SafetySystem
from builder.model.text import Text
from builder.rules.shared.close_names import closest_names

CRITICAL = {SafetySystem.RESTRAINTS, SafetySystem.HIGH_VOLTAGE}


def is_part(name: str, library: Library) -> bool:
    """Whether a part has this name; a module's ID is one too."""
    return name in library.parts or name in library.modules


def part_hint(name: str, library: Library) -> str:
    """Offer the part that is meant: by what it is also called, else by its spelling.

    By spelling no module of airbags or high voltage is offered for another one, nor the reverse.
    """
    otherwise = "add it to kb/parts.yml, or use a name from there or from kb/modules/"
    if called := _called(name, library):
        return f"did you mean `{called}`?"
    known = {id_: library.modules.get(id_) for id_ in (*library.parts, *library.modules)}
    close = [one for one in closest_names(name, known) if _may_be_offered(name, known[one])]
    return f"did you mean {' or '.join(f'`{one}`' for one in close)}?" if close else otherwise


def _called(name: str, library: Library) -> str | None:
    words = name.replace("-", " ").casefold()
    records: Mapping[str, tuple[Text, ...]] = {
        **{id_: (part.name, *part.also_called) for id_, part in library.parts.items()},
        **{id_: (module.name, *module.also_called) for id_, module in library.modules.items()},
    }
    for id_, names in records.items():
        if words in {one.replace("-", " ").casefold() for one in names}:
            return id_
    return None


def _may_be_offered(name: str, module: Module | None) -> bool:
    """Whether a slip of the keyboard is likely: never between classes of safety."""
    looks_critical = any(word in name.casefold() for word in ("airbag", "srs", "restraint"))
    is_critical = module is not None and module.safety in CRITICAL
    return looks_critical == is_critical
