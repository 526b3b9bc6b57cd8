"""`bayleaf export DIR`: the whole book as JSON and CSV, and the fault matrix of every system."""

from __future__ import annotations

import argparse
from pathlib import Path

from bayleaf.cli import book_options, root_of
from bayleaf.export.files import write
from bayleaf.finding import CouldNotRun
from bayleaf.records import load
from bayleaf.site import SiteError


def options(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    book_options(parser)
    parser.add_argument(
        "folder", type=Path, metavar="DIR", help="a new or empty folder, or one that this command wrote"
    )


def run(args: argparse.Namespace) -> int:
    """Write the files; 0, or 1 when records are left out because they are not sound."""
    book = load(root_of(args), args.overlay)
    try:
        count = write(book, args.folder)
    except SiteError as err:
        raise CouldNotRun(str(err).removeprefix("could not run: ").replace(" with --out", "")) from None
    unsound = [record.id for record in book.records() if not record.sound]
    print(f"{count} files in {args.folder}")
    if unsound:
        print(f"left out, not sound: {', '.join(unsound)}; run bayleaf check")
    return int(bool(unsound))
