"""The small book of the tests: laid out in a folder, with slips made in it."""

from __future__ import annotations

import shutil
from pathlib import Path

from bayleaf.checks.rule import Example

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
    if slip.good:
        text = path.read_text(encoding="utf-8")
        assert text.count(slip.good) == 1, f"{slip.file} holds {text.count(slip.good)} times: {slip.good!r}"
        bad = text.replace(slip.good, slip.bad)
    else:
        assert not path.exists(), f"{slip.file} is there already"
        path.parent.mkdir(parents=True, exist_ok=True)
        bad = slip.bad
    path.write_bytes(bad.encode("utf-8", "surrogateescape"))
