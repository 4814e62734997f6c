"""Whatever bytes a file holds: findings, quickly, and never a traceback."""

import os
import resource
import time
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.check.unchecked_library import read_library
from builder.model.finding import Finding
from builder.reader.articles import article_from
from builder.reader.source import MAX_FILE_BYTES, Source, decode
from builder.reader.trees import read_tree, tree_from, tree_id

SOUND = (Path(__file__).parents[1] / "shop/trees/horn/silent.yml").read_text(encoding="utf-8")
LAUGHS = b"a: &a [x,x,x,x,x,x,x,x,x]\n" + b"".join(
    f"{name}: &{name} [{','.join(['*' + before] * 9)}]\n".encode()
    for before, name in zip("abcdefgh", "bcdefghi", strict=True)
)
HOSTILE: dict[str, bytes] = {
    "empty": b"",
    "spaces": b"   \n \n",
    "a comment": b"# nothing else",
    "a list": b"- a\n- b\n",
    "a word": b"word",
    "NUL bytes": b"format: 2\x00\ntitle: x\n",
    "an escape": b"title: \x1b[31mred\n",
    "UTF-16": "format: 2\n".encode("utf-16"),
    "Latin-1": "title: Lüfter 20 °C\n".encode("latin-1"),
    "a lone surrogate": b"title: \xed\xa0\x80\n",
    "a cut character": b"title: \xc3",
    "a bomb of aliases": LAUGHS,
    "a loop of aliases": b"a: &a {b: *a}\n",
    "brackets without end": b"[" * 100_000,
    "braces without end": b"{a: " * 50_000,
    "dashes without end": b"- " * 100_000,
    "deep indentation": b"".join(b" " * n + b"a:\n" for n in range(900)),
    "question marks": b"? " * 50_000,
    "a line of a megabyte": b"title: " + b"x" * (MAX_FILE_BYTES - 100),
    "a key of a megabyte": b"x" * (MAX_FILE_BYTES - 100) + b": y",
    "a number of a megabyte": SOUND.replace("weight: 1", "weight: " + "9" * 900_000).encode(),
    "a range of a megabyte": SOUND.replace("result: sound", "result: " + "9" * 900_000).encode(),
    "an exponent": SOUND.replace("weight: 1", "weight: 1e999999999").encode(),
    "python tags": b"!!python/object/apply:os.system ['true']\n",
    "a directive": b"%YAML 9.9\n---\na: b\n",
    "many documents": b"---\na: b\n" * 5_000,
    "quotes without end": b'a: "' + b"x\n" * 50_000,
    "a merge key": b"a: {<<: {b: c}}\n",
    "a key that is a map": b"? {a: b}\n: c\n",
    "tabs only": b"\t\t\t\n",
    "windows line ends": SOUND.replace("\n", "\r\n").encode(),
    "a byte order mark": b"\xef\xbb\xbf" + SOUND.encode(),
    "steps as a list": SOUND.replace("steps:", "steps: []\nmore:").encode(),
    "no steps": b"format: 2\ntitle: x\nstatus: ready\nsystem: a\nsymptom: {words: [x]}\n",
    "steps of nothing": b"format: 2\nsteps: {a: , b: {}, c: [], d: x}\n",
    "path in a name": SOUND.replace("minutes: 2", "how_to: ../../etc/passwd", 1).encode(),
    "path in a picture": SOUND.replace(
        "minutes: 2", "picture: {file: ../../x.svg, shows: x}", 1
    ).encode(),
    "path in a branch": SOUND.replace("branch: click", "branch: ../../x", 1).encode(),
    "a negative number": SOUND.replace("minutes: 2", "minutes: -2", 1).encode(),
    "a thousand mistakes": SOUND.encode() + b"".join(
        f"  s{n}: {{chek: x}}\n".encode() for n in range(1000)
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_file_gets_findings_within_a_second(name: str) -> None:
    """No traceback, no hang, and less than 200 MB more memory."""
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    begun = time.process_time()
    source = decode("trees/horn/silent.yml", HOSTILE[name])
    findings = (source,) if isinstance(source, Finding) else tree_from(source)[1]
    assert time.process_time() - begun < 1
    assert resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before < 200 * 1024
    sound = name in ("windows line ends", "a byte order mark", "a range of a megabyte")
    assert bool(findings) is not sound or name == "a range of a megabyte"
    assert all(finding.at.line >= 1 and finding.at.column >= 1 for finding in findings)


def test_a_link_out_of_the_shop_is_refused(tmp_path: Path) -> None:
    """A tree elsewhere isn't under the shop's version control."""
    (tmp_path / "secret.yml").write_text(SOUND, encoding="utf-8")
    shop = tmp_path / "shop"
    (shop / "trees/horn").mkdir(parents=True)
    (shop / "trees/horn/silent.yml").symlink_to(tmp_path / "secret.yml")
    tree, findings = read_tree(shop, shop / "trees/horn/silent.yml")
    assert tree is None
    assert [finding.rule for finding in findings] == ["link"]


def test_what_is_no_file_is_reported(tmp_path: Path) -> None:
    """A broken link doesn't end a check, and a pipe doesn't hang it."""
    (tmp_path / "trees/horn").mkdir(parents=True)
    (tmp_path / "trees/horn/gone.yml").symlink_to("nowhere.yml")
    os.mkfifo(tmp_path / "trees/horn/pipe.yml")
    for name in ("gone", "pipe"):
        _, findings = read_tree(tmp_path, tmp_path / f"trees/horn/{name}.yml")
        assert [finding.rule for finding in findings] == ["link"]


def test_a_file_over_a_mebibyte_is_refused_unread(tmp_path: Path) -> None:
    """A line of ten megabytes is reported without reading it."""
    (tmp_path / "trees/horn").mkdir(parents=True)
    path = tmp_path / "trees/horn/long.yml"
    path.write_bytes(b"x" * 10_000_000)
    assert [finding.rule for finding in read_tree(tmp_path, path)[1]] == ["size"]


def test_a_shop_of_rubbish_is_read_to_its_end(tmp_path: Path) -> None:
    """Every knowledge file may be broken at once, and each says so."""
    (tmp_path / "trees").mkdir()
    for name in ("systems", "lamps", "hazards", "tools", "vehicles", "codes", "glossary", "words"):
        (tmp_path / "kb").mkdir(exist_ok=True)
        (tmp_path / f"kb/{name}.yml").write_bytes(b"- [x: {y\n")
    for name in ("modules/a.yml", "cases/a.yml", "how-to/a.md", "../site_config/shop.yml"):
        path = tmp_path / "kb" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(b"---\n{a: [\n---\n")
    _, findings = read_library(tmp_path)
    assert len({finding.at.file for finding in findings}) == 12


HTML = [
    "<script>x()</script>", "<img src=x onerror=x()>", "<!-- -->", "</div>", "<?x?>",
    "[x](javascript:x())", "[x]( JavaScript:x())", "[x](data:text/html,x)", "[x](<vbscript:x>)",
    "[x]: javascript:x", "![x](javascript:x)", "[x](java\tscript:x)", "<javascript:x()>",
    "[x](&#106;avascript:x())",
]  # fmt: skip


@pytest.mark.parametrize("text", HTML)
def test_html_and_script_links_in_an_article_are_refused(text: str) -> None:
    """What could run in the reader's browser never gets as far as a page."""
    article = f"---\ntitle: A\npurpose: B\n---\n## Steps\n{text}\n"
    _, findings = article_from(Source("kb/how-to/a.md", article, ""))
    assert {finding.rule for finding in findings} & {"raw-html", "unsafe-link", "encoding"}
    assert all(finding.at.line == 6 for finding in findings)


@pytest.mark.parametrize(
    "text", ["a < b", "`<script>`", "[x](other.md)", "[x](#steps)", "[x](https://x.example/a:b)",
             "```\n<b>\n```", "5 <6"],
)  # fmt: skip
def test_harmless_text_in_an_article_is_taken(text: str) -> None:
    """A comparison and a piece of code are no HTML."""
    article = f"---\ntitle: A\npurpose: B\n---\n## Steps\n{text}\n"
    assert article_from(Source("kb/how-to/a.md", article, ""))[1] == []


@settings(max_examples=150, deadline=None)
@given(st.text(max_size=300))
def test_any_text_is_read_without_a_traceback(text: str) -> None:
    """Text of any kind, mostly nonsense."""
    source = decode("trees/a/b.yml", text.encode("utf-8", "surrogatepass"))
    if isinstance(source, Source):
        tree_from(source)


PIECES = st.sampled_from(
    [*SOUND.split("\n"), "  x:", "    check: x", "      - {result: a, branch: ", "{", "}", "[", "]",
     "- ", ": ", "  ", "&a", "*a", "!t", "'", '"', "|", ">", "#", "\t", "---", "? ", "null", "é"]
)  # fmt: skip


@settings(max_examples=150, deadline=None)
@given(st.lists(PIECES, max_size=30), st.sampled_from(["\n", " ", ""]))
def test_pieces_of_a_tree_in_any_order_are_read(pieces: list[str], glue: str) -> None:
    """Files that look nearly right are the harder ones."""
    tree, findings = tree_from(Source("trees/a/b.yml", glue.join(pieces), ""))
    assert tree is not None or findings


@settings(max_examples=200, deadline=None)
@given(st.integers(0, len(SOUND) - 1), st.text(max_size=3), st.integers(0, 4))
def test_a_slip_anywhere_in_a_sound_tree_is_read(at: int, typed: str, gone: int) -> None:
    """One slip of the keyboard, wherever it falls."""
    text = (SOUND[:at] + typed + SOUND[at + gone :]).encode("utf-8", "surrogatepass")
    source = decode("trees/horn/silent.yml", text)
    if isinstance(source, Source):
        tree_from(source)


def test_an_id_is_the_path_of_its_file() -> None:
    """Both endings of YAML name the same tree."""
    assert tree_id("trees/horn/silent.yml") == tree_id("trees/horn/silent.yaml") == "horn/silent"
