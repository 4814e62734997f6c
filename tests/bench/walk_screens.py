"""The screens of a walk on a small phone: `walk_screens.py SITE --fixes 2`.

In: a built site, its shop. Each tree is walked in Chromium, at 360 by 640, to its likeliest fixes,
as a simulated vehicle shows them. Out: how often check and first answer are in view without
scrolling, how many screens come before a check, targets under 44 px; then, of every fourth tree,
the milliseconds from an answer to the next step with the processor slowed four times, and those of
the same page doing nothing.
"""

import argparse
import shutil
import sys
from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from statistics import median
from typing import Any

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))

from playwright.sync_api import Browser, Locator, sync_playwright  # noqa: E402

from builder.plan.chances import walk_chances  # noqa: E402
from builder.walk.practice import faults_of  # noqa: E402
from tests.site.drilled_page import drill_page  # noqa: E402
from tests.site.walker import FINGER, opened_page  # noqa: E402
from tests.walk.drilled import DrilledFix, drilled_fix, drilled_shop  # noqa: E402

SLOWED = 4
SEEN = """
() => {
  const walk = document.querySelector("#walk");
  const shown = (what) => [...walk.querySelectorAll(what)].filter((one) => one.checkVisibility());
  const box = (one) => one.getBoundingClientRect();
  const [head] = shown("h1"), [answer] = shown("[data-result], [data-reading]");
  const inView = [head, answer].filter(Boolean)
    .every((one) => box(one).top >= 0 && box(one).bottom <= innerHeight);
  const small = shown("button, a, input:not([data-tick]), select, label.w-tick")
    .filter((one) => Math.min(box(one).width, box(one).height) < 43.9);
  const before = ["Get ready", "Do this first"].find((words) => head.textContent === words);
  return { kind: before || (shown("[data-end]").length ? "end" : answer ? "check" : "action"),
  reads: !before && shown('[data-do="acknowledge"]').length > 0, inView, small: small.length,
  isWhole: document.documentElement.scrollHeight <= innerHeight + 1 };
}
"""
TIMES = """
(name) => new Promise((resolve) => {
  const go = [...document.querySelectorAll(`#walk [data-do="${name}"]`)]
    .findLast((one) => one.checkVisibility());
  const painted = (work, then) => {
    const start = performance.now();
    work();
    requestAnimationFrame(() => setTimeout(() => then(performance.now() - start)));
  };
  painted(() => {}, (idle) => painted(() => go.click(), (busy) => resolve([idle, busy])));
})
"""


def likeliest(shop: Path, fixes: int) -> Iterator[DrilledFix]:
    """Yield walks to the likeliest fixes of each tree; a retired one has no walk."""
    known = drilled_shop(shop)
    for id_, tree in known.trees.items():
        if known.library.trees[id_].status == "retired":
            continue
        chances = walk_chances(tree).ends
        faults = sorted(faults_of(tree), key=lambda fix: -chances.get(fix, 0))
        found = (drilled_fix(shop, id_, fix) for fix in faults[:fixes])
        yield from (one for one in found if one)


def address(site: Path, job: DrilledFix) -> str:
    """Return the first step of a walk."""
    return f"{(site / 'trees' / job.tree.id).as_uri()}.html?vehicle={job.state.vehicle}#walk"


def screens_of(browser: Browser, site: Path, shop: Path, job: DrilledFix) -> Counter[str]:
    """Walk once and count the screens."""
    seen: list[dict[str, Any]] = []
    with opened_page(browser) as page:
        page.goto(address(site, job))
        tables = drilled_shop(shop).tables
        drill_page(page, tables, job.state, lambda here: seen.append(here.evaluate(SEEN)))
    return count_screens(seen)


def count_screens(seen: list[dict[str, Any]]) -> Counter[str]:
    """Count the screens of one walk."""
    counts: Counter[str] = Counter()
    before = 0
    for one in seen:
        counts["targets under 44 px"] += one["small"]
        if one["kind"] in ("Get ready", "Do this first"):
            before += 1
            counts[f"screens: {one['kind']}"] += 1
        elif one["reads"]:
            counts["cautions read on the step itself"] += 1
        else:
            counts[f"{one['kind']}s"] += 1
            if one["kind"] == "check":
                counts["checks in view with the first answer"] += one["inView"]
                counts["checks with nothing to scroll"] += one["isWhole"]
                counts[f"checks with {before} screens before them"] += 1
            before = 0
    return counts


def times_of(browser: Browser, site: Path, shop: Path, job: DrilledFix) -> list[list[float]]:
    """Walk once on a slow processor; return idle and busy milliseconds of each answer."""
    times: list[list[float]] = []

    def press(wanted: Locator) -> None:
        if (name := wanted.get_attribute("data-do")) is None:
            wanted.tap()
        else:
            times.append(page.evaluate(TIMES, name))

    hand = replace(FINGER, press=press)
    with opened_page(browser) as page:
        slow = page.context.new_cdp_session(page)
        slow.send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
        page.goto(address(site, job))
        drill_page(page, drilled_shop(shop).tables, job.state, lambda _: None, hand)
    return times


def main() -> None:
    """Walk and print."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("site", type=Path)
    parser.add_argument("--shop", type=Path, default=ROOT)
    parser.add_argument("--fixes", type=int, default=2, help="of each tree")
    options = parser.parse_args()
    jobs, site = [*likeliest(options.shop, options.fixes)], options.site.resolve()
    counts: Counter[str] = Counter()
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(
            executable_path=shutil.which("chromium"), args=["--no-sandbox"]
        )
        for job in jobs:
            counts += screens_of(browser, site, options.shop, job)
        slow = jobs[:: 4 * options.fixes]
        times = [pair for job in slow for pair in times_of(browser, site, options.shop, job)]
        browser.close()
    steps = counts["checks"] + counts["actions"] + counts["ends"]
    for name, count in sorted(counts.items()):
        print(f"{count:6} {name}")
    print(f"{len(jobs)} walks; get ready screens for 100 steps: "
          f"{100 * counts['screens: Get ready'] / steps:.1f}")  # fmt: skip
    idle, busy = (median(one) for one in zip(*times, strict=True))
    print(f"{busy:.0f} ms to the next step, {idle:.0f} ms idle: {busy / idle:.1f} times, slowed "
          f"{SLOWED} times, {len(times)} answers")  # fmt: skip


if __name__ == "__main__":
    main()
