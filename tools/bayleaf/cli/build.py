"""`bayleaf build`: check, write the pages, run the site engine, verify, and swap the site in."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from bayleaf.cli import book_options, root_of
from bayleaf.finding import CouldNotRun
from bayleaf.site import BuildReport, Progress, RefusedError, SealError, SiteError, Source, publish


def options(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    book_options(parser)
    parser.add_argument("--out", type=Path, metavar="DIR", help="the folder of the site (default: site beside kb)")
    parser.add_argument("--strict", action="store_true", help="warnings count as errors")


def run(args: argparse.Namespace) -> int:
    """Build; 0, or 1 with the errors, the old site left as it was."""
    out = out_of(args)
    try:
        print(result_line(publish(source_of(args), out, Progress(sys.stderr))))
    except (RefusedError, SealError) as err:
        print(f"{err}\nnot built; {out} is as it was")
        return 1
    except SiteError as err:
        raise CouldNotRun(str(err).removeprefix("could not run: ")) from None
    return 0


def source_of(args: argparse.Namespace) -> Source:
    """The book of the arguments."""
    return Source(root_of(args), args.overlay, args.strict)


def out_of(args: argparse.Namespace) -> Path:
    """The folder of the site, as given or beside kb."""
    return args.out or root_of(args) / "site"


def result_line(report: BuildReport) -> str:
    """One line about a build, and the file to open."""
    size = f"{report.bytes / 1e6:.1f} MB"
    return f"{report.pages} pages, {report.entries} entries to search, {size}: open {report.out / 'index.html'}"
