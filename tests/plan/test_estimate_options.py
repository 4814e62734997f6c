"""The estimate options for a fix: their prices, and which are not offered and why."""

from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.ends import Drive, Fix, Money
from builder.model.library import Library
from builder.model.module_record import DriveBefore, Module, SafetySystem, UsedPart
from builder.model.shop import Shop
from builder.model.text import NOWHERE, Number, Text
from builder.model.tree import Tree
from builder.plan.cheapest_repair import cheapest_repair
from builder.plan.drive_advice import DriveAdvice
from builder.plan.estimate_options import EstimateOption, declined, estimate_options
from builder.plan.prices import LineKind, price_line, total_price, with_tax

SHOP = Shop(Text("A shop"), Text("https://charts.example/"), Decimal(140), Text("USD"), Decimal(8),
            "parts", Money(Decimal(115), Decimal(115)))  # fmt: skip
MODULE = Module(
    "lift-module", "kb/modules/lift-module.yml", NOWHERE, Text("Liftgate module"), UsedPart.YES,
    DriveBefore.YES, SafetySystem.NONE, (), price=Money(Decimal(310), Decimal(310)),
    hours={"fit": Number("1.2"), "set_up": Number("0.8"), "verify": Number("0.5")},
)  # fmt: skip
FIX = """
repair:
  fix: Install a new module and set it up
  cause: It is faulty
  replaces: {module: lift-module, part: new}
"""
REPAIR = """
repair:
  fix: Repair the wire
  cause: It is broken
  hours: 1.5
  parts:
    - {part: wire, price: 4.20}
    - {part: plug, price: 12 to 18}
"""


def library(**changes: object) -> Library:
    """Return a library with one module, with these changes."""
    return Library(SHOP, modules={"lift-module": replace(MODULE, **changes)})


def by_id(tree: Tree, known: Library) -> dict[str, EstimateOption]:
    """Return the options of the fix by their id."""
    return {option.id: option for option in estimate_options(tree, "repair", known)}


def amount(option: EstimateOption) -> str:
    """Write a total as one amount, or as two."""
    assert option.total
    low, high = str(option.total.low), str(option.total.high)
    return low if low == high else f"{low} to {high}"


def test_the_worked_example(tree) -> None:
    """Worked example, own arithmetic.

    Rate 140, part 310, tax 8 % on parts, tow 115; install 1.2 h, setup 0.8 h, verification 0.5 h:
    2.5 x 140 + 310 x 1.08 = 684.80; 1.3 x 140 = 182.00; 182 + 115 = 297.00; 0.00.
    """
    options = estimate_options(tree(FIX), "repair", library())
    assert [(option.id, amount(option)) for option in options] == [
        ("fit-here", "684.80"),
        ("drive-in", "182.00"),
        ("towed-in", "297.00"),
        ("leave", "0.00"),
    ]


def test_every_line_of_a_sum_is_shown(tree) -> None:
    """The customer can add it up."""
    lines = by_id(tree(FIX), library())["fit-here"].lines
    assert [(line.item, str(line.amount.low), line.hours) for line in lines if line.amount] == [
        ("Installation", "168.00", Decimal("1.2")),
        ("Setup", "112.00", Decimal("0.8")),
        ("Verification", "70.00", Decimal("0.5")),
        ("Liftgate module, new", "310.00", None),
        ("Tax on parts, 8%", "24.80", None),
    ]


def test_a_range_of_tow_prices_stays_a_range(tree) -> None:
    """182 and 115 to 150."""
    known = library()
    far = replace(SHOP, tow=Money(Decimal(115), Decimal(150)))
    assert amount(by_id(tree(FIX), replace(known, shop=far))["towed-in"]) == "297.00 to 332.00"
    no_tow = by_id(tree(FIX), replace(known, shop=replace(SHOP, tow=None)))["towed-in"]
    assert no_tow.total is None
    assert not no_tow.not_offered


@pytest.mark.parametrize("safety", ["steering", "brakes", "restraints", "high-voltage"])
def test_an_unsafe_option_is_not_offered_and_says_why(tree, safety: str) -> None:
    """Not driven in and not left as it is, whatever the record says about driving."""
    options = by_id(tree(FIX), library(safety=SafetySystem(safety)))
    for name in ("drive-in", "leave"):
        assert options[name].not_offered
        assert options[name].total is None
        assert options[name].lines == ()
    assert amount(options["fit-here"]) == "684.80"
    at_home = safety in ("steering", "brakes")
    assert bool(options["towed-in"].total) is at_home
    assert bool(options["towed-in"].not_offered) is not at_home


def test_a_vehicle_is_driven_in_only_if_its_record_allows_it(tree) -> None:
    """`no` gives the record's reason; `not known` doesn't allow it."""
    why = "The engine does not start before pairing"
    refused = library(drive_before_set_up=DriveBefore.NO, drive_why=Text(why))
    assert by_id(tree(FIX), refused)["drive-in"].not_offered == why
    unknown = by_id(tree(FIX), library(drive_before_set_up=DriveBefore.UNKNOWN))
    assert "Unknown" in unknown["drive-in"].not_offered
    assert amount(unknown["towed-in"]) == "297.00"


@pytest.mark.parametrize(
    ("used_part", "offered"),
    [("yes", True), ("if released", True), ("no", False), ("not known", False)],
)
def test_a_used_part_is_installed_only_if_it_can_be_set_up(tree, used_part, offered) -> None:
    """Without a price the total is unknown; a part that can't be set up is refused."""
    drawn = tree(FIX.replace("part: new", "part: used"))
    option = by_id(drawn, library(used_part=UsedPart(used_part)))["fit-here"]
    assert bool(option.not_offered) is not offered
    assert option.total is None


def test_a_used_part_takes_its_price_from_the_fix(tree) -> None:
    """The record has the price of a new one only."""
    text = (
        FIX.replace("part: new", "part: used")
        + """\
  parts:
    - {part: lift-module, price: 90 to 140}
"""
    )
    assert amount(by_id(tree(text), library())["fit-here"]) == "447.20 to 501.20"


def test_a_customer_with_a_part_reads_which_kind_works(tree) -> None:
    """A used part that can't be set up is money lost, so the note comes before the purchase."""
    note = by_id(tree(FIX), library(used_part=UsedPart.NO))["drive-in"].note
    assert "a used one can't be set up" in note
    assert "guarantee" in note


def test_any_other_fix_is_repaired_or_left(tree) -> None:
    """1.5 x 140 + (4.20 + 12 to 18) x 1.08: two parts, one tax line."""
    options = estimate_options(tree(REPAIR), "repair", library())
    assert [(option.id, amount(option)) for option in options] == [
        ("fit-here", "227.50 to 233.98"),
        ("leave", "0.00"),
    ]


def test_missing_hours_leave_the_total_unknown(tree) -> None:
    """Missing hours are not zero hours."""
    options = estimate_options(
        tree("repair:\n  fix: Repair it\n  cause: It was so\n"), "repair", library()
    )
    assert options[0].total is None


def test_a_fix_may_write_its_own_options(tree) -> None:
    """One replaces the standard option, some are added, one is refused with its reason."""
    options = estimate_options(
        tree(
            FIX
            + """\
  options:
    drive-in:
      option: Come by on Thursday
      note: Ten minutes are enough.
    leave:
      option: Leave it as it is
      not_offered: It opens by itself on the road
    used-module:
      option: A used module
      hours: 1.4
      parts:
        - {part: used module, price: 90 to 140}
    by-post:
      option: Send the module to a specialist
      price: 180
      tow: yes
    ask:
      option: Ask the vehicle maker
      note: It takes a week.
"""
        ),
        "repair",
        library(),
    )
    assert [option.id for option in options] == [
        "fit-here", "drive-in", "towed-in", "used-module", "by-post", "ask", "leave",
    ]  # fmt: skip
    own = {option.id: option for option in options}
    assert (own["drive-in"].option, amount(own["drive-in"])) == ("Come by on Thursday", "182.00")
    assert own["drive-in"].note == "Ten minutes are enough."
    assert own["leave"].not_offered == "It opens by itself on the road"
    assert amount(own["used-module"]) == "293.20 to 347.20"
    assert amount(own["by-post"]) == "295.00"
    assert own["ask"].total is None
    assert (own["ask"].note, own["by-post"].note) == ("It takes a week.", "")


def test_a_fix_can_not_offer_an_unsafe_option(tree) -> None:
    """A price for driving in doesn't put brakes on the vehicle."""
    text = (
        FIX
        + """\
  options:
    drive-in:
      option: Drive in slowly
      price: 99
"""
    )
    option = by_id(tree(text), library(safety=SafetySystem.BRAKES))["drive-in"]
    assert option.not_offered
    assert option.total is None


def test_the_average_cost_is_beside_the_total(tree) -> None:
    """Worked example, own arithmetic: one part in seven or so is bad, 182 + 0.15 x 182 = 209.30."""
    drawn = tree(FIX + "  options:\n    drive-in:\n      note: Your own part.\n")
    body = drawn.steps["repair"].body
    assert isinstance(body, Fix)
    risky = replace(body, options=(replace(body.options[0], chance=Number("0.15")),))
    steps = {"repair": replace(drawn.steps["repair"], body=risky)}
    option = by_id(replace(drawn, steps=steps), library())["drive-in"]
    assert amount(option) == "182.00"
    assert option.cost_with_comebacks == Money(Decimal("209.30"), Decimal("209.30"))


def test_a_module_without_a_record_is_priced_as_a_repair(tree) -> None:
    """The check reports the missing record; the total stays unknown."""
    options = estimate_options(tree(FIX), "repair", Library(SHOP))
    assert [option.id for option in options] == ["fit-here", "leave"]
    assert options[0].total is None


def test_a_brake_repair_is_not_left_as_it_is_unless_the_fix_says_so(tree) -> None:
    """Without a word it isn't allowed; the author of the tree may allow it."""
    drawn = replace(tree(REPAIR), system=Text("brakes"))
    refused = by_id(drawn, library())["leave"]
    assert refused.not_offered == "Not safe to drive: the brakes depend on it"
    assert refused.total is None
    allowed = tree(REPAIR + "  options:\n    leave:\n      note: A squeal harms nobody.\n")
    left = by_id(replace(allowed, system=Text("brakes")), library())["leave"]
    assert (left.option, left.note, amount(left)) == (
        "Leave it as it is", "A squeal harms nobody.", "0.00",
    )  # fmt: skip


def test_only_a_fix_has_options(tree) -> None:
    """A stop has no price."""
    drawn = tree("repair:\n  stop: Not here today\n  kind: not-found\n")
    assert estimate_options(drawn, "repair", library()) == ()


FEE = replace(SHOP, diagnosis_fee=Money(Decimal(150), Decimal(150)))


def with_drive(tree: Tree, drive: Drive) -> Tree:
    """Return the tree with an advice at its head."""
    return replace(tree, drive=drive, why=Text("It may get worse."))


def test_every_option_owes_the_diagnosis(tree) -> None:
    """The worked example with a fee of 150, which isn't a part and isn't taxed with parts."""
    options = estimate_options(tree(FIX), "repair", replace(library(), shop=FEE))
    assert [amount(option) for option in options] == ["834.80", "332.00", "447.00", "150.00"]
    assert {option.lines[-1].item for option in options[1:]} == {"Diagnosis, flat charge"}
    ranged = replace(SHOP, diagnosis_fee=Money(Decimal(100), Decimal(200)))
    assert declined(ranged).lines[-1].item == "Diagnosis"


def test_who_declines_on_an_unsafe_car_pays_the_tow() -> None:
    """With its price, where the shop has one."""
    assert declined(SHOP).note.endswith("yours to pay: $115.00 if we arrange it.")
    assert declined(replace(SHOP, tow=None)).note.endswith("yours to pay.")


def test_a_used_module_says_what_its_setup_needs(tree) -> None:
    """At the option that installs one, and at those for which the customer brings one."""
    known = library(used_part=UsedPart.IF_RELEASED, released_by=Text("The seller"))
    new, used = (by_id(tree(FIX.replace("new}", kind)), known) for kind in ("new}", "used}"))
    assert new["fit-here"].note == ""
    assert used["fit-here"].note.endswith("It is released by the seller.")
    assert "It is released by the seller. If your part is bad" in new["drive-in"].note


def test_only_a_used_part_is_refused(tree) -> None:
    """A module that takes no used part may still be brought new."""
    text = FIX + "  options:\n    drive-in: {note: On Thursday.}\n"
    assert not by_id(tree(text), library(used_part=UsedPart.NO))["drive-in"].not_offered


def test_the_reason_says_before_setup_where_the_tree_speaks_of_driving(tree) -> None:
    """It may be driven as it is, and not with a module that isn't set up."""
    known = library(safety=SafetySystem.BRAKES)
    safe = by_id(with_drive(tree(FIX), Drive.YES), known)["drive-in"].not_offered
    assert safe == "Not safe to drive before setup: the brakes depend on it"
    silent = by_id(tree(FIX), known)["drive-in"].not_offered
    assert silent == "Not safe to drive: the brakes depend on it"


@pytest.mark.parametrize(
    ("drive", "is_left"), [(Drive.YES, True), (Drive.WITH_CARE, True), (Drive.NO, False)]
)
def test_leaving_it_follows_from_drive(tree, drive: Drive, is_left: bool) -> None:
    """Of a brake repair and of a module of the brakes alike; nothing else decides."""
    for text in (FIX, REPAIR):
        drawn = replace(with_drive(tree(text), drive), system=Text("brakes"))
        left = by_id(drawn, library(safety=SafetySystem.BRAKES))["leave"]
        assert bool(left.total) is is_left
        assert bool(left.not_offered) is not is_left


def test_a_refusal_that_contradicts_drive_is_not_printed(tree) -> None:
    """The check reports it; the sheet says what `drive` says."""
    text = REPAIR + "  options:\n    leave: {not_offered: Not safe to drive}\n"
    assert by_id(with_drive(tree(text), Drive.YES), library())["leave"].total
    refused = by_id(with_drive(tree(text), Drive.NO), library())["leave"]
    assert refused.not_offered == "Not safe to drive"


def test_the_advice_of_a_walk_counts_more_than_the_tree(tree) -> None:
    """After a handoff the most severe holds."""
    drawn = with_drive(tree(REPAIR), Drive.YES)
    advice = DriveAdvice(Drive.NO, "The brakes may not hold.")
    options = estimate_options(drawn, "repair", library(), advice)
    assert [bool(option.not_offered) for option in options] == [False, True]


def test_what_is_saved_elsewhere_is_the_difference_of_the_totals(tree) -> None:
    """Own arithmetic: 684.80 - 182.00 = 502.80 driven in, 684.80 - 297.00 = 387.80 towed in."""
    for shop in (SHOP, FEE):
        options = by_id(tree(FIX), replace(library(), shop=shop))
        for name, saved in (("drive-in", "502.80"), ("towed-in", "387.80")):
            money = options[name].saves
            assert money == Money(Decimal(saved), Decimal(saved))
        assert options["leave"].saves is None


def test_a_range_of_fees_is_no_saving(tree) -> None:
    """It is owed either way: 502.80, not 402.80 to 602.80."""
    far = replace(SHOP, diagnosis_fee=Money(Decimal(100), Decimal(200)))
    saved = by_id(tree(FIX), replace(library(), shop=far))["drive-in"].saves
    assert saved == Money(Decimal("502.80"), Decimal("502.80"))


def test_the_cheapest_has_everything_in_its_price(tree) -> None:
    """Not the one to which the customer's own part still comes, nor leaving it; of one, none."""
    text = FIX + "  options:\n    used: {option: A used one, price: 90 to 400, part: used}\n"
    options = estimate_options(tree(text), "repair", library())
    cheapest = cheapest_repair(options)
    assert cheapest
    assert (cheapest.id, amount(cheapest)) == ("used", "90.00 to 400.00")
    locked = estimate_options(tree(text), "repair", library(used_part=UsedPart.NO))
    assert [option.id for option in locked if option.not_offered] == ["used"]
    assert cheapest_repair(locked) is None


@pytest.mark.parametrize(
    ("price", "cheapest"), [("90 to 900", "fit-here"), ("684.80", "fit-here"), ("684.79", "used")]
)
def test_of_ranges_the_upper_end_counts(tree, price: str, cheapest: str) -> None:
    """And of equal prices the first one, beside 684.80 for all of it done here."""
    text = FIX + f"  options:\n    used: {{option: A used one, price: {price}, part: used}}\n"
    option = cheapest_repair(estimate_options(tree(text), "repair", library()))
    assert option
    assert option.id == cheapest


def test_what_can_fail_is_not_the_cheapest(tree) -> None:
    """If it fails the next repair is paid on top: nobody knows that it costs the least."""
    text = FIX + (
        "  options:\n"
        "    released: {option: Seller releases it, hours: 1, chance: 0.4}\n"
        "    used: {option: A used one, price: 400, part: used}\n"
    )
    cheapest = cheapest_repair(estimate_options(tree(text), "repair", library()))
    assert cheapest
    assert cheapest.id == "used"


def test_an_unknown_price_names_no_cheapest(tree) -> None:
    """Nobody knows yet."""
    text = FIX + "  options:\n    ask: {option: Ask the vehicle maker}\n"
    assert cheapest_repair(estimate_options(tree(text), "repair", library())) is None


def test_a_part_says_that_it_is_not_new(tree) -> None:
    """Each part is new unless it is described as used or rebuilt: 16 CCR 3353(a)."""
    text = FIX + (
        "  options:\n"
        "    old: {option: A used one, hours: 1, parts: [{part: module, price: 90}], part: used}\n"
        "    fit-here: {option: A rebuilt one, part: rebuilt}\n"
    )
    options = by_id(tree(text), library())
    assert [line.item for line in options["old"].lines][1] == "module, used"
    assert "Liftgate module, rebuilt" in [line.item for line in options["fit-here"].lines]
    assert options["fit-here"].total is None  # the record prices a new one


money = st.decimals(0, 2000, places=2)
ranged = st.tuples(money, st.decimals(0, 500, places=2), st.sampled_from(list(LineKind)[:4]))


@given(st.lists(ranged, max_size=8), st.sampled_from(["parts", "all", "none"]), st.randoms())
def test_order_and_draws_never_leave_the_total(drawn, base: str, random) -> None:
    """Lines in any order give one total; every draw from their ranges lies between its ends."""
    shop = replace(SHOP, tax_base=base, tax_percent=Decimal("8.25"))
    lines = [price_line(kind, "x", Money(low, low + more)) for low, more, kind in drawn]
    total = total_price(with_tax(lines, shop))
    mixed = random.sample(lines, len(lines))
    assert total_price(with_tax(mixed, shop)) == total
    assert total
    share = Decimal(random.randrange(101)) / 100
    prices = [low + (more * share).quantize(Decimal("0.01")) for low, more, _ in drawn]
    one = [
        price_line(kind, "x", Money(price, price))
        for price, (_, _, kind) in zip(prices, drawn, strict=True)
    ]
    inside = total_price(with_tax(one, shop))
    assert inside
    assert total.low <= inside.low <= total.high
