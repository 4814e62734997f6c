"""A killed build leaves the old site unchanged."""

import hashlib
import random
import subprocess
import sys
import time
from pathlib import Path

import builder

from .conftest import build_shop

PATHS = [str(Path(__file__).parents[2] / "tests"), str(Path(builder.__file__).parents[1])]
CHILD = """
import sys
from pathlib import Path
sys.path[:0] = {paths!r}
from tests.site.conftest import build_shop
print("ready", flush=True)
build_shop(Path({shop!r}), Path({out!r}))
"""


def fingerprint(folder: Path) -> str:
    """Return one hash of all files in a folder."""
    hasher = hashlib.sha256()
    for file in sorted(file for file in folder.rglob("*") if file.is_file()):
        hasher.update(file.relative_to(folder).as_posix().encode() + b"\\0" + file.read_bytes())
    return hasher.hexdigest()


def test_a_build_killed_at_any_instant_leaves_a_whole_site(shop: Path, tmp_path: Path) -> None:
    """At every instant of a build the site is either the old one or the new one."""
    out, tree = tmp_path / "site", shop / "trees" / "horn" / "silent.yml"
    sound = tree.read_text()
    build_shop(shop, out)
    old = fingerprint(out)
    tree.write_text(sound.replace("Horn is silent", "Horn makes no sound"))
    build_shop(shop, tmp_path / "elsewhere", cached=False)
    new = fingerprint(tmp_path / "elsewhere")
    assert old != new

    script = CHILD.format(paths=PATHS, shop=str(shop), out=str(out))
    instants = random.Random(4)
    takes, whole = 1.0, []
    for _ in range(12):
        began = time.monotonic()
        child = subprocess.Popen([sys.executable, "-c", script], stdout=subprocess.PIPE)
        assert child.stdout
        child.stdout.readline()
        try:
            child.wait(instants.uniform(0, takes))
            takes = min(takes, time.monotonic() - began)
        except subprocess.TimeoutExpired:
            child.kill()
        child.communicate()
        whole.append(fingerprint(out))
        if whole[-1] == new:  # it finished: go back to the old one
            tree.write_text(sound)
            build_shop(shop, out)
            tree.write_text(sound.replace("Horn is silent", "Horn makes no sound"))
            assert fingerprint(out) == old
    assert set(whole) <= {old, new}
    build_shop(shop, out)
    assert fingerprint(out) == new
    assert not list(tmp_path.glob(".site.*")), "a work folder is left next to the site"
