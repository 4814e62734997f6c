"""What is said of a command line that can't be read: what was likely meant, and in which order.

In: the words of a command line, and what its parser has against them. Out: a sentence with the
command as it should be typed.
"""

import argparse
import re
from collections.abc import Sequence
from typing import NoReturn

from builder.rules.shared.close_names import closest_names

# How the parser words it, up to Python 3.11 and since; the names that it lists may be in quotes.
NO_CHOICE = re.compile(
    r"argument (?P<what>\S+): invalid choice: '(?P<word>.*?)' \(choose from (.*)\)"
)
NAME = re.compile(r"[\w-]+")


class WordedParser(argparse.ArgumentParser):
    """A parser that says what to type instead of a word that it doesn't know."""

    words: Sequence[str] = ()  # of the whole command line, as typed

    def error(self, message: str) -> NoReturn:
        """Print the usage and what is wrong, and exit with status 2."""
        match = NO_CHOICE.fullmatch(message)
        super().error(_choice(self.words, match) if match else message)


def _choice(words: Sequence[str], match: re.Match[str]) -> str:
    word, choices = match["word"], NAME.findall(match[3])
    if others := [one for one in words if one in choices and one != word]:
        turned = [others[0], *(one for one in words if one != others[0])]
        at = words.index(word)
        right = _command([*words[:at], *(one for one in turned if one not in words[:at])])
        return f"`{others[0]}` comes before `{word}`: write `{right}`"
    if len(choices) == 1:
        at = words.index(word)
        right = _command([*words[:at], choices[0], *words[at:]])
        return f"`{choices[0]}` comes before `{word}`: write `{right}`"
    listed = ", ".join(f"`{one}`" for one in choices)
    close = " or ".join(f"`{one}`" for one in closest_names(word, choices))
    likely = f"did you mean {close}?" if close else f"use one of {listed}"
    return f"{match['what']} can't be `{word}`; {likely}"


def words_left_over(
    whole: argparse.ArgumentParser,
    command: argparse.ArgumentParser,
    words: Sequence[str],
    unknown: Sequence[str],
) -> str:
    """Say what is wrong with what a command doesn't take."""
    flag = unknown[0].partition("=")[0]
    if not flag.startswith("-"):
        return f"`{' '.join(unknown)}` is too much: put a name with blanks in quotes"
    if flag in flags_of(whole):
        at = words.index(unknown[0])
        value = words[at + 1 : at + 2] if "=" not in unknown[0] and flag != "--version" else []
        rest = [*words[:at], *words[at + 1 + len(value) :]]
        right = _command([unknown[0], *value, *rest])
        return f"`{flag}` goes before the command: `{right}`"
    known = flags_of(command)
    close = " or ".join(f"`{one}`" for one in closest_names(flag, known))
    listed = ", ".join(f"`{one}`" for one in known)
    return f"there is no `{flag}` here; " + (
        f"did you mean {close}?" if close else f"known: {listed}"
    )


def flags_of(parser: argparse.ArgumentParser) -> list[str]:
    """Return the flags that a parser takes."""
    # argparse offers no other way to its flags; shell completion reads them, too.
    every = (one for action in parser._actions for one in action.option_strings)
    return [one for one in every if one.startswith("--")]


def _command(words: Sequence[str]) -> str:
    return " ".join(["baytree", *(f'"{one}"' if " " in one else one for one in words)])
