"""Phrases and sentences from the words of a tree.

In: words of the format, the library. Out: plain text; nothing here is HTML.
"""

from collections.abc import Iterable

from builder.model.ends import Verification
from builder.model.library import Library
from builder.model.shop import Shop
from builder.model.tree import Deed
from builder.wording.labels import TASK_TEXTS


def joined(texts: Iterable[str], last: str = "and") -> str:
    """Join as in a sentence: `a, b and c`."""
    items = [str(text) for text in texts]
    if len(items) < 2:
        return "".join(items)
    return f"{', '.join(items[:-1])} {last} {items[-1]}"


def task_text(task: Deed, library: Library) -> str:
    """Return a task of `does` in words: `program steering-unit` as `program Steering assist`."""
    words = TASK_TEXTS.get(task.verb, str(task.text))
    return words.replace("{}", module_name(task.module, library))


def requirement_text(text: str) -> str:
    """Return a task that must come first in words; other text stays as written."""
    verb, _, module = text.partition(" ")
    return TASK_TEXTS[verb].replace("{}", module) if verb in TASK_TEXTS else text


def verification_text(verification: Verification) -> str:
    """Write what proves a repair: `no DTC after 10 miles`, `hold: firm`."""
    passes = joined(verification.passes, "or") or ", ".join(
        f"{name} {words}" for name, words in verification.readings.items()
    )
    words = requirement_text(verification.text)
    return f"{words}: {passes}" if passes else words


def module_name(id_: str | None, library: Library) -> str:
    """Return the name in the module's record; its id where there is none."""
    module = library.modules.get(id_ or "")
    return str(module.name) if module else str(id_ or "the module")


def capitalized(text: str) -> str:
    """Capitalize the first letter only."""
    return text[:1].upper() + text[1:]


def uncapitalized(text: str) -> str:
    """Write the first letter small, except in an abbreviation."""
    return text if text[1:2].isupper() else text[:1].lower() + text[1:]


def stuck_advice(shop: Shop) -> str:
    """Return what to do when no result matches: `call the foreman, phone 14`."""
    call, phone = shop.stuck.get("call", "foreman"), shop.stuck.get("phone")
    person = call if call.lower().startswith("the ") else f"the {call}"
    return f"call {person}" + (f", phone {phone}" if phone else "")
