"""The tree as a chart: text widths, layout, SVG.

In: a `Tree` (as a `Flow` of nodes and labeled edges). Out: a `Chart` of boxes and lines in points,
and the SVG drawn from it.
"""
