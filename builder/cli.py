"""The command line: flags, and the one place where an error becomes words.

In: arguments. Out: an exit status: 0 sound, 1 findings, 2 the command could not run.
"""

import argparse
import gc
import json
import os
import re
import sys
from collections.abc import Callable, Sequence
from datetime import date
from pathlib import Path

from tqdm import tqdm

from builder import __version__, commands
from builder.commands import Checked, NotThereError
from builder.find.rank import Answer
from builder.plan.minutes import as_json as minutes_as_json
from builder.reader.library import read_knowledge
from builder.report.annotations import as_annotations
from builder.report.as_json import as_json
from builder.report.sarif import as_sarif
from builder.report.text import as_text, colour_wanted

Options = argparse.Namespace


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command."""
    # Trees are thousands of small values without cycles; to look for cycles among them at the usual
    # pace took a fifth of a build.
    gc.set_threshold(100_000, 50, 50)
    options = _parser().parse_args(arguments)
    try:
        return int(options.run(options))
    except (OSError, NotThereError) as error:
        print(f"baytree: {error}", file=sys.stderr)
        return 2
    except BrokenPipeError:
        return 2


def _check(options: Options) -> int:
    shop = _shop(options)
    checked = commands.check(shop, map(Path, options.files), options.today)
    _report(options, shop, checked)
    return 1 if checked.errors or (options.strict and checked.findings) else 0


def _report(options: Options, shop: Path, checked: Checked) -> None:
    trees = len(checked.library.trees)
    match options.format:
        case "json":
            text = as_json(checked.findings, trees)
        case "sarif":
            text = as_sarif(checked.findings, _in_repository(shop))
        case "github":
            text = as_annotations(checked.findings, _in_repository(shop))
        case _:
            colour = colour_wanted(sys.stdout.isatty(), os.environ)
            text = as_text(checked.findings, lambda file: _lines(shop, file), trees, colour=colour)
    sys.stdout.write(text)


def _lines(shop: Path, file: str) -> list[str]:
    try:
        return (shop / file).read_text("utf-8-sig", "replace").split("\n")
    except OSError:
        return []


def _in_repository(shop: Path) -> str:
    """Return the shop's folder in its repository, such as `shop/`; "" where it is the whole."""
    for place in (shop, *shop.parents):
        if (place / ".git").exists():
            inside = shop.relative_to(place).as_posix()
            return "" if inside == "." else f"{inside}/"
    return ""


def _build(options: Options) -> int:
    shop = _shop(options)
    out = Path(options.out).resolve() if options.out else shop / "site"
    checked = commands.build(shop, out, options.today, prints=not options.no_prints)
    if checked.findings:
        _report(options, shop, checked)
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
    shop = _shop(options)
    wanted = commands.Wanted(
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


def _metres(text: str) -> float:
    match = re.fullmatch(r"([0-9]+(?:[.,][0-9]+)?) *(m|cm|ft)?", text)
    if not match or not float(match[1].replace(",", ".")):
        raise argparse.ArgumentTypeError(f"`{text}` is no distance; write it like 1.5m")
    return float(match[1].replace(",", ".")) * {"cm": 0.01, "ft": 0.3048}.get(match[2], 1)


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


def _found(answer: Answer) -> list[str]:
    lines = [f"taken as: {taken} (for {typed})" for typed, taken in answer.understood.corrected]
    lines += [f"{hit.id}  {hit.title}" for hit in answer.hits]
    if not answer.hits:
        lines.append("nothing fits all of that; the nearest are:")
    lines += [f"see also: {offer.name}" for offer in answer.offers]
    return lines


def _minutes(options: Options) -> int:
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


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="baytree",
        description="Decision trees of a repair shop: proved sound, read as a site, printed.",
    )
    parser.add_argument("--version", action="version", version=f"baytree {__version__}")
    parser.add_argument("--shop", metavar="DIR", help="the folder that holds trees/ and kb/")
    sub = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")

    check = _command(sub, "check", _check, "say what is wrong, and where")
    check.add_argument("files", nargs="*", metavar="FILE", help="only what concerns these files")
    check.add_argument("--format", choices=("text", "json", "sarif", "github"), default="text")
    check.add_argument("--strict", action="store_true", help="a warning fails as well")
    _today(check)

    build = _command(sub, "build", _build, "check, then make the site and the prints")
    build.add_argument("--out", metavar="DIR", help="where to (site/ in the shop)")
    build.add_argument("--no-prints", action="store_true", help="the site alone")
    build.set_defaults(format="text")
    _today(build)

    prints = _command(sub, "print", _print, "charts for the wall, sheets for bench and customer")
    prints.add_argument("trees", nargs="*", metavar="TREE")
    prints.add_argument("--all", action="store_true", help="every tree in use")
    prints.add_argument("--system", metavar="S", help="one book of a system's trees")
    prints.add_argument("--sheet", choices=("wall", "bench", "customer"), default="wall")
    prints.add_argument("--paper", choices=("letter", "tabloid", "a4", "a3"))
    prints.add_argument("--distance", type=_metres, metavar="1.5m", help="to be read from there")
    prints.add_argument("--fix", metavar="ID", help="the fix of a customer's sheet (all of them)")
    prints.add_argument("--out", metavar="DIR", help="where to (prints/ in the shop)")

    serve = _command(sub, "serve", _serve, "the site while you write: built anew on every change")
    serve.add_argument("--port", type=int, default=8000, metavar="N")

    find = _command(sub, "find", _find, "find trees by what the customer says, a lamp or a code")
    find.add_argument("words", nargs="+", metavar="WORDS")
    find.add_argument("--format", choices=("text", "json"), default="text")

    minutes = _command(sub, "minutes", _minutes, "how long following a tree takes")
    minutes.add_argument("tree", metavar="TREE")
    minutes.add_argument("--format", choices=("text", "json"), default="text")

    start = _command(sub, "start", _start, "a new, empty shop that checks and builds")
    start.add_argument("folder", metavar="DIR")

    new = _command(sub, "new", _new, "a tree to fill in, sound from the first line")
    new.add_argument("what", choices=("tree",), metavar="tree")
    new.add_argument("id", metavar="ID", help="system and name, such as charging/lamp-on")

    rules = _command(sub, "rules", _rules, "what the rules mean")
    rules.add_argument("name", nargs="?", metavar="NAME")

    schema = _command(sub, "schema", _schema, "the schema of a kind of file, for editors")
    schema.add_argument("kind", nargs="?", metavar="KIND")
    schema.add_argument("--out", metavar="DIR", help="where to (.schemas/ in the shop)")
    return parser


def _command(
    sub: "argparse._SubParsersAction[argparse.ArgumentParser]",
    name: str,
    run: Callable[[Options], int],
    words: str,
) -> argparse.ArgumentParser:
    made: argparse.ArgumentParser = sub.add_parser(name, help=words, description=words)
    made.set_defaults(run=run)
    return made


def _today(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--today", type=date.fromisoformat, default=date.today(), metavar="DATE",
                        help="the day it is taken to be, for ages of reviews")  # fmt: skip


if __name__ == "__main__":
    sys.exit(main())
