"""A file whose name keeps it from being read, or that shares its name with another.

Why: `kb/tools.yaml`, `kb/tool.yml` or `trees/brakes/.pulsation.yml` would be passed over without a
word. Of `silent.yml` and `silent.yaml` only one would be shown.

Wrong:

    # kb/modules/brake-unit.yaml

Right:

    # kb/modules/brake-unit.yml

Fix: Rename the file as the hint says: small letters, digits and `-`, and the ending that is read
in its folder. `README` and `index` are the page of a folder, and no name of a file of your own.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="file-name",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A file whose name keeps it from being read.",
)
