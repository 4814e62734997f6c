"""Decision trees: which files they are, and each from its file.

In: `trees/<system>/<slug>.yml`. Out: a `Tree` (None where nothing can be made of the file) and its
mistakes. A step with a mistake in it is kept as broken, so that one slip doesn't cause ten
findings elsewhere.
"""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from pathlib import Path

from builder.model.ends import Drive
from builder.model.finding import Finding, edit_of, with_edit
from builder.model.text import Text
from builder.model.tree import Question, Status, Step, Symptom, Tree, ValueKind
from builder.reader.file_names import is_tree
from builder.reader.folders import listing
from builder.reader.key_messages import is_step
from builder.reader.lengths import too_long
from builder.reader.nodes import EMPTY, Map, NodePath, without_broken
from builder.reader.old_format import FIRST_VERSION
from builder.reader.silences import silences_in
from builder.reader.sizes import too_many
from builder.reader.source import Source, mistake, read_source
from builder.reader.step_forms import broken_step, step_from
from builder.reader.validate import validate
from builder.reader.values import (
    choice_of,
    choice_or_none,
    map_,
    named_lists,
    named_texts,
    scopes,
    signed,
    text,
    texts,
    the_text,
)
from builder.reader.yaml_text import read_yaml

NO_NAME = re.compile("[^A-Za-z0-9_-]+")  # what the name of a step can't have


def tree_files(shop: Path) -> tuple[Path, ...]:
    """Return the files of all trees, sorted by path; drafting tables aren't trees."""
    return tuple(shop / name for name in tree_names(shop))


def tree_names(shop: Path) -> list[str]:
    """Return the same files relative to the shop, with forward slashes."""
    return [name for name in listing(shop, "trees").files if is_tree(name)]


def tree_id(file: str) -> str:
    """Return a tree's ID: its path in `trees/` without `.yml`."""
    return file.removeprefix("trees/").rsplit(".", 1)[0]


def read_tree(
    shop: Path, path: Path, raw: bytes | None = None
) -> tuple[Tree | None, tuple[Finding, ...]]:
    """Read one tree, or its bytes as they were read; a mistake is a finding, never an exception."""
    source = read_source(shop, path, raw)
    if isinstance(source, Finding):
        return None, (source,)
    return tree_from(source)


# What a key of the head stands for while its text can't be read: nobody is told that it's missing.
INSTEAD = {"drive": Drive.NO, "why": "..."}  # `no` is the careful one


def tree_from(source: Source) -> tuple[Tree | None, tuple[Finding, ...]]:
    """Read a tree from the text of its file."""
    root, findings = read_yaml(source)
    if not isinstance(root, Map) or not root:
        return None, tuple(findings or [_no_tree(source)])
    if excess := tuple(too_many(root)):
        return None, (*findings, *excess)
    if root.value("returns") and not root.value("symptom"):
        return None, (_a_procedure(source, root),)
    broken_lines = {finding.at.line for finding in findings}
    mistakes, paths = validate(root, "tree")
    findings += [mistake for mistake in mistakes if not _follows(mistake, findings)]
    head = without_broken(root, paths)
    if root.value("reviewed") and not head.value("reviewed"):
        unread = Map({Text("date"): Text("", root.key("reviewed").at)})
        unread.at = root.key("reviewed").at
        head[root.key("reviewed")] = map_(root, "reviewed") or unread  # it is there, at least
    for name, instead in INSTEAD.items():
        if root.value(name) and not head.value(name):
            head[root.key(name)] = Text(instead, root.key(name).at)
    steps, broken = steps_in(root, paths, broken_lines, findings)
    in_error = {finding.at for finding in findings}
    findings += [finding for finding in too_long(root) if finding.at not in in_error]
    if not steps:
        return None, tuple(findings)
    tree = _tree(source, head, steps, broken)
    if head.value("status") is None:  # also where it can't be read: less is asked of a draft
        tree = replace(tree, status=Status.DRAFT)
    return replace(tree, defined_twice=frozenset(_twice(steps, findings))), tuple(findings)


def _follows(mistake: Finding, findings: list[Finding]) -> bool:
    """Whether a mistake may follow from how its line was misread; a joined phrase is no excuse."""
    there = [one for one in findings if one.at.line == mistake.at.line]
    column = mistake.at.column
    return any(
        not (one.rule == "lost-text" and one.edit)
        or one.edit.at.column <= column <= one.edit.at.end_column
        for one in there
    )


def _twice(steps: Mapping[str, Step], findings: Iterable[Finding]) -> Iterator[str]:
    """Yield the steps that are defined twice: a finding points back to their names."""
    duplicates = [finding for finding in findings if finding.rule == "duplicate-key"]
    first = {related.at for finding in duplicates for related in finding.related}
    yield from (name for name, step in steps.items() if step.id.at in first)


def _no_tree(source: Source) -> Finding:
    return mistake("missing-key", source.file, "there is no tree in this file",
                   "a search finds nothing here",
                   "start with `title:`, or create one with `baytree new tree`")  # fmt: skip


def _a_procedure(source: Source, root: Map) -> Finding:
    name = source.file.rpartition("/")[2]
    return mistake("file-name", root.key("returns").at,
                   f"`{name}` has `returns`, so it's a procedure, and no tree",
                   "the steps that run it don't find it here",
                   f"move the file to `kb/procedures/{name}`")  # fmt: skip


def steps_in(
    root: Map, paths: list[NodePath], broken_lines: set[int], findings: list[Finding]
) -> tuple[dict[str, Step], frozenset[str]]:
    """Read the steps; return them with the names of those that are broken."""
    is_old = text(root, "format") == FIRST_VERSION  # its steps would mean something else
    bad = {str(path[1]) for path in paths if len(path) > 1 and path[0] == "steps"}
    steps: dict[str, Step] = {}
    broken: set[str] = set()
    for key, node in (map_(root, "steps") or EMPTY).items():
        mistakes: list[Finding] = []
        id_ = _reachable_name(key, findings)
        step = None
        unread = is_old or key in bad
        if isinstance(node, Map) and not (unread or _touches(id_, node, broken_lines)):
            step = step_from(id_, node, mistakes)
        findings += mistakes
        if step is None or mistakes:
            broken.add(str(id_))
        steps[str(id_)] = step or broken_step(id_, node if isinstance(node, Map) else None)
        for inner, value in node.items() if isinstance(node, Map) else ():
            if is_step(value):  # one indented too far; others may lead to it
                steps.setdefault(str(inner), broken_step(inner, None))
                broken.add(str(inner))
    return steps, frozenset(broken)


def _reachable_name(name: Text, findings: list[Finding]) -> Text:
    """Return the name of a step as a branch would write it."""
    plain = NO_NAME.sub("-", name).strip("-")
    if plain == name or not plain:
        return name
    finding = mistake("bad-value", name.at, f"the step's name `{name}` has a space in it"
                      if " " in name else f"`{name}` can't be the name of a step",
                      "no branch can lead to it",
                      f"write `{plain}:`: letters, digits and `-` only")  # fmt: skip
    findings.append(with_edit(finding, edit_of(name, plain)))
    return Text(plain, name.at)


def _touches(id_: Text, node: Map, lines: set[int]) -> bool:
    """Whether a YAML mistake is between the step's name and its end."""
    return any(id_.at.line <= line <= node.at.end_line for line in lines)


def _tree(source: Source, head: Map, steps: dict[str, Step], broken: frozenset[str]) -> Tree:
    id_ = tree_id(source.file)
    return Tree(
        id=id_,
        file=source.file,
        at=next(iter(head)).at if head else head.at,
        title=the_text(head, "title", id_),
        status=choice_of(Status, head, "status", Status.READY),
        system=the_text(head, "system", id_.split("/")[0]),
        symptom=_symptom(head),
        steps=steps,
        revision=source.revision,
        applies_to=scopes(head),
        written=signed(head, "written"),
        reviewed=signed(head, "reviewed"),
        replaced_by=text(head, "replaced_by"),
        drive=choice_or_none(Drive, head, "drive"),
        why=text(head, "why"),
        asks=_asks(head),
        lists=named_lists(head, "lists"),
        silences=silences_in(source.file, source.text),
        broken=broken,
    )


def _symptom(head: Map) -> Symptom:
    node = map_(head, "symptom") or EMPTY
    return Symptom(
        words=texts(head, "symptom") or texts(node, "words"),
        lamps=texts(node, "lamps"),
        codes=texts(node, "codes"),
        fitted_elsewhere=texts(node, "fitted_elsewhere"),
        during=texts(node, "during"),
    )


def _asks(head: Map) -> tuple[Question, ...]:
    asks = map_(head, "asks") or EMPTY
    return tuple(
        Question(
            name=name,
            ask=the_text(node, "ask"),
            one_of=texts(node, "one_of"),
            codes=named_texts(node, "codes"),
            kind=choice_of(ValueKind, node, "is", ValueKind.TEXT),
        )
        for name, node in asks.items()
        if isinstance(node, Map)
    )
