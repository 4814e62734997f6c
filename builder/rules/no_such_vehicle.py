"""A vehicle that is not in the list of vehicles, or years in which it was not made; in a tree or in
a set-up record.

Why: Whoever looks for the vehicle would not find what is known about it.

Wrong:

    applies_to:
      - {make: Corvane, model: Turn, years: 2017-2022}
    steps:
      belt:
        check: Belt tight and dry
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    applies_to:
      - {make: Corvane, model: Tern, years: 2017-2022}
    steps:
      belt:
        check: Belt tight and dry
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Write make, model and years as `kb/vehicles.yml` has them, or add the vehicle there.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.tree import Scope
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.suggestions import suggestion

RULE = Rule(
    name="no-such-vehicle",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A vehicle that is not in the list of vehicles.",
)
WHY = "whoever looks for the vehicle would not find this"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every vehicle of a tree that is not known."""
    for scope in facts.tree.applies_to:
        yield from _scope(facts.library, scope)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every vehicle of a set-up record that is not known."""
    for module in library.modules.values():
        for scope in module.applies_to:
            yield from _scope(library, scope)


def _scope(library: Library, scope: Scope) -> Iterator[Finding]:
    known = [vehicle.scope for vehicle in library.vehicles.values()]
    same = [one for one in known if (one.make, one.model) == (scope.make, scope.model)]
    if not same:
        name = f"{scope.make} {scope.model}"
        names = [f"{one.make} {one.model}" for one in known]
        hint = suggestion(name, names, "add it to kb/vehicles.yml, or name one that is there")
        yield RULE.finding(scope.model.at, f"there is no vehicle `{name}`", WHY, hint)
    elif scope.years and not any(_made_in(one, scope.years) for one in same):
        wanted = f"{scope.years[0]}-{scope.years[1]}"
        years = ", ".join(f"{one.years[0]}-{one.years[1]}" for one in same if one.years)
        yield RULE.finding(
            scope.model.at,
            f"`{scope.make} {scope.model}` was not made in all of {wanted}",
            WHY,
            f"write years within {years}, or put kb/vehicles.yml right",
        )


def _made_in(vehicle: Scope, years: tuple[int, int]) -> bool:
    return vehicle.years is None or vehicle.years[0] <= years[0] <= years[1] <= vehicle.years[1]
