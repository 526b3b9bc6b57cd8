"""`bayleaf judge JOB`: verdicts on a job's readings, and the faults that they leave."""

from __future__ import annotations

import argparse
import json
from collections.abc import Callable
from pathlib import Path

from bayleaf.checks import check_record
from bayleaf.cli import book_options, in_colour, root_of
from bayleaf.diagnosis.jobs.data import to_json
from bayleaf.diagnosis.jobs.judge import judge
from bayleaf.diagnosis.jobs.say import lines
from bayleaf.finding import CouldNotRun, Finding
from bayleaf.nearest import nearest
from bayleaf.records import Book, Record, load, load_job
from bayleaf.records.yaml.decode import MOST_BYTES
from bayleaf.report import text
from bayleaf.report.source import line_reader

FILE_NAME = "FILE-12"  # a technician's own file may have any name
STYLE = "WORD-"  # and be written in his own words


def options(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    book_options(parser)
    parser.add_argument("job", metavar="JOB", help="a job file, or the id of a job in the book")
    parser.add_argument(
        "--why", action="store_true", help="say how each reading was judged and what contradicts which fault"
    )
    parser.add_argument("--format", choices=("text", "json"), default="text")


def run(args: argparse.Namespace) -> int:
    """Judge and print; 1 when the job itself has errors, which are printed instead of a judgement."""
    root = root_of(args)
    book = load(root, args.overlay)
    job, result, line_of = job_named(book, args.job, line_reader(root))
    errors = any(f.level == "error" for f in result)
    said = None if job is None or errors else judge(book, job)
    if args.format == "json":
        problems = [
            {"code": f.code, "level": f.level, "message": f.message, "help": f.help, "line": f.line, "column": f.column}
            for f in result
        ]
        judged = {"problems": problems, "left_out": left_out(book), "judgement": to_json(said, book) if said else None}
        print(json.dumps(judged, indent=2, ensure_ascii=False))
        return int(said is None)
    if result:
        print(text.listing(result, line_of, in_colour()))
    print(
        "\n".join(text.plain(line) for line in lines(said, book, args.why))
        if said
        else f"The job cannot be judged: {text.tally(result)}."
    )
    if said and left_out(book):
        print(f"\nJudged without what is in error in {', '.join(left_out(book))}; run bayleaf check.")
    return int(said is None)


def left_out(book: Book) -> list[str]:
    """The files of the book that hold errors of reading or shape: what they say of a fault takes no part in a judgement."""
    return sorted({f.file for f in book.findings if f.level == "error"})


def job_named(
    book: Book, named: str, line_of: Callable[[str, int], str]
) -> tuple[Record | None, list[Finding], Callable[[str, int], str]]:
    """The job, what the checks say about it, and where its lines are; of the book by its id, else the file of that name."""
    path = Path(named)
    ids = [
        id for id, job in book.of("jobs").items() if named == id or path.resolve() == (book.root / job.file).resolve()
    ]
    if ids:
        held = book.of("jobs")[ids[0]]
        return held, check_record(book, held), line_of
    if not path.is_file():
        near = nearest(named, book.of("jobs"))
        what = "not an ordinary file" if path.exists() else "no such file"
        raise CouldNotRun(f"{named}: {what}, and no job of the book{f'; did you mean {near}?' if near else ''}")
    job, result = load_job(path, book)
    result = [f for f in result if f.code != FILE_NAME]
    if job is not None and not any(f.level == "error" for f in result):
        # The job joins the book under a name that no record has, and keeps to the same rules as any record.
        job.id, job.sound = f"file {path.name}", True
        book.add(job)
        result += [f for f in check_record(book, job) if not f.code.startswith(STYLE)]
    with open(path, "rb") as handle:  # as much as was looked at; the file may be huge
        own = handle.read(MOST_BYTES).decode("utf-8", "replace").split("\n")
    return job, result, lambda _file, line: own[line - 1].rstrip("\r") if 0 < line <= len(own) else ""
