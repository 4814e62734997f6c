"""The minutes of the demo's trees, held against walks by dice that know nothing of the plan."""

from pathlib import Path

import pytest

from builder.model.tree import Tree
from builder.reader.trees import read_tree, tree_files
from tests.plan.test_walked import is_as_walked

DEMO = Path(__file__).parents[2]


@pytest.mark.parametrize("path", tree_files(DEMO), ids=lambda path: path.stem)
def test_a_demo_tree_takes_as_long_as_its_walks(path: Path) -> None:
    """A thousand walks by dice take as long on the average as the plan says."""
    tree, _ = read_tree(DEMO, path)
    assert isinstance(tree, Tree)
    assert is_as_walked(tree)
