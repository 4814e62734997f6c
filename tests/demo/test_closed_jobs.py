"""The demo's closed jobs give away nobody."""

from builder.model.library import Library
from builder.pages.contents import shop_pages


def test_no_page_of_the_demo_shows_an_exact_mileage(library: Library) -> None:
    """What is on file of every closed job stays in its file."""
    bodies = "".join(page.body for page in shop_pages(library))
    exact = [case.vehicle["km"] for case in library.cases.values() if "km" in case.vehicle]
    assert exact
    assert [km for km in exact if int(km) % 5000 and km in bodies] == []
