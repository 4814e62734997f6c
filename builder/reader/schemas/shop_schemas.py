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
    {"shop": string("a name", "The shop's name, on pages and prints.", "Osei and Lind Motors", 60),
     "site_address": pattern("an address", "The address behind the QR code on a print.",
                             "https://charts.example/", r"^https?://[^\s\"'<>]+/$"),
     "labor_rate": decimal("an amount", "What an hour of labor costs.", 140, 0),
     "currency": pattern("three letters", "Three letters, as ISO 4217 has them.", "USD",
                         "^[A-Z]{3}$"),
     "tax_percent": decimal("percent", "Sales tax, in percent.", 8, 0) | {"default": 0},
     "tax_base": choice("what is taxed", "What is taxed: parts, everything, or nothing.", "parts",
                        "all", "none") | {"default": "parts"},
     "tow": MONEY | {"description": "What a tow costs; without it, a tow has no price."},
     "units": by_name("units by quantity", "The units your meters and people use.", WORDS,
                      "{pressure: kPa}"),
     "decimal_mark": choice("point or comma", "The decimal mark on pages and prints.", "point",
                            "comma") | {"default": "point"},
     "paper": choice("a paper size", "The paper for prints.", "letter", "tabloid", "a4", "a3")
     | {"default": "a4"},
     "review_good_for": pattern("months",
                                "How long a review holds; then follow the tree again.", "12 months",
                                r"^[0-9]+ months?$") | {"default": "12 months"},
     "longest_path": count("a whole number", "A path with more steps is a finding.", 40)
     | {"default": 40},
     "most_steps": count("a whole number", "A tree with more checks and actions is a finding.", 24)
     | {"default": 24},
     "most_words": count("a whole number", "A note with more words is a finding.", 30)
     | {"default": 30},
     "phone": string("a phone number", "Printed on what the customer gets.", "555-0147", 28),
     "diagnosis_fee": MONEY | {"description": "What the customer pays for the diagnosis."},
     "prices_hold": pattern("a time", "How long the prices hold.", "30 days",
                             r"^(?=.*[A-Za-z]).{1,84}$"),
     "stuck": record("who to call", "Who to call when no result matches.",
                     {"call": string("a name", "Who to call.", "foreman"),
                      "phone": string("a phone number", "Their number.", "14")}, ("call",),
                     "{call: foreman, phone: 14}")},
    ("shop", "site_address", "labor_rate", "currency", "stuck"),
    "{shop: Osei and Lind Motors, labor_rate: 140}",
)  # fmt: skip
SITE = record(
    "the site's settings", "Site settings a shop can change; none of them runs code.",
    {"copyright": string("a few words", "The line at the bottom of every page.",
                         "Osei and Lind Motors", 120),
     "site_author": string("a name", "Who wrote the site; it isn't shown.", "Osei and Lind Motors",
                           60)},
    (), "{copyright: Osei and Lind Motors}",
)  # fmt: skip
