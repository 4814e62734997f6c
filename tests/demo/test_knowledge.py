"""What the demo knows beside its trees: the modules that a shop replaces, and its closed jobs."""

from builder.model.ends import Fix
from builder.model.library import Library
from builder.model.tree import Tree


def test_there_are_records_of_fourteen_modules_or_more(library: Library) -> None:
    """The demo has the modules that a shop replaces."""
    assert len(library.modules) >= 14


def test_a_closed_job_went_through_a_tree_of_the_demo(
    library: Library, trees: tuple[Tree, ...]
) -> None:
    """Every closed job names a tree that is there, steps of it, and the fix that it ended with."""
    by_id = {tree.id: tree for tree in trees}
    assert len(library.cases) >= 20
    for job in library.cases.values():
        steps = by_id[job.tree].steps
        own = [one.step for one in job.path if one.inside is None]
        assert [step for step in own if step not in steps] == [], job.id
        if job.fix:
            assert isinstance(steps[job.fix].body, Fix), job.id
