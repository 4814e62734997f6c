"""An author's own value in the form that the format takes.

In: what a value should be (the title of its schema), its key, and what the author wrote. Out: the
text to write instead, or None where only the author knows. Nothing is changed silently: these are
for hints.
"""

import re
from collections.abc import Callable, Mapping
from contextlib import suppress
from datetime import date, datetime
from decimal import Decimal

from builder.model.finding import Edit, edit_of
from builder.model.text import Text
from builder.reader.old_format import new_word
from builder.reader.other_units import OTHER_UNITS, WEIGHED

NUMBER = r"\d+(?:\.\d+)?|\.\d+"
CLOCK = re.compile(r"(?:(\d+) ?(?:h|hrs?|hours?))? ?(?:(\d+) ?(?:m|mins?|minutes?)?\.?)?", re.I)
HOURS = re.compile(rf"({NUMBER}) ?(?:h|hrs?|hours?)\.?", re.I)
OTHER_TIME = re.compile(r"(?<![a-z])(?:s|secs?|seconds?|d|days?|nights?|weeks?)\b", re.I)
WITH_UNIT = re.compile(rf"[~<>≈]? ?([-−+]?(?:{NUMBER})) *(?:[^\d\s.,][^\d]*)?", re.I)
CODE = re.compile(r"[PCBU][0-9A-F]{4}(?:-[0-9A-F]{2})?,?", re.I)
DIGITS = re.compile(r"([0-6]) (?:digits?|decimals?|places?|decimal places)", re.I)
WORDS = {word: str(number) for number, word in enumerate(
    ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"))
} | {"once": "1", "twice": "2", "thrice": "3"}  # fmt: skip
TIME_WORDS = {"m", "min", "mins", "minute", "minutes", "h", "hr", "hrs", "hour", "hours"}
LEFT_OUT = {  # words that say nothing but what the key says
    "a number of minutes": {*WORDS, *TIME_WORDS},
    "minutes": {*WORDS, *TIME_WORDS},
    "a number of hours": {*WORDS, *TIME_WORDS},
    "a whole number": {*WORDS, "time", "times", "people", "techs"},
    "a number from 0 to 1": set[str](),
    "an amount, or a range of amounts": {"usd", "dollar", "dollars", "to", "until", "through"},
}
OTHER_SIGN = re.compile(r"[^\w\s.,:%$–—−-]")
DATE_FORMS = (
    "%m/%d/%Y", "%m/%d/%y", "%Y/%m/%d", "%Y.%m.%d", "%d.%m.%Y", "%m-%d-%Y", "%Y-%m-%d", "%Y%m%d",
    "%Y-%d-%m", "%b %d %Y", "%B %d %Y", "%d %b %Y", "%d %B %Y",
)  # fmt: skip
DASH = r" ?(?:-|–|—|−|\.\.+|…|to|until|through) ?"
STILL_BUILT = re.compile(rf"(\d{{4}})(?: ?\+| ?and up| ?on|{DASH}(?:present|now|today)?)")


def put_right(title: str, name: str, value: str) -> str | None:
    """Return the author's value as the format wants it, or None."""
    make = FORMS.get(title)
    return make(name, value.strip()) if make else None


def sure_edit(title: str, value: Text, right: str) -> Edit | None:
    """Return the edit that writes the right form, where it says all that the author's says.

    A unit may be left out that the key has anyway, not a word that may mean something, nor an
    `about`; where something is to be added, only the author knows what.
    """
    if "..." in right or title in ("a file name", "a module and its part"):
        return None
    if title == "model years" and not re.search(r"\d$", value):
        return None  # the last year is today's only by chance
    if title == "a number from 0 to 1" and "%" not in value and not value.startswith("0"):
        return None
    words = {word.lower() for word in re.findall(r"[^\W\d_]+", value)}
    if title in LEFT_OUT and (words - LEFT_OUT[title] or OTHER_SIGN.search(value)):
        return None
    return edit_of(value, right)


def _number(name: str, value: str) -> str | None:
    if name == "resolution" and (digits := DIGITS.fullmatch(value)):
        return f"{Decimal(1).scaleb(-int(digits[1])):f}"
    text = re.sub(r"(\d),(\d{3})\b", r"\1\2", _in_digits(value))
    text = re.sub(r"(\d),(\d)", r"\1.\2", text)
    match = WITH_UNIT.fullmatch(text)
    return _plain(match[1].replace("−", "-")) if match else None


def _in_digits(value: str) -> str:
    return " ".join(WORDS.get(word.lower(), word) for word in value.split())


def _plain(number: str) -> str:
    """Return a number without a plus sign, leading zeros, or zeros at the end."""
    text = f"{Decimal(number):f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def _minutes(name: str, value: str) -> str | None:
    value = _in_digits(value)
    if value.lower() == "overnight" or OTHER_TIME.search(value):
        return None
    if match := re.fullmatch(r"(\d+):(\d\d)", value):
        return str(60 * int(match[1]) + int(match[2]))
    if match := HOURS.fullmatch(value):
        return _plain(str(60 * Decimal(match[1])))
    if (match := CLOCK.fullmatch(value)) and match[1]:
        return str(60 * int(match[1]) + int(match[2] or 0))
    return _number(name, value)


def _hours(name: str, value: str) -> str | None:
    value = _in_digits(value)
    if OTHER_TIME.search(value):
        return None
    if match := re.fullmatch(r"(\d+):(\d\d)", value):
        return _plain(f"{int(match[1]) + Decimal(int(match[2])) / 60:.2f}")
    if match := re.fullmatch(rf"({NUMBER}) ?(?:m|mins?|minutes?)\.?", value, re.I):
        return _plain(f"{Decimal(match[1]) / 60:.2f}")
    match = CLOCK.fullmatch(value)
    if match and match[1] and match[2]:
        return _plain(f"{int(match[1]) + Decimal(int(match[2])) / 60:.2f}")
    return _number(name, value)


def _count(name: str, value: str) -> str | None:
    number = _number(name, value)
    return number if number and number.isdigit() and number != "0" else None


def _jobs(name: str, value: str) -> str | None:
    if WEIGHED.fullmatch(value) or "%" in value:
        return None  # no weight of a part, and no share
    return _number(name, value)


def _share(name: str, value: str) -> str | None:
    number = _number(name, value)
    if number is None:
        return None
    share = Decimal(number) / (100 if "%" in value or Decimal(number) > 1 else 1)
    return _plain(str(share)) if 0 <= share <= 1 else None


def _date(_name: str, value: str) -> str | None:
    text = re.sub(r"(\d)(?:st|nd|rd|th)\b", r"\1", value.replace(",", " "))
    for form in DATE_FORMS:
        with suppress(ValueError):
            return datetime.strptime(" ".join(text.split()), form).date().isoformat()
    return None


def _money(_name: str, value: str) -> str | None:
    text = re.sub(r"[$€£]|\b(?:USD|EUR|dollars?|about|from)\b", "", value, flags=re.I)
    text = re.sub(r"(\d),(\d{3})\b", r"\1\2", text)
    text = re.sub(r"(\d),(\d)", r"\1.\2", text).strip()
    ends = re.fullmatch(rf"({NUMBER})\s*(?:{DASH}\s*({NUMBER}))?", text)
    if not ends:
        return None
    return f"{ends[1]} to {ends[2]}" if ends[2] else ends[1]


def _years(_name: str, value: str) -> str | None:
    match = re.fullmatch(rf"(\d{{4}}|'?\d\d)(?:{DASH}(\d{{4}}|'?\d\d))?", value)
    if still := re.fullmatch(
        rf"(\d{{4}})(?: ?\+| ?and up| ?on|{DASH}(?:present|now|today)?)", value
    ):
        return f"{still[1]}-{date.today().year}"
    if not match:
        return None
    first = _year(match[1])
    last = _year(match[2]) if match[2] else first
    return f"{first}-{last}" if first < last else first if first == last else None


def _year(text: str) -> str:
    digits = text.strip("'")
    century = "20" if int(digits) <= date.today().year % 100 + 2 else "19"
    return digits if len(digits) == 4 else century + digits


def _name(_name_of_key: str, value: str) -> str | None:
    value = re.sub(r"\.ya?ml(?=#|$)", "", value.removeprefix("trees/"))
    value = re.sub(r"^([\w-]+/[\w-]+)[.:/>]([\w-]+)$", r"\1#\2", value)
    tree, slash, step = value.partition("/")
    plain = slash.join(re.sub(r"[^A-Za-z0-9_#-]+", "-", part).strip("-") for part in (tree, step))
    return plain if plain.strip("/") and "/" not in step else None


def _file_name(_name: str, value: str) -> str | None:
    stem, dot, ending = value.rpartition("/")[2].rpartition(".")
    ending = {"heic": "jpg", "heif": "jpg", "bmp": "png", "tif": "png", "tiff": "png"}.get(
        ending.lower(), ending.lower()
    )
    plain = re.sub(r"[^A-Za-z0-9_-]+", "-", stem).strip("-")
    return f"{plain}.{ending}" if plain and dot else None


def _over_limit(name: str, value: str) -> str | None:
    if value.upper().strip(". ") in ("OL", "O.L", "0L", "OVER", "INFINITE", "INF", "∞"):
        return "OL"
    return _number(name, value)


def listed(value: str) -> str | None:
    """Return one line of text as a list, cut at its commas; None where it needs quotes."""
    items = [item.strip() for item in re.split(r"[,;]", value) if item.strip()]
    if all(CODE.fullmatch(word) for word in value.split()):
        items = value.split()
    return f"[{', '.join(items)}]" if items and not set(value) & set("[]{}:#\"'") else None


def _vehicle(_name: str, value: str) -> str | None:
    match = re.fullmatch(rf"([^\s,]+),? ([^\d,]+?),? ?(\d{{4}}(?:{DASH}\d{{4}})?)?", value)
    if not match:
        return None
    years = f", years: {_years('', match[3])}" if match[3] else ""
    return f"[{{make: {match[1]}, model: {match[2]}{years}}}]"


def _signed(_name: str, value: str) -> str | None:
    day = _date("", value)
    if value.lower() in ("yes", "no", "true", "false", "done"):
        return "{by: ..., date: ...}"
    return f"{{by: ..., date: {day}}}" if day else f"{{by: {value}, date: ...}}"


def _picture(_name: str, value: str) -> str | None:
    return f"{{file: {_file_name('', value) or value}, shows: ...}}"


def _replaced(_name: str, value: str) -> str | None:
    return f"{{module: {value}, part: new}}"


FORMS: Mapping[str, Callable[[str, str], str | None]] = {
    "a number": _number,
    "a number of minutes": _minutes,
    "minutes": _minutes,
    "a number of hours": _hours,
    "a number from 0 to 1": _share,
    "a number of jobs": _jobs,
    "a whole number": _count,
    "a number, or OL": _over_limit,
    "a date": _date,
    "model years": _years,
    "an amount, or a range of amounts": _money,
    "a branch": _name,
    "a step": _name,
    "a file name": _file_name,
    "a name and a date": _signed,
    "a picture": _picture,
    "a module and its part": _replaced,
    "a task from the list": lambda _key, value: new_word(value),
    "amperes": _number,
    "percent": _number,
    **OTHER_UNITS,
    "`any`, or a list of vehicles": _vehicle,
}
