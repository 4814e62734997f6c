"""The settings of a shop and of its site.

In: the maps of `site_config/shop.yml` and of the site's settings. Out: a `Shop`.
"""

from collections.abc import Iterator
from decimal import Decimal

from builder.model.finding import Finding
from builder.model.shop import Shop, SiteSettings
from builder.reader.nodes import Map
from builder.reader.source import mistake
from builder.reader.turned_ends import turned_amount
from builder.reader.values import money, named_texts, number, text, the_text


def doubtful_settings(root: Map) -> Iterator[Finding]:
    """Yield a finding for every setting that is well formed and can't be meant."""
    tax, percent = text(root, "tax_percent"), number(root, "tax_percent")
    if tax and percent is not None and 0 < percent < 1:
        right = f"{(percent * 100).normalize():f}"
        yield mistake("bad-value", tax.at, f"`tax_percent` is {tax} percent, less than one",
                      "every estimate would be short of its tax",
                      f"write it in percent: `tax_percent: {right}`")  # fmt: skip

    for name in ("tow", "diagnosis_fee"):
        yield from turned_amount(text(root, name))


def shop_settings(root: Map, site: Map) -> Shop:
    """Return the settings; where the author wrote nothing, what holds for most shops."""
    months = the_text(root, "review_good_for", "12").split()[0]
    return Shop(
        name=the_text(root, "shop", "The shop"),
        site_address=the_text(root, "site_address", "https://charts.example/"),
        labor_rate=number(root, "labor_rate") or Decimal(0),
        currency=the_text(root, "currency", "USD"),
        tax_percent=number(root, "tax_percent") or Decimal(0),
        tax_base=str(text(root, "tax_base") or "parts"),
        tow=money(text(root, "tow")),
        units=named_texts(root, "units"),
        decimal_mark=str(text(root, "decimal_mark") or "point"),
        paper=str(text(root, "paper") or "a4"),
        review_months=int(months),
        stuck=named_texts(root, "stuck"),
        longest_path=int(number(root, "longest_path") or 40),
        most_steps=int(number(root, "most_steps") or 24),
        most_words=int(number(root, "most_words") or 30),
        phone=text(root, "phone"),
        diagnosis_fee=money(text(root, "diagnosis_fee")),
        prices_hold=text(root, "prices_hold"),
        site=SiteSettings(str(text(site, "copyright") or ""), str(text(site, "site_author") or "")),
    )
