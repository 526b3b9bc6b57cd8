"""Every file of an export: the whole book as JSON and CSV, and the fault matrix of every system."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

from bayleaf.diagnosis.faults.matrix import matrix_of_system
from bayleaf.export.tables import matrix_table, system_data
from bayleaf.records import KINDS, Book
from bayleaf.records.license import license_of
from bayleaf.site.swap import staged

FORMULA = ("=", "+", "-", "@", "\t")  # what a spreadsheet would take for a formula


def write(book: Book, folder: Path) -> int:
    """Write every file into a folder, whole or not at all; gives their number. Raises SiteError for a folder that is in use."""
    files = exported(book)
    with staged(folder, "export") as new:
        for path, content in files.items():
            (new / path).parent.mkdir(parents=True, exist_ok=True)
            (new / path).write_bytes(content.encode("utf-8"))
    return len(files)


def exported(book: Book) -> dict[str, str]:
    """Path → text of every file: book.json, a CSV for each kind, JSON and CSV of each system's matrix, and the license."""
    sound = {kind: {id: r.data for id, r in book.of(kind).items() if r.sound} for kind in KINDS}
    files = license_of(book.root) | {"book.json": _json(sound)}
    for kind, records in sound.items():
        if records:
            files[f"{kind}.csv"] = csv_text(_table(records))
    for system in sound["systems"]:
        files[f"matrix/{system}.json"] = _json(system_data(book, system))
        files[f"matrix/{system}.csv"] = csv_text(matrix_table(matrix_of_system(book, system)))
    return files


def _table(records: dict[str, dict]) -> list[list[str]]:
    """One line a record, one column a field; plain lists joined, anything deeper as JSON."""
    fields = list(dict.fromkeys(field for data in records.values() for field in data))
    return [["id", *fields], *([id, *(_cell(data.get(field, "")) for field in fields)] for id, data in records.items())]


def _cell(value: object) -> str:
    if value in ([], {}):
        return "none"  # an empty cell is a field that is not there
    if isinstance(value, list) and all(isinstance(item, str) for item in value):
        return "; ".join(value)
    return value if isinstance(value, str) else json.dumps(value, ensure_ascii=False)


def csv_text(table: list[list[str]]) -> str:
    """A table as CSV in which no cell is a formula: one that looks like it gets an apostrophe before it."""
    out = io.StringIO()
    csv.writer(out, lineterminator="\n").writerows(
        [f"'{cell}" if cell.startswith(FORMULA) else cell for cell in row] for row in table
    )
    return out.getvalue()


def _json(data: object) -> str:
    return json.dumps(data, indent=1, ensure_ascii=False) + "\n"
