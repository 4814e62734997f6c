"""Where every page lies: the one list of addresses, from the root of the site, without ending.

In: an id as authors write it. Out: a path that is safe as a file name; anchors that are stable.
"""

import re
from urllib.parse import quote

_TAKEN = ("index", "readme")  # pages of folders, for us and for the engine
_UNSAFE = re.compile(r"[^A-Za-z0-9]+")


def slug(text: str) -> str:
    """Make a file name of a phrase: `steering assist` to `steering-assist`."""
    name = _UNSAFE.sub("-", text).strip("-") or "unnamed"
    return f"the-{name}" if name.lower() in _TAKEN else name


def tree(id_: str) -> str:
    """Return the page of a tree; an id names a file already."""
    return f"trees/{id_}"


def print_(id_: str, suffix: str) -> str:
    """Return the file of a tree's print, with its ending; the wall chart has no suffix."""
    return f"prints/{id_}{suffix}.pdf"


def step(id_: str) -> str:
    """Return the anchor of a step on its tree's page."""
    return f"step-{id_}"


def system(id_: str) -> str:
    """Return the page of a system."""
    return f"systems/{slug(id_)}"


def lamp(id_: str) -> str:
    """Return the page of a lamp."""
    return f"lamps/{slug(id_)}"


def code(text: str) -> str:
    """Return the page of a trouble code in its two-byte form; the failure types stand on it."""
    return f"codes/{slug(text.split('-')[0])}"


def during(phrase: str) -> str:
    """Return the page of what the vehicle or the driver was doing."""
    return f"during/{slug(phrase)}"


def vehicle(id_: str) -> str:
    """Return the page of a vehicle."""
    return f"vehicles/{slug(id_)}"


def module(id_: str) -> str:
    """Return the page of a set-up record."""
    return f"modules/{slug(id_)}"


def how_to(id_: str) -> str:
    """Return the page of an article."""
    return f"how-to/{slug(id_)}"


def rule(name: str) -> str:
    """Return the page of a rule of the check."""
    return f"rules/{slug(name)}"


def link(path: str, anchor: str = "") -> str:
    """Return an address for `href`, relative to the root."""
    return quote(f"{path}.html") + (f"#{quote(anchor)}" if anchor else "")
