"""Why an estimate option of a fix isn't offered.

In: the name of an option, the tree, the fix, its module's record, the advice on driving. Out: the
reason, or an empty string.

Leaving the vehicle as it is follows from `drive` alone. A vehicle is not driven in to be set up
unless it may be driven now and the module's record says it may be before the setup; nor if
steering, brakes, restraints or high voltage depend on the module. Customers aren't asked to work on
restraints or high voltage at home. A used part isn't installed if it can't be set up, or if that is
unknown.

A tree without `drive` is judged by its records: a fix that replaces a module by the module's safety
system, any other by the system that the tree is named after, unless it writes its own `leave`.
"""

from builder.model.ends import Drive, Fix, FixOption, PartKind
from builder.model.module_record import DriveBefore, Module, SafetySystem, UsedPart
from builder.model.tree import Tree
from builder.plan.drive_advice import DriveAdvice
from builder.wording.labels import SAFETY_TEXTS

FIT_HERE, DRIVE_IN, TOWED_IN, LEAVE = "fit-here", "drive-in", "towed-in", "leave"
NOT_AT_HOME = {
    SafetySystem.RESTRAINTS: "airbags can go off",
    SafetySystem.HIGH_VOLTAGE: "high voltage is for trained techs",
}
USED_REFUSED = {
    UsedPart.NO: "A used part can't be set up on this vehicle",
    UsedPart.UNKNOWN: "Unknown if a used part can be set up",
}
NOT_AS_IT_IS = "Not safe to drive as it is"


def refusal_reason(
    option_id: str, tree: Tree, fix: Fix, module: Module | None, advice: DriveAdvice | None
) -> str:
    """Return why a standard option of a fix isn't offered, or an empty string."""
    if option_id == LEAVE and advice:
        return NOT_AS_IT_IS if advice.drive is Drive.NO else ""
    if module is None or fix.replaces is None:
        written = any(option.id == option_id for option in fix.options)
        return _unsafe_reason(_safety_of(tree)) if option_id == LEAVE and not written else ""
    if option_id == LEAVE:
        return _unsafe_reason(module.safety)
    if option_id == FIT_HERE:
        return used_reason(module) if fix.replaces.part == "used" else ""
    if option_id in (DRIVE_IN, TOWED_IN) and module.safety in NOT_AT_HOME:
        return f"Not a job to do at home: {NOT_AT_HOME[module.safety]}"
    return _no_driving_reason(module, advice) if option_id == DRIVE_IN else ""


def used_reason(module: Module) -> str:
    """Return why a used module isn't installed, or an empty string."""
    return USED_REFUSED.get(module.used_part, "")


def part_reason(written: FixOption, module: Module | None) -> str:
    """Return why the part that an option names isn't installed, or an empty string."""
    return used_reason(module) if module and written.part is PartKind.USED else ""


def _no_driving_reason(module: Module, advice: DriveAdvice | None) -> str:
    if module.drive_before_set_up is DriveBefore.NO:
        return str(module.drive_why or "Not safe to drive before setup")
    if advice and advice.drive is Drive.NO:
        return NOT_AS_IT_IS
    if module.drive_before_set_up is DriveBefore.UNKNOWN:
        return "Unknown if it may be driven before setup"
    return _unsafe_reason(module.safety, " before setup" if advice else "")


def _safety_of(tree: Tree) -> SafetySystem:
    """Return the safety system that a tree's system is named after, if any."""
    known = {str(system): system for system in SafetySystem}
    return known.get(tree.system, SafetySystem.NONE)


def _unsafe_reason(safety: SafetySystem, when: str = "") -> str:
    if safety is SafetySystem.NONE:
        return ""
    return f"Not safe to drive{when}: {SAFETY_TEXTS[safety]}"
