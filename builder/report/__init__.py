"""Findings as text, JSON, SARIF and workflow annotations.

In: `Finding`s and the source lines they point at. Out: text; nothing is judged here.
"""
