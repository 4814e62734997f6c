"""The story of a job on paper, for the repair order.

In: the story of a walk, its tree, the library. Out: the bytes of a PDF, two pages at most.
"""

from collections.abc import Iterator

from reportlab.platypus import Flowable

from builder.model.library import Library
from builder.model.tree import Tree
from builder.prints.document import (
    DocumentNames,
    blank_table,
    document,
    filled_in,
    heading,
    paragraph,
    paragraph_style,
)
from builder.prints.paper import PAPERS, Paper
from builder.prints.sheet import Foot, foot_lines
from builder.walk.job_details import job_line
from builder.walk.story import Story

TIGHT = 0.35  # of a heading's size: a story that fits on one page isn't put on two


def story_sheet(tree: Tree, library: Library, story: Story, paper: str = "") -> bytes:
    """Print a story; the foot says by which revision of the tree the job was done."""
    sheet = PAPERS[paper or library.shop.paper]
    return document(
        sheet,
        DocumentNames(
            f"Job: {story.title}",
            f"Story of a job by {tree.id}, {tree.revision}",
            job_line(library.shop, story.head),
        ),
        lambda: list(_flow(story, library, sheet)),
        Foot(f"Job: {story.title}", foot_lines(tree, library), ""),
    )


def _flow(story: Story, library: Library, paper: Paper) -> Iterator[Flowable]:
    yield paragraph(str(library.shop.name), paragraph_style(12))
    yield paragraph(story.title, paragraph_style(15, heavy=True, below=2))
    yield blank_table(filled_in(story.head), paper, 16)
    for name, lines in story.sections:
        yield heading(name, 10, TIGHT)
        for line in lines:
            yield paragraph(line, paragraph_style(heavy="[" in line, below=1))
