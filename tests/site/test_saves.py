"""`baytree serve` as a process, under saves that come faster than any author's.

The suite does 50 saves in about fifteen seconds; `SAVES=200` does all 200 in a minute.
"""

import os
import random
import re
import signal
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import builder

SAVES = int(os.environ.get("SAVES", "50"))
EVERY = 0.3  # seconds from one save to the next: 200 in a minute
PATIENCE = 240  # seconds; anything longer is a hang
TREE, HAZARDS, SITE = "trees/horn/silent.yml", "kb/hazards.yml", "site_config/mkdocs.yml"
PAGES = ("index.html", "findings.html", "about.html", "tools.html", "systems/horn.html",
         "trees/horn/silent.html", "trees/wipers/stop-halfway.html",
         "assets/search-data.js")  # fmt: skip
Save = Callable[[Path, str], None]
# A save, each of its findings, and where the site is.
REPORT = re.compile(r"\d\d:\d\d:\d\d  \d+\.\d\d s  \w|  \S+:\d+:\d+: (error|warning): |Serving at ")


def write(file: Path, text: str) -> None:
    """Save as most programs do."""
    file.write_text(text, "utf-8")


def truncate_and_write(file: Path, text: str) -> None:
    """Save slowly: empty, then half, then all."""
    with file.open("w", encoding="utf-8") as opened:
        for part in ("", text[: len(text) // 2], text[len(text) // 2 :]):
            opened.write(part)
            opened.flush()
            time.sleep(0.02)


def delete_and_create(file: Path, text: str) -> None:
    """Save as some editors do: delete the old file first."""
    file.unlink()
    time.sleep(0.02)
    write(file, text)


def rename_over(file: Path, text: str) -> None:
    """Save as careful programs do."""
    new = file.with_suffix(".tmp")
    write(new, text)
    new.replace(file)


def break_and_repair(file: Path, text: str) -> None:
    """Leave an error long enough for a build to start."""
    write(file, text.replace(": ", ":: ", 3) + "{")
    time.sleep(0.2)
    write(file, text)


def garbage(file: Path, text: str) -> None:
    """Save bytes that aren't text, then repair the file."""
    file.write_bytes(b"\xff\xfe\0" + random.Random(1).randbytes(500))
    time.sleep(0.1)
    write(file, text)


def folder_away_and_back(file: Path, text: str) -> None:
    """Check out another branch and come back: the folder is gone for a moment."""
    away = file.parent.with_name("away")
    write(file, text)
    file.parent.rename(away)
    time.sleep(0.1)
    away.rename(file.parent)


KINDS: tuple[Save, ...] = (write, truncate_and_write, delete_and_create, rename_over,
                           break_and_repair, garbage, folder_away_and_back)  # fmt: skip


def versions(shop: Path) -> dict[str, tuple[str, str]]:
    """Return two valid versions of each file, between which the saves alternate."""
    tree, hazards = ((shop / name).read_text("utf-8") for name in (TREE, HAZARDS))
    return {
        TREE: (tree, tree.replace("title: Horn is silent", "title: Horn is weak")),
        HAZARDS: (hazards, hazards.replace("close to the ear", "right at the ear")),
        SITE: ("copyright: Osei and Lind\n", "copyright: Lind and Osei\n"),
    }


@contextmanager
def serving(shop: Path, cache: Path, end: signal.Signals) -> Iterator[str]:
    """Run the command and yield its address; a signal ends it with status 0, and reports alone."""
    command = [
        sys.executable,
        "-m",
        "builder.commands.main",
        "--shop",
        str(shop),
        "serve",
        "--port",
        "0",
    ]
    ours, printed = str(Path(builder.__file__).parents[1]), cache.with_suffix(".txt")
    environment = os.environ | {"XDG_CACHE_HOME": str(cache), "PYTHONPATH": ours}
    with (
        printed.open("w") as out,
        subprocess.Popen(
            command,
            env=environment,
            text=True,
            stdout=out,
            stderr=subprocess.PIPE,
            # A shell lets what it runs in the background ignore the interrupt: ask for it here.
            preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL),
        ) as server,
    ):
        try:
            yield address_in(printed, server)
            assert server.poll() is None, "the server has ended"
            server.send_signal(end)
            _, err = server.communicate(timeout=PATIENCE)
            assert (server.returncode, err) == (0, "")
            assert all(REPORT.match(line) for line in printed.read_text("utf-8").splitlines())
        finally:
            server.kill()


def address_in(printed: Path, server: subprocess.Popen[str]) -> str:
    """Wait until the server prints its address."""
    while server.poll() is None:
        if match := re.search(r"http://\S+/", printed.read_text("utf-8")):
            return match[0]
        time.sleep(0.05)
    raise AssertionError("the server has ended")


def shown(address: str) -> dict[str, str]:
    """Return the pages as served, without the number of the build."""
    pages = {}
    for path in PAGES:
        try:
            with urllib.request.urlopen(address + path, timeout=60) as answer:
                text = answer.read().decode()
        except urllib.error.HTTPError as error:
            text = str(error.code)
        pages[path] = re.sub(r'data-version="\d+"', "", text)
    return pages


def test_serve_survives_saves_of_every_kind(shop: Path, tmp_path: Path) -> None:
    """It always answers, and in the end every page is as after a fresh start."""
    chance = random.Random(SAVES)
    texts = versions(shop)
    write(shop / SITE, texts[SITE][0])
    with serving(shop, tmp_path / "cache", signal.SIGINT) as address:
        for turn in range(SAVES):
            due = time.monotonic() + EVERY
            name = chance.choice(list(texts))
            KINDS[turn % len(KINDS)](shop / name, texts[name][chance.randrange(2)])
            with urllib.request.urlopen(address, timeout=60) as answer:
                assert answer.status == 200
            time.sleep(max(0, due - time.monotonic()))
        for name, (_, last) in texts.items():
            chance.choice(KINDS)(shop / name, last)
        with serving(shop, tmp_path / "another", signal.SIGTERM) as fresh:
            right = shown(fresh)
        assert "Horn is weak" in right["trees/horn/silent.html"]
        assert "right at the ear" in right["trees/horn/silent.html"]
        assert "Lind and Osei" in right["index.html"]
        end = time.monotonic() + PATIENCE
        while (now := shown(address)) != right and time.monotonic() < end:
            time.sleep(0.5)
        assert now == right
