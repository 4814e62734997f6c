"""`baytree words`: list the words of the format, or explain one."""

import argparse
import sys

from builder.reference.format_word import FormatWord
from builder.reference.word_list import smallest_tree, word_groups, words_named
from builder.rules.shared.close_names import suggestion

NAME = "words"
HELP = "list the words of the format, or explain one"


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the flags."""
    parser.add_argument("name", nargs="*", metavar="NAME", help="word to explain")


def run(options: argparse.Namespace) -> int:
    """Print a line for every word, or all meanings of one."""
    if not options.name:
        _print_all()
        return 0
    name = " ".join(options.name)
    words = words_named(name)
    if not words:
        names = {word.name for group in word_groups() for word in group.words}
        hint = suggestion(name, names, "`baytree words` lists them all")
        print(f"baytree: there is no word `{name}`; {hint}", file=sys.stderr)
        return 2
    print("\n\n".join(map(explained_word, words)))
    return 0


def _print_all() -> None:
    print(f"The smallest tree:\n\n{smallest_tree()}")
    for group in word_groups():
        print(f"{group.title}\n")
        for word in group.words:
            print(f"  {word.name:20} {word.means}")
        print()


def explained_word(word: FormatWord) -> str:
    """Write a word with its example, what it may be, and where it may stand."""
    lines = [
        f"{word.name}: {word.means}" if not word.name.endswith(":") else f"{word.name} {word.means}"
    ]
    if word.choices:
        lines.append(f"  one of:   {', '.join(word.choices)}")
    if word.example:
        lines.append(f"  example:  {word.example}")
    if word.default:
        lines.append(f"  default:  {word.default}")
    lines.append(f"  where:    {', '.join(word.places)}{' (required)' if word.required else ''}")
    return "\n".join(lines)
