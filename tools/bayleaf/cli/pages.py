"""`bayleaf pages DIR`: only the Markdown tree, for any engine."""

from __future__ import annotations

import argparse
from pathlib import Path

from bayleaf.cli import book_options, root_of
from bayleaf.cli.build import Refused, proved, tree
from bayleaf.finding import CouldNotRun
from bayleaf.site import SiteError
from bayleaf.site.swap import staged


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
        made = tree(proved(args), root_of(args))
        with staged(args.folder, "pages") as new:
            for path, content in made.items():
                (new / path).parent.mkdir(parents=True, exist_ok=True)
                (new / path).write_bytes(content if isinstance(content, bytes) else content.encode("utf-8"))
    except Refused as err:
        print(f"{err}\nnot written; {args.folder} is as it was")
        return 1
    except SiteError as err:
        raise CouldNotRun(str(err).removeprefix("could not run: ").replace(" with --out", "")) from None
    print(f"{len(made)} files in {args.folder}")
    return 0
