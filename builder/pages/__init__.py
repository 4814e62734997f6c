"""One renderer per kind of page.

In: the model. Out: Markdown and HTML as text; nothing is written to disk here.
"""
