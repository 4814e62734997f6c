"""What a change of trees means in the bay.

In: a revision of the shop and its working tree. Out: for each changed tree what the author did, and
what follows from it. Unsound trees are compared, too.
"""
