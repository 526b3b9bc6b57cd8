"""The part of a check that was asked for: some files, and what their records can break in others."""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path
from typing import NamedTuple

from bayleaf.checks.context import Context
from bayleaf.finding import CouldNotRun, Finding
from bayleaf.records import Book
from bayleaf.records.book import from_root

WHOLE_BOOK = "kb"  # the place of a finding that belongs to no file: it is never left out


class Selection(NamedTuple):
    """Findings in the files that were looked at, how many files those are and how many not (None: all were), and the errors in the others."""

    findings: list[Finding]
    looked_at: int
    others: int | None = None
    errors_in_others: int = 0


def select(book: Book, findings: list[Finding], paths: Sequence[Path], overlays: list[Path]) -> Selection:
    """The findings of some files and folders, and of the files that those can break.

    A record can break the ones that name it, directly or over others of its own kind (a procedure that is followed by
    one that is followed, a part of a part), and the ones whose findings speak of it.
    """
    if not paths:
        return Selection(findings, book.files)
    tops = {"kb": book.root / "kb"} | {from_root(shop / "kb", book.root): shop / "kb" for shop in overlays}
    wanted = [name for path in paths for name in _names(path, book.root, tops)]

    def named(file: str) -> bool:
        return any(file == name or file.startswith(f"{name}/") for name in wanted)

    ids = {id for id, record in book.every.items() if named(record.file)}
    dependents = {book.every[id].file for id in _dependents(book, ids)}
    spoken_of = re.compile(rf"(?<![\w-])(?:{'|'.join(map(re.escape, sorted(ids))) or '(?!)'})(?![\w-])")
    looked_at = dependents | {r.file for r in book.every.values() if named(r.file)}
    looked_at |= {f.file for f in findings if named(f.file) or spoken_of.search(f.message)}
    shown = [f for f in findings if f.file in looked_at or f.file == WHOLE_BOOK]
    errors = sum(f.level == "error" for f in findings) - sum(f.level == "error" for f in shown)
    count = len(looked_at - {WHOLE_BOOK})
    return Selection(shown, count, max(book.files - count, 0), errors)


def _dependents(book: Book, ids: set[str]) -> set[str]:
    """The records that name one of these, and those that name it over records of one kind."""
    references = Context(book.sound()).references
    named_by: dict[str, set[str]] = {}
    for record in book.records():
        for id in references.names(record):
            named_by.setdefault(id, set()).add(record.id)
    chain, edge = set(ids), set(ids)
    while edge:
        edge = {o for id in edge for o in named_by.get(id, ()) if book.every[o].kind == _kind(book, id)} - chain
        chain |= edge
    return chain | {other for id in chain for other in named_by.get(id, ())}


def _kind(book: Book, id: str) -> str:
    record = book.every.get(id)
    return record.kind if record else ""


def _names(path: Path, root: Path, tops: dict[str, Path]) -> list[str]:
    """What findings call a path: itself where it lies in a kb folder, every kb folder that it holds otherwise."""
    there = next((base / path for base in (Path.cwd(), root) if (base / path).exists()), None)
    if there is None:
        raise CouldNotRun(f"{path}: no such file or folder")
    names = []
    for shown, top in tops.items():
        folder, inside = top.resolve(), there.resolve()
        if inside.is_relative_to(folder):
            names.append(Path(shown, inside.relative_to(folder)).as_posix())
        elif folder.is_relative_to(inside):
            names.append(shown)
    if not names:
        raise CouldNotRun(f"{path} holds no record of the book; records lie in {root / 'kb'}")
    return names
