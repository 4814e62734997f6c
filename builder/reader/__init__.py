"""Text to model: YAML with positions, the JSON Schemas, Markdown front matter.

In: files of a shop. Out: `Tree`s, a `Library`, and a `Finding` for every mistake of an author;
nothing an author can write makes this room raise an exception.
"""
