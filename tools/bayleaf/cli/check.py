"""`bayleaf check`: prove the book."""

from __future__ import annotations

import argparse
import gc
from pathlib import Path

from bayleaf.checks import all_rules, check
from bayleaf.checks.selection import Selection, select
from bayleaf.cli import book_options, in_colour, root_of
from bayleaf.records import Book, load
from bayleaf.report import FORMATS, Report, render
from bayleaf.report.source import line_reader


def options(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    book_options(parser)
    parser.add_argument("--format", choices=FORMATS, default="text")
    parser.add_argument("--strict", action="store_true", help="warnings count as errors")
    parser.add_argument("--jobs", action="store_true", help="replay every job too")
    parser.add_argument(
        "paths",
        nargs="*",
        type=Path,
        metavar="PATH",
        help="show only what was found in these files or folders, and in the files that they can break",
    )


def run(args: argparse.Namespace) -> int:
    """Check and report; 0 without errors, 1 with."""
    gc.disable()  # one short run: nothing that is read is let go before the end
    book = load(root_of(args), args.overlay)
    selection = select(book, check(book, args.jobs), args.paths, args.overlay)
    report = Report(selection.findings, all_rules(), _counts(book, selection), line_reader(book.root), in_colour())
    print(render(args.format, report))
    gc.freeze()  # nor is it taken apart at the end, which took a tenth of a second
    stopping = ("error", "warning") if args.strict else ("error",)
    return int(any(finding.level in stopping for finding in selection.findings))


def _counts(book: Book, selection: Selection) -> str:
    """What was looked at, and what was not."""
    rules = f"{len(all_rules())} rules"
    if selection.others is None:
        return f"{book.files} files, {sum(1 for _record in book.records())} records and entries, {rules}"
    looked_at = f"{selection.looked_at:,} {'file' if selection.looked_at == 1 else 'files'} looked at"
    many = selection.errors_in_others
    there = f" ({many:,} {'error' if many == 1 else 'errors'} there)" if many else ""
    return f"{looked_at}, {selection.others:,} not{there}, {rules}"
