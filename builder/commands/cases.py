"""`baytree cases add`: file the record of a walk as a closed job."""

import argparse
import sys
from datetime import date
from pathlib import Path

from builder.commands.place import from_here, shop_of

NAME = "cases"
HELP = "file the record of a walk as a closed job"
LEFT_OUT = "Left out: names, VIN, repair order, complaint and notes; day and mileage are rounded."


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the words."""
    parser.add_argument("action", choices=("add",), metavar="add", help="file a record")
    parser.add_argument("file", metavar="FILE", help="record of a walk")


def run(options: argparse.Namespace) -> int:
    """Check a record, write its closed job, and print its name."""
    from builder.authoring.new_case import new_case
    from builder.authoring.not_written import NotWritten
    from builder.commands.records import played_job
    from builder.walk.case_of_walk import case_of_walk
    from builder.walk.free_answers import unknown_answers
    from builder.walk.job_state import Refused
    from builder.walk.job_stretches import trees_of_case

    shop = shop_of(options)
    job = played_job(shop, Path(options.file))
    details = job.record.get("job", {})
    case = case_of_walk(job.tables, job.state, job.library, details, date.today())
    if isinstance(case, Refused):
        print(f"baytree: {options.file}: {case.message}", file=sys.stderr)
        return 2
    written = new_case(shop, case)
    if isinstance(written, NotWritten):
        print(f"baytree: {written.message}\n  hint: {written.hint}", file=sys.stderr)
        return 2
    print(from_here(written.resolve()))
    print(LEFT_OUT, file=sys.stderr)
    answers: dict[str, str | tuple[str, ...]] = {**case.asked, **case.lists}
    unknown = unknown_answers(job.tables, job.library, trees_of_case(case), answers)
    for name, text in unknown.items():
        print(
            f"Kept as typed, so read it before you share the file: {name}: {text}", file=sys.stderr
        )
    return 0
