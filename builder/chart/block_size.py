"""The size of a block of the outline in one style and width.

In: measured by a style. Out: read by the flow of columns and by the style when it draws.
"""

from typing import NamedTuple

from builder.chart.lane_rows import LaneRow


class BlockSize(NamedTuple):
    """A block measured; all heights in points at the nominal text size."""

    head: float  # of the box of the step itself
    rows: tuple[LaneRow, ...]
    body: float  # head and rows
    tail: float  # from the body to the next box of the section
    cut: float  # in place of the tail at the foot of a column: a connector
