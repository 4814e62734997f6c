"""Mutators for the rules of setup: modules installed as plain parts, options that aren't safe.

In: a sound tree. Out: mutants of it.
"""

from collections.abc import Iterator

from builder.model.ends import Drive
from builder.model.module_record import Module
from builder.plan.drive_advice import DriveAdvice, drive_advice

from .sound import Mutant, Sound


def setup_dropped(sound: Sound) -> Iterator[Mutant]:
    """Install a module as if it were a plain part."""
    for _, fix in sound.fixes:
        if fix.replaces and not fix.parts and not fix.options:
            name = sound.library.modules[fix.replaces.module].name
            mutant = sound.without(fix.replaces.module.at, "replaces")
            (line,) = mutant.lines
            lines = mutant.text.split("\n")
            lines[line - 1] = f"    parts: [{{part: {name}}}]"
            yield Mutant("\n".join(lines), mutant.lines)


def used_for_new(sound: Sound) -> Iterator[Mutant]:
    """Install a used part that its record rules out."""
    for _, fix in sound.fixes:
        modules = sound.library.modules
        if fix.replaces and modules[fix.replaces.module].used_part == "no":
            yield sound.replaced(fix.replaces.part.at, "used")


def option_offered(sound: Sound) -> Iterator[Mutant]:
    """Offer to drive in, leave it or install it at home where that isn't safe."""
    for step, fix in sound.fixes:
        module = sound.library.modules.get(fix.replaces.module) if fix.replaces else None
        advice = drive_advice(sound.tree, str(step.id))
        for name in _unsafe(module, advice) if module else ():
            option = f"      {name}:\n        option: As you wish\n        hours: 1"
            if fix.options:
                yield sound.inserted(fix.options[0].at.line - 1, option)
            else:
                yield sound.inserted(step.text.at.end_line, f"    options:\n{option}", 1)


def _unsafe(module: Module, advice: DriveAdvice | None) -> Iterator[str]:
    if module.safety != "none" or module.drive_before_set_up != "yes":
        yield "drive-in"
    if advice.drive is Drive.NO if advice else module.safety != "none":
        yield "leave"
    if module.safety in ("restraints", "high-voltage"):
        yield "towed-in"
