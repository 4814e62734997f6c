"""The settings of the site: what a shop can set; anything else is reported at its line."""

import shutil
from pathlib import Path

import pytest

from builder.check.unchecked_library import read_library
from builder.model.finding import Finding
from builder.model.shop import SiteSettings
from builder.reader.knowledge_files import read_knowledge

SHOP = Path(__file__).parents[1] / "shop"
# Settings of MkDocs that run code, include files or call other hosts, after its user guide
# (https://www.mkdocs.org/user-guide/configuration/), and Python tags of PyYAML.
RUNS_CODE = {
    "hooks": "hooks: [hook.py]\n",
    "plugins": "plugins: [search, {macros: {module_name: main}}]\n",
    "a theme of one's own": "theme:\n  name: null\n  custom_dir: overrides\n",
    "a theme of another package": "theme: {name: elsewhere}\n",
    "another file": "INHERIT: ../../elsewhere.yml\n",
    "extensions": "markdown_extensions: [pymdownx.snippets]\n",
    "a script": "extra_javascript: [https://elsewhere.example/x.js]\n",
    "a style": "extra_css: [x.css]\n",
    "templates": "extra_templates: [x.html]\n",
    "another folder": "docs_dir: /\n",
    "a repository": "repo_url: https://elsewhere.example/\n",
    "what the frame reads": 'extra: {policy: "default-src *"}\n',
}
HOSTILE = {
    "a list for a theme": "theme: [1]\n",
    "a word for a theme": "theme: material\n",
    "a number for extra": "extra: 5\n",
    "a palette": "palette: 7\n",
    "a list for a text": "copyright: [1]\n",
    "a map for a text": "copyright: {a: b}\n",
    "nothing": "copyright:\n",
    "a text without end": f"copyright: {'x' * 5000}\n",
    "a misspelled key": "copyrigth: Osei\n",
    "a key twice": "copyright: a\ncopyright: b\n",
    "a tag": "copyright: !!python/name:os.system x\n",
    "a variable of the environment": "copyright: !ENV HOME\n",
    "a bomb": "a: &a [x, x]\nb: [*a, *a]\n",
    "open brackets": "copyright: " + "[" * 5000 + "\n",
    "a list": "- copyright\n",
    "a word": "copyright\n",
    "an open quote": 'copyright: "a\n',
    "a tab": "copyright:\tx\n",
}


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Return a copy of the test shop that a test may change."""
    return Path(shutil.copytree(SHOP, tmp_path / "shop"))


def found_in(shop: Path, raw: bytes) -> list[Finding]:
    """Write the settings and return what is found in the shop."""
    (shop / "site_config/mkdocs.yml").write_bytes(raw)
    return list(read_knowledge(shop)[1])


def test_the_few_words_of_the_shop_are_taken(shop: Path) -> None:
    """Two settings are the shop's, and without a file there are none."""
    (shop / "site_config/mkdocs.yml").unlink()
    assert read_knowledge(shop)[0].shop.site == SiteSettings()
    assert found_in(shop, b"copyright: Osei and Lind\nsite_author: R. Osei\n") == []
    assert read_knowledge(shop)[0].shop.site == SiteSettings("Osei and Lind", "R. Osei")
    assert found_in(shop, b"# nothing set\n") == []


@pytest.mark.parametrize("name", RUNS_CODE)
def test_a_setting_that_could_run_code_is_refused_at_its_line(shop: Path, name: str) -> None:
    """Building a stranger's pull request runs nothing: none of these comes as far as the engine."""
    (finding,) = found_in(shop, b"# ours\n" + RUNS_CODE[name].encode())
    assert (finding.rule, finding.at.file) == ("engine-settings", "site_config/mkdocs.yml")
    assert (finding.at.line, finding.at.column) == (2, 1)
    assert "can't be set here" in finding.message
    assert "`copyright`" in finding.hint


@pytest.mark.parametrize("name", HOSTILE)
def test_a_mistake_in_the_settings_is_a_finding_at_its_line(shop: Path, name: str) -> None:
    """Any content is reported with place, reason, and hint, and never a traceback."""
    findings = found_in(shop, HOSTILE[name].encode())
    assert findings
    for finding in findings:
        assert finding.at.file == "site_config/mkdocs.yml"
        assert 1 <= finding.at.line <= 3
        assert finding.message
        assert finding.why
        assert finding.hint


def test_settings_that_are_no_text_are_a_finding(shop: Path) -> None:
    """Another encoding, a link to itself, to nothing or out of the shop, and a folder."""
    (finding,) = found_in(shop, "copyright: Lüfter\n".encode("latin-1"))
    assert (finding.rule, finding.at.line, finding.at.column) == ("encoding", 1, 13)
    file = shop / "site_config/mkdocs.yml"
    for target in ("mkdocs.yml", "nowhere.yml", "/etc/hostname"):
        file.unlink()
        file.symlink_to(target)
        assert [one.rule for one in read_knowledge(shop)[1]] == ["link"]
    file.unlink()
    file.mkdir()
    assert [one.rule for one in read_knowledge(shop)[1]] == ["unreadable"]


def test_a_link_out_of_the_shop_is_refused_anywhere_beside_the_settings(shop: Path) -> None:
    """A build never touches a file from outside the shop; a link inside is fine."""
    inner = shop / "site_config/overrides/assets"
    inner.mkdir(parents=True)
    (inner / "secret.txt").symlink_to("/etc/hostname")
    (inner / "all").symlink_to("/etc")
    (inner / "ring").symlink_to("ring")
    (inner / "inside").symlink_to("../../shop.yml")
    findings = {(one.rule, one.at.file.rpartition("/")[2]) for one in read_knowledge(shop)[1]}
    names = {name for rule, name in findings if rule == "link"}
    assert names == {"secret.txt", "all", "ring"}
    assert findings - {("link", name) for name in names} == {("engine-settings", "overrides")}


def test_a_folder_that_is_itself_a_link_is_refused(shop: Path) -> None:
    """Settings of another shop are not this shop's."""
    (shop / "site_config").rename(shop.parent / "elsewhere")
    (shop / "site_config").symlink_to("../elsewhere")
    assert {one.rule for one in read_knowledge(shop)[1]} == {"link"}


@pytest.mark.parametrize("name", ["kb/tools.yml", "kb/codes.yml", "trees/horn/silent.yml"])
def test_a_link_to_itself_is_a_finding_in_any_file(shop: Path, name: str) -> None:
    """Before, one of these was passed over and another ended the check."""
    (shop / name).unlink()
    (shop / name).symlink_to(Path(name).name)
    findings = [(one.rule, one.at.file) for one in read_library(shop)[1]]
    assert ("link", name) in findings
