"""The small book of the tests: laid out in a folder, with slips made in it."""

from __future__ import annotations

import shutil
import tempfile
from pathlib import Path

from bayleaf.checks import check
from bayleaf.checks.rule import Example
from bayleaf.records import Book, load
from bayleaf.report import text

HERE = Path(__file__).resolve().parents[1]
SMALL, SCHEMAS = HERE / "small_book" / "kb", HERE.parent / "schemas"


def lay_out(folder: Path, *slips: Example) -> Path:
    """A root that holds the small book and the project's schemas; each slip is made in it. Returns the folder."""
    shutil.copytree(SMALL, folder / "kb")
    (folder / "schemas").symlink_to(SCHEMAS)
    for slip in slips:
        make(folder, slip)
    return folder


def make(root: Path, slip: Example) -> None:
    """Make one slip: the text `good`, which must stand there exactly once, becomes `bad`; no `good`: a new file."""
    path = root / "kb" / slip.file
    if not slip.good:
        assert not path.exists(), f"{slip.file} is there already"
        path.parent.mkdir(parents=True, exist_ok=True)
        if slip.bad.startswith("link:"):
            path.symlink_to(slip.bad.removeprefix("link:"))
            return
        bad = slip.bad
    else:
        before = path.read_text(encoding="utf-8")
        assert before.count(slip.good) == 1, f"{slip.file} holds {before.count(slip.good)} times: {slip.good!r}"
        bad = before.replace(slip.good, slip.bad)
    path.write_bytes(bad.encode("utf-8", "surrogateescape"))


def load_at(root: Path) -> Book:
    """The book under a root made by `lay_out`, with the shop's records beside it where a slip made some."""
    return load(root, [root / "shop"] if (root / "shop").is_dir() else [])


def load_small() -> Book:
    """The small book as it stands."""
    with tempfile.TemporaryDirectory() as folder:
        return load_at(lay_out(Path(folder)))


def complaint(root: Path, code: str) -> str:
    """What one rule says about the book under a root, as a person reads it; an empty string where it is silent."""

    def line_of(file: str, line: int) -> str:
        path = root / file
        lines = path.read_bytes().decode("utf-8", "replace").split("\n") if path.is_file() else []
        return lines[line - 1] if line <= len(lines) else ""

    return text.listing([f for f in check(load_at(root), replay=True) if f.code == code], line_of)
