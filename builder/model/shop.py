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
    """The settings of the site in `site_config/mkdocs.yml`."""

    copyright: str = ""  # at the bottom of every page
    author: str = ""  # in the HTML head of every page


@dataclass(frozen=True, slots=True)
class Shop:
    """The settings of the shop, for all its trees."""

    name: Text
    site_address: Text  # behind the QR code on a print
    labor_rate: Decimal  # per hour
    currency: Text  # ISO 4217 letters
    tax_percent: Decimal = Decimal(0)
    tax_base: str = "parts"  # parts | all | none
    tow: Money | None = None
    units: Mapping[str, str] = field(default_factory=dict)  # pressure: kPa, torque: Nm, ...
    decimal_mark: str = "point"  # point | comma
    paper: str = "a4"  # letter | tabloid | a4 | a3
    review_months: int = 12  # how long a review is valid
    stuck: Mapping[str, Text] = field(default_factory=dict)  # call: foreman, phone: 14
    longest_path: int = 40  # steps; a longer path is a finding
    most_steps: int = 24  # checks and actions of a tree; more are a finding
    most_words: int = 30  # of a note; more are a finding
    phone: Text | None = None  # on what the customer gets
    diagnosis_fee: Money | None = None
    prices_hold: Text | None = None  # how long, such as `30 days`
    site: SiteSettings = SiteSettings()
