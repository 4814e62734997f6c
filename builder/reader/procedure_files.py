"""A procedure from its file.

In: `kb/procedures/<name>.yml`. Out: a `Procedure` (None where nothing can be made of the file) and
its mistakes. Its steps are those of a tree whose questions are what the procedure takes.
"""

from pathlib import PurePosixPath

from builder.model.finding import Finding
from builder.model.procedures import FOLDER, Procedure
from builder.model.text import Text
from builder.model.tree import Question, Status, Step, Symptom, Tree, ValueKind
from builder.reader.blanks import bare_blanks
from builder.reader.lengths import too_long
from builder.reader.nodes import Map, without_broken
from builder.reader.silences import silences_in
from builder.reader.sizes import too_many
from builder.reader.source import Source, mistake
from builder.reader.trees import steps_in
from builder.reader.validate import validate
from builder.reader.values import choice_of, map_, maps_by_name, signed, text, texts, the_text
from builder.reader.yaml_text import read_yaml


def procedure_from(source: Source) -> tuple[Procedure | None, tuple[Finding, ...]]:
    """Read a procedure from the text of its file."""
    root, findings = read_yaml(source)
    if not isinstance(root, Map) or not root:
        return None, tuple(findings)
    if excess := tuple(too_many(root)):
        return None, (*findings, *excess)
    if root.value("symptom") and not root.value("returns"):
        return None, (_a_tree(source, root),)
    broken_lines = {finding.at.line for finding in findings}
    mistakes, paths = validate(root, "procedure")
    findings += [mistake for mistake in mistakes if mistake.at.line not in broken_lines]
    steps, broken = steps_in(root, paths, broken_lines, findings)
    findings += too_long(root)
    if not steps:
        return None, tuple(findings)
    head = without_broken(root, paths)
    for step, finding in bare_blanks(steps.values(), _taken(head)):
        findings.append(finding)
        broken |= {str(step.id)}
    return _procedure(source, head, steps, broken), tuple(findings)


def _a_tree(source: Source, root: Map) -> Finding:
    name = PurePosixPath(source.file).name
    return mistake("file-name", root.key("symptom").at,
                   f"`{name}` has `symptom`, so it's a tree, and no procedure",
                   "the search doesn't find it here",
                   f"move the file to its system, such as `trees/engine/{name}`")  # fmt: skip


def _procedure(
    source: Source, head: Map, steps: dict[str, Step], broken: frozenset[str]
) -> Procedure:
    name = PurePosixPath(source.file).stem
    tree = Tree(
        id=f"{FOLDER}/{name}",
        file=source.file,
        at=next(iter(head)).at if head else head.at,
        title=the_text(head, "title", name),
        status=Status.READY,
        system=Text("", head.at),
        symptom=Symptom(()),
        steps=steps,
        revision=source.revision,
        written=signed(head, "written"),
        reviewed=signed(head, "reviewed"),
        asks=_taken(head),
        silences=silences_in(source.file, source.text),
        broken=broken,
    )
    return Procedure(
        name=name,
        tree=tree,
        returns=texts(head, "returns"),
        never_on=texts(head, "never_on"),
        every_time=text(head, "every_time") is not None,
        note=text(head, "note"),
    )


def _taken(head: Map) -> tuple[Question, ...]:
    return tuple(
        Question(
            name=name,
            ask=Text("", name.at),
            kind=choice_of(ValueKind, node, "is", ValueKind.TEXT),
            default=text(node, "else"),
        )
        for name, node in maps_by_name(map_(head, "takes"))
    )
