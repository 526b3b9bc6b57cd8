"""`bayleaf serve`: the site on this machine, rebuilt as records change."""

from __future__ import annotations

import argparse
from pathlib import Path

from bayleaf.cli import book_options, root_of
from bayleaf.cli.build import SETTINGS, Refused, build, out_of, say
from bayleaf.finding import CouldNotRun
from bayleaf.site import SealError, SiteError, serve
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
    """Build, then serve until Ctrl-C; 1 when the first build is refused, later ones leave the site as it is."""
    if not 0 <= args.port <= 65535:
        raise CouldNotRun(f"there is no port {args.port}; give one from 1024 to 65535")
    out, watched = out_of(args), watched_by(args)
    seen = times(watched)
    try:
        print(say(build(args, out)), flush=True)
        serve(out, watched, lambda: say(build(args, out)), args.port, seen=seen)
    except (Refused, SealError) as err:
        print(err)
        return 1
    except SiteError as err:
        raise CouldNotRun(str(err).removeprefix("could not run: ")) from None
    return 0


def watched_by(args: argparse.Namespace) -> tuple[Path, ...]:
    """What a rebuild reads; of an overlay only its records, since the site may lie beside them."""
    root = root_of(args)
    return (root / "kb", root / "schemas", root / SETTINGS, *(overlay / "kb" for overlay in args.overlay))
