"""The symptom index and the words that expand it.

In: the `Library` with its tree summaries. Out: rows for the page's search, and the ranking itself.
"""
