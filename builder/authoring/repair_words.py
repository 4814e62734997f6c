"""A fix of a draft: what it names is in the draft too, or is said in words.

In: the fix as its author wrote it, the names of the draft's steps. Out: the same with `verify`,
`proved_by`, `still_there` and quoted readings that hold in the draft.
"""

import re
from collections.abc import Iterator, Mapping
from typing import Any

from builder.authoring.source_steps import SourceStep
from builder.model.checks import Check
from builder.model.tree import Tree
from builder.reader.step_references import QUOTED_STEP

_SENTENCE = re.compile(r"(?<=[.!?])\s+")
_QUOTE = re.compile(r"<[^<>]*>")
_LONGEST = 120  # characters of a test in words
Names = Mapping[tuple[str, str], str]
Words = dict[str, Any]


def fix_words(words: Words, source: SourceStep, names: Names, again: str) -> Words:
    """Return a fix for the draft; `again` is where the path went on after it, "" if nowhere."""
    tree = source.tree
    fix = {key: value for key, value in words.items() if key != "still_there"}
    back = again or names.get((tree.id, str(words.get("still_there"))), "")
    fix |= {"still_there": back} if back else {}
    for key in ("fix", "cause", "tell"):
        if key in fix:
            fix[key] = _quoting(fix[key], tree, names, is_whole=key != "tell")
    fix["verify"] = [_test(one, tree, names) for one in fix.get("verify", ())]
    proofs = ({names[(tree.id, step)]: results} for one in fix.get("proved_by", ())
              for step, results in one.items() if (tree.id, step) in names)  # fmt: skip
    fix["proved_by"] = [*proofs]
    return {key: value for key, value in fix.items() if value}


def _quoting(text: str, tree: Tree, names: Names, *, is_whole: bool) -> str:
    """Return a text that quotes steps of the draft only; of a whole one no sentence is dropped."""

    def named(match: re.Match[str]) -> str:
        return f"<{names.get((tree.id, match[1]), match[1])}"

    def is_strange(quote: str) -> bool:
        match = QUOTED_STEP.match(quote)
        return bool(match and match[1] in tree.steps and (tree.id, match[1]) not in names)

    if is_whole:
        text = _QUOTE.sub(lambda quote: "the reading" if is_strange(quote[0]) else quote[0], text)
    sentences = (one for one in _SENTENCE.split(text)
                 if not any(map(is_strange, _QUOTE.findall(one))))  # fmt: skip
    return QUOTED_STEP.sub(named, " ".join(sentences))


def _test(written: Any, tree: Tree, names: Names) -> Any:
    """Return a test after the repair; a check that the draft hasn't is said in words."""
    name, passes = next(iter(written.items())) if isinstance(written, dict) else (written, "")
    if name not in tree.steps:
        return written
    if (tree.id, name) in names:
        here = names[(tree.id, name)]
        return {here: passes} if passes else here
    step = tree.steps[name]
    wanted = ", ".join(_wanted(passes)) or _first_pass(step.body)
    return f"{step.text} ({wanted})"[:_LONGEST] if wanted else f"{step.text} again"


def _wanted(passes: Any) -> Iterator[str]:
    if isinstance(passes, dict):
        yield from (f"{name} {text}" for name, text in passes.items())
    elif passes:
        yield " or ".join(passes) if isinstance(passes, list) else str(passes)


def _first_pass(body: object) -> str:
    """Return what passes where the author didn't say: within spec, or a procedure's first word."""
    if not isinstance(body, Check):
        return ""
    if any(reading.spec for reading in body.readings):
        return "within spec"
    return str(body.results[0].text) if body.by and body.results else ""
