"""A save under `baytree serve` beside a full build of the same shop: `serve.py --shop DIR`.

In: a shop, by default the demo. Out: for some files the processor time from a save to the page that
shows it, and which part of a build from scratch that is. A tree leads, then what trees name: the
more of them name it, the more are judged again.

Processor time is compared and not the clock, so that other work on the machine does not decide. A
pause of a tenth of a second until the save is noticed, and as long until the file has settled, come
on top. Not part of the test suite.
"""

import argparse
import os
import re
import resource
import shutil
import statistics
import subprocess
import sys
import tempfile
from pathlib import Path

from builder.commands.saved_shop import SavedShop
from builder.site.watch import file_times

ROOT = Path(__file__).parents[2]
SAVES = 20
# What is saved anew, in the first file that has it, and the page that is open.
CASES = (
    ("a check", "trees/*/*.yml", r"(?m)^( +check: ).*$", "trees/{}.html"),
    ("its title", "trees/*/*.yml", r"(?m)^(title: ).*$", "trees/{}.html"),
    ("an article", "kb/how-to/*.md", r"(?m)^(purpose: ).*$", "how-to/{}.html"),
    ("a procedure", "kb/procedures/*.yml", r"(?m)^(title: ).*$", "procedures/{}.html"),
    ("a hazard", "kb/hazards.yml", r"(?m)^( +hazard: ).*$", "walks/shop.js"),
    ("a tool of all", "kb/tools.yml", r"(?m)^( +name: ).*$", "tools.html"),
)


def used() -> float:
    """Return the processor seconds of this process and of those that it started."""
    times = map(resource.getrusage, (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN))
    return sum(one.ru_utime + one.ru_stime for one in times)


def full_build(shop: Path, out: Path) -> float:
    """Build the site from scratch; return the processor seconds."""
    before = used()
    command = (sys.executable, "-m", "builder.commands.main", "--shop", str(shop))
    environment = os.environ | {"PYTHONPATH": str(ROOT), "XDG_CACHE_HOME": str(out / "cache")}
    build = (*command, "build", "--no-prints", "--out", str(out / "site"))
    subprocess.run(build, check=True, env=environment, stdout=subprocess.DEVNULL)
    return used() - before


def saves(saved: SavedShop, file: Path, pattern: str, page: str) -> float:
    """Save a file again and again; return the median of the processor seconds."""
    text, seconds = file.read_text("utf-8"), []
    for turn in range(SAVES):
        changed = re.sub(pattern, lambda match, n=turn: f"{match[1]}Is it {n}?", text, count=1)
        file.write_text(changed, "utf-8")
        before = used()
        content = saved.check(file_times(saved.shop)).preview.file(page)
        seconds.append(used() - before)
        assert content, page
        assert f"Is it {turn}?" in content.decode(), page
    file.write_text(text, "utf-8")
    saved.check(file_times(saved.shop))
    return statistics.median(seconds)


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--shop", type=Path, default=ROOT)
    options = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder)
        os.environ["XDG_CACHE_HOME"] = str(place / "cache")
        for name in ("trees", "kb", "site_config"):
            shutil.copytree(options.shop / name, place / "shop" / name)
        full = full_build(place / "shop", place)
        print(f"{'full build':52}{full:6.2f} s", flush=True)
        saved = SavedShop(place / "shop")
        saved.check(file_times(saved.shop)).preview.file("index.html")
        for what, files, pattern, page in CASES:
            matches = (one for one in sorted(saved.shop.glob(files))
                       if re.search(pattern, one.read_text("utf-8")))  # fmt: skip
            file = next(matches)
            parts = file.relative_to(saved.shop).with_suffix("").parts
            id_ = "/".join(parts[1:] if parts[0] == "trees" else parts[2:])
            one = saves(saved, file, pattern, page.format(id_))
            name = file.relative_to(saved.shop).as_posix()
            print(f"{what:14}{name:38}{one:6.2f} s  {one / full:.3f} of it", flush=True)


if __name__ == "__main__":
    main()
