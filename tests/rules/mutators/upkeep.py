"""Mutators for the rules of upkeep: what nobody maintains.

In: a sound tree. Out: mutants of it.
"""

from collections.abc import Iterator

from builder.plan.spent_shares import spent_shares
from builder.rules.chance_against_weights import MIN_SHARE

from .sound import Mutant, Sound


def verification_removed(sound: Sound) -> Iterator[Mutant]:
    """Remove the verification of a fix."""
    for step, fix in sound.fixes:
        if fix.verify:
            yield sound.without(fix.verify[0].text.at, "verify", step.id.at.line)


def weight_removed(sound: Sound) -> Iterator[Mutant]:
    """Remove the weight of a fix."""
    for step, fix in sound.fixes:
        if fix.weight is not None:
            yield sound.without(fix.weight.at, "weight", step.id.at.line)


def chance_lowered(sound: Sound) -> Iterator[Mutant]:
    """Set the chance of the only way back to a step with `spent` to almost nothing."""
    for shares in spent_shares(sound.tree):
        spent = sound.tree.steps[shares.step].spent
        back = [
            exit_.result.chance
            for step, exit_ in sound.exits
            if exit_.result and exit_.result.chance and shares.step in (step.id, exit_.branch.step)
        ]
        if spent and len(back) == 1 and shares.by_weights >= MIN_SHARE:
            yield sound.replaced(back[0].at, "0.01", spent.text.at.line)


def review_aged(sound: Sound) -> Iterator[Mutant]:
    """Set the last review to long ago."""
    if sound.tree.reviewed:
        yield sound.replaced(sound.tree.reviewed.date.at, "2020-02-29")


def silence_outlived(sound: Sound) -> Iterator[Mutant]:
    """Silence a rule where it finds nothing, without a reason, or under a wrong name."""
    lines = sound.text.split("\n")
    for step in sound.steps:
        name = step.id.at
        end = name._replace(column=len(lines[name.line - 1]) + 1)
        end = end._replace(end_column=end.column)
        for comment in (
            "slang because it is printed there",
            "linked-draft because it is nearly done",
            "slang",
            "slan because it is printed there",
        ):
            yield sound.replaced(end, f"  # silence: {comment}")
