"""The options of a fix: their prices, and which are not offered and why."""

from dataclasses import replace
from decimal import Decimal

import pytest

from builder.model.knowledge import DriveBefore, Module, SafetySystem, UsedPart
from builder.model.library import Library
from builder.model.shop import Shop
from builder.model.text import NOWHERE, Number, Text
from builder.model.tree import Fix, Money, Tree
from builder.plan.options import Option, options

SHOP = Shop(Text("A shop"), Text("https://charts.example/"), Decimal(140), Text("USD"), Decimal(8),
            "parts", Money(Decimal(115), Decimal(115)))  # fmt: skip
MODULE = Module(
    "lift-unit", "kb/modules/lift-unit.yml", NOWHERE, Text("Liftgate unit"), UsedPart.YES,
    DriveBefore.YES, SafetySystem.NONE, (), price=Money(Decimal(310), Decimal(310)),
    hours={"fit": Number("1.2"), "set_up": Number("0.8"), "verify": Number("0.5")},
)  # fmt: skip
FIX = """
mend:
  fix: Fit a new unit and set it up
  cause: It is faulty
  replaces: {module: lift-unit, part: new}
"""
REPAIR = """
mend:
  fix: Repair the wire
  cause: It is broken
  hours: 1.5
  parts:
    - {part: wire, price: 4.20}
    - {part: plug, price: 12 to 18}
"""


def library(**changes: object) -> Library:
    """Return a library with one module, changed as asked."""
    return Library(SHOP, modules={"lift-unit": replace(MODULE, **changes)})


def by_id(tree: Tree, known: Library) -> dict[str, Option]:
    """Return the options of the fix by their id."""
    return {option.id: option for option in options(tree, "mend", known)}


def amount(option: Option) -> str:
    """Write a total as one amount, or as two."""
    assert option.total
    low, high = str(option.total.low), str(option.total.high)
    return low if low == high else f"{low} to {high}"


def test_the_worked_example(tree) -> None:
    """Worked example, own arithmetic.

    Rate 140, part 310, tax 8 % on parts, tow 115; fit 1.2 h, set-up 0.8 h, verification 0.5 h:
    2.5 x 140 + 310 x 1.08 = 684.80; 1.3 x 140 = 182.00; 182 + 115 = 297.00; nothing.
    """
    found = options(tree(FIX), "mend", library())
    assert [(option.id, amount(option)) for option in found] == [
        ("fit-here", "684.80"),
        ("drive-in", "182.00"),
        ("towed-in", "297.00"),
        ("leave", "0.00"),
    ]


def test_every_line_of_a_sum_is_shown(tree) -> None:
    """Whoever pays can add it up."""
    lines = by_id(tree(FIX), library())["fit-here"].lines
    assert [(line.item, str(line.amount.low), line.hours) for line in lines if line.amount] == [
        ("Fitting", "168.00", Decimal("1.2")),
        ("Set-up", "112.00", Decimal("0.8")),
        ("Verification", "70.00", Decimal("0.5")),
        ("Liftgate unit, new", "310.00", None),
        ("Tax on parts, 8 %", "24.80", None),
    ]


def test_a_range_of_tow_prices_stays_a_range(tree) -> None:
    """182 and 115 to 150."""
    known = library()
    far = replace(SHOP, tow=Money(Decimal(115), Decimal(150)))
    assert amount(by_id(tree(FIX), replace(known, shop=far))["towed-in"]) == "297.00 to 332.00"
    nobody = by_id(tree(FIX), replace(known, shop=replace(SHOP, tow=None)))["towed-in"]
    assert nobody.total is None
    assert not nobody.not_offered


@pytest.mark.parametrize("safety", ["steering", "brakes", "restraints", "high-voltage"])
def test_what_is_not_safe_is_not_offered_and_says_why(tree, safety: str) -> None:
    """Not driven in and not left as it is, whatever the record says about driving."""
    found = by_id(tree(FIX), library(safety=SafetySystem(safety)))
    for name in ("drive-in", "leave"):
        assert found[name].not_offered
        assert found[name].total is None
        assert found[name].lines == ()
    assert amount(found["fit-here"]) == "684.80"
    at_home = safety in ("steering", "brakes")
    assert bool(found["towed-in"].total) is at_home
    assert bool(found["towed-in"].not_offered) is not at_home


def test_a_vehicle_is_driven_in_only_where_the_record_says_that_it_may_be(tree) -> None:
    """`no` gives the record's reason; `not known` is no permission."""
    why = "The engine does not start before pairing"
    refused = library(drive_before_set_up=DriveBefore.NO, drive_why=Text(why))
    assert by_id(tree(FIX), refused)["drive-in"].not_offered == why
    unknown = by_id(tree(FIX), library(drive_before_set_up=DriveBefore.UNKNOWN))
    assert "not known" in unknown["drive-in"].not_offered
    assert amount(unknown["towed-in"]) == "297.00"


@pytest.mark.parametrize(
    ("used_part", "offered"),
    [("yes", True), ("if released", True), ("no", False), ("not known", False)],
)
def test_a_used_part_is_fitted_only_where_it_can_be_set_up(tree, used_part, offered) -> None:
    """A used part without a price leaves the sum open; one that cannot be set up is refused."""
    drawn = tree(FIX.replace("part: new", "part: used"))
    found = by_id(drawn, library(used_part=UsedPart(used_part)))["fit-here"]
    assert bool(found.not_offered) is not offered
    assert found.total is None


def test_a_used_part_takes_its_price_from_the_fix(tree) -> None:
    """The record knows the price of a new one alone."""
    text = (
        FIX.replace("part: new", "part: used")
        + """\
  parts:
    - {part: lift-unit, price: 90 to 140}
"""
    )
    assert amount(by_id(tree(text), library())["fit-here"]) == "447.20 to 501.20"


def test_whoever_brings_a_part_is_told_which_will_do(tree) -> None:
    """A used part that cannot be set up is money lost; it is said before it is bought."""
    note = by_id(tree(FIX), library(used_part=UsedPart.NO))["drive-in"].note
    assert "a used one cannot be set up" in note
    assert "guarantee" in note


def test_any_other_fix_is_repaired_here_or_left(tree) -> None:
    """1.5 x 140 + (4.20 + 12 to 18) x 1.08: two parts, one tax line."""
    found = options(tree(REPAIR), "mend", library())
    assert [(option.id, amount(option)) for option in found] == [
        ("fit-here", "227.50 to 233.98"),
        ("leave", "0.00"),
    ]


def test_hours_that_nobody_wrote_leave_the_sum_open(tree) -> None:
    """No hours is not no work."""
    found = options(tree("mend:\n  fix: Mend it\n  cause: It was so\n"), "mend", library())
    assert found[0].total is None


def test_a_fix_may_write_its_own_options(tree) -> None:
    """One takes the place of the standard one, one is added, one is refused with its reason."""
    found = options(
        tree(
            FIX
            + """\
  options:
    drive-in:
      option: Come by on Thursday
      note: Ten minutes are enough.
    leave:
      option: Left as it is
      not_offered: It opens by itself on the road
    used-unit:
      option: A used unit
      hours: 1.4
      parts:
        - {part: used unit, price: 90 to 140}
    by-post:
      option: Send the unit to a specialist
      price: 180
      tow: yes
    ask:
      option: Ask the maker
"""
        ),
        "mend",
        library(),
    )
    assert [option.id for option in found] == [
        "fit-here", "drive-in", "towed-in", "leave", "used-unit", "by-post", "ask",
    ]  # fmt: skip
    own = {option.id: option for option in found}
    assert (own["drive-in"].option, amount(own["drive-in"])) == ("Come by on Thursday", "182.00")
    assert own["drive-in"].note == "Ten minutes are enough."
    assert own["leave"].not_offered == "It opens by itself on the road"
    assert amount(own["used-unit"]) == "293.20 to 347.20"
    assert amount(own["by-post"]) == "295.00"
    assert own["ask"].total is None


def test_no_words_of_a_fix_make_an_unsafe_option_safe(tree) -> None:
    """A price for driving in does not put brakes on the vehicle."""
    text = (
        FIX
        + """\
  options:
    drive-in:
      option: Drive in slowly
      price: 99
"""
    )
    found = by_id(tree(text), library(safety=SafetySystem.BRAKES))["drive-in"]
    assert found.not_offered
    assert found.total is None


def test_the_cost_of_coming_back_stands_beside_the_total(tree) -> None:
    """Worked example, own arithmetic: one part in seven or so is bad, 182 + 0.15 x 182 = 209.30."""
    drawn = tree(FIX + "  options:\n    drive-in:\n      note: Your own part.\n")
    body = drawn.steps["mend"].body
    assert isinstance(body, Fix)
    risky = replace(body, options=(replace(body.options[0], chance=Number("0.15")),))
    steps = {"mend": replace(drawn.steps["mend"], body=risky)}
    found = by_id(replace(drawn, steps=steps), library())["drive-in"]
    assert amount(found) == "182.00"
    assert found.coming_back == Money(Decimal("209.30"), Decimal("209.30"))


def test_a_module_without_a_record_is_priced_as_a_repair(tree) -> None:
    """The check reports the missing record; what is not known stays open."""
    found = options(tree(FIX), "mend", Library(SHOP))
    assert [option.id for option in found] == ["fit-here", "leave"]
    assert found[0].total is None


def test_a_repair_of_the_brakes_is_not_left_as_it_is_unless_the_fix_says_so(tree) -> None:
    """Silence is no permission; whoever wrote the tree may give it."""
    drawn = replace(tree(REPAIR), system=Text("brakes"))
    refused = by_id(drawn, library())["leave"]
    assert refused.not_offered == "Not safe to drive: the brakes depend on it"
    assert refused.total is None
    allowed = tree(REPAIR + "  options:\n    leave:\n      note: A squeal harms nobody.\n")
    left = by_id(replace(allowed, system=Text("brakes")), library())["leave"]
    assert (left.option, left.note, amount(left)) == (
        "Left as it is", "A squeal harms nobody.", "0.00",
    )  # fmt: skip


def test_only_a_fix_has_options(tree) -> None:
    """A stop mends nothing that could be priced."""
    drawn = tree("mend:\n  stop: Not here today\n  kind: not-found\n")
    assert options(drawn, "mend", library()) == ()
