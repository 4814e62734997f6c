"""The words of the format: what each means, an example, and where it may stand.

In: the words, from the schemas. Out: one `Page`.
"""

from builder.pages import addresses
from builder.pages.page import Page
from builder.pages.render import render
from builder.reference.word_list import smallest_tree, word_groups


def words_page() -> Page:
    """Write the page of all words."""
    groups = [(addresses.file_slug(group.title).lower(), group) for group in word_groups()]
    body = render("words.html", "words", groups=groups, smallest=smallest_tree())
    return Page("words", "Words of the format", body)
