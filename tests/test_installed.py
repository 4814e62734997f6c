"""Baytree works from an installed package, on a shop that is not this repository."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build the wheel and unpack it where nothing else of ours lies."""
    folder = tmp_path_factory.mktemp("installed")
    pip = [sys.executable, "-m", "pip", "--disable-pip-version-check", "-q"]
    build = [*pip, "wheel", "--no-deps", "--no-build-isolation", "-w", str(folder), str(ROOT)]
    subprocess.run(build, check=True)
    (wheel,) = folder.glob("baytree-*.whl")
    subprocess.run([*pip, "install", "--no-deps", "--target", str(folder / "lib"), str(wheel)],
                   check=True)  # fmt: skip
    return folder / "lib"


def baytree(installed: Path, cwd: Path, *arguments: str) -> str:
    """Run the installed command away from the repository and return what it prints."""
    environment = os.environ | {"PYTHONPATH": str(installed), "XDG_CACHE_HOME": str(cwd / "cache")}
    command = [sys.executable, "-P", "-m", "builder.commands.main", *arguments]
    done = subprocess.run(command, cwd=cwd, env=environment, capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


def test_the_package_brings_all_it_needs(installed: Path, tmp_path: Path) -> None:
    """Check, site, prints and search of the tests' shop, from the wheel alone."""
    shop = Path(shutil.copytree(ROOT / "tests/shop", tmp_path / "shop"))
    where = baytree(installed, tmp_path, "--shop", str(shop), "check", "--today", "2026-10-01")
    assert where == "10 trees, 0 errors, 0 warnings\n"
    baytree(installed, tmp_path, "--shop", str(shop), "build", "--today", "2026-10-01")
    made = {path.relative_to(shop / "site").as_posix() for path in (shop / "site").rglob("*.*")}
    assert {"index.html", "trees/wipers/stop-halfway.html", "prints/wipers/stop-halfway.pdf",
            "schemas/tree.schema.json"} <= made  # fmt: skip
    found = baytree(installed, tmp_path, "--shop", str(shop), "find", "wipers", "stuck")
    assert "wipers/stop-halfway" in found


def test_a_new_shop_from_the_package(installed: Path, tmp_path: Path) -> None:
    """The templates are in the wheel as well."""
    baytree(installed, tmp_path, "start", "new")
    baytree(installed, tmp_path, "--shop", "new", "new", "tree", "charging/lamp-on")
    assert "1 tree, 0 errors" in baytree(installed, tmp_path, "--shop", "new", "check", "--strict")
