"""The engine's successor can frame the same folder.

It needs its own environment: `python -m venv DIR && DIR/bin/pip install zensical`, then
`ZENSICAL=DIR/bin/zensical`. Without it the test is skipped.
"""

import os
import re
import subprocess
from pathlib import Path

import pytest

from builder.check.unchecked_library import read_library
from builder.pages.contents import shop_pages
from builder.site.engine import engine_settings, write_engine_folder
from builder.site.page_frames import BODY, frame_form

ENGINE = os.environ.get("ZENSICAL", "")


@pytest.mark.skipif(not ENGINE, reason="set ZENSICAL to the successor's command")
def test_another_engine_frames_the_same_pages(shop: Path, tmp_path: Path) -> None:
    """The pages need no hook and no plugin of the engine: another one frames them all."""
    (tmp_path / "other").mkdir()
    library, _ = read_library(shop)
    forms = dict(frame_form(page) for page in shop_pages(library))
    write_engine_folder(tmp_path / "other", forms, engine_settings(library.shop))
    subprocess.run([ENGINE, "build"], cwd=tmp_path / "other", check=True, capture_output=True)
    for path in forms:
        page = (tmp_path / "other" / "site" / f"{path}.html").read_text("utf-8")
        assert page.count(BODY) == 1, path
        assert "assets/site.css" in page
        assert not re.findall(r"<script(?![^>]*\ssrc=)", page), path
