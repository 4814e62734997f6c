"""Sheets for the bay: wall chart, bench sheet, customer's sheet.

In: a `Tree`, its `Chart`, the `Library`. Out: the bytes of a PDF, the same for the same input.
"""
