"""A setting of the site engine that a shop can't make, or a folder of templates for it.

Why: Such settings and templates can run code, call other hosts or publish other files during a
build. Building a pull request to look at it would run a stranger's code.

Wrong:

    # site_config/mkdocs.yml
    plugins: [search]

Right:

    # site_config/mkdocs.yml
    copyright: Osei and Lind Motors

Fix: Take it out of `site_config/mkdocs.yml`; the shop's own settings are in `site_config/shop.yml`.
Delete `site_config/overrides/`.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="engine-settings",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A setting of the site engine that a shop can't make.",
)
