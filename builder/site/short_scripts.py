"""Scripts as they are published: no comments, no blanks, local names of a letter.

In: the texts of scripts by name. Out: the same, about a third shorter. The minifier brings the
threads of another language's runtime, and a process with threads must not fork: it works in a
process of its own, which runs this file.
"""

import json
import subprocess
import sys
from collections.abc import Mapping


def short_scripts(scripts: Mapping[str, str]) -> dict[str, str]:
    """Return the scripts made short."""
    done = subprocess.run(
        [sys.executable, __file__],
        input=json.dumps(dict(scripts)).encode(),
        stdout=subprocess.PIPE,
        check=True,
    )
    short: dict[str, str] = json.loads(done.stdout)
    return short


def _shorten() -> None:
    import minify

    scripts = json.load(sys.stdin)
    short = {name: minify.string("text/javascript", text) for name, text in scripts.items()}
    json.dump(short, sys.stdout)


if __name__ == "__main__":
    _shorten()
