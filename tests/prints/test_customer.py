"""The customer's sheet: plain words, safety, options with their sums, a place to sign."""

from dataclasses import replace
from io import BytesIO

import pytest
from pypdf import PdfReader

from builder.model.ends import Drive, Fix
from builder.model.library import Library
from builder.model.tree import Tree
from builder.plan.drive_advice import DriveAdvice
from builder.plan.estimate_options import estimate_options
from builder.prints.customer import NO_PROMISE, customer_sheet
from builder.walk.diagnosis import diagnosis_alone
from builder.wording.value_text import money_text

from .printed_words import words


@pytest.fixture(scope="module")
def unit(trees: tuple[Tree, ...]) -> tuple[Tree, str]:
    """Return a fix that replaces a steering unit."""
    (tree,) = (tree for tree in trees if tree.id == "steering/heavy-after-swap")
    return tree, next(
        str(step.id)
        for step in tree.steps.values()
        if isinstance(step.body, Fix) and step.body.replaces
    )


def test_the_sums_are_those_of_the_options(unit: tuple[Tree, str], library: Library) -> None:
    """Every option that is offered stands there with its lines and its total."""
    tree, fix = unit
    text = words(customer_sheet(tree, fix, library))
    offered = estimate_options(tree, fix, library)
    assert any(option.total for option in offered)
    for option in offered:
        assert option.option in text
        if option.total:
            assert f"Total {money_text(option.total, library.shop)}" in text
        for line in option.lines:
            assert line.item in text


def test_what_is_not_offered_says_why(unit: tuple[Tree, str], library: Library) -> None:
    """A vehicle whose steering depends on the unit is not driven in, and the sheet says so."""
    tree, fix = unit
    text = words(customer_sheet(tree, fix, library))
    refused = [option for option in estimate_options(tree, fix, library) if option.not_offered]
    assert refused
    for option in refused:
        assert f"Not offered: {option.option} {option.not_offered}" in text
    assert f"What it means for driving Don't drive it. {tree.why}" in text


def test_no_promise_of_safety_is_made(small: Tree, library: Library) -> None:
    """Where no record says that driving is unsafe, the sheet says that this is no promise."""
    assert NO_PROMISE in words(customer_sheet(small, "wire", library))


def test_a_lamp_is_explained_with_its_code(small: Tree, library: Library) -> None:
    """A customer reads the codes that stand on the repair order, whatever the complaint."""
    codes = ("P0420 (Catalyst works poorly): confirmed",)
    lamp = replace(diagnosis_alone(small, "wire"), complaint="Engine light on", codes=codes)
    line = f"Trouble codes: {codes[0]}."
    assert line in words(customer_sheet(small, "wire", library, walked=lamp))
    noise = replace(lamp, complaint="It rattles")
    assert line in words(customer_sheet(small, "wire", library, walked=noise))


def test_a_repair_in_the_techs_words_is_done(small: Tree, library: Library) -> None:
    """What was typed after the work doesn't stand above the choice as if it were still to come.

    Nobody signs for it: while the choice isn't on record, the tree's own words propose the repair.
    """
    ahead = replace(diagnosis_alone(small, "wire"), proposed="Clean the wire", is_done=True)
    own = {"repair": "Soldered the left wire"}
    done = replace(ahead, repair=own["repair"], own_words=own)
    asked = words(customer_sheet(small, "wire", library, walked=done))
    assert "Repair: Clean the wire. Where: left." in asked
    assert "✓" not in asked
    chosen = replace(done, own_words={**own, "chosen": "fit-here"})
    told = words(customer_sheet(small, "wire", library, walked=chosen))
    assert "Repair done: soldered the left wire." in told
    assert "✓ Chosen: We repair it" in told
    assert told.count("✓") == 1


def test_advice_with_a_condition_is_ticked(small: Tree, library: Library) -> None:
    """The shop ticks one of the two, and until then the vehicle isn't driven."""
    advice = DriveAdvice(Drive.WITH_CARE, "If it grinds, don't drive it: the pads may be gone.")
    found = replace(diagnosis_alone(small, "wire"), advice=advice)
    asked = words(customer_sheet(small, "wire", library, walked=found))
    assert (
        "Until then, don't drive it. ☐ Don't drive it: it grinds: the pads may be gone. ☐ Drive"
        in asked
    )
    assert "Not repaired. It may get worse. Don't drive it if it grinds" in asked
    done = replace(found, is_done=True, own_words={"chosen": "fit-here"})
    told = words(customer_sheet(small, "wire", library, walked=done))
    assert "driving As it came in: don't drive it if it grinds: the pads may be gone." in told


def test_a_step_that_is_no_fix_has_no_sheet(small: Tree, library: Library) -> None:
    """Asked for a check, it says what the step is."""
    with pytest.raises(ValueError, match="step rest is a check, not a fix"):
        customer_sheet(small, "rest", library)


def test_every_tree_of_the_shop_has_a_sheet(trees: tuple[Tree, ...], library: Library) -> None:
    """The fix with the most to say of each tree is printed, on one page or two."""
    printed = 0
    for tree in trees:
        fixes = [step for step in tree.steps.values() if isinstance(step.body, Fix)]
        if fixes:
            longest = max(fixes, key=lambda step: len(str(step.body)))
            pdf = customer_sheet(tree, str(longest.id), library)
            assert len(PdfReader(BytesIO(pdf)).pages) <= 2
            printed += 1
    assert printed
