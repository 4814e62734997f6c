"""Arithmetic of the trade: facts and sums that people get wrong at the bench.

In: numbers and what people type. Out: numbers, small records, or a `Mistake` that says what was
wrong with the input. Pure functions; nothing here reads a file or knows of a tree.
"""
