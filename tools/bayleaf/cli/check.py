"""`bayleaf check`: prove the book."""

from __future__ import annotations

import argparse
import gc
import sys
from functools import cache
from pathlib import Path

from bayleaf.checks import all_rules, check
from bayleaf.cli import book_options, root_of
from bayleaf.finding import CouldNotRun, Finding
from bayleaf.records import KINDS, Book, load
from bayleaf.report import text


def options(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    book_options(parser, formats=True)
    parser.add_argument("paths", nargs="*", type=Path, metavar="PATH", help="show only what was found in these files or folders")
    parser.add_argument("--jobs", action="store_true", help="replay every job too")


def run(args: argparse.Namespace) -> int:
    """Check and report; 0 without errors, 1 with."""
    gc.disable()  # one short run: nothing that is read is let go before the end
    root = root_of(args)
    book = load(root, args.overlay)
    found = _only(check(book, replay=args.jobs), args.paths, root)
    report(found, book, args)
    return verdict(found, args.strict)


def verdict(found: list[Finding], strict: bool) -> int:
    """The exit status: 1 if anything counts as an error."""
    return int(any(f.level == "error" or strict and f.level == "warning" for f in found))


def report(found: list[Finding], book: Book, args: argparse.Namespace) -> None:
    """Print findings in the format asked for; machine formats print nothing else on standard output."""
    counts = f"{book.files} files, {sum(len(book.of(k)) for k in KINDS)} records and entries, {len(all_rules())} rules"
    if args.format == "text":
        colour = sys.stdout.isatty()
        if found:
            print(text.render(found, line_reader(book.root, args.overlay), colour))
        print(f"{counts}: {text.tally(found)}")
        return
    import importlib

    renderer = importlib.import_module(f"bayleaf.report.{args.format}_")
    print(renderer.render(found, all_rules(), counts))


def line_reader(root: Path, overlays: list[Path]):  # noqa: ANN201 - a function of (file, line)
    """A function that gives a source line of a finding's file."""
    tops = {f"{Path(o).name}/kb": Path(o) / "kb" for o in overlays}

    @cache
    def lines(file: str) -> list[str]:
        path = next((top / file[len(shown) + 1 :] for shown, top in tops.items() if file.startswith(shown + "/")), root / file)
        try:
            return path.read_bytes().decode("utf-8", "replace").split("\n")
        except OSError:
            return []

    return lambda file, line: lines(file)[line - 1].rstrip("\r") if 0 < line <= len(lines(file)) else ""


def _only(found: list[Finding], paths: list[Path], root: Path) -> list[Finding]:
    if not paths:
        return found
    wanted = []
    for path in paths:
        for base in (Path.cwd(), root):
            if (base / path).exists():
                try:
                    wanted.append((base / path).resolve().relative_to(root.resolve()).as_posix())
                except ValueError:
                    raise CouldNotRun(f"{path} lies outside the book at {root}") from None
                break
        else:
            raise CouldNotRun(f"{path}: no such file or folder")
    return [f for f in found if any(w in (".", f.file) or f.file.startswith(w + "/") for w in wanted)]
