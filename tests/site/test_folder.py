"""The site on a memory stick: a folder, no network, and nothing missing."""

import re
from pathlib import Path
from urllib.parse import unquote, urlsplit

import pytest
from playwright.sync_api import Browser

OUTSIDE = re.compile(r"""(src|href|action|data)=["']?(https?:)?//|url\(["']?(https?:)?//""")
LEFT = "net::ERR_ABORTED"  # the page was left before its icon had come
SEEN = (".html", ".css", ".js")


def test_without_a_network_nothing_is_missing(whole: Path, chromium: Browser) -> None:
    """Home, search, tree, step and back: no request fails, no error shows."""
    context = chromium.new_context(offline=True)
    page = context.new_page()
    asked: list[str] = []
    wrong: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.on("requestfailed", lambda it: it.failure != LEFT and wrong.append(f"failed: {it.url}"))
    page.on("console", lambda message: wrong.append(f"{message.type}: {message.text}"))
    page.on("pageerror", lambda error: wrong.append(f"error: {error}"))

    page.goto((whole / "index.html").as_uri())
    page.fill("#find input", "battery light while driving")
    page.wait_for_selector(".find-hits a")
    page.click(".find-hits a >> nth=0")
    page.wait_for_url("**/trees/charging/battery-lamp.html")
    page.click(".button.first")
    page.go_back()
    page.go_back()
    page.wait_for_selector(".find-hits a")
    assert page.input_value("#find input") == "battery light while driving"
    assert page.pdf()[:5] == b"%PDF-"
    for kind in ("lamps/index", "how-to/voltage-drop", "modules/index", "upkeep"):
        page.goto((whole / f"{kind}.html").as_uri())

    assert wrong == []
    assert [url for url in asked if not url.startswith(whole.as_uri())] == []
    context.close()


def test_no_file_asks_an_outside_host(whole: Path) -> None:
    """No page, style or script loads anything from another host."""
    for file in whole.rglob("*"):
        if file.suffix in SEEN and file.is_file():
            assert not OUTSIDE.search(file.read_text("utf-8")), file.relative_to(whole)


def test_every_link_leads_to_a_page_and_an_anchor(whole: Path) -> None:
    """No link is dead, and no anchor is missing or duplicated."""
    anchors: dict[Path, list[str]] = {}
    links: set[tuple[Path, str]] = set()
    for file in whole.rglob("*.html"):
        if file.name == "404.html":
            continue
        text = file.read_text("utf-8")
        anchors[file] = re.findall(r'\sid="([^"]*)"', text)
        links |= {(file, link) for link in re.findall(r'(?:href|src)="([^"]*)"', text)}
    for file, ids in anchors.items():
        assert len(ids) == len(set(ids)), f"an id is there twice in {file.relative_to(whole)}"
    for file, link in links:
        address = urlsplit(link)
        if address.scheme:
            continue
        target = (file.parent / unquote(address.path)).resolve() if address.path else file
        assert target.is_file(), f"{file.relative_to(whole)} links to {link}"
        if address.fragment and target.suffix == ".html" and "=" not in address.fragment:
            assert unquote(address.fragment) in anchors[target], (
                f"{file.relative_to(whole)}: {link}"
            )


@pytest.mark.parametrize("name", ["script", "style"])
def test_no_page_holds_a_script_or_a_style_of_its_own(whole: Path, name: str) -> None:
    """The policy forbids them all, so one that slips in can't run."""
    for file in whole.rglob("*.html"):
        contents = re.findall(rf"<{name}\b[^>]*>([^<]*)</{name}>", file.read_text("utf-8"))
        assert not any(contents), file.relative_to(whole)
        assert " style=" not in file.read_text("utf-8"), file.relative_to(whole)
