"""What a job is about, for the head of its papers: repair order, vehicle, VIN and the like.

In: what a record has of the job, the vehicle of the walk, the library. Out: texts by their name;
"" where a person fills it in by hand.
"""

from collections.abc import Mapping

from builder.model.library import Library
from builder.model.shop import Shop
from builder.wording.day_text import day_text

BLANK = "____________"  # to be filled in by hand


def job_details(job: Mapping[str, str], vehicle: str, library: Library, day: str) -> dict[str, str]:
    """Return the details in the order in which a repair order has them.

    A vehicle of the shop's list stands for several model years, so the year is asked for.
    """
    known = library.vehicles.get(vehicle)
    name, years = vehicle, None
    if known:
        name, years = f"{known.scope.make} {known.scope.model}", known.scope.years
    year = str(years[0]) if years and years[0] == years[1] else ""
    return {
        "Repair order": job.get("order", ""),
        "Date": day_text(day, library.shop),
        "Vehicle": " ".join(filter(None, (job.get("make"), job.get("model")))) or name,
        "Model year": job.get("year", "") or year,
        "VIN": job.get("vin", ""),
        "Mileage": job.get("mileage", ""),
    }


def job_line(shop: Shop, details: Mapping[str, str]) -> str:
    """Name the job in one line, for the head of every page after the first."""
    order, vin = details.get("Repair order", ""), details.get("VIN", "")
    vehicle = " ".join(filter(None, (details.get("Model year"), details.get("Vehicle"))))
    parts = (
        str(shop.name),
        f"Repair order {order or BLANK}",
        vehicle or f"Vehicle {BLANK}",
        f"VIN {vin}" if vin else "",
    )
    return ", ".join(filter(None, parts))
