"""A line in the column of a list's dashes that has no dash itself.

In: the lines of a file, and the line at which YAML stopped. Out: the slip, or None.
"""

from builder.reader.line_forms import (
    KEY_LINE,
    LineChange,
    LineSlip,
    content_above,
    has_content,
    indent_of,
    indented,
    words_of_the_format,
)


def missing_dash(lines: list[str], line: int) -> LineSlip | None:
    """Find a line in the column of a list's dashes that has none, and names with dashes."""
    indent = indent_of(lines[line])
    if lines[line].lstrip().startswith("-"):
        return None
    for at in range(line - 1, -1, -1):
        if has_content(lines[at]) and indent_of(lines[at]) <= indent:
            break
    else:
        return None
    if indent_of(lines[at]) != indent or not lines[at].lstrip().startswith("- "):
        return None
    if lines[content_above(lines, at)].strip() == "steps:":
        name = lines[at].strip(" -").partition(":")[0]
        return LineSlip(at, indent, f"there is a dash before the step `{name}`",
                        f"write `{name}:`; only results and phrases are lists",
                        LineChange(at, indent, "- ", ""))  # fmt: skip
    key, first = KEY_LINE.fullmatch(lines[line].rstrip()), KEY_LINE.match(lines[at])
    if key and first and key[3] and not first[3] and key[2] in words_of_the_format():
        return _behind_the_list(lines, line, key[2])
    if key and first and key[3] and key[2] != first[2]:
        column = first.start(2) + 1
        return LineSlip(line, indent, f"`{key[2]}` starts in column {indent + 1}, "
                                      f"`{first[2]}` above it in column {column}",
                        f"start it in column {column}, under `{first[2]}`",
                        indented(line, indent, column - 1))  # fmt: skip
    return LineSlip(line, indent, "the lines above start with `- `, this one doesn't",
                    f"write `- {lines[line].strip()}`",
                    LineChange(line, indent, "", "- "))  # fmt: skip


def _behind_the_list(lines: list[str], line: int, key: str) -> LineSlip:
    """Return the slip for a key that kept the column of the phrases above it."""
    indent = indent_of(lines[line])
    above = range(line - 1, -1, -1)
    owner = next((at for at in above if has_content(lines[at]) and indent_of(lines[at]) < indent),
                 line)  # fmt: skip
    wanted, name = indent_of(lines[owner]), lines[owner].strip().partition(":")[0]
    return LineSlip(line, indent, f"`{key}` starts in column {indent + 1}, among the lines of "
                                  f"`{name}`",
                    f"start it in column {wanted + 1}, under `{name}`",
                    indented(line, indent, wanted))  # fmt: skip
