"""Pictures: a drawing that runs nothing, or a photo made small, without metadata.

In: the bytes of a file. Out: what is wrong with it, or the bytes to publish. The reader asks for
the first, the site for the second; every published picture passes through here.
"""
