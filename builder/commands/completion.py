"""`baytree completion`: the script with which a shell completes commands, flags and trees."""

import argparse
from collections.abc import Iterator

NAME = "completion"
HELP = "print what lets bash or zsh complete commands, flags and trees"
_NAMES_A_TREE = ("TREE", "OLD")
_VEHICLES = 'words=$(_baytree_ids "$shop" kb/vehicles)'
_HEAD = """\
# Completion of baytree. In ~/.bashrc: source <(baytree completion)
# In ~/.zshrc before that line:
#     autoload -Uz compinit bashcompinit && compinit && bashcompinit

_baytree_ids() {  # IDs of trees or vehicles in the shop: of --shop, or the nearest one upward
    local shop=$1 folder=$2
    if [ -z "$shop" ]; then
        shop=$PWD
        while [ ! -d "$shop/trees" ] && [ "$shop" != / ] && [ -n "$shop" ]; do
            shop=${shop%/*}
        done
    fi
    (cd "$shop/$folder" 2>/dev/null && find . -name '*.yml' | sed 's,^\\./,,; s,\\.yml$,,')
}

_baytree() {
    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]}
    local command= shop= flags= words= at
    COMPREPLY=()
    for ((at = 1; at < COMP_CWORD; at++)); do
        case ${COMP_WORDS[at]} in
            --shop) shop=${COMP_WORDS[at+1]}; ((at++)) ;;
            -*) ;;
            *) command=${COMP_WORDS[at]}; break ;;
        esac
    done
    case $command:$before in
"""
_TAIL = """\
    esac
    case $word in
        -*) words=$flags ;;
    esac
    COMPREPLY=($(compgen -W "$words" -- "$word"))
}
complete -o default -F _baytree baytree
"""


def add_flags(_parser: argparse.ArgumentParser) -> None:
    """Add nothing: the script is the same for both shells."""


def run(_options: argparse.Namespace) -> int:
    """Print the script."""
    from builder.commands.main import parser

    print(_HEAD + "".join(f"{line}\n" for line in _cases(parser())) + _TAIL, end="")
    return 0


def _cases(whole: argparse.ArgumentParser) -> Iterator[str]:
    """Yield what comes after which command, and after which of its flags."""
    commands = _parsers(whole)
    top = " ".join(one for action in whole._actions for one in action.option_strings)
    yield "        *:--shop) return ;;"
    for name, parser in commands.items():
        yield from (f"        {name}:{flag}) {values} ;;" for flag, values in _after_flags(parser))
    yield f'        :*) flags="{top}"; words="{" ".join(commands)}" ;;'
    for name, parser in commands.items():
        flags = " ".join(one for action in parser._actions for one in action.option_strings)
        yield f'        {name}:*) flags="{flags}"; {_words(parser)} ;;'


def _parsers(whole: argparse.ArgumentParser) -> dict[str, argparse.ArgumentParser]:
    # argparse offers no other way to its commands and flags; shell completions all read these.
    choices = next(one.choices for one in whole._actions if one.nargs == argparse.PARSER)
    assert isinstance(choices, dict)
    return choices


def _after_flags(parser: argparse.ArgumentParser) -> Iterator[tuple[str, str]]:
    """Yield each flag that takes a value, with what to do: offer its choices, or files."""
    for action in parser._actions:
        takes_value = action.option_strings and action.nargs != 0
        for flag in action.option_strings if takes_value else ():
            choices = " ".join(map(str, action.choices or ()))
            offered = f'words="{choices}"' if choices else "return"
            yield flag, _VEHICLES if flag == "--vehicle" else offered


def _words(parser: argparse.ArgumentParser) -> str:
    """Return what is offered where a command takes a word."""
    words = [one for one in parser._actions if not one.option_strings]
    choices = [str(choice) for one in words for choice in one.choices or ()]
    if any(str(one.metavar).strip("[]. ") in _NAMES_A_TREE for one in words):
        return 'words=$(_baytree_ids "$shop" trees)'
    return f'words="{" ".join(choices)}"'
