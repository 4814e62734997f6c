"""A pull request from outside: a build runs none of it and publishes nothing from elsewhere."""

from collections.abc import Callable
from pathlib import Path

import pytest

from .conftest import build_shop

HOOK = """
from pathlib import Path
Path({mark!r}).touch()
"""


def test_building_a_stranger_s_shop_runs_no_code_of_it(
    shop: Path, tmp_path: Path, build: Callable[[Path], Path]
) -> None:
    """Templates, hooks and themes in a shop are never loaded."""
    mark = tmp_path / "ran"
    config = shop / "site_config"
    (config / "overrides/partials").mkdir(parents=True)
    run = f"cycler.__init__.__globals__.os.popen('touch {mark}').read()"
    for name in ("main.html", "base.html", "404.html", "partials/header.html"):
        (config / "overrides" / name).write_text(f"{{{{ {run} }}}}", "utf-8")
    (config / "hook.py").write_text(HOOK.format(mark=str(mark)), "utf-8")
    (config / "mkdocs.yml").write_text(
        f"hooks: [{config}/hook.py]\ntheme:\n  name: material\n  custom_dir: {config}/overrides\n"
        "plugins: [search]\nextra:\n  policy: none\n",
        "utf-8",
    )
    page = (build(shop) / "trees/horn/silent.html").read_text("utf-8")
    assert not mark.exists()
    assert "default-src 'none'" in page
    assert "popen" not in page


def test_a_broken_template_in_a_shop_stops_no_build(
    shop: Path, build: Callable[[Path], Path]
) -> None:
    """It isn't read, so it can't break anything."""
    (shop / "site_config/overrides").mkdir()
    (shop / "site_config/overrides/main.html").write_text("{% if %}", "utf-8")
    assert (build(shop) / "index.html").is_file()


def test_no_file_from_outside_is_published(
    shop: Path, tmp_path: Path, build: Callable[[Path], Path]
) -> None:
    """Links among assets or pictures bring nothing into the site."""
    (tmp_path / "outside.svg").write_text("<svg>secret</svg>", "utf-8")
    for folder in ("site_config/overrides/assets", "site_config/assets", "kb/how-to/pictures"):
        (shop / folder).mkdir(parents=True, exist_ok=True)
        (shop / folder / "x.svg").symlink_to(tmp_path / "outside.svg")
    site = build(shop)
    assert not list(site.rglob("x.svg"))
    assert not [file for file in site.rglob("*.svg") if b"secret" in file.read_bytes()]


def test_a_site_that_is_a_link_is_not_written_through(shop: Path, tmp_path: Path) -> None:
    """A link named `site` in a pull request can't replace a folder elsewhere."""
    build_shop(shop, tmp_path / "other")
    (shop / "site").symlink_to(tmp_path / "other")
    with pytest.raises(FileExistsError, match="is a link"):
        build_shop(shop, shop / "site")
