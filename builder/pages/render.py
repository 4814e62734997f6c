"""Templates to HTML: all text is escaped unless it is finished HTML already.

In: the name of a template, the path of the page, values. Out: `Markup`.
"""

from functools import partial
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from builder.pages import addresses
from builder.wording import labels, sentences, value_text

TEMPLATES = Path(__file__).parent / "templates"
_ENVIRONMENT = Environment(
    loader=FileSystemLoader(TEMPLATES),
    autoescape=True,
    undefined=StrictUndefined,  # a misspelled name in a template is a bug: fail, don't hide it
    trim_blocks=True,
    lstrip_blocks=True,
)
_ENVIRONMENT.globals["addresses"] = addresses
_ENVIRONMENT.globals.update(labels=labels, sentences=sentences, value_text=value_text)
_ENVIRONMENT.filters["joined"] = sentences.joined


def render(template: str, path: str, **values: object) -> Markup:
    """Fill a template for the page at `path`.

    Templates get `url(path, anchor)`, which links to another page, and `root`, the relative path to
    the root of the site.
    """
    root, url = addresses.root_from(path), partial(addresses.href, path)
    return Markup(_ENVIRONMENT.get_template(template).render(root=root, url=url, **values))
