"""Who scans a print on the wall is told if the page has changed since."""

from pathlib import Path

from playwright.sync_api import Browser


def test_an_old_print_is_told_from_the_page(whole: Path, chromium: Browser) -> None:
    """Another revision in the square code shows a banner, the same or none does not."""
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
