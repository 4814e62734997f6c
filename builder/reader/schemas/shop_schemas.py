"""The schemas of the shop's settings and of the site's.

In: the shapes of schemas. Out: one schema for each file in `site_config/`.
"""

from builder.reader.schemas.shapes import (
    MONEY,
    WORDS,
    by_name,
    choice,
    count,
    decimal,
    pattern,
    record,
    string,
)

SHOP = record(
    "the shop's settings", "Settings for the whole shop.",
    {"shop": string("a name", "The shop's name.", "Osei and Lind Motors", 60),
     "site_address": pattern("an address", "The address behind the QR code on a print.",
                             "https://charts.example/", r"^https?://[^\s\"'<>]+/$"),
     "labor_rate": decimal("an amount", "The labor rate per hour.", 140, 0),
     "currency": pattern("three letters", "The currency code (ISO 4217).", "USD", "^[A-Z]{3}$"),
     "tax_percent": decimal("percent", "The tax rate.", 8, 0),
     "tax_base": choice("what is taxed", "What the tax applies to.", "parts", "all", "none"),
     "tow": MONEY,
     "units": by_name("units by quantity", "The units the shop uses.", WORDS, "{pressure: kPa}"),
     "decimal_mark": choice("point or comma", "The decimal mark on pages.", "point", "comma"),
     "paper": choice("a paper size", "The paper for prints.", "letter", "tabloid", "a4", "a3"),
     "review_good_for": pattern("months", "How long a review is valid.", "12 months",
                                r"^[0-9]+ months?$"),
     "longest_path": count("a whole number", "The most steps a path should have.", 40),
     "most_steps": count("a whole number", "The most checks and actions of a tree.", 24),
     "most_words": count("a whole number", "The most words of a note.", 30),
     "phone": string("a phone number", "Printed on what the customer gets.", "555-0147", 28),
     "diagnosis_fee": MONEY,
     "prices_hold": string("a time", "How long the prices hold.", "30 days", 28),
     "stuck": record("who to call", "Who to call when no result matches.",
                     {"call": WORDS, "phone": WORDS}, ("call",), "{call: foreman, phone: 14}")},
    ("shop", "site_address", "labor_rate", "currency", "stuck"),
    "{shop: Osei and Lind Motors, labor_rate: 140}",
)  # fmt: skip
SITE = record(
    "the site's settings", "Site settings a shop can change; none of them runs code.",
    {"copyright": string("a few words", "The footer of every page.", "Osei and Lind Motors", 120),
     "site_author": string("a name", "The author in the HTML head.", "Osei and Lind Motors", 60)},
    (), "{copyright: Osei and Lind Motors}",
)  # fmt: skip
