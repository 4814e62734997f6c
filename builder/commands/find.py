"""`baytree find`: search trees by symptom, warning light, or DTC."""

import argparse
import json
from typing import TYPE_CHECKING

from builder.cache.database import opened
from builder.check.verdict import known_library
from builder.commands.place import shop_of

if TYPE_CHECKING:
    from builder.find.ranking import SearchAnswer

NAME = "find"
HELP = "search trees by symptom, warning light, or DTC"


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the flags."""
    parser.add_argument("words", nargs="+", metavar="WORDS", help="what to search for")
    parser.add_argument("--format", choices=("text", "json"), default="text", help="output format")


def run(options: argparse.Namespace) -> int:
    """Rank the trees and articles for the words of a customer."""
    from builder.find.ranking import answer_query
    from builder.find.search_table import search_table
    from builder.find.symptom_index import build_symptom_index

    shop = shop_of(options)
    with opened(shop) as cache:
        index = build_symptom_index(search_table(known_library(shop, cache)))
    answer = answer_query(index, " ".join(options.words))
    if options.format == "json":
        hits = [
            {"id": hit.id, "title": hit.title, "kind": hit.kind, "score": hit.score}
            for hit in answer.hits
        ]
        print(json.dumps(hits, ensure_ascii=False, indent=2))
    else:
        print("\n".join(_lines(answer)))
    return 0


def _lines(answer: "SearchAnswer") -> list[str]:
    lines = [f"taken as: {taken} (for {typed})" for typed, taken in answer.understood.corrected]
    lines += [f"{hit.id}  {hit.title}" for hit in answer.hits]
    if not answer.hits:
        lines.append("nothing fits all of that; the nearest are:")
    lines += [f"see also: {place.name}" for place in answer.suggestions]
    return lines
