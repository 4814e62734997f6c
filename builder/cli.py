"""The command line: each command, and the one place where an error becomes words.

In: arguments. Out: an exit status: 0 sound, 1 findings, 2 the command could not run.
"""

import argparse
import gc
import io
import json
import os
import sys
from collections.abc import Callable, Sequence
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from builder import commands
from builder.flags import Wanted, parser
from builder.reader.library import read_knowledge
from builder.reader.trees import NotThereError
from builder.reporting import report

if TYPE_CHECKING:
    from builder.find.ranking import SearchAnswer

Options = argparse.Namespace


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command."""
    # Trees are thousands of small values without cycles; to look for cycles among them at the usual
    # pace took a fifth of a build.
    gc.set_threshold(100_000, 50, 50)
    _say_anything()
    options = parser().parse_args(arguments)
    try:
        status = RUN[options.command](options)
        sys.stdout.flush()
        return status
    except BrokenPipeError:
        # Whoever reads has read enough; what is still to be written goes nowhere.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 2
    except (OSError, NotThereError) as error:
        print(f"baytree: {error}", file=sys.stderr)
        return 2


def _say_anything() -> None:
    """Let every sign through: a file's name may be no text, and a pipe's encoding not UTF-8."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            encoding = stream.encoding if stream.isatty() else "utf-8"
            stream.reconfigure(encoding=encoding, errors="backslashreplace")


def _check(options: Options) -> int:
    shop = _shop(options)
    checked = commands.check(shop, map(Path, options.files), options.today)
    report(shop, checked, options.format)
    return 1 if checked.errors or (options.strict and checked.findings) else 0


def _build(options: Options) -> int:
    shop = _shop(options)
    out = Path(options.out).resolve() if options.out else shop / "site"
    checked = commands.build(shop, out, options.today, prints=not options.no_prints)
    if checked.findings:
        report(shop, checked, options.format)
    if checked.errors:
        print("nothing was built; an old site stays as it was", file=sys.stderr)
        return 1
    trees = len(checked.library.trees)
    print(f"{trees} tree{'' if trees == 1 else 's'} built; open {_from_here(out / 'index.html')}")
    return 0


def _from_here(path: Path) -> Path:
    here = Path.cwd()
    return path.relative_to(here) if path.is_relative_to(here) else path


def _print(options: Options) -> int:
    from tqdm import tqdm

    shop = _shop(options)
    wanted = Wanted(
        trees=tuple(options.trees),
        system=options.system or "",
        every=options.all,
        sheet=options.sheet,
        paper=options.paper or "",
        distance=options.distance,
        fix=options.fix or "",
    )
    out = Path(options.out).resolve() if options.out else shop / "prints"
    printed: list[Path] = []
    with tqdm(unit=" sheets", disable=not sys.stderr.isatty()) as bar:
        for path, total in commands.print_sheets(shop, wanted, out):
            printed.append(path)
            bar.total = total
            bar.update()
            bar.write(str(_from_here(path)))
    if not printed:
        print("baytree: name a tree, a system with --system, or --all", file=sys.stderr)
    return 0 if printed else 2


def _find(options: Options) -> int:
    answer = commands.find(_shop(options), " ".join(options.words))
    if options.format == "json":
        hits = [
            {"id": hit.id, "title": hit.title, "kind": hit.kind, "score": hit.score}
            for hit in answer.hits
        ]
        print(json.dumps(hits, ensure_ascii=False, indent=2))
    else:
        print("\n".join(_found(answer)))
    return 0


def _found(answer: "SearchAnswer") -> list[str]:
    lines = [f"taken as: {taken} (for {typed})" for typed, taken in answer.understood.corrected]
    lines += [f"{hit.id}  {hit.title}" for hit in answer.hits]
    if not answer.hits:
        lines.append("nothing fits all of that; the nearest are:")
    lines += [f"see also: {place.name}" for place in answer.suggestions]
    return lines


def _minutes(options: Options) -> int:
    from builder.plan.minutes import as_json as minutes_as_json

    found = commands.tree_minutes(_shop(options), options.tree)
    if options.format == "json":
        print(json.dumps(minutes_as_json(found), indent=2))
        return 0
    print(f"expected {float(found.expected):.0f} min, shortest {float(found.shortest):.0f}, "
          f"longest {float(found.longest):.0f}")  # fmt: skip
    for name, fix in found.fixes.items():
        print(f"{float(fix.chance):6.0%}  {float(fix.minutes):4.0f} min  {name}")
    return 0


def _rules(options: Options) -> int:
    pages = commands.rules(options.name)
    if not pages:
        print(f"baytree: there is no rule `{options.name}`", file=sys.stderr)
        return 2
    for page in pages:
        print(f"{page.rule.name:26} {page.rule.severity:8} {page.rule.summary}")
    if options.name:
        page = pages[0]
        print(f"\n{page.finds}\n\nWhy: {page.why}\n\nWrong:\n\n{page.wrong}\nRight:\n\n"
              f"{page.right}\nMend: {page.mend}")  # fmt: skip
    return 0


def _schema(options: Options) -> int:
    if not commands.schemas(options.kind):
        print(f"baytree: there is no kind of file `{options.kind}`", file=sys.stderr)
        return 2
    shop = _shop(options)
    if options.kind and not options.out:
        print(*commands.schemas(options.kind, read_knowledge(shop)[0]).values(), sep="", end="")
        return 0
    folder = Path(options.out) if options.out else shop / ".schemas"
    for path in commands.write_schemas(shop, folder, options.kind):
        print(_from_here(path.resolve()))
    return 0


def _serve(options: Options) -> int:
    commands.serve(_shop(options), options.port)
    return 0


def _start(options: Options) -> int:
    return _made(commands.start_shop(Path(options.folder)))


def _new(options: Options) -> int:
    return _made(commands.new_tree(_shop(options), options.id, date.today()))


def _made(made: Path | tuple[Path, ...] | commands.Refused) -> int:
    """Say what was written, or why nothing was."""
    if isinstance(made, commands.Refused):
        print(f"baytree: {made.message}\n  hint: {made.hint}", file=sys.stderr)
        return 2
    for path in made if isinstance(made, tuple) else (made,):
        print(_from_here(path.resolve()))
    return 0


def _shop(options: Options) -> Path:
    """Find the shop: the folder given, or the nearest one upward that holds trees."""
    start = Path(options.shop or ".").resolve()
    for place in [start] if options.shop else [start, *start.parents]:
        if (place / "site_config").is_dir() or (place / "trees").is_dir():
            return place
    raise FileNotFoundError(f"no shop here: {start} holds no trees/ and no site_config/")


RUN: dict[str, Callable[[Options], int]] = {
    "check": _check,
    "build": _build,
    "print": _print,
    "serve": _serve,
    "find": _find,
    "minutes": _minutes,
    "start": _start,
    "new": _new,
    "rules": _rules,
    "schema": _schema,
}


if __name__ == "__main__":
    sys.exit(main())
