"""Which steps stand on a sheet of a wall chart.

In: the charts of all its sheets, and the number of one. Out: words for its foot.
"""

from collections.abc import Sequence

from builder.chart.chart import Chart


def steps_on_sheet(charts: Sequence[Chart], number: int) -> str:
    """Say which steps stand on a sheet; those drawn on a sheet before come last."""
    here = _numbers(charts[number - 1])
    before = {step for chart in charts[: number - 1] for step in _numbers(chart)}
    own, again = sorted(here - before), sorted(here & before)
    if not here:
        return "cautions"
    words = f"steps {own[0]} to {own[-1]}" if len(own) > 1 else f"step {(own or again)[0]}"
    return f"{words}, with {', '.join(map(str, again))} again" if own and again else words


def _numbers(chart: Chart) -> set[int]:
    return {int(box.number) for box in chart.boxes if box.number and box.kind != "connector"}
