"""Every word of the format: what it means in the bay, an example, and where it may stand.

In: the schemas, and the closed lists of units, ranges and options. Out: `FormatWord`s, in groups.
"""
