"""A caution about people with the signal word for property, or one that kills with a mild word.

By ANSI Z535.4 (from memory) NOTICE is for property alone, CAUTION for light injuries; what can kill
or maim is a WARNING or a DANGER.

Why: The walk has a DANGER and a WARNING acknowledged before the step. A NOTICE is one line among
others.

Wrong:

    # kb/hazards.yml
    high-voltage:
      signal: NOTICE
      hazard: Orange cables carry over 60 V DC
      harm: Shock kills, arc burns
      avoid: Trained techs only

Right:

    # kb/hazards.yml
    high-voltage:
      signal: DANGER
      hazard: Orange cables carry over 60 V DC
      harm: Shock kills, arc burns
      avoid: Trained techs only

Fix: Write `WARNING`, or `DANGER` where it will kill or maim; if only property is at risk, say so in
`harm`.
"""

import re
from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Severity
from builder.model.knowledge import Signal
from builder.model.library import Library
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="signal-word",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A caution whose signal word is milder than the harm it names.",
)
KILLS = re.compile(r"\b(?:kills?|death|deadly|fatal|crush(?:es)? (?:you|people)|lost? (?:eyes|hand)"
                   r"|costs a hand)\b", re.IGNORECASE)  # fmt: skip
HURTS = re.compile(r"\b(?:shock|blinds?|scalds?|lung|eyes?|fingers|hands|arms|bones|bleeding)\b",
                   re.IGNORECASE)  # fmt: skip


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every caution with too mild a word."""
    for one in library.hazards.values():
        kills = KILLS.search(one.harm)
        hurts = kills or HURTS.search(one.harm)
        is_mild = kills and one.signal in (Signal.CAUTION, Signal.NOTICE)
        if is_mild or (hurts and one.signal is Signal.NOTICE):
            right = "`WARNING` or `DANGER`" if kills else "`CAUTION` or `WARNING`"
            yield RULE.finding(
                one.harm.at,
                f"`{one.id}` is a {one.signal}, and its harm is `{one.harm}`",
                "a mild word is read past, and nobody has to acknowledge it",
                f"write {right} in `signal`; if only property is at risk, say so in `harm`",
            )
