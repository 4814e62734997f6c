"""The day of the change: the engine's successor reads the same folder.

It needs an environment of its own: `python -m venv DIR && DIR/bin/pip install zensical`, then
`ZENSICAL=DIR/bin/zensical`. Without that the test is left out.
"""

import json
import os
import re
import shutil
import subprocess
from pathlib import Path

import pytest

from builder.site.work import PLACEHOLDER

from .conftest import build_shop

ENGINE = os.environ.get("ZENSICAL", "")


@pytest.mark.skipif(not ENGINE, reason="set ZENSICAL to the successor's command")
def test_another_engine_frames_the_same_pages(shop: Path, tmp_path: Path) -> None:
    """No hook and no plugin of the engine is needed: another one frames every page as well."""
    build_shop(shop, tmp_path / "site")
    kept = json.loads((tmp_path / "cache" / "kept.json").read_text("utf-8"))
    for name in ("pages", "theme"):
        shutil.copytree(tmp_path / "cache" / name, tmp_path / "other" / name)
    shutil.copy(tmp_path / "cache" / "mkdocs.yml", tmp_path / "other")
    subprocess.run([ENGINE, "build"], cwd=tmp_path / "other", check=True, capture_output=True)
    for path in kept["pages"]:
        page = (tmp_path / "other" / "site" / f"{path}.html").read_text("utf-8")
        assert page.count(PLACEHOLDER) == 1, path
        assert "assets/site.css" in page
        assert not re.findall(r"<script(?![^>]*\ssrc=)", page), path
