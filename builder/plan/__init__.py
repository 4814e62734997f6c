"""What a tree costs: minutes, chances, the order of its steps, the options for the customer.

In: a `Tree` and the `Library`. Out: exact numbers; no I/O.
"""
