"""Work spread over the cores of the processor.

In: a function and its items. Out: the results one after another, in the order of the items.
"""
