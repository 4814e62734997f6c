"""A vehicle that isn't in the list of vehicles, or years in which it wasn't made: in a tree or a
module's record.

Why: A tech who looks up the vehicle won't find what the shop knows about it.

Wrong:

    applies_to:
      - {make: Corvane, model: Turn, years: 2017-2022}
    steps:
      belt:
        check: Is the belt tight and dry?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    applies_to:
      - {make: Corvane, model: Tern, years: 2017-2022}
    steps:
      belt:
        check: Is the belt tight and dry?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Write make, model and years as they are in the files of `kb/vehicles/`, or add a file for it.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.tree import Scope
from builder.rules.shared.close_names import suggestion
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="no-such-vehicle",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A vehicle that isn't in the list of vehicles.",
)
WHY = "a tech who looks up the vehicle won't find this"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every vehicle of a tree that doesn't exist."""
    for scope in facts.tree.applies_to:
        yield from _scope(facts.library, scope)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every vehicle of a module's record that doesn't exist."""
    for module in library.modules.values():
        for scope in module.applies_to:
            yield from _scope(library, scope)


def _scope(library: Library, scope: Scope) -> Iterator[Finding]:
    known = [vehicle.scope for vehicle in library.vehicles.values()]
    name = f"{scope.make} {scope.model}"
    same = [
        vehicle for vehicle in known if (vehicle.make, vehicle.model) == (scope.make, scope.model)
    ]
    if not same:
        names = [f"{vehicle.make} {vehicle.model}" for vehicle in known]
        hint = suggestion(name, names, "add a file for it to kb/vehicles/, or use one from there")
        yield RULE.finding(scope.model.at, f"vehicle `{name}` doesn't exist", WHY, hint)
    elif scope.years and not any(_made_in(vehicle, scope.years) for vehicle in same):
        years = ", ".join(_years(vehicle.years) for vehicle in same if vehicle.years)
        yield RULE.finding(
            scope.model.at,
            f"`{name}` wasn't made in all of {_years(scope.years)}",
            WHY,
            f"write years within {years}, or correct its file in kb/vehicles/",
        )


def _years(years: tuple[int, int]) -> str:
    return f"{years[0]}-{years[1]}"


def _made_in(vehicle: Scope, years: tuple[int, int]) -> bool:
    return vehicle.years is None or vehicle.years[0] <= years[0] <= years[1] <= vehicle.years[1]
