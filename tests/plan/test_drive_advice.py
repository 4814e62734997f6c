"""Whether the vehicle may be driven as it is."""

from builder.model.ends import Drive
from builder.plan.drive_advice import DriveAdvice, drive_advice

TREE = """
drive: with care
why: It may stall.
steps:
  look:
    check: Is fuel dripping?
    results: {yes: park, no: hose, cannot tell: ask}
  park: {stop: Fuel is dripping, drive: no, why: It can burn.}
  hose: {fix: Replace the hose, cause: It is old, drive: yes}
  ask: {stop: Ask the foreman}
"""


def test_an_end_says_whether_to_drive_and_the_head_for_those_that_do_not(tree) -> None:
    """A fix or a stop has its own `drive` and `why`; what it leaves out is said at the head."""
    case = tree(TREE)
    assert drive_advice(case, "park") == DriveAdvice(Drive.NO, "It can burn.")
    assert drive_advice(case, "hose") == DriveAdvice(Drive.YES, "It may stall.")
    for step in ("ask", "look"):
        assert drive_advice(case, step) == DriveAdvice(Drive.WITH_CARE, "It may stall.")


def test_where_nobody_says_whether_to_drive_there_is_no_advice(tree) -> None:
    """It isn't known to be safe, and isn't called so."""
    silent = TREE.replace("drive: with care\nwhy: It may stall.\n", "")
    assert drive_advice(tree(silent), "ask") is None
