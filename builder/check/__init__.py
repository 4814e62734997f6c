"""The verdict of a shop: every tree read and judged at most once, with a cache between checks.

In: a shop's folder and a date. Out: a `Verdict`, a finished value: the library and all findings.
"""
