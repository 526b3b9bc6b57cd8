"""The Book: all records together, with a shop's own records laid over them."""

from __future__ import annotations

import os
import re
from collections.abc import Iterable, Mapping
from copy import deepcopy
from pathlib import Path
from typing import Any

from bayleaf.finding import CouldNotRun, Finding, reader_level
from bayleaf.records.kinds import KINDS, RECORD_KINDS, VOCABULARY_KINDS
from bayleaf.records.record import Record, Source, file_findings
from bayleaf.records.shape import Shapes
from bayleaf.records.yaml.decode import MOST_BYTES
from bayleaf.records.yaml.strict import load_text

ID = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*\Z")


class Book:
    """Every record by kind and id, and what was found while reading. Never raises on bad input."""

    def __init__(
        self,
        root: Path = Path(),
        kinds: dict[str, dict[str, Record]] | None = None,
        findings: list[Finding] | None = None,
        files: int = 0,
        every: dict[str, Record] | None = None,
    ) -> None:
        self.root, self.files = root, files
        self.kinds = {} if kinds is None else kinds
        self.findings = [] if findings is None else findings
        self._all = {} if every is None else every
        self.kept: dict[str, object] = {}  # what others worked out from this book

    def of(self, kind: str) -> dict[str, Record]:
        """All records of a kind, by id, in the order of their files."""
        return self.kinds.get(kind, {})

    def get(self, id: str) -> Record | None:
        """The record or vocabulary entry with this id, of whatever kind."""
        return self._all.get(id) if isinstance(id, str) else None

    @property
    def every(self) -> dict[str, Record]:
        """Every record and entry by id, sound or not, of whatever kind; nobody writes to it."""
        return self._all

    def records(self) -> Iterable[Record]:
        """Every record and entry, kind by kind."""
        for kind in KINDS:
            yield from self.of(kind).values()

    def sound(self) -> Book:
        """The same book with nothing but its sound records by kind; `get` still knows the others, so that they exist."""
        kinds = {kind: {id: r for id, r in entries.items() if r.sound} for kind, entries in self.kinds.items()}
        return Book(self.root, kinds, self.findings, self.files, self._all)

    def add(self, record: Record, over: bool = False) -> None:
        """Take a record in; an id used twice is a finding unless it is laid over one of the same kind."""
        held = self._all.get(record.id)
        if held is not None and not (over and held.kind == record.kind):
            self.findings.append(
                record.finding(
                    "FILE-13",
                    "error",
                    f"the id {record.id} is already used by {held.file}",
                    "Ids are unique in the whole book; choose another."
                    if not over
                    else "A shop's record may replace one of the same kind only; choose another id.",
                )
            )
            return
        self.kept.clear()
        self._all[record.id] = record
        self.kinds.setdefault(record.kind, {})[record.id] = record


def load(root: Path, overlays: Iterable[Path] = ()) -> Book:
    """Read the book under `root` (which holds kb/ and schemas/) and lay the overlays over it.

    Raises CouldNotRun only where there is no book at all (no kb/, no schemas/).
    """
    root = Path(root)
    if not (root / "kb").is_dir():
        raise CouldNotRun(f"no kb folder in {root}; name the folder that holds it with --root")
    book = Book(root)
    shapes = Shapes(root / "schemas")
    _read_tree(book, shapes, root / "kb", "kb", over=False)
    for overlay in overlays:
        top = Path(overlay) / "kb"
        if not top.is_dir():
            raise CouldNotRun(f"no kb folder in the overlay {overlay}")
        _read_tree(book, shapes, top, from_root(top, root), over=True)
    book.findings.sort(key=Finding.order)
    return book


def from_root(path: Path, root: Path) -> str:
    """A path as findings name it: from the root of the book, with `..` where it lies outside, so that root / it opens it."""
    path, root = path.resolve(), root.resolve()
    try:
        return Path(os.path.relpath(path, root)).as_posix()
    except ValueError:  # another drive of Windows
        return path.as_posix()


def load_job(path: Path, book: Book) -> tuple[Record | None, list[Finding]]:
    """Read a technician's own job file against the book's schema of jobs; the book is left as it is."""
    try:
        with open(path, "rb") as handle:
            raw = handle.read(MOST_BYTES + 1)
    except OSError as err:
        raise CouldNotRun(f"{path}: {err.strerror or err}") from None
    aside = Book(book.root)
    _read_file(aside, Shapes(book.root / "schemas"), raw, Path(path).name, "jobs", Path(path).stem, over=False)
    return next(iter(aside.of("jobs").values()), None), aside.findings


def book_from_data(kinds: Mapping[str, Mapping[str, dict[str, Any]]], schemas: Path) -> Book:
    """A book made of plain data, for the tests of pure stages: no files, no shape check."""
    book, shapes = Book(), Shapes(schemas)
    for kind, entries in kinds.items():
        fields = shapes.fields(kind)
        for id, data in entries.items():
            held = deepcopy(data)
            fields.empty(held)
            book.add(Record(kind, id, held, Source(f"kb/{kind}/{id}.yaml"), fields=fields))
    return book


def _read_tree(book: Book, shapes: Shapes, top: Path, shown: str, over: bool) -> None:
    """Every file under `top`, those of a folder before those of its folders; what is skipped is a finding."""
    before, todo = book.files, [""]
    while todo:
        inside = todo.pop()
        todo += reversed(_read_folder(book, shapes, str(top), shown, inside, over))
    if book.files == before:
        book.findings.append(
            Finding(
                "FILE-5",
                reader_level("FILE-5"),
                "there is no file at all",
                "Write a record, or name another folder.",
                shown,
            )
        )


def _read_folder(book: Book, shapes: Shapes, top: str, shown: str, inside: str, over: bool) -> list[str]:
    """Read the files of one folder and return its folders. Files are looked at before they are opened: a pipe would hang."""

    def unread(name: str, message: str, help: str) -> None:
        book.findings.append(
            Finding("FILE-15", reader_level("FILE-15"), message, help, f"{shown}/{inside}{name}".rstrip("/"))
        )

    try:
        with os.scandir(os.path.join(top, inside)) as entries:
            result = sorted(entries, key=lambda entry: entry.name)
    except OSError as err:
        unread("", f"the folder cannot be read: {err.strerror}", "Mend its permissions.")
        return []
    folders = []
    for entry in result:
        name = entry.name
        if entry.is_dir(follow_symlinks=False):
            folders.append(f"{inside}{name}/")
            continue
        if entry.is_symlink() and os.path.isdir(entry.path):
            unread(name, "a symbolic link to a folder", "Put the folder itself here.")
            continue
        book.files += 1
        claim = _claim(inside + name)
        if isinstance(claim, str):
            book.findings.append(Finding("FILE-11", reader_level("FILE-11"), claim, _WHERE, f"{shown}/{inside}{name}"))
            continue
        if not entry.is_file(follow_symlinks=False):
            unread(
                name, "a symbolic link" if entry.is_symlink() else "not an ordinary file", "Put the file itself here."
            )
            continue
        try:
            raw = _bytes_of(entry.path)
        except OSError as err:
            unread(name, f"cannot be read: {err.strerror}", "Mend its permissions.")
            continue
        _read_file(book, shapes, raw, f"{shown}/{inside}{name}", *claim, over)
    return folders


def _bytes_of(path: str) -> bytes:
    """What an ordinary file holds, up to one byte more than it may. A file object would ask the system twice as much."""
    handle = os.open(path, os.O_RDONLY | getattr(os, "O_BINARY", 0))
    try:
        return os.read(handle, MOST_BYTES + 1)
    finally:
        os.close(handle)


_WHERE = "Records lie in kb/<kind>/<id>.yaml, vocabulary in kb/vocabulary/<kind>.yaml."


def _claim(relative: str) -> tuple[str, str] | str:
    """(kind, id) for a file that a schema claims, or the complaint about it."""
    parts = relative.split("/")
    if len(parts) != 2 or not parts[1].endswith(".yaml"):
        return "no schema claims this file"
    folder, stem = parts[0], parts[1][: -len(".yaml")]
    if folder == "vocabulary":
        return (stem, "") if stem in VOCABULARY_KINDS else f"there is no vocabulary called {stem}"
    if folder not in RECORD_KINDS:
        return f"there is no kind of record called {folder}"
    return folder, stem


def _read_file(book: Book, shapes: Shapes, raw: bytes, file: str, kind: str, id: str, over: bool) -> None:
    loaded = load_text(raw)
    if id and not ID.match(id):
        book.findings.append(
            Finding(
                "FILE-12",
                reader_level("FILE-12"),
                f"the file name {id}.yaml is not an id",
                "Use lower-case letters, digits and single hyphens.",
                file,
            )
        )
    source = Source(file, raw, loaded.typed, loaded.root if loaded.problems else None)
    if loaded.problems:
        book.findings += file_findings(loaded, file, id)
    if not isinstance(loaded.data, dict):
        if not loaded.problems:
            book.findings.append(
                Finding(
                    "FILE-5",
                    reader_level("FILE-5"),
                    "the file is not a map of fields",
                    "Write `field: value` lines.",
                    file,
                )
            )
        return
    wanted = f"# yaml-language-server: $schema=../../schemas/{kind}.schema.json"
    if not raw.startswith(wanted.encode()) and over is False and kind != "jobs":
        book.findings.append(
            Finding(
                "FILE-14",
                reader_level("FILE-14"),
                "the first line does not name the schema for editors",
                f"Write: {wanted}",
                file,
                record=id,
            )
        )
    fields = shapes.fields(kind)
    whole = Record(kind, id, loaded.data, source, fields=fields)
    shape = shapes.findings(whole) if not loaded.problems else []
    book.findings += shape
    sound = not shape and not loaded.problems
    if id:
        fields.empty(whole.data)
        whole.sound = sound
        book.add(whole, over)
        return
    faulty = {f.path[0] for f in shape if f.path}
    for name, data in loaded.data.items():
        if isinstance(data, dict):
            fields.empty(data)
            valid = sound or (bool(faulty) and name not in faulty)
            book.add(Record(kind, name, data, source, (name,), valid, fields), over)
