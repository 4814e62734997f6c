"""Where to look instead, when a query finds nothing that fits."""

from builder.find.suggestions import Suggestion, suggest_places


def test_at_most_six_systems_and_six_lamps_are_suggested() -> None:
    """The nearest by name; a phone shows no more of them at a glance."""
    systems = [Suggestion("system", f"s{n}", f"System {n}") for n in range(8)]
    lamps = [Suggestion("lamp", f"l{n}", f"Lamp {n}") for n in range(7)]
    suggested = suggest_places(
        [*lamps, *systems, Suggestion("system", "x", "Charging")], "charging"
    )
    assert [place.id for place in suggested] == [
        *("x", "s0", "s1", "s2", "s3", "s4"), *("l0", "l1", "l2", "l3", "l4", "l5")
    ]  # fmt: skip
