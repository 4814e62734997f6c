"""The nouns of the trade as values: trees, knowledge, the shop, ranges, findings.

In: nothing; the reader fills these values. Out: frozen dataclasses that every other room passes on
unchanged. No I/O, and nothing here imports another room but `trade`.
"""
