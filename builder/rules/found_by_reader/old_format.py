"""A file in format 1, the first version of the format, which isn't read any more.

Why: In format 1 `when` was only words. The walk couldn't tell what to switch on or off, or which
caution to show, and nobody could say whether the vehicle may be driven.

Wrong:

    # trees/charging/lamp-on.yml
    format: 1
    title: Charging light on
    status: ready
    symptom: {words: [battery light on]}
    written: {by: R. Osei, date: 2026-03-02}
    reviewed: {by: M. Lind, date: 2026-09-01}
    steps:
      charging:
        check: Measure charging voltage at the battery posts
        when: [engine running, loads on]
        hazards: [rotating-parts]
        could_not: all-good
        reading: {unit: V, from: 0, to: 20, resolution: 0.1, origin: common practice}
        results:
          - {result: below 13.2, branch: repair}
          - {result: at least 13.2, branch: all-good}

Right:

    # trees/charging/lamp-on.yml
    title: Charging light on
    status: ready
    symptom: {words: [battery light on]}
    drive: with care
    why: It runs on the battery alone and stalls when that is empty.
    written: {by: R. Osei, date: 2026-03-02}
    reviewed: {by: M. Lind, date: 2026-09-01}
    steps:
      charging:
        check: Measure charging voltage at the battery posts
        when: [engine-running, loads-on]
        cannot_test: all-good
        reading: {unit: V, from: 0, to: 20, resolution: 0.1, origin: common practice}
        results:
          - {result: below 13.2, branch: repair}
          - {result: at least 13.2, branch: all-good}

Fix: Delete the line `format: 1`, or write `format: 2`; then correct what the check finds. In `when`
and in `needs` write states of `kb/conditions.yml`. A caution of a state is in `hazards` there; a
step names only what it brings itself. The battery, the power supply, and driving aren't in `does`
any more: they are states. Say in `drive` and `why` whether the vehicle may be driven as it is. In
`verify` name a check and the result that passes, as `{running: 13.2 to 14.8}`. `could_not` is
`cannot_test`, `initialise` is `initialize`, `labour_rate` is `labor_rate`, and `colour` is `color`.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="old-format",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A file in format 1, which isn't read any more.",
)
