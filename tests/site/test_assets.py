"""The scripts as they are published: short, and they do what their sources do."""

import re

from builder.pages.walk_scripts import WALK_SCRIPTS
from builder.site.assets import SCRIPTS, fixed_files
from builder.site.short_scripts import short_scripts
from builder.web import WEB

MADE = "trade-data.js"  # written for each shop
LARGEST = 60_000  # bytes, unpacked


def test_texts_stay_as_they_are() -> None:
    """Blanks count in templates, nested ones, patterns; names that others use are kept."""
    script = """
      globalThis.shown = (part, kind) => `${part}: ${`${kind} pin`.trim()} x`; // a comment
      globalThis.split = (name) => /^(.*) ( .*)$/.exec(name);
    """
    short = short_scripts({"one.js": script})["one.js"]
    for kept in ("globalThis.shown", "} pin`", "} x`", "/^(.*) ( .*)$/"):
        assert kept in short
    assert "comment" not in short


def test_a_walk_weighs_little() -> None:
    """What a walk needs from its first step to its record; the rest is loaded where it comes."""
    files = fixed_files()
    assert sum(len(files[f"assets/{name}"]) for name in WALK_SCRIPTS if name != MADE) <= LARGEST
    job = (WEB / "walk-job.js").read_text("utf-8")
    loaded = {f"assets/{name}" for name in re.findall(r'"([\w-]+\.js)"', job)}
    assert len(loaded) > 5
    assert loaded <= {*files, *SCRIPTS}
