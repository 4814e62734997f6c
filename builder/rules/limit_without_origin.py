"""A limit that doesn't say where it comes from.

Why: A tech who doubts the limit can't tell whether it is the vehicle maker's, the trade's or a
guess.

Wrong:

    battery:
      check: Measure battery voltage
      when: [key-off, loads off for 5 min]
      reading: {unit: V, from: 0, to: 16, resolution: 0.01}
      results:
        - {result: below 12.4, branch: repair}
        - {result: at least 12.4, branch: all-good}

Right:

    battery:
      check: Measure battery voltage
      when: [key-off, loads off for 5 min]
      reading: {unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}
      results:
        - {result: below 12.4, branch: repair}
        - {result: at least 12.4, branch: all-good}

Fix: Add `origin:` to the reading: the vehicle maker's service information, a standard, common
practice; or ask for the maker's spec with `figure`.
"""

from collections.abc import Iterator

from builder.model.checks import Check, Reading
from builder.model.finding import Finding, Severity
from builder.model.ranges import EVERYTHING
from builder.rules.shared.limits import measuring_checks
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="limit-without-origin",
    family=Family.READINGS,
    severity=Severity.WARNING,
    summary="A limit that doesn't say where it comes from.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every reading with a limit of unknown origin."""
    for _, body in measuring_checks(facts):
        for reading in body.readings:
            if not reading.one_of and not reading.origin and _is_limited(body, reading):
                name = f"reading `{reading.name}`" if reading.name else "the reading"
                name = f"spec `{reading.spec}`" if reading.spec else name
                where = f" to `{reading.spec}` in kb/specs.yml" if reading.spec else ""
                yield RULE.finding(
                    reading.at,
                    f"{name} has limits but no origin",
                    "a tech who doubts a limit can't look it up",
                    f"add `origin:`{where}, such as `common practice` or the service information",
                )


def _is_limited(check_: Check, reading: Reading) -> bool:
    ranges = (result.ranges.get(reading.name, EVERYTHING) for result in check_.results)
    return any(side != EVERYTHING for side in ranges)
