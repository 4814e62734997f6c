"""A picture that is missing from `kb/how-to/pictures/`, or too large for a phone in the bay.

Why: Without it the step doesn't show where the probes go; at 5 MB it shows it a minute later.

Wrong:

    plug:
      check: Is there voltage at the connector?
      when: [key-on]
      picture: {file: steering-plgu.svg, shows: Pin 1 power and pin 2 ground}
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    plug:
      check: Is there voltage at the connector?
      when: [key-on]
      picture: {file: steering-plug.svg, shows: Pin 1 power and pin 2 ground}
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Put the file into `kb/how-to/pictures/` under that name; draw it as SVG, or make it smaller.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Position
from builder.rules.shared.article_links import links_in
from builder.rules.shared.close_names import suggestion
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="picture",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A picture that is missing or too large.",
)
LARGEST = 300 * 1024  # bytes: 1.5 s at the 1.6 Mbit/s of a phone behind a wall
FOLDER = "how-to/pictures/"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every picture of a step that is missing or too large."""
    for step in facts.steps:
        if step.picture:
            yield from _picture(facts.library, step.picture.file.at, str(step.picture.file))


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every picture of an article that is missing or too large."""
    for article in library.how_tos.values():
        for link in links_in(article):
            if link.is_picture:
                name = link.path.removeprefix(FOLDER)
                yield from _picture(library, link.at, name)


def _picture(library: Library, at: Position, name: str) -> Iterator[Finding]:
    size = library.pictures.get(name, 0)
    if name not in library.pictures:
        hint = suggestion(name, library.pictures, "put the file into kb/how-to/pictures/")
        why = "the step doesn't show where the probes go"
        yield RULE.finding(at, f"picture `{name}` doesn't exist", why, hint)
    elif size > LARGEST:
        message = f"picture `{name}` has {size // 1024} KiB; limit {LARGEST // 1024} KiB"
        why = "on a phone in the bay it loads after the job is done"
        yield RULE.finding(at, message, why, "draw it as SVG, or make it smaller")
