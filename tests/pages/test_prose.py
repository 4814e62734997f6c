"""Authors' Markdown: what it can do, and what it can never do."""

import pytest

from builder.pages.prose import html_of


def test_an_article_gets_headings_lists_and_tables() -> None:
    """Authors can use the Markdown they know."""
    page = html_of("## Good values\n\n1. one\n2. two\n\n| a | b |\n|---|---|\n| 1 | 2 |\n")
    assert '<h2 id="part-good-values">' in page
    assert "<ol>" in page
    assert "<table>" in page


def test_a_link_to_an_article_leads_to_its_page() -> None:
    """Authors link to files, and readers open pages."""
    assert 'href="voltage-drop.html#part-steps"' in html_of("[x](voltage-drop.md#part-steps)")


@pytest.mark.parametrize(
    "text",
    [
        "<script>alert(1)</script>",
        "a <img src=x onerror=alert(1)> b",
        "<div onclick=alert(1)>\nx\n</div>",
        "| <b onmouseover=alert(1)> | x |\n|---|---|\n| 1 | 2 |",
        "&lt;script&gt; &#x3c;script>alert(1)",
    ],
)
def test_html_is_shown_as_text(text: str) -> None:
    """HTML that an author writes becomes no element."""
    page = html_of(text)
    assert "<script" not in page
    assert "<img" not in page
    assert "<div" not in page
    assert "<b " not in page


@pytest.mark.parametrize(
    "target",
    [
        "javascript:alert(1)",
        "JaVa&#x53;cript:alert(1)",
        "data:text/html,<script>alert(1)</script>",
        "vbscript:x",
        "//elsewhere.example/x",
        " javascript:alert(1)",
    ],
)
def test_a_link_that_could_run_a_script_has_no_address(target: str) -> None:
    """Only links to pages, web and mail addresses work."""
    assert "href" not in html_of(f"[words]({target})")
    assert "href" not in html_of(f"[words][1]\n\n[1]: {target}\n")


def test_a_picture_never_comes_from_elsewhere() -> None:
    """No page loads anything from another host."""
    assert "src" not in html_of("![x](https://elsewhere.example/x.png)")
    assert 'src="pictures/probe.svg"' in html_of("![x](pictures/probe.svg)")


@pytest.mark.parametrize(
    "target", ["../cases/2026-0188.yml", "pictures/../../cases/a.yml", "cases/a.png", "a.svg"]
)
def test_a_picture_comes_from_the_pictures_folder_only(target: str) -> None:
    """No path can turn another file, such as a closed job, into a picture."""
    assert "src" not in html_of(f"![x]({target})")
