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
import json
import os
import re
import resource
import subprocess
import sys
import tempfile
from pathlib import Path

from builder.cache.database import cache_file, opened, rows
from builder.site.page_cache import BODY

ROOT = Path(__file__).parents[2]
TITLE = re.compile(r'<h1 id="title">(.*?)</h1>')
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
    environment = os.environ | {  # with compiled code, as installed commands have it
        "PYTHONPATH": str(ROOT),
        "NO_MKDOCS_2_WARNING": "1",
        "PYTHONDONTWRITEBYTECODE": "",
    }
    subprocess.run(command, check=True, cwd=cwd, stdout=subprocess.DEVNULL, env=environment)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    used = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return used, after.ru_maxrss / 1024


def build(shop: Path, out: Path) -> tuple[float, float]:
    """Build the site of a shop."""
    baytree = (sys.executable, "-m", "builder.commands.main", "--shop", str(shop))
    return run(*baytree, "build", "--no-prints", "--out", str(out))


def change_one(shop: Path) -> None:
    """Change a phrase in one tree."""
    files = sorted((shop / "trees").rglob("*.yml"))
    file = files[len(files) // 2]
    file.write_text(file.read_text("utf-8").replace("title: ", "title: Changed ", 1), "utf-8")


def stock(shop: Path, out: Path, to: Path) -> None:
    """Write the pages of a built site as a stock project, each whole in its Markdown."""
    with opened(shop) as cache:
        for path, body in rows(cache, BODY):
            title = TITLE.search((out / f"{path}.html").read_text("utf-8"))
            assert title, path
            file = to / "docs" / f"{path}.md"
            file.parent.mkdir(parents=True, exist_ok=True)
            head = f"---\ntitle: {json.dumps(title[1])}\n---\n\n{title[0]}\n\n"
            file.write_text(head + body.decode(), "utf-8")
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
            stock(shop, out, place / "stock")
            peer, room = run(sys.executable, "-m", "mkdocs", "build", "-q", cwd=place / "stock")
            print(f"stock build       {peer:7.1f} s  {room:5.0f} MB; ours {full / peer:.2f} of it")
        cache_file(shop).unlink()
        build(shop, place / "afresh")
        print("one tree changed gives the bytes of a full build:", same(out, place / "afresh"))


if __name__ == "__main__":
    main()
