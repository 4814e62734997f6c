"""A walk whose network is lost on the way."""

from pathlib import Path

from playwright.sync_api import Browser, expect

from tests.walk.drilled import drilled_fix, drilled_shop

from .conftest import serving
from .drilled_page import drill_page
from .walker import do, opened_page

SAMPLES = Path(__file__).parents[1] / "samples"
LAST = "baytreePractice"  # of what is fetched once the first step is there


def test_a_lost_network_takes_nothing_away(chromium: Browser, samples: Path) -> None:
    """Once all scripts are there, the walk goes on to its fix, its sheets and its papers."""
    job = drilled_fix(SAMPLES, "charging/lamp-on", "belt-fix")
    assert job
    assert any(step.readings for step in job.state.steps)
    with serving(samples) as address, opened_page(chromium) as page:
        page.route(
            "**/favicon.svg", lambda icon: icon.fulfill(body="")
        )  # asked for at each address
        page.goto(f"{address}/trees/charging/lamp-on.html?vehicle={job.state.vehicle}#walk")
        while not page.evaluate(f"Boolean(globalThis.{LAST})"):  # scripts run in turn
            page.wait_for_timeout(100)
        page.context.set_offline(True)
        drill_page(page, drilled_shop(SAMPLES).tables, job.state, lambda _: None)
        expect(page.locator("[data-end]")).to_have_attribute("data-end", job.fix)
        do(page, "papers").click()
        expect(do(page, "keep")).to_be_visible()
