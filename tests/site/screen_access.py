"""What axe-core says of the screens of a walk, in light and dark: each kind of screen once.

In: pages at some screen. Out: lines of what is wrong. A kind is what a screen is made of, or the
title of the sheet over it.
"""

from dataclasses import dataclass, field
from pathlib import Path

import axe_playwright_python
from playwright.sync_api import Locator, Page, expect

AXE = (Path(axe_playwright_python.__file__).parent / "axe.min.js").read_text("utf-8")
# 125 % is what the site's own style has for a browser that was left as it came.
TEXT_SIZE = """
addEventListener("DOMContentLoaded", () => {
  document.documentElement.style.fontSize = `calc(1.25 * %s)`;
});
"""
KIND = """
() => {
  const sheet = document.querySelector("dialog[open] h2");
  if (sheet) return `sheet: ${sheet.textContent}`;
  const made = [".caution", ".w-pass", ".w-short", ".w-ticks", ".w-inside", ".w-item", ".w-visit",
    ".w-shows", ".w-caution", ".w-pins", ".w-where", ".w-links", ".w-note", ".w-fields", ".w-pad",
    ".w-choices", ".rows", ".columns", ".strip", ".out", ".fits", ".w-verdict", ".w-undo",
    ".w-again", ".fix", ".stop", ".w-drive", ".w-call", "#walk-notice", "[aria-pressed=true]"];
  return made.filter((one) => document.querySelector(`#walk:not([hidden]) ${one}`)).join(" ");
}
"""
SHEETS = (".w-links button:not([data-do])", ".w-caution", ".w-pins", ".w-trail button:last-of-type",
          ".w-job", '[data-do="none"]', '[data-do="papers"]')  # fmt: skip


def violations(page: Page) -> list[str]:
    """Return what axe-core reports, a line each."""
    page.evaluate(AXE)
    found = page.evaluate("async () => (await axe.run({preload: false})).violations")
    return [f"{rule['id']}: {node['html'][:120]}" for rule in found for node in rule["nodes"]]


def sheet_is_closed(page: Page) -> None:
    """Wait for it: closing goes one step back in the history, and that takes a moment."""
    expect(page.locator("dialog[open]")).to_have_count(0)
    while page.evaluate("history.state?.sheet"):  # the page's own policy forbids to wait by script
        page.wait_for_timeout(20)


@dataclass
class ScreenAccess:
    """The kinds of screens that were looked at, and what is wrong with them."""

    kinds: set[str] = field(default_factory=set)
    opened: set[str] = field(default_factory=set)  # sheets, by what opens them
    wrong: list[str] = field(default_factory=list)

    def look(self, page: Page) -> bool:
        """Look at a screen, if it is of a new kind."""
        kind = page.evaluate(KIND)
        if kind in self.kinds:
            return False
        self.kinds.add(kind)
        for scheme in ("light", "dark"):
            page.emulate_media(color_scheme=scheme)
            self.wrong += [f"{scheme} {kind}: {line}" for line in violations(page)]
        if page.evaluate("document.documentElement.scrollWidth - innerWidth") > 0:
            self.wrong.append(f"{kind}: scrolls sideways")
        return True

    def look_into(self, page: Page) -> None:
        """Look at a screen and at every sheet that opens from it, if it is of a new kind."""
        if not self.look(page):
            return
        for opener in SHEETS:
            for at in range(page.locator(opener).count()):
                self._look_at_sheet(page, page.locator(opener).nth(at), opener)

    def _look_at_sheet(self, page: Page, button: Locator, opener: str) -> None:
        """Open a sheet and look at it, the first time that there is one of its name."""
        name = button.inner_text().partition(" (")[0] if "links" in opener else opener
        if name in self.opened or not button.is_visible():
            return
        self.opened.add(name)
        button.tap()
        page.wait_for_selector("dialog[open]")
        self.look(page)
        page.locator(".w-close").tap()
        sheet_is_closed(page)
