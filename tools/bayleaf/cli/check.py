"""`bayleaf check`: prove the book."""

from __future__ import annotations

import argparse
import gc
from pathlib import Path

from bayleaf.checks import all_rules, check
from bayleaf.cli import book_options, in_colour, root_of
from bayleaf.finding import CouldNotRun, Finding
from bayleaf.records import KINDS, Book, load
from bayleaf.records.book import from_root
from bayleaf.report import text
from bayleaf.report.source import line_reader


def options(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    book_options(parser, formats=True)
    parser.add_argument(
        "paths", nargs="*", type=Path, metavar="PATH", help="show only what was found in these files or folders"
    )
    parser.add_argument("--jobs", action="store_true", help="replay every job too")


def run(args: argparse.Namespace) -> int:
    """Check and report; 0 without errors, 1 with."""
    gc.disable()  # one short run: nothing that is read is let go before the end
    root = root_of(args)
    book = load(root, args.overlay)
    found = _only(check(book, replay=args.jobs), args.paths, root, args.overlay)
    report(found, book, args)
    gc.freeze()  # nor is it taken apart at the end, which took a tenth of a second
    return verdict(found, args.strict)


def verdict(found: list[Finding], strict: bool) -> int:
    """The exit status: 1 if anything counts as an error."""
    return int(any(f.level == "error" or (strict and f.level == "warning") for f in found))


def report(found: list[Finding], book: Book, args: argparse.Namespace) -> None:
    """Print findings in the format asked for; machine formats print nothing else on standard output."""
    counts = f"{book.files} files, {sum(len(book.of(k)) for k in KINDS)} records and entries, {len(all_rules())} rules"
    if args.format == "text":
        if found:
            print(text.render(found, line_reader(book.root), in_colour()))
        print(f"{counts}: {text.tally(found)}")
        return
    import importlib

    renderer = importlib.import_module(f"bayleaf.report.{args.format}_")
    print(renderer.render(found, all_rules(), counts))


def _only(found: list[Finding], paths: list[Path], root: Path, overlays: list[Path]) -> list[Finding]:
    """What was found in the paths, and what concerns the whole book: a rule that did not run must not pass in silence."""
    if not paths:
        return found
    tops = {"kb": root / "kb"} | {from_root(overlay / "kb", root): overlay / "kb" for overlay in overlays}
    wanted: list[str] = []
    for path in paths:
        near = next((base / path for base in (Path.cwd(), root) if (base / path).exists()), None)
        if near is None:
            raise CouldNotRun(f"{path}: no such file or folder")
        inside = _named(near.resolve(), tops)
        if not inside:
            raise CouldNotRun(f"{path} holds no record of the book; records lie in {root / 'kb'}")
        wanted += inside
    return [f for f in found if f.file == "kb" or any(f.file == w or f.file.startswith(w + "/") for w in wanted)]


def _named(path: Path, tops: dict[str, Path]) -> list[str]:
    """What findings call a path: itself where it lies in a kb folder, every kb folder that it holds otherwise."""
    named = []
    for shown, top in tops.items():
        top = top.resolve()
        if path.is_relative_to(top):
            named.append(Path(shown, path.relative_to(top)).as_posix())
        elif top.is_relative_to(path):
            named.append(shown)
    return named
