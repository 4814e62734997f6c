"""Blanks of a procedure whose brackets were forgotten: `part` in place of `<part>`.

In: the steps of a procedure, and what it takes. Out: each such step with its finding. Such a step
counts as unread: what the rules would say of it only follows from there.
"""

from collections.abc import Iterable, Iterator

from builder.model.checks import Check
from builder.model.finding import Finding, edit_of, with_edit
from builder.model.text import Text
from builder.model.tree import Question, Step, ValueKind
from builder.reader.source import mistake


def bare_blanks(steps: Iterable[Step], taken: Iterable[Question]) -> Iterator[tuple[Step, Finding]]:
    """Yield a finding for every name of something where it is a blank's own name."""
    blanks = {str(one.name) for one in taken if one.kind is not ValueKind.TEXT}
    for step in steps:
        for name, written in _names(step):
            if name in blanks:
                right = f"{written.removesuffix(name)}<{name}>"
                yield step, with_edit(mistake(
                    "bad-value", written.at, f"`{name}` is a blank of this procedure",
                    "the walk would look for something of that name", f"write `{right}`",
                ), edit_of(written, right))  # fmt: skip


def _names(step: Step) -> Iterator[tuple[str, Text]]:
    """Yield the parts, specs, loads and modules that a step names, each with the text it ends."""
    where = step.where
    texts = [where.part, where.fuse] if where else []
    texts += [need.value for need in step.needs]
    if isinstance(step.body, Check):
        texts += [*step.body.with_.values(), *(one.spec for one in step.body.readings)]
    yield from ((str(text), text) for text in texts if text is not None)
    yield from ((deed.module, deed.text) for deed in step.does if deed.module)
