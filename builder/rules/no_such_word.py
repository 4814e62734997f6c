"""A word that the procedure doesn't list in `returns`: as the result of a step that runs it, or
after `return` in the procedure itself.

Why: A result that never comes hides the one that does. A word that isn't listed leads nowhere.

Wrong:

    # kb/procedures/feed-proof.yml
    title: Is the feed good under load?
    returns: [good, bad, blown fuse]
    steps:
      bulb:
        check: Does a headlight bulb glow at the pins?
        results:
          - {result: yes, return: good}
          - {result: no, branch: fuse}
      fuse:
        check: Is the fuse good?
        results:
          - {result: yes, return: bad}
          - {result: no, return: fuse}
    # trees/charging/case.yml
    steps:
      feed:
        check: Is the feed good at the radio?
        by: feed-proof
        results:
          - {result: good, branch: all-good}
          - {result: bad, branch: repair}
          - {result: blown fuse, branch: repair}
          - {result: loose pin, branch: repair}

Right:

    # kb/procedures/feed-proof.yml
    title: Is the feed good under load?
    returns: [good, bad, blown fuse]
    steps:
      bulb:
        check: Does a headlight bulb glow at the pins?
        results:
          - {result: yes, return: good}
          - {result: no, branch: fuse}
      fuse:
        check: Is the fuse good?
        results:
          - {result: yes, return: bad}
          - {result: no, return: blown fuse}
    # trees/charging/case.yml
    steps:
      feed:
        check: Is the feed good at the radio?
        by: feed-proof
        results:
          - {result: good, branch: all-good}
          - {result: bad, branch: repair}
          - {result: blown fuse, branch: repair}

Fix: Write the word as `returns` has it, or add it there and to every step that runs the procedure.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.rules.shared.close_names import slip_edit, suggestion
from builder.rules.shared.procedure_steps import meant_procedure, other_word, steps_that_run
from builder.rules.shared.renamed_word import renamed_word, returned_words
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="no-such-word",
    family=Family.PROCEDURES,
    severity=Severity.ERROR,
    summary="A word that the procedure doesn't return.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every result of a step that its procedure doesn't return."""
    for running in steps_that_run(facts):
        if meant := meant_procedure(facts, running):
            yield RULE.finding(
                running.by.at,
                f"`{running.by}` returns none of these results, and `{meant}` all of them",
                "the tech comes back with a word that leads nowhere",
                f"write `by: {meant}`",
            )
            continue
        words, other = running.procedure.returns, other_word(running)
        for result in running.check.results:
            if result.text not in words:
                yield RULE.finding(
                    result.text.at,
                    f"`{running.by}` never returns `{result.text}`",
                    "the tech waits for a result that can't come",
                    f"write `{other[1]}`: it is the one word that has no result here"
                    if other
                    else suggestion(
                        result.text,
                        words,
                        "return it from the procedure, or write the word that it returns",
                    ),
                    edit=slip_edit(result.text, words),
                )


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every `return` of a word that isn't listed."""
    for procedure in library.procedures.values():
        if renamed_word(library, procedure):
            continue  # said at `returns`
        returned = [*returned_words(procedure)]
        free = [word for word in procedure.returns if word not in returned]
        for word in returned:
            if word not in procedure.returns:
                yield RULE.finding(
                    word.at,
                    f"`{word}` isn't in `returns`",
                    "the steps that run this procedure have no result for it",
                    f"write `{free[0]}`: it is the one word of `returns` that no step returns"
                    if len(free) == 1
                    else suggestion(word, procedure.returns, f"add `{word}` to `returns`"),
                    edit=slip_edit(word, procedure.returns),
                )
