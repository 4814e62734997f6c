"""States, parts and places of the vehicle as people say them.

In: what a step needs or names, and the library. Out: `alternator unplugged`, `power pin of the ABS
module`.
"""

import re

from builder.model.ends import Drive
from builder.model.library import Library
from builder.model.tree import Need, Step, Where
from builder.wording.sentences import joined

ABBREVIATED = re.compile(r"^.*\((?P<short>[A-Z0-9]+)\)(?P<rest>| .+)$")
DRIVING = {
    Drive.YES: "Safe to drive",
    Drive.WITH_CARE: "Drive with care",
    Drive.NO: "Don't drive it",
}


def part_name(id_: str, library: Library) -> str:
    """Name a part in the middle of a sentence: `alternator`, `ABS module`, of `<part>` `part`."""
    known = library.parts.get(id_) or library.modules.get(id_)
    if known is None:
        return id_.strip("<>").replace("-", " ")
    name = str(known.name)
    if short := ABBREVIATED.match(name):
        return f"{short['short']}{short['rest']}"
    rest = name.split(" ")[0][1:]
    is_plain = rest != rest.upper() and rest == rest.lower()  # neither `ABS` nor `NOx`
    return name[:1].lower() + name[1:] if is_plain else name


def part_named(words: str, library: Library) -> str:
    """Return the ID of the one part or module that is called exactly that; "" for none."""
    plain = " ".join(words.split()).casefold()
    names = {id_: (id_, one.name, *one.also_called) for id_, one in library.parts.items()}
    names |= {id_: (id_, one.name, *one.also_called) for id_, one in library.modules.items()}
    ids = {id_ for id_, every in names.items() if plain in {name.casefold() for name in every}}
    return ids.pop() if len(ids) == 1 else ""


def need_text(need: Need, library: Library) -> str:
    """Write a state that a step needs: `key on, engine off`, `alternator unplugged`."""
    condition = library.conditions.get(need.condition)
    words = str((condition.text if condition else None) or need.condition.replace("-", " "))
    value = str(need.value or "")
    if value.startswith("<"):  # it comes at the vehicle
        words = words.replace("<current> ", "")
    return words.replace("<part>", part_name(value, library)).replace("<current>", value)


def condition_texts(step: Step, library: Library) -> tuple[str, ...]:
    """Write all conditions of a step: its states, then those in free text.

    A state without a text is the vehicle as it came in, so nothing is said of it.
    """
    known = library.conditions
    told = (one for one in step.needs if one.condition not in known or known[one.condition].text)
    states = (need_text(need, library) for need in told)
    return (*states, *map(str, step.when))


def where_text(where: Where, library: Library) -> str:
    """Write where a step works: `power pin of the ABS module`, `fuse of the ABS module`."""
    if where.phrase:
        return str(where.phrase)
    if where.fuse:
        return f"fuse of the {part_name(where.fuse, library)}"
    pins = joined(where.pins)
    if where.connector:
        place = f"connector {where.connector}"
        return f"pin {pins} of {place}" if pins else place
    part = part_name(str(where.part or ""), library)
    noun = "pin" if len(where.pins) == 1 else "pins"
    return f"{pins} {noun} of the {part}" if pins else part


def driving_text(drive: Drive | None, why: str | None) -> str:
    """Write whether the vehicle may be driven as it is, and why; the why alone where it isn't said.

    "" where neither is.
    """
    if not drive:
        return str(why or "")
    return f"{DRIVING[drive]}. {why}" if why else f"{DRIVING[drive]}."
