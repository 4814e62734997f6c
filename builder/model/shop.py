"""The shop as it sets itself: name, rates, units, paper, how long a review stays good.

In: `site_config/shop.yml` and `mkdocs.yml` beside it. Out: `Shop`, part of the `Library`.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from builder.model.ends import Money
from builder.model.text import Text


@dataclass(frozen=True, slots=True)
class SiteSettings:
    """What the shop writes into the frame of its site, in `site_config/mkdocs.yml`."""

    copyright: str = ""  # at the foot of every page
    author: str = ""  # in the head of every page, unseen


@dataclass(frozen=True, slots=True)
class Shop:
    """What the shop decides once for all its trees."""

    name: Text
    site_address: Text  # what the square code on a print opens
    labour_rate: Decimal  # per hour
    currency: Text  # ISO 4217 letters
    tax_percent: Decimal = Decimal(0)
    tax_base: str = "parts"  # parts | all | none
    tow: Money | None = None
    units: Mapping[str, str] = field(default_factory=dict)  # pressure: kPa, torque: Nm, ...
    decimal_mark: str = "point"  # point | comma
    paper: str = "a4"  # letter | tabloid | a4 | a3
    review_months: int = 12  # how long a review stays good
    stuck: Mapping[str, Text] = field(default_factory=dict)  # call: foreman, phone: 14
    longest_path: int = 40  # steps on one path before the check speaks up
    site: SiteSettings = SiteSettings()
