"""A setting of the site engine that a shop cannot make.

Why: The site would come out other than it was proved: with requests to other hosts, or not at all.

Wrong:

    # site_config/mkdocs.yml
    plugins: [search]

Right:

    # site_config/mkdocs.yml
    copyright: Osei and Lind Motors

Mend: Take it out of `site_config/mkdocs.yml`; the shop's own settings stand in
`site_config/shop.yml`.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Rule

RULE = Rule(
    name="engine-settings",
    family="text",
    severity=Severity.ERROR,
    summary="A setting of the site engine that a shop cannot make.",
)
