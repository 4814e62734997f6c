"""The stories of walks through the samples, each to a hidden fault.

In: a tree and one of its fixes. Out: the state of the walk, and its story.
"""

from pathlib import Path

from builder.walk.job_state import JobState
from builder.walk.story import story_lines, story_of
from tests.walk.drilled import drilled_fix, drilled_shop

SAMPLES = Path(__file__).parents[1] / "samples"


def drilled_state(tree: str, fix: str) -> JobState:
    """Return the walk to a fix."""
    job = drilled_fix(SAMPLES, tree, fix)
    assert job
    return job.state


def told(state: JobState) -> dict[str, tuple[str, ...]]:
    """Return the lines of a story by their heading."""
    shop = drilled_shop(SAMPLES)
    story = story_of(shop.tables, state, shop.library)
    assert len([*story_lines(story)]) > len(story.sections)
    return dict(story.sections)
