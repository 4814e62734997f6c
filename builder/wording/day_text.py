"""Days and times as a repair order has them.

In: a date or a time of ISO 8601, the shop. Out: `11/24/2026`, `11/24/2026 2:05 PM` on US paper;
elsewhere as ISO 8601 has them. Times are by the clock of the shop.
"""

import re
from datetime import date, datetime, timedelta

from builder.model.shop import Shop

_US_PAPER = ("letter", "tabloid")
_DAYS = re.compile(r"(\d{1,4}) days?")


def day_text(day: str, shop: Shop) -> str:
    """Write a day; "" where there is none."""
    if not day:
        return ""
    return _day(date.fromisoformat(day), shop)


def clock_text(at: str, shop: Shop) -> str:
    """Write a time with its day; "" where there is none."""
    if not at:
        return ""
    time = datetime.fromisoformat(at).astimezone()
    if shop.paper not in _US_PAPER:
        return f"{time:%Y-%m-%d %H:%M}"
    return f"{_day(time.date(), shop)} {time.hour % 12 or 12}:{time:%M %p}"


def day_of_time(at: str) -> str:
    """Return the date of a time by the clock of the shop; "" where there is none."""
    return datetime.fromisoformat(at).astimezone().date().isoformat() if at else ""


def last_day_text(day: str, hold: str, shop: Shop) -> str:
    """Write the last of `30 days` from a day; "" where that isn't known."""
    match = _DAYS.fullmatch(hold)
    if not day or not match:
        return ""
    return _day(date.fromisoformat(day) + timedelta(days=int(match[1])), shop)


def _day(day: date, shop: Shop) -> str:
    is_us = shop.paper in _US_PAPER
    return f"{day.month}/{day.day}/{day.year}" if is_us else day.isoformat()
