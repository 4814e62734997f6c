"""The demo checks clean, as every shop of a pull request has to."""

import re
from datetime import date
from pathlib import Path

from builder.cache.database import temporary
from builder.check.verdict import check

DATE = re.compile(r"\bdate: (\d{4}-\d\d-\d\d)\b")


def test_the_demo_has_no_finding(demo: Path) -> None:
    """Not even a warning, on the day of the newest date that is written in it."""
    files = [*(demo / "trees").rglob("*.yml"), *(demo / "kb").rglob("*.*")]
    texts = (file.read_text("utf-8") for file in files if file.suffix in (".yml", ".md"))
    today = max(day for text in texts for day in DATE.findall(text))
    with temporary() as cache:
        verdict = check(demo, cache, date.fromisoformat(today))
    assert verdict.findings == ()
    assert verdict.library.listings
