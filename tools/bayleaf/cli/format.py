"""`bayleaf format`: one layout for every record; only layout changes, never a number or a word."""

from __future__ import annotations

import argparse
import os
from pathlib import Path

from bayleaf.cli import book_options, root_of
from bayleaf.finding import CouldNotRun
from bayleaf.records import RECORD_KINDS, VOCABULARY_KINDS
from bayleaf.records.format import CannotLayOut, laid_out
from bayleaf.records.shape import Shapes


def options(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    book_options(parser)
    parser.add_argument("--check", action="store_true", help="change nothing; exit 1 if a file has another layout")
    parser.add_argument("paths", nargs="*", type=Path, metavar="PATH", help="only these files or folders")


def run(args: argparse.Namespace) -> int:
    """Lay out the files; 0 when all stand as they should, 1 when one does not or cannot be laid out."""
    root = root_of(args)
    if not (root / "kb").is_dir():
        raise CouldNotRun(f"no kb folder in {root}; name the folder that holds it with --root")
    shapes = Shapes(root / "schemas")
    files = [
        path for top in (root, *args.overlay) for path in records_under(Path(top) / "kb") if _wanted(path, args.paths)
    ]
    if args.paths and not files:
        raise CouldNotRun(f"no record in {', '.join(map(str, args.paths))}")
    changed = left = 0
    for path in files:
        kind = path.stem if path.parent.name == "vocabulary" else path.parent.name
        try:
            raw = path.read_bytes()
            result = laid_out(raw, kind, shapes.schema(kind))
        except CannotLayOut as err:
            left += 1
            print(f"{path}: left alone: {err}")
            continue
        if result != raw:
            changed += 1
            print(f"{path}: {'has another layout' if args.check else 'laid out'}")
            if not args.check:
                replace(path, result)
    print(f"{len(files)} files: {changed} {'to lay out' if args.check else 'laid out'}, {left} left alone")
    return int(bool(left or (args.check and changed)))


def records_under(top: Path) -> list[Path]:
    """Every file under a kb folder that a schema claims; links are not followed. Raises OSError for a folder that cannot be read."""
    folders = [top / kind for kind in RECORD_KINDS if (top / kind).is_dir()]
    records = [path for folder in folders for path in sorted(folder.iterdir()) if path.suffix == ".yaml"]
    lists = [top / "vocabulary" / f"{kind}.yaml" for kind in VOCABULARY_KINDS]
    return [path for path in records + lists if path.is_file() and not path.is_symlink()]


def replace(path: Path, result: bytes) -> None:
    """Write a file whole or not at all."""
    aside = path.with_name(f".{path.name}.{os.getpid()}")
    try:
        aside.write_bytes(result)
        os.chmod(aside, path.stat().st_mode & 0o777)
        os.replace(aside, path)
    finally:
        aside.unlink(missing_ok=True)


def _wanted(path: Path, paths: list[Path]) -> bool:
    return not paths or any(path.resolve().is_relative_to(wanted.resolve()) for wanted in paths)
