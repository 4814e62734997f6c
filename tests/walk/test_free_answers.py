"""What was typed freely on a walk is kept by the shop's name for it, where it has one."""

from pathlib import Path

import pytest

from builder.check.unchecked_library import read_library
from builder.model.library import Library
from builder.walk.free_answers import unknown_answers, with_known_names
from builder.walk.open_text import is_open, secrets_of
from builder.walk.walk_tables import WalkTables

TREE = "network/module-silent"


@pytest.fixture(scope="module")
def library() -> Library:
    """Return the knowledge of the samples."""
    return read_library(Path(__file__).parents[1] / "samples")[0]


@pytest.mark.parametrize(
    ("typed", "kept"),
    [
        ("Engine  Computer", "pcm"),  # what it is also called
        ("Instrument cluster", "cluster"),
        ("ABS-MODULE", "abs-module"),
        ("other", "other"),  # a choice of the tree
        ("the cluster by the door", "the cluster by the door"),
    ],
)
def test_a_name_of_the_shop_is_kept_by_its_id(
    samples: WalkTables, library: Library, typed: str, kept: str
) -> None:
    """Exactly that name, however it is written; anything else stays, and is named to be read."""
    answers = {"where": typed, "parts": ("horn", typed)}
    known = with_known_names(samples, library, [TREE], answers)
    assert known == {"where": kept, "parts": ("horn", kept)}
    unknown = unknown_answers(samples, library, [TREE], {**known, "spec lining": "2.0"})
    is_unknown = " " in kept
    assert unknown == ({"where": kept, "parts": kept} if is_unknown else {})


JOB = {"vin": "1M8GDM9AXKP042788", "customer": "Ann Miller-Lopez", "order": "RO-4711"}


@pytest.mark.parametrize(
    "text",
    ["miller's key", "said Lopez", "ro-4711", "KP042788", "VIN 1M8GDM9AXKP042789", "Dr. Who",
     "(555) 555-0142", "5555550142", "a@b.example"],
)  # fmt: skip
def test_a_text_that_names_somebody_is_not_open(text: str) -> None:
    """Customer, order, VIN and its end, people addressed, phone and mail."""
    assert not is_open(text, secrets_of(JOB))


@pytest.mark.parametrize(
    "text", ["12.51 V, 0.2 V", "P0562 and U0131-87", "the anneal", "2026-05-01", "fuse 4711a"]
)
def test_a_text_of_the_trade_is_open(text: str) -> None:
    """Readings, DTCs, dates, and words that a name is only a part of."""
    assert is_open(text, secrets_of(JOB))
