"""Scanning an old print warns that the page has changed."""

from pathlib import Path

from playwright.sync_api import Browser


def test_an_old_print_gets_a_warning(whole: Path, chromium: Browser) -> None:
    """A banner shows for another revision in the square code, not for the same or none."""
    page = chromium.new_page(viewport={"width": 390, "height": 844})
    tree = (whole / "trees/charging/battery-lamp.html").as_uri()
    page.goto(tree)
    banner = page.locator("[data-revision]")
    revision = banner.get_attribute("data-revision")
    assert not banner.is_visible()
    page.goto(f"{tree}?printed={revision}")
    assert not banner.is_visible()
    page.goto(f"{tree}?printed=0ld<b>")
    assert banner.is_visible()
    assert banner.inner_text().startswith(f"Your printout is old (0ld<b>; now {revision}).")
    page.close()
