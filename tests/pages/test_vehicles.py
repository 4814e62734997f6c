"""The page of a vehicle: what its file says, in tables."""

from decimal import Decimal
from pathlib import Path

from builder.check.unchecked_library import read_library
from builder.pages.tree_catalog import catalog_trees
from builder.pages.vehicles import vehicle_pages
from builder.wording.value_text import torque_text

SAMPLES = Path(__file__).parents[1] / "samples"


def test_a_pin_stands_beside_its_wire_and_fuse() -> None:
    """A tech finds the wire color of a pin on the vehicle's page."""
    library, _ = read_library(SAMPLES)
    pages = {page.path: page.body for page in vehicle_pages(catalog_trees(library))}
    row = next(line for line in pages["vehicles/tern"].splitlines() if "YE" in line)
    assert [">2<" in row, "sense" in row, 'href="#fuse-21"' in row] == [True] * 3
    assert "service information comes first" in pages["vehicles/tern"]


def test_a_torque_is_in_pound_feet_first() -> None:
    """110 N·m is 81 lb-ft: NIST SP 811 (2008), appendix B.8, 1 lbf·ft = 1.355818 N·m."""
    assert torque_text(Decimal(110)) == "81 lb-ft (110 N·m)"
