"""The whole build beside a stock site of the same pages: `build.py --trees 1000`.

In: a number of generated trees. Out: seconds of processor time and peak memory of

- `baytree build --no-prints`, check and charts included, into an empty folder;
- the same again with nothing changed, and with one tree changed, which has to give the bytes of a
  full build;
- a stock Material build of the same pages, the charts in their Markdown, a nav of one entry, its
  own search on.

Processor time is compared and not the clock, so that other work on the machine does not decide.
Not part of the test suite. With `--no-peer` the stock build is left out.
"""

import argparse
import os
import resource
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from builder.check.memory import cache_of

from builder.site.work import PLACEHOLDER

ROOT = Path(__file__).parents[2]
STOCK = """site_name: Stock
site_url: https://charts.example/
theme: {name: material, font: false}
plugins: [search]
nav: [{Home: index.md}]
use_directory_urls: false
validation: {omitted_files: ignore, not_found: ignore, anchors: ignore}
"""


def run(*command: str, cwd: Path = ROOT) -> tuple[float, float]:
    """Run a command; return its processor seconds and its peak memory in MB."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    environment = os.environ | {"PYTHONPATH": str(ROOT), "NO_MKDOCS_2_WARNING": "1"}
    subprocess.run(command, check=True, cwd=cwd, stdout=subprocess.DEVNULL, env=environment)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    used = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return used, after.ru_maxrss / 1024


def build(shop: Path, out: Path) -> tuple[float, float]:
    """Build the site of a shop."""
    return run(sys.executable, "-m", "builder.commands.main", "--shop", str(shop), "build", "--no-prints",
               "--out", str(out))  # fmt: skip


def change_one(shop: Path) -> None:
    """Change a phrase in one tree."""
    files = sorted((shop / "trees").rglob("*.yml"))
    file = files[len(files) // 2]
    file.write_text(file.read_text("utf-8").replace("title: ", "title: Changed ", 1), "utf-8")


def stock(shop: Path, to: Path) -> None:
    """Write the pages of a built site as a stock project, each whole in its Markdown."""
    work = cache_of(shop) / "build"
    for file in (work / "pages").rglob("*.md"):
        path = file.relative_to(work / "pages")
        body = (work / "bodies" / path.with_suffix(".html")).read_text("utf-8")
        (to / "docs" / path).parent.mkdir(parents=True, exist_ok=True)
        text = file.read_text("utf-8").replace(PLACEHOLDER, body)
        (to / "docs" / path).write_text(text, "utf-8")
    (to / "mkdocs.yml").write_text(STOCK, "utf-8")


def same(one: Path, other: Path) -> bool:
    """Whether two folders hold the same files with the same bytes."""

    def files(folder: Path) -> dict[str, bytes]:
        found = (file for file in folder.rglob("*") if file.is_file())
        return {file.relative_to(folder).as_posix(): file.read_bytes() for file in found}

    return files(one) == files(other)


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--trees", type=int, default=1000)
    parser.add_argument("--no-peer", action="store_true")
    options = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder)
        os.environ["XDG_CACHE_HOME"] = str(place / "cache")
        shop, out = place / "shop", place / "site"
        run(sys.executable, "tests/bench/generate.py", str(shop), "--trees", str(options.trees))
        full, memory = build(shop, out)
        print(f"full build        {full:7.1f} s  {memory:5.0f} MB", flush=True)
        again, _ = build(shop, out)
        print(f"nothing changed   {again:7.1f} s  {again / full:.3f} of the full build", flush=True)
        change_one(shop)
        one, _ = build(shop, out)
        print(f"one tree changed  {one:7.1f} s  {one / full:.3f} of the full build", flush=True)
        if not options.no_peer:
            stock(shop, place / "stock")
            peer, room = run(sys.executable, "-m", "mkdocs", "build", "-q", cwd=place / "stock")
            print(f"stock build       {peer:7.1f} s  {room:5.0f} MB; ours {full / peer:.2f} of it")
        shutil.rmtree(cache_of(shop))
        build(shop, place / "afresh")
        print("one tree changed gives the bytes of a full build:", same(out, place / "afresh"))


if __name__ == "__main__":
    main()
