"""The search against the site engine's own: `find.py --trees 1000`, `find.py --demo`.

In: a number of generated trees, or the demo shop. Out: figures on the screen. With `--trees`: size
of the index, first result on a slow line, time of a query in both. With `--demo`: how many queries
of `tests/demo/queries.yml` find their tree, in both; and of the other sets there, how many find
their tree, get none where the shop has none, and show a safety line. The peer is a stock Material
site of the same trees, with its own search (lunr) and default settings. `--no-peer` leaves it out
(at 10,000 trees its build alone takes minutes). Not part of the test suite: it is run by hand, on
a quiet machine.
"""

import argparse
import gzip
import os
import random
import shutil
import statistics
import subprocess
import sys
import tempfile
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import yaml
from playwright.sync_api import Browser, Page, sync_playwright

from builder.check.unchecked_library import read_library
from builder.find.page_data import search_script
from builder.find.ranking import answer_query
from builder.find.search_table import search_table
from builder.find.symptom_index import SymptomIndex, build_symptom_index
from builder.model.library import Library
from builder.model.tree import Tree
from builder.reader.trees import read_tree, tree_files

ROOT = Path(__file__).parents[2]
STATIC = ROOT / "builder" / "web"
SLOW = {"offline": False, "latency": 150, "downloadThroughput": 200_000, "uploadThroughput": 96_000}
HOME = """<!doctype html><html lang="en"><meta charset="utf-8"><title>Home</title>
<link rel="stylesheet" href="assets/site.css"><script src="assets/site.js"></script>
<script src="assets/dom.js" defer></script><script src="assets/search.js" defer></script>
<h1>Home</h1><div id="find"></div></html>"""
# Types a query into a box and gives back the milliseconds until the list of results has changed.
TYPED = """([box, list, query, patience]) => new Promise((done) => {
  const input = document.querySelector(box), results = document.querySelector(list);
  const type = (text, then) => {
    input.value = text;
    const start = performance.now();
    let timer;
    const watch = new MutationObserver(() => end(performance.now() - start));
    const end = (took) => { clearTimeout(timer); watch.disconnect(); then(took); };
    watch.observe(results, {childList: true, subtree: true, characterData: true});
    timer = setTimeout(() => end(-1), patience);
    for (const name of ["input", "keyup"]) input.dispatchEvent(new Event(name, {bubbles: true}));
  };
  type("", () => setTimeout(() => type(query, done), 20));
})"""


class Compressing(SimpleHTTPRequestHandler):
    """Serve a folder as any ordinary host does: compressed."""

    protocol_version = "HTTP/1.1"

    def do_GET(self) -> None:
        """Send one file."""
        path = Path(self.translate_path(self.path))
        path = path / "index.html" if path.is_dir() else path
        if not path.is_file():
            self.send_error(404)
            return
        body = gzip.compress(path.read_bytes(), 6)
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(str(path)))
        self.send_header("Content-Encoding", "gzip")
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body)

    def log_message(self, *_: object) -> None:
        """Say nothing."""


@contextmanager
def served(folder: Path) -> Iterator[str]:
    """Serve a folder while the block runs."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Compressing, directory=str(folder)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}/"
    server.shutdown()


def our_site(folder: Path, library: Library) -> Path:
    """Write a first page with the search."""
    shutil.copytree(STATIC, folder / "assets")
    (folder / "index.html").write_text(HOME)
    script = search_script(search_table(library))
    (folder / "assets" / "search-data.js").write_text(script, "utf-8")
    return folder


def peer_site(folder: Path, trees: Iterator[Tree]) -> Path:
    """Build a stock site of the same trees: title, symptom, codes and the text of all steps."""
    for tree in trees:
        page = folder / "docs" / f"{tree.id}.md"
        page.parent.mkdir(parents=True, exist_ok=True)
        page.write_text(as_markdown(tree), "utf-8")
    (folder / "docs" / "index.md").write_text("# Home\n")
    (folder / "mkdocs.yml").write_text(
        "site_name: Peer\nuse_directory_urls: false\nnav: [{Home: index.md}]\nplugins: [search]\n"
        "theme: {name: material, font: false}\n"
    )
    command = [sys.executable, "-m", "mkdocs", "build", "-q", "-d", "site"]
    quiet = {**os.environ, "NO_MKDOCS_2_WARNING": "1"}
    subprocess.run(command, cwd=folder, check=True, env=quiet)
    return folder / "site"


def as_markdown(tree: Tree) -> str:
    """Write a tree as a plain page."""
    said = [f"- {words}" for words in (*tree.symptom.words, *tree.symptom.codes)]
    steps = [f"## {step.text}\n\n{step.note or ''}" for step in tree.steps.values()]
    return "\n".join([f"# {tree.title}", "", *said, "", *steps, ""])


def queries_from(library: Library, number: int) -> list[str]:
    """Take phrases of the trees: half as they are, the rest short or with a letter left out."""
    chance = random.Random(7)
    phrases = [str(words) for tree in library.trees.values() for words in tree.symptom.words]
    made = []
    for at, phrase in enumerate(chance.choices(phrases, k=number)):
        words = phrase.split()
        if at % 4 == 2:
            words = words[:2]
        if at % 4 == 3:
            longest = max(words, key=len)
            cut = chance.randrange(1, len(longest))
            words[words.index(longest)] = longest[:cut] + longest[cut + 1 :]
        made.append(" ".join(words))
    return made


def times(page: Page, box: str, listed: str, queries: list[str]) -> list[float]:
    """Milliseconds of each query, typed into a page; the first few warm it up and are left out."""
    took = [page.evaluate(TYPED, [box, listed, query, 3000]) for query in [*queries[:10], *queries]]
    return [one for one in took[10:] if one >= 0]


def spread(name: str, took: list[float]) -> float:
    """Print median, 95th percentile and longest; return the 95th percentile."""
    high = statistics.quantiles(took, n=20)[-1]
    print(f"{name}: median {statistics.median(took):.1f} ms, 95th percentile {high:.1f} ms, "
          f"longest {max(took):.1f} ms of {len(took)}")  # fmt: skip
    return high


def first_result(browser: Browser, address: str, query: str) -> None:
    """Print how long the first result takes on a slow line, from a cold cache."""
    page = browser.new_page()
    page.context.new_cdp_session(page).send("Network.emulateNetworkConditions", SLOW)
    page.goto(address)
    took = page.evaluate(TYPED, ["#find-words", ".find-hits", query, 60000])
    print(f"first result, 1.6 Mbit/s and 150 ms, from the first letter: {took / 1000:.2f} s")
    page.close()


def compressed(text: str) -> int:
    """Return the bytes of a text as an ordinary host sends it."""
    return len(gzip.compress(text.encode(), 6))


def speed(shop: Path, *, peer: bool) -> None:
    """Print sizes and times over the trees of a shop."""
    library, _ = read_library(shop)
    queries = queries_from(library, 200)
    index = compressed(search_script(search_table(library)))
    scripts = sum(compressed(file.read_text("utf-8")) for file in STATIC.glob("search-*.js"))
    print(f"{len(library.trees)} trees, index {index / 1000:.0f} kB and scripts "
          f"{scripts / 1000:.0f} kB compressed")  # fmt: skip
    with sync_playwright() as playwright, tempfile.TemporaryDirectory() as folder:
        browser = playwright.chromium.launch(
            executable_path=shutil.which("chromium"), args=["--no-sandbox"]
        )
        with served(our_site(Path(folder) / "ours", library)) as address:
            first_result(browser, address, queries[0])
            page = browser.new_page()
            page.goto(address + "#q=start")
            page.wait_for_timeout(1500)
            ours = spread("a query, ours", times(page, "#find-words", ".find-hits", queries))
        if peer:
            trees = (read_tree(shop, file)[0] for file in tree_files(shop))
            site = peer_site(Path(folder) / "peer", (tree for tree in trees if tree))
            with served(site) as address:
                page = opened_peer(browser, address)
                theirs = spread("a query, peer", times(page, *PEER, queries[:100]))
            print(f"95th percentile: the peer's is {theirs / ours:.0f} times ours")
        browser.close()


PEER = ("[data-md-component=search-query]", "[data-md-component=search-result]")


def opened_peer(browser: Browser, address: str) -> Page:
    """Open the peer's search and wait until it is ready."""
    page = browser.new_page()
    page.goto(address)
    page.focus(PEER[0])
    page.wait_for_timeout(8000)
    return page


def limits(index: SymptomIndex) -> None:
    """Print what the search makes of stories, of complaints without a tree, and of danger."""
    folder = ROOT / "tests" / "demo"
    stories, rows, danger = (
        yaml.safe_load((folder / f"queries-{name}.yml").read_text())
        for name in ("stories", "uncovered", "danger")
    )
    places = [
        place(tree, [hit.id for hit in answer_query(index, case["query"]).hits])
        for tree, cases in stories.items()
        for case in cases
    ]
    found = (sum(at == 1 for at in places), sum(at <= 3 for at in places))
    print("stories: first {}, among the first three {} of {}".format(*found, len(places)))
    answers = [answer_query(index, row if isinstance(row, str) else row["query"]) for row in rows]
    print(f"no tree: {sum(not one.trees for one in answers)} of {len(answers)}, "
          f"false alarms {sum(bool(one.safety) for one in answers)}")  # fmt: skip
    shown = sum(bool(answer_query(index, query).safety) for query in danger)
    print(f"danger: safety line for {shown} of {len(danger)}")


def quality() -> None:
    """Print how many queries find their tree, first and among the first three, in both."""
    library, _ = read_library(ROOT)
    index = build_symptom_index(search_table(library))
    limits(index)
    asked = yaml.safe_load((ROOT / "tests" / "demo" / "queries.yml").read_text())
    cases = [(case["query"], tree) for tree, cases in asked.items() for case in cases]
    ours = [
        place(tree, [hit.id for hit in answer_query(index, query).hits]) for query, tree in cases
    ]
    trees = (read_tree(ROOT, file)[0] for file in tree_files(ROOT))
    with sync_playwright() as playwright, tempfile.TemporaryDirectory() as folder:
        browser = playwright.chromium.launch(
            executable_path=shutil.which("chromium"), args=["--no-sandbox"]
        )
        site = peer_site(
            Path(folder), (tree for tree in trees if tree and tree.status != "retired")
        )
        with served(site) as address:
            page = opened_peer(browser, address)
            theirs = [place(tree, peer_finds(page, query, address)) for query, tree in cases]
        browser.close()
    for name, places in (("ours", ours), ("peer", theirs)):
        first = sum(at == 1 for at in places) / len(places)
        three = sum(at <= 3 for at in places) / len(places)
        print(f"{name}: first {first:.1%}, among the first three {three:.1%} of {len(places)}")


def peer_finds(page: Page, query: str, address: str) -> list[str]:
    """Return the ids of the trees that the peer lists, in its order."""
    page.evaluate(TYPED, [*PEER, query, 3000])
    page.wait_for_timeout(250)
    links = page.eval_on_selector_all(
        ".md-search-result__item > a:first-of-type", "all => all.map((one) => one.href)"
    )
    pages = [link.removeprefix(address).split(".html")[0] for link in links]
    return list(dict.fromkeys(pages))


def place(tree: str, found: list[str]) -> int:
    """Return where a tree stands, from 1; 99 if it was not found."""
    return found.index(tree) + 1 if tree in found else 99


def main() -> None:
    """Run what was asked for."""
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--trees", type=int, default=1000)
    options.add_argument("--demo", action="store_true")
    options.add_argument("--no-peer", action="store_true")
    asked = options.parse_args()
    if asked.demo:
        quality()
        return
    with tempfile.TemporaryDirectory() as folder:
        script = Path(__file__).parent / "generate.py"
        command = [sys.executable, str(script), folder, "--trees", str(asked.trees)]
        subprocess.run(command, check=True)
        shutil.copy(ROOT / "kb" / "words.yml", Path(folder) / "kb" / "words.yml")
        speed(Path(folder), peer=not asked.no_peer)


if __name__ == "__main__":
    main()
