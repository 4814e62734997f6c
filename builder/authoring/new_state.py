"""A new state of the vehicle to fill in, at the end of the shop's list of states.

In: a shop and a name. Out: the file, or why nothing was added to it. All that was there stays.
"""

from pathlib import Path

from builder.authoring.new_file import write_new
from builder.authoring.not_written import NotWritten
from builder.reader.knowledge_files import read_knowledge
from builder.reader.source import leads_out

FILE = "kb/conditions.yml"
_TEMPLATE = Path(__file__).parent / "templates" / "state.yml"


def new_state(shop: Path, name: str) -> Path | NotWritten:
    """Add a state; raises OSError where the file can't be written."""
    path = shop / FILE
    words = name.replace("-", " ")
    text = _TEMPLATE.read_text(encoding="utf-8")
    text = text.replace("THE-STATE", name).replace("the words ", f"{words} ".ljust(10))
    if not path.exists():
        return write_new(shop, FILE, text.lstrip())
    known = read_knowledge(shop)[0].conditions
    if not known and path.stat().st_size:
        return NotWritten(f"{FILE} can't be read, so nothing is added to it",
                          "correct what `baytree check` says about it first")  # fmt: skip
    if name in known:
        return NotWritten(
            f"the state `{name}` is already in {FILE}", "change it there, or choose another name"
        )
    if leads_out(shop, path):
        return NotWritten(f"{FILE} is outside the shop, because a link leads there",
                          "delete the link, and put the file itself in its place")  # fmt: skip
    written = path.read_bytes()
    line_end = b"\r\n" if b"\r\n" in written else b"\n"
    gap = b"" if not written or written.endswith(b"\n") else line_end
    path.write_bytes(written + gap + text.encode().replace(b"\n", line_end))
    return path
