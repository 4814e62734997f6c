"""Templates to HTML: every text is escaped unless it is finished HTML already.

In: a template's name, the page's path, values. Out: `Markup`.
"""

from functools import partial
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from builder.pages import addresses
from builder.pages.page import root_of
from builder.wording import phrases

_TEMPLATES = Environment(
    loader=FileSystemLoader(Path(__file__).parent / "templates"),
    autoescape=True,
    undefined=StrictUndefined,  # a slip in a template is our bug and must be seen
    trim_blocks=True,
    lstrip_blocks=True,
)
_TEMPLATES.globals["to"] = addresses
_TEMPLATES.globals["phrases"] = phrases
_TEMPLATES.filters["joined"] = phrases.joined


def render(template: str, path: str, **values: object) -> Markup:
    """Fill a template for the page at `path`; `url` in it leads to another page of the site."""
    root = root_of(path)
    url = partial(_url, root)
    return Markup(_TEMPLATES.get_template(template).render(root=root, url=url, **values))


def _url(root: str, path: str, anchor: str = "") -> str:
    return root + addresses.link(path, anchor)
