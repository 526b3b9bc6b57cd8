"""`bayleaf pages DIR`: only the Markdown tree, for any engine that makes one HTML file of each page."""

from __future__ import annotations

import argparse
from pathlib import Path

from bayleaf.cli import book_options
from bayleaf.cli.build import source_of
from bayleaf.finding import CouldNotRun
from bayleaf.site import RefusedError, SiteError, write_tree


def options(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    book_options(parser)
    parser.add_argument(
        "folder", type=Path, metavar="DIR", help="a new or empty folder, or one that this command wrote"
    )
    parser.add_argument("--strict", action="store_true", help="warnings count as errors")


def run(args: argparse.Namespace) -> int:
    """Check the book and write its pages; 0, or 1 with the errors, the folder left as it was."""
    try:
        count = write_tree(source_of(args), args.folder)
    except RefusedError as err:
        print(f"{err}\nnot written; {args.folder} is as it was")
        return 1
    except SiteError as err:
        raise CouldNotRun(str(err).removeprefix("could not run: ").replace(" with --out", "")) from None
    print(f"{count} files in {args.folder}")
    return 0
