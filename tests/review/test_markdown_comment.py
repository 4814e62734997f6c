"""A comment on a pull request is read, not scrolled, and no word in it becomes markup."""

from builder.review.markdown_comment import MOST_LETTERS, review_as_markdown
from builder.review.remark import Remark, TreeReview, in_code


def review(changes: int) -> TreeReview:
    """Return a review with some changes and two effects."""
    change = Remark("minutes changed", "belt", "`minutes` is now `5`, was `3`")
    effects = (Remark("caution lost", "belt", "the caution is gone"), Remark("older", "", "older"))
    return TreeReview((change,) * changes, effects)


def test_what_is_seen_is_about_sixty_lines() -> None:
    """The first trees are open; the others are one line each, with the kinds of their effects."""
    text = review_as_markdown({f"a/{number}": review(12) for number in range(9)})
    folded = text.split("<details>")
    assert len(folded) == 8
    assert len(folded[0].splitlines()) <= 60
    assert "<summary>a/8: 12 changes; caution lost, older</summary>\n\n- minutes" in folded[-1]
    assert text.count("</details>") == 7


def test_a_comment_is_no_longer_than_a_host_takes() -> None:
    """What is left out is counted, with the command that shows it."""
    text = review_as_markdown({f"a/{number}": review(400) for number in range(9)})
    assert len(text) <= MOST_LETTERS + 100
    assert text.endswith(" more trees changed: run `baytree review`.")


def test_no_word_becomes_markup() -> None:
    """Neither a name of a file, nor words in backquotes or beside them."""
    evil = "`</details>[x](https://shop.example) @everyone"
    remark = Remark("text changed", evil, f"is {in_code(evil)}, by *M. Lind* @everyone <b>")
    text = review_as_markdown({"a/<b>_@me": TreeReview((remark,), ())})
    outside = "".join(text.split("`")[::2])
    assert "</details>" not in outside
    assert "<b>" not in outside.replace(r"\<b\>", "")
    assert "@everyone" not in outside
    assert r"### a/\<b\>\_@" in outside
    assert r"by \*M. Lind\*" in outside
