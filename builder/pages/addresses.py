"""The address of every page: the one list, from the root of the site, without `.html`.

In: an ID as authors write it. Out: a path that is safe as a file name, or an anchor. Addresses and
anchors never change: links and printed codes rely on them.
"""

import re
from urllib.parse import quote

from builder.model.tree import Tree

_TAKEN = ("index", "readme")  # the page of a folder, here and for the engine
_UNSAFE = re.compile(r"[^A-Za-z0-9]+")


def file_slug(text: str) -> str:
    """Turn a phrase into a file name: `steering assist` into `steering-assist`."""
    name = _UNSAFE.sub("-", text).strip("-") or "unnamed"
    return f"the-{name}" if name.lower() in _TAKEN else name


def tree_path(id_: str) -> str:
    """Return the page of a tree; its ID is a path already."""
    return f"trees/{id_}"


def procedure_path(name: str) -> str:
    """Return the page of a procedure."""
    return f"procedures/{file_slug(name)}"


def page_of(tree: Tree) -> str:
    """Return the page of a tree, or of the procedure whose steps it holds."""
    if tree.is_procedure:
        return procedure_path(tree.id.partition("/")[2])
    return tree_path(tree.id)


def print_path(id_: str, suffix: str) -> str:
    """Return the file of a tree's print, with its extension; the wall chart has no suffix."""
    return f"prints/{id_}{suffix}.pdf"


def step_anchor(id_: str) -> str:
    """Return the anchor of a step on its tree's page."""
    return f"step-{id_}"


def system_path(id_: str) -> str:
    """Return the page of a system."""
    return f"systems/{file_slug(id_)}"


def lamp_path(id_: str) -> str:
    """Return the page of a warning light."""
    return f"lamps/{file_slug(id_)}"


def code_path(text: str) -> str:
    """Return the page of a DTC without its failure type byte; that page lists the bytes."""
    return f"codes/{file_slug(text.split('-')[0])}"


def occasion_path(phrase: str) -> str:
    """Return the page of an occasion: what the vehicle or the driver was doing."""
    return f"during/{file_slug(phrase)}"


def vehicle_path(id_: str) -> str:
    """Return the page of a vehicle."""
    return f"vehicles/{file_slug(id_)}"


def module_path(id_: str) -> str:
    """Return the page of a module's setup record."""
    return f"modules/{file_slug(id_)}"


def how_to_path(id_: str) -> str:
    """Return the page of a how-to article."""
    return f"how-to/{file_slug(id_)}"


def rule_path(name: str) -> str:
    """Return the page of a rule of the check."""
    return f"rules/{file_slug(name)}"


def root_from(path: str) -> str:
    """Return the relative path from a page to the root: "" or "../" for each folder."""
    return "../" * path.count("/")


def href(page: str, path: str, anchor: str = "") -> str:
    """Return the relative link from one page to another, for an attribute of HTML."""
    return root_from(page) + quote(f"{path}.html") + (f"#{quote(anchor)}" if anchor else "")
