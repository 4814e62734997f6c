"""What a picture is: a drawing that runs nothing, or a photo made small and stripped.

In: the bytes of a file. Out: why it is no picture, or the bytes to publish. The reader asks the
first, the site the second; nobody publishes what has not been through here.
"""
