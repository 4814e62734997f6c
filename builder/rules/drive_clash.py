"""Drive advice that contradicts what the shop knows of the danger: a tree that lets drive, though
ends of kind `unsafe` rest on its advice, or a module of a safety system with
`drive_before_set_up: yes`.

Why: The sheet tells the customer to drive a vehicle that the tech has called unsafe.

Wrong:

    # kb/modules/steering-unit.yml
    module: Steering-assist unit
    used_part: no
    drive_before_set_up: yes
    safety: steering
    set_up:
      program: not needed
      configure: {minutes: 15, needs: [battery-support], hazards: [supply-while-programming]}
      pair: not needed
      initialize: not needed
    price: 640
    hours: {fit: 1.2, set_up: 0.8, verify: 0.5}
    source: {by: R. Osei, from: case 12, date: 2026-03-02}

Right:

    # kb/modules/steering-unit.yml
    module: Steering-assist unit
    used_part: no
    drive_before_set_up: no
    safety: steering
    set_up:
      program: not needed
      configure: {minutes: 15, needs: [battery-support], hazards: [supply-while-programming]}
      pair: not needed
      initialize: not needed
    price: 640
    hours: {fit: 1.2, set_up: 0.8, verify: 0.5}
    source: {by: R. Osei, from: case 12, date: 2026-03-02}

Fix: Write `drive: no`, or an advice of its own with its `why` at each of these ends; of a module
`drive_before_set_up: no`, or `safety: none`.
"""

import re
from collections.abc import Iterator
from datetime import date

from builder.model.ends import Drive, Fix, Stop, StopKind
from builder.model.finding import Finding, Related, Severity
from builder.model.library import Library
from builder.model.module_record import DriveBefore, Module, SafetySystem
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="drive-clash",
    family=Family.DRIVE,
    severity=Severity.ERROR,
    summary="Drive advice that contradicts what the shop knows of the danger.",
)
SYSTEMS = {"steering": "steering", "brak": "brakes", "airbag": "restraints",
           "pretensioner": "restraints", "high voltage": "high-voltage"}  # fmt: skip
UNSAFE = re.compile(
    r"\b(?:is|are) (?:loose|worn out|cracked|leaking)\b|\bmay (?:not hold|fail|come off)\b"
    r"|\bcatch fire\b|\bcan't stop\b|\btakes? the brakes away\b", re.IGNORECASE)  # fmt: skip
WHY = "a customer drives off in what the shop itself calls unsafe"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for a tree that lets drive, with unsafe ends that say nothing else."""
    tree = facts.tree
    yield from _yes_with_a_danger(facts)
    if tree.drive in (None, Drive.NO) or tree.why is None:
        return
    unsafe = [
        step.id
        for step in facts.steps
        if isinstance(step.body, Stop)
        and step.body.kind is StopKind.UNSAFE
        and step.body.drive is None
    ]
    if unsafe:
        many = "an end" if len(unsafe) == 1 else f"{len(unsafe)} ends"
        yield RULE.finding(
            tree.why.at,
            f"the tree says `drive: {tree.drive}`, and {many} of kind `unsafe` go by it",
            WHY,
            "write `drive: no` and why; or `drive` and `why` at these ends",
            *(Related(name.at, "an unsafe end") for name in unsafe[:2]),
        )


def _unnamed_danger(module: Module) -> str | None:
    """Return the safety system that a module's own words name, where its record names none."""
    if module.safety is not SafetySystem.NONE or module.drive_before_set_up is not DriveBefore.NO:
        return None
    words = str(module.drive_why or "").casefold()
    return next((name for word, name in SYSTEMS.items() if word in words), None)


def _yes_with_a_danger(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every end that may be driven, for a reason that says it isn't safe."""
    for step in facts.steps:
        body = step.body
        ends = isinstance(body, (Fix, Stop)) and body.drive is Drive.YES
        why = body.why if isinstance(body, (Fix, Stop)) and ends else None
        if why and UNSAFE.search(why):
            yield RULE.finding(
                why.at,
                f"`{step.id}` says `drive: yes`, and why: `{why}`",
                WHY,
                "write `drive: no`, or `with care`; or say why it's safe",
            )


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every module of a safety system that may be driven without its setup."""
    for module in library.modules.values():
        if danger := _unnamed_danger(module):
            yield RULE.finding(
                (module.drive_why or module.name).at,
                f"`safety: none`, and why it may not be driven: `{module.drive_why}`",
                "its fixes and tools are then taken for those of a harmless module",
                f"write `safety: {danger}`",
            )
        drivable = module.drive_before_set_up is DriveBefore.YES
        if drivable and module.safety is not SafetySystem.NONE:
            yield RULE.finding(
                (module.drive_why or module.name).at,
                f"`safety: {module.safety}` and `drive_before_set_up: yes` contradict each other",
                WHY,
                "write `drive_before_set_up: no` and why, or `not known`",
            )
