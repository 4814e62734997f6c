"""Mileage as shops write it, rounded so that it doesn't pick out one vehicle.

In: text such as `61,800 km` or `38 400 mi`. Out: kilometers, to the nearest 5,000.
"""

import re
from decimal import Decimal, InvalidOperation

STEP = 5000  # km: common practice, no source
KM_PER_MILE = Decimal("1.609344")  # exact: international mile
_TYPED = re.compile(r"(?P<digits>\d[\d,.\s']*)(?P<unit>km|mi|miles)?\b", re.IGNORECASE)


def rounded_kilometers(text: str) -> int | None:
    """Return a mileage in km to the nearest 5,000; None for text that is no mileage."""
    match = _TYPED.fullmatch(text.strip())
    if not match:
        return None
    try:
        value = Decimal(re.sub(r"[,\s']", "", match["digits"]))
    except InvalidOperation:
        return None
    if (match["unit"] or "km").lower() != "km":
        value *= KM_PER_MILE
    return round(value / STEP) * STEP if value < 10**7 else None
