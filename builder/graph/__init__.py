"""What follows from a tree's shape: routes, order, loops, and the space of its readings.

In: a `Tree`. Out: its routes and moves, proofs along every path, and the readings no result covers.
"""
