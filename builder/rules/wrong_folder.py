"""A tree whose file isn't in the folder of its system.

Why: The folder is part of the tree's ID: a tech who looks in one system finds the tree in another,
and a branch that goes by the system leads nowhere.

Wrong:

    # trees/charging/pulls.yml
    system: steering
    steps:
      belt:
        check: Is the belt tight and dry?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    # trees/steering/pulls.yml
    system: steering
    steps:
      belt:
        check: Is the belt tight and dry?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Move the file into the folder of its system, or correct `system:`.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="wrong-folder",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A tree that isn't in the folder of its system.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding where the folder of the tree isn't its system."""
    tree, systems = facts.tree, facts.library.systems
    folder, _, file = tree.file.rpartition("/")
    if folder == f"trees/{tree.system}" or tree.system not in systems:
        return
    hint = f"move the file to `trees/{tree.system}/{file}`"
    if folder.removeprefix("trees/") in systems:
        hint += f", or write `system: {folder.removeprefix('trees/')}`"
    yield RULE.finding(
        tree.system.at,
        f"this tree is in `{folder}/`, but its system is `{tree.system}`",
        "a tech who looks in one system finds the tree in another",
        hint,
    )
