"""`bayleaf serve`: the site on this machine, rebuilt as records change."""

from __future__ import annotations

import argparse
from pathlib import Path

from bayleaf.cli import book_options, root_of
from bayleaf.cli.build import SETTINGS, Refused, build, out_of, say
from bayleaf.finding import CouldNotRun
from bayleaf.site import SealError, SiteError, serve


def options(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    book_options(parser)
    parser.add_argument("--out", type=Path, metavar="DIR", help="the folder of the site (default: site beside kb)")
    parser.add_argument("--strict", action="store_true", help="warnings count as errors")
    parser.add_argument("--port", type=int, default=8000, help="the port on 127.0.0.1; 0 takes any free one (default: 8000)")


def run(args: argparse.Namespace) -> int:
    """Build, then serve until Ctrl-C; 1 when the first build is refused, later ones leave the site as it is."""
    if not 0 <= args.port <= 65535:
        raise CouldNotRun(f"there is no port {args.port}; give one from 1024 to 65535")
    root, out = root_of(args), out_of(args)
    try:
        print(say(build(args, out)))
        serve(out, (root / "kb", root / "schemas", root / SETTINGS, *args.overlay), lambda: say(build(args, out)), args.port)
    except (Refused, SealError) as err:
        print(err)
        return 1
    except SiteError as err:
        raise CouldNotRun(str(err).removeprefix("could not run: ")) from None
    return 0
