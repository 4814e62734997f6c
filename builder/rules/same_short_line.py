"""The `short` line of one hazard at another one, copied and left.

Why: After the first time a tech sees this line alone, and it warns of another danger.

Wrong:

    # kb/hazards.yml
    hot-exhaust:
      signal: WARNING
      hazard: The exhaust is hot
      harm: It burns skin
      avoid: Let it cool, wear gloves
      short: Hot parts
    cleaning-fluid:
      signal: CAUTION
      hazard: Cleaning fluid burns eyes
      harm: It injures eyes
      avoid: Wear goggles
      short: Hot parts

Right:

    # kb/hazards.yml
    hot-exhaust:
      signal: WARNING
      hazard: The exhaust is hot
      harm: It burns skin
      avoid: Let it cool, wear gloves
      short: Hot parts
    cleaning-fluid:
      signal: CAUTION
      hazard: Cleaning fluid burns eyes
      harm: It injures eyes
      avoid: Wear goggles
      short: Cleaning fluid burns eyes

Fix: Say the danger of this hazard in a few words.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Related, Severity
from builder.model.knowledge import Hazard
from builder.model.library import Library
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="same-short-line",
    family=Family.KNOWLEDGE,
    severity=Severity.WARNING,
    summary="Two hazards with the same short line.",
)
LONGEST = 34  # characters of a short line that fit


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every hazard with the short line of an earlier one."""
    first: dict[str, Hazard] = {}
    for hazard in library.hazards.values():
        other = first.setdefault(hazard.short.casefold(), hazard)
        if other is not hazard:
            yield _finding(hazard, other)


def _finding(hazard: Hazard, other: Hazard) -> Finding:
    fits = len(hazard.hazard) <= LONGEST
    own = f'`short: "{hazard.hazard}"`' if fits else "a `short:` for this danger"
    return RULE.finding(
        (hazard.one_line or hazard.id).at,
        f"`{hazard.short}` is the short line of `{other.id}` too",
        f"a tech who has read `{hazard.id}` once is then warned of another danger",
        f"write {own}",
        Related((other.one_line or other.id).at, "the first one"),
    )
