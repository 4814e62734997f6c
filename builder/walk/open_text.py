"""Whether what somebody typed may be read by anybody: it names neither people nor the vehicle.

In: a text, and what the job's record says of customer and vehicle. Out: yes or no. A name that the
record doesn't hold can't be told from other words: people read such texts before they share them.
"""

import re
from collections.abc import Iterable, Mapping

_SECRET = ("order", "vin", "customer")
_VIN = re.compile(r"(?<![A-Za-z0-9])[A-Za-z0-9]{17}(?![A-Za-z0-9])")
_ADDRESSED = re.compile(r"\b(?:mr|mrs|ms|miss|dr|sir|madam)\b|@", re.IGNORECASE)
_PHONE = re.compile(r"(?<!\d)(?:\(?\d{3}\)?[ .-]?)?\d{3}[ .-]\d{4}(?!\d)|(?<!\d)\d{10}(?!\d)")
_WORD = re.compile(r"[^\W\d_]{3,}")
_ENDS_OF_VIN = (8, 6)  # characters; shops write these for short


def secrets_of(job: Mapping[str, str], people: Iterable[str] = ()) -> frozenset[str]:
    """Return what no text may have in it: order, VIN and its end, customer, and other people."""
    vin = job.get("vin", "")
    ends = [vin[-length:] for length in _ENDS_OF_VIN if len(vin) > length]
    names = [job.get("customer", ""), *people]
    words = [word for name in names for word in _WORD.findall(name)]
    whole = [job.get(name, "") for name in _SECRET]
    return frozenset(text.casefold() for text in (*whole, *ends, *names, *words) if text.strip())


def is_open(text: str, secrets: Iterable[str]) -> bool:
    """Whether a text names nobody, as far as that can be told."""
    if _VIN.search(text) or _ADDRESSED.search(text) or _PHONE.search(text):
        return False
    plain = text.casefold()
    return not any(re.search(rf"(?<!\w){re.escape(one)}(?!\w)", plain) for one in secrets)
