"""What led to a fix stands beside what convicts it; a setup that was done rules nothing out."""

from builder.prints.customer import customer_sheet
from builder.walk.diagnosis import Diagnosis, diagnosis_of
from builder.walk.measured_lines import OUT
from builder.walk.path_proofs import is_good_word
from builder.walk.steps_taken import steps_taken
from tests.prints.printed_words import words
from tests.walk.drilled import drilled_shop
from tests.walk.told_stories import SAMPLES, drilled_state, told


def test_the_bad_reading_that_led_to_a_fix_is_its_proof() -> None:
    """On the repair order and on the customer's sheet; it isn't told again beside the rest."""
    state, shop = drilled_state("charging/lamp-on", "cable-fix"), drilled_shop(SAMPLES)
    found = diagnosis_of(shop.tables, state, shop.library)
    assert isinstance(found, Diagnosis)
    assert [check.is_out for check in found.led] == [True]
    lines = told(state)
    assert f"[{OUT}]" in lines["Cause"][1]
    assert lines["Cause"][1] not in lines["Also checked, before the repair"]
    sheet = words(
        customer_sheet(shop.trees["charging/lamp-on"], "cable-fix", shop.library, "", found)
    )
    assert sheet.index("Charging voltage at the battery posts: ") < sheet.index("Voltage drop, ")


def test_what_the_repair_is_tested_by_was_seen_before_it() -> None:
    """The scan that misses one module is the plain proof; the same scan verifies the repair."""
    lines = told(drilled_state("network/module-silent", "power-fix"))
    assert lines["Cause"][1].startswith("Modules that don't respond: only ")


def test_readings_stand_beside_a_good_word_that_rules_out() -> None:
    """Battery good is a word; what was measured stands below it, once for all that it rules out."""
    state = drilled_state("charging/lamp-on", "cable-fix")
    tables, lines = drilled_shop(SAMPLES).tables, told(state)["Ruled out"]
    assert any(is_good_word(tables, one) for one in steps_taken(tables, state))
    assert lines[0].count("?") == 2  # pulley and bearing, by one look
    good = next(at for at, line in enumerate(lines) if line.endswith(" No. Battery: good"))
    assert lines[good + 1].startswith("By test: Battery open-circuit voltage at the posts: ")
