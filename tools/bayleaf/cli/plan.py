"""`bayleaf plan JOB`: the next test of a job, and those after it."""

from __future__ import annotations

import argparse

from bayleaf.cli import book_options, in_colour, root_of
from bayleaf.cli.check import line_reader
from bayleaf.cli.judge import job_named
from bayleaf.diagnosis.jobs.judge import judge
from bayleaf.diagnosis.plan.say import plan_lines
from bayleaf.records import load
from bayleaf.report import text


def options(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    book_options(parser)
    parser.add_argument("job", metavar="JOB", help="a job file, or the id of a job in the book")


def run(args: argparse.Namespace) -> int:
    """Print the plan; 1 when the job itself has errors, which are printed instead."""
    root = root_of(args)
    book = load(root, args.overlay)
    job, problems, line_of = job_named(book, args.job, line_reader(root))
    if job is None or any(problem.level == "error" for problem in problems):
        print(text.listing(problems, line_of, in_colour()))
        print(f"The job cannot be planned: {text.tally(problems)}.")
        return 1
    print("\n".join(text.plain(line) for line in plan_lines(judge(book, job), book)))
    return 0
