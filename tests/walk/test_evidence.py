"""What papers may call evidence: seen, not told; found good, not what a procedure never reached."""

from dataclasses import replace

from builder.prints.customer import customer_sheet
from builder.walk.diagnosis import Diagnosis, diagnosis_of
from builder.walk.events import Done, Start
from builder.walk.job_state import JobState, is_repairing
from builder.walk.reduce import reduce_event
from builder.walk.ruled_out import ruled_out_lines
from builder.walk.steps_taken import steps_taken
from builder.walk.story import ALSO, VERIFIED, story_of
from tests.prints.printed_words import words
from tests.walk.drilled import drilled_shop
from tests.walk.told_stories import SAMPLES, drilled_state, told

SWAPPED = "steering/assist-lamp-after-module-swap"


def test_what_was_told_stands_apart_from_what_was_seen() -> None:
    """And what was seen before it is shown, as the told answer rests on it."""
    shop, state = drilled_shop(SAMPLES), drilled_state(SWAPPED, "locked")
    found = diagnosis_of(shop.tables, state, shop.library)
    assert isinstance(found, Diagnosis)
    sheet = words(customer_sheet(shop.trees[SWAPPED], "locked", shop.library, "", found))
    seen, _, looked_up = sheet.partition("What we were told or looked up, not measured here")
    assert "released on the donor car" in looked_up
    assert "VIN" in seen.partition("What we measured and saw")[2]
    assert told(state)["Cause"][1].endswith("(told or looked up)")


def test_a_procedure_that_found_one_thing_rules_out_no_other() -> None:
    """Bad power at a module ends its test before the ground is measured."""
    lines = told(drilled_state("network/module-silent", "power-fix"))
    assert any("bad power" in line for line in lines["Cause"])
    assert not any("bad power" in line for line in lines.get("Ruled out", ()))


def test_a_check_that_spoke_against_the_cause_proves_nothing() -> None:
    """`Socket and ground: good` rules nothing out where the ground was then found bad."""
    shop, state = drilled_shop(SAMPLES), drilled_state("charging/lamp-on", "alternator-fix")
    taken = steps_taken(shop.tables, state)
    pulley = "The alternator pulley slips? "
    before = ruled_out_lines(shop.tables, state, taken, shop.library)
    assert any(line.startswith(pulley) for line in before)
    assert state.end
    belt = replace(state, end=replace(state.end, step="belt-fix"))  # found by another check
    after = ruled_out_lines(shop.tables, belt, taken, shop.library)
    assert not any(line.startswith(pulley) for line in after)


def test_work_that_was_the_test_is_no_finding_of_before() -> None:
    """Both papers say that it is done; what was seen then isn't what the car came in with."""
    shop, state = drilled_shop(SAMPLES), drilled_state(SWAPPED, "setup-fix")
    story = told(state)
    assert not any("even and light off" in line for line in story["Cause"])
    assert any("even and light off" in line for line in story["Correction"])
    assert not any(line.startswith("No DTCs return") for line in story.get(ALSO, ()))
    found = diagnosis_of(shop.tables, state, shop.library)
    assert isinstance(found, Diagnosis)
    sheet = words(customer_sheet(shop.trees[SWAPPED], "setup-fix", shop.library, "", found))
    assert "This work is done: it was the test that found the cause." in sheet
    assert "even and light off" in sheet.partition("measured and saw with this work done")[2]
    assert "As it came in: don't drive it." in sheet
    assert "Now, with this work done: it passed its tests." in sheet
    assert "No repair now" not in sheet
    ahead = replace(found, verified=False)
    sheet = words(customer_sheet(shop.trees[SWAPPED], "setup-fix", shop.library, "", ahead))
    assert "not verified yet. Until it is, don't drive it." in sheet


def test_what_was_found_good_is_listed_with_its_readings() -> None:
    """A part is sold on what was proved good before it."""
    lines = told(drilled_state("network/module-silent", "power-fix")).get("Found good", ())
    assert any(line.startswith("By test: ") and ", limit " in line for line in lines)


def test_readings_after_the_repair_stand_beside_those_before() -> None:
    """A procedure that convicted and verifies is told with its readings both times."""
    lines = told(drilled_state("network/module-silent", "power-fix"))
    out, good = (
        [line for line in lines[name] if line.startswith("By test: ") and ", limit " in line]
        for name in ("Cause", VERIFIED)
    )
    assert any("OUT OF LIMITS" in line for line in out)
    assert good
    assert not any("OUT OF LIMITS" in line for line in good)


def test_a_proof_that_nobody_measured_is_named() -> None:
    """Where a walk began midway, and nobody said what was proved before."""
    shop = drilled_shop(SAMPLES)
    tree, fix = next(
        (tree, name)
        for tree, table in shop.tables.trees.items()
        for name, row in table["steps"].items()
        if row.get("proved_by")
    )
    state = reduce_event(shop.tables, JobState(), Start(tree=tree, enter=fix))
    assert isinstance(state, JobState)
    assert is_repairing(state)
    cause = told(state)["Cause"]
    assert cause[0].startswith("Likely, not all of it was checked: ")
    assert cause[-1].startswith("Not checked on this job: ")
    found = diagnosis_of(shop.tables, state, shop.library)
    assert isinstance(found, Diagnosis)
    sheet = words(customer_sheet(shop.trees[tree], fix, shop.library, "", found))
    assert "Likely cause, not all of it was checked on this job: " in sheet


def test_what_evidence_should_have_in_writing_is_a_blank() -> None:
    """The number that convicts a part: written down on the walk, or by hand on the paper."""
    lines = told(drilled_state(SWAPPED, "wrong-part"))["Cause"]
    assert any(line.startswith("Number on the label: ____") for line in lines)


def test_no_dtcs_are_told_with_their_time() -> None:
    """`no DTCs` after the repair is no contradiction of a current code before it."""
    shop, state = drilled_shop(SAMPLES), drilled_state("charging/lamp-on", "cable-fix")
    at = next(n for n, one in enumerate(state.done) if isinstance(one, Done))
    done = replace(state.done[at], wrote={"DTC status": "no DTCs"})
    changed = replace(state, done=(*state.done[:at], done, *state.done[at + 1 :]))
    story = story_of(shop.tables, changed, shop.library, (), {"codes": "P0562 current"})
    lines = dict(story.sections)["Trouble codes"]
    assert lines[0].startswith("P0562 (")
    assert lines[1].startswith("DTC status: no DTCs, ")
    assert lines[1].endswith(" the repair")
