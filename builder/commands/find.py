"""`baytree find`: search trees by symptom, warning light, or DTC."""

import argparse
import json
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from builder.cache.database import opened
from builder.check.verdict import known_library
from builder.commands.place import shop_of

if TYPE_CHECKING:
    from builder.find.ranking import SearchAnswer, SearchHit

NAME = "find"
HELP = "search trees by symptom, warning light, or DTC"
NO_TREE = "We have no tree for this. Start one: baytree new tree SYSTEM/NAME"


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the flags."""
    parser.add_argument("words", nargs="+", metavar="WORDS", help="what to search for")
    parser.add_argument("--format", choices=("text", "json"), default="text", help="output format")


def run(options: argparse.Namespace) -> int:
    """Rank the trees and articles for the words of a customer; 1 if nothing is found."""
    from builder.find.ranking import answer_query
    from builder.find.search_table import search_table
    from builder.find.symptom_index import build_symptom_index

    shop = shop_of(options)
    with opened(shop) as cache:
        index = build_symptom_index(search_table(known_library(shop, cache)))
    query = " ".join(options.words)
    answer = answer_query(index, query)
    if options.format == "json":
        print(json.dumps(_as_json(query, answer), ensure_ascii=False, indent=2))
    else:
        print("\n".join(_lines(answer)))
    return 0 if answer.hits else 1


def _as_json(query: str, answer: "SearchAnswer") -> dict[str, Any]:
    return {
        "query": query,
        "safety": " ".join(answer.safety) or None,
        "results": [
            {"id": hit.id, "title": hit.title, "kind": hit.kind, "score": hit.score}
            for hit in answer.hits
        ],
    }


def _lines(answer: "SearchAnswer") -> Iterator[str]:
    yield from answer.safety
    for typed, taken in answer.understood.corrected:
        yield f"Showing results for {taken} (you typed {typed})"
    if not answer.trees:
        yield NO_TREE
    yield from map(_line, answer.hits)
    shown = sum(hit.kind == "tree" for hit in answer.hits)
    if answer.trees > shown:
        yield f"{answer.trees - shown} more trees: add words"
    if answer.nearest:
        yield "Same subject, another fault:"
        yield from map(_line, answer.nearest)


def _line(hit: "SearchHit") -> str:
    return f"{hit.id}  {hit.title}"
