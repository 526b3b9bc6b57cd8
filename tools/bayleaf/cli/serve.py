"""`bayleaf serve`: the site on this machine, rebuilt as records change."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable
from pathlib import Path

from bayleaf.cli import book_options
from bayleaf.cli.build import out_of, result_line, source_of
from bayleaf.finding import CouldNotRun
from bayleaf.site import Progress, RefusedError, SealError, SiteError, publish, serve
from bayleaf.site.serve import times


def options(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    book_options(parser)
    parser.add_argument("--out", type=Path, metavar="DIR", help="the folder of the site (default: site beside kb)")
    parser.add_argument("--strict", action="store_true", help="warnings count as errors")
    parser.add_argument(
        "--port", type=int, default=8000, help="the port on 127.0.0.1; 0 takes any free one (default: 8000)"
    )


def run(args: argparse.Namespace) -> int:
    """Build, then serve until Ctrl-C; 1 when the build is refused and no earlier site can be shown."""
    if not 0 <= args.port <= 65535:
        raise CouldNotRun(f"there is no port {args.port}; give one from 1024 to 65535")
    out, source = out_of(args), source_of(args)
    seen = times(source.watched)

    def build() -> str:
        return result_line(publish(source, out, Progress(sys.stderr)))

    try:
        finding = first(build)
        if finding and not (out / "index.html").is_file():
            return 1
        serve(out, source.watched, build, args.port, seen=seen, finding=finding)
    except SiteError as err:
        raise CouldNotRun(str(err).removeprefix("could not run: ")) from None
    return 0


def first(build: Callable[[], str]) -> str:
    """Build and print what came of it; gives the findings where it was refused."""
    try:
        print(build(), flush=True)
    except (RefusedError, SealError) as err:
        print(err, flush=True)
        return str(err)
    return ""
