"""A file whose name keeps it from being read, or that has the same name as another.

Why: `kb/tools.yaml`, `kb/tool.yml` or `trees/brakes/.pulsation.yml` would be skipped without a
word. Of `silent.yml` and `silent.yaml` only one would be shown.

Wrong:

    # kb/modules/brake-unit.yaml

Right:

    # kb/modules/brake-unit.yml

Fix: Rename the file as the hint says: lowercase letters, digits and `-`, and the ending that its
folder needs. `README` and `index` are the page of a folder; don't use them for a file of your own,
nor a name that Windows keeps for a device: `con`, `prn`, `aux`, `nul`, `com1`, `lpt1`.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="file-name",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="A file whose name keeps it from being read.",
)
